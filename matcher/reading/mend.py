"""Figures and letters that a scan or a tired typist mixes up: `2O8-23O`, `l/2`, `II5V`, `R0TATION`.

Each character is replaced by one other, so places stay. Only where the neighbours leave no doubt: a
letter between figures, or before a unit; a nought within a word. Codes (`HL-2O33`) keep what is written.
"""

import re

_UNIT = r"(?=V|A\b|HZ|HP|PH|RPM|W\b|°|MFD|UF|C\b|SPD|/|\s|,|;|\)|\"|$|[.](?:\s|$))"
# A run has a length at most, so that one of commas isn't walked again from each of them; its first
# figure is looked for before all that must stand around it, so that the search goes from figure to figure.
_FREE = r"(?:(?<![\w./-].)|(?<=\bHZ.)|(?<=\bV.)|(?<=\bPH.)|(?<=\bRPM.)|(?<=\bA.)|(?<=\bHP.))"
_MISREAD = r"(?:(?<=[OIl|])(?=[\dOIl|./])|(?<![OIl|])(?=[\d./,-]{0,400}+[OIl|SBZ]))"
_RUN = r"(?:[\dOIl|./,-]|[SBZ](?=[\dOIl])){0,400}+"
_FIGURES = re.compile(r"[\d./,OIl|-]" + _FREE + _MISREAD + _RUN + _UNIT)
_FIVE = re.compile(r"(?<=CAP )S(?= ?MFD)")
_ONE = re.compile(r"[lI|](?:(?:(?<=PH .)|(?<=PHASE .))(?![\w])|(?<![\w].)(?=/\d|PH\b|PHASE\b))")
# The doubtful letter comes first, and what stands before it second: so the search goes from letter to letter.
_DOUBT = re.compile(
    r"[OIl|SBZ](?:(?<=\d.)|(?<=[OIl|])[\d/]|(?:(?<=\bPH [lI|])|(?<=\bPHASE [lI|]))\b|(?<=\b[lI])PH)"
)
SUSPECTS = frozenset(["O", "I", "l", "|", "S", "B", "Z", "o"]) | frozenset(
    [
        "lO",
        "IO",
        "OO",
        "II",
        "ll",
        "Il",
        "lI",
        "OV",
        "OC",
        "OA",
        "OW",
        "OHZ",
        "OHP",
        "ORPM",
        "OPH",
        "IPH",
        "lPH",
        "IHP",
        "lHP",
        "IA",
        "lA",
        "IV",
        "lV",
    ]
)
"""Words that a cut leaves where a figure was misread; only then is the text worth mending."""
_BARS = 4  # more are cell walls, not misread figures
_TO_FIGURES = str.maketrans("OIl|SBZ", "0111582")
_WORD = re.compile(r"(?<![\w-])[A-Z0|]{3,}(?![\w-])")
_ENCLOSURES = {"TEA0": "TEAO", "OA0": "OAO", "0AO": "OAO", "0A0": "OAO"}
_TO_LETTERS = str.maketrans("0|", "OI")


def _figures(found: re.Match[str]) -> str:
    said = found.group()
    return said.translate(_TO_FIGURES) if any(char.isdigit() for char in said) else said


def _word(found: re.Match[str]) -> str:
    said = found.group()
    if said in _ENCLOSURES:
        return _ENCLOSURES[said]
    letters = sum(char.isalpha() for char in said)
    return said.translate(_TO_LETTERS) if letters >= 2 and "0" not in said[-1:] else said


def mend_figures(text: str) -> str:
    """Return the text with misread figures put right; same length."""
    if not _DOUBT.search(text):
        return text
    return _ONE.sub("1", _FIGURES.sub(_figures, text))


def mend_plate(text: str) -> str:
    """Return a plate's text with misread figures and letters put right; same length."""
    if text.count("|") >= _BARS:
        text = text.replace("|", " ")
    text = mend_figures(text)
    if "0" in text or "|" in text:
        text = _WORD.sub(_word, text)
    return _FIVE.sub("5", text)
