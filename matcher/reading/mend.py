"""Figures and letters that a scan or a tired typist mixes up: `2O8-23O`, `l/2`, `II5V`, `R0TATION`.

Each character is replaced by one other, so places stay. Only where the neighbours leave no doubt: a
letter between figures, or before a unit; a nought within a word. Codes (`HL-2O33`) keep what is written.
"""

import re
from functools import cache

from matcher.tables import rows

_UNIT = r"(?=V|A\b|A(?=\d)|HZ|HP|PH|RPM|W\b|°|[*']C\b|MFD|UF|C\b|SPD|/|\s|,|;|\)|\"|$|[.](?:\s|$))"
# A run has a length at most, so that one of commas isn't walked again from each of them; its first
# figure is looked for before all that must stand around it, so that the search goes from figure to figure.
_FREE = (
    r"(?:(?<![\w./-].)|(?<=\bHZ.)|(?<=\bV.)|(?<=\bPH.)|(?<=\bRPM.)|(?<=\bA.)|(?<=\bHP.)"
    r"|(?<=\bCAP.)|(?<=\bAMB.)|(?<=MFD/.)|(?<=UF/.))"
)
_MISREAD = r"(?:(?<=[OIl|])(?=[\dOIl|./])|(?<![OIl|])(?=[\d./,-]{0,400}+[OIl|SBZ]))"
_RUN = r"(?:[\dOIl|./,-]|[SBZ](?=[\dOIl])){0,400}+"
_FIGURES = re.compile(r"[\d./,OIl|-]" + _FREE + _MISREAD + _RUN + _UNIT)
_FIVE = re.compile(r"(?<=CAP )S(?= ?MFD)")
# On a plate a label says that a figure follows, a unit that one stands before it: `V 2OB-23O`, `1O7S RPM`.
_LABELLED = re.compile(
    r"\b(?:HP|VOLTS?|V|VAC|AMPS?|A|FLA|RPM|HZ|MFD|UF|SF)(?:[.:]| )[ :]{0,2}"
    r"(?=[^\n ]{0,11}\d)([\dOIl|SBZ][\dOIl|SBZ./-]{1,11})(?=V\b|A\b|HZ\b|RPM\b|HP\b|[^\w./-]|[.](?!\w)|$)"
)
_BEFORE_UNIT = re.compile(
    r"(?<![\w./-])(?=[^\n ]{0,11}\d)([\dOIl|][\dOIl|SBZ./-]{1,11}) ?"
    r"(?:HP|VOLTS?|VAC|AMPS|RPM|HZ|MFD)\b(?! ?[\d:=])"
)
_SERVICE = re.compile(r"\b5F(?=[ :]{1,2}[1Il|][.,][OIl|\d])")
_SERVICE_FACTOR = re.compile(r"(?<=\bSF )[Il|][.,][OIl|\d]{1,2}\b")
# A hyphen or point that only ties a figure to its label: `V-115`, `A.7.4`, `R.P.M.1075`; `A.5` may be 0.5 A.
_TIED = re.compile(
    r"\b(HP|VOLTS?|V|AMPS?|A|FLA|RPM|HZ|PH|FR|CY|SF|MFD|CAP)-(?=\d|\.\d)"
    r"|\b(H\.?P|VOLTS?|V|AMPS?|A|F\.?L\.?A|R\.?P\.?M|S\.?F|MFD)\.(?=\d{3}|\d{1,2}[./]\d)"
    r"|\b(CY|HZ|PH|FR)\.(?=\d)"
)
_FEWEST_TIED = 2
_SPEED = re.compile(
    r"\b(R\.?P\.?M|HIGH|HI|MED|LOW|LO)[.-](?=[1-3]?\d{3}\b(?!-))|\b(VOLTS?)[.-](?=\d{3}\b)|\b(V)\.(?=\d{3}\b)"
)
_JOINED = re.compile(
    r"\b[YDΔ](?=\d{3}(?: ?V\b|/[YDΔ]\d{3}))|(?<=\d\d\d)[YDΔ](?=/\d{3})|(?<=/\d\d\d)[YDΔ](?= ?V\b)"
)
"""How a supply is joined: `Y400 V`, `D230 V`, `230Δ/400Y V`."""
_POINT = re.compile(r"(?<=MFD)\.(?=\d{3} ?V)|(?<=UF)\.(?=\d{3} ?V)")
_CYCLES = re.compile(r"\bH2(?=[.:]? ?[56][0O]\b)|(?<=[56][0O])( ?)H2\b")
_TEN = re.compile(r"(?<![\w./-])[lI|][O0]{1,2}(?= {0,2}(?:MFD|UF)\b)")
_LONE_PHASE = re.compile(r"\b(PH(?:ASE)?[ .:]{1,16})[lI|](?![\w./])")
_MICROFARAD = re.compile(r"(?<=\d)( ?)MF[O0]\b")
_FRAME = re.compile(r"(?:(?<=\bFR )|(?<=\bFRAME )|(?<=\bFR\. ))([\dlI|OSBZ]{2,3}?)(?=[A-Z]{0,3}\b)")
_FRAMES = frozenset({"42", "48", "56", "66", "143", "145", "182", "184", "213", "215", "254", "256"})
_ONE = re.compile(
    r"[lI|](?:(?:(?<=P[Hh][ .].)|(?<=P[Hh]: .)|(?<=PHASE .))(?![\w])|(?<![\w].)(?=/\d|PH\b|PHASE\b))"
)
# The doubtful letter comes first, and what stands before it second: so the search goes from letter to letter.
_DOUBT = re.compile(
    r"[OIl|SBZ](?:(?<=\d.)|(?<=[OIl|])[\d/]|(?<=\b[lI])PH"
    r"|(?:(?<=\bP[Hh][ .][lI|])|(?<=\bP[Hh]: [lI|])|(?<=\bPHASE [lI|]))\b)"
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
_FRAMED = re.compile(r"(?<=[A-Za-z.:])([ :]{0,2})[\[(]([\d./ -]{1,12})[\])]")
_FRAMED_LABEL = re.compile(r"\[([A-Za-z. ]{1,10})\](?=[ :=]{0,3}[.\d])")
_FEWEST_FRAMED = 3
_LABEL = 10
_OF_NUMBER = re.compile(r"\b(?:MODEL|MOD|P/N|PN|PART|TYPE|STYLE|CAT|SER|S/N|NO|M/N)[.:#]? ?(?:NO[.:]? ?)?$")
_TO_FIGURES = str.maketrans("OIl|SBZ", "0111582")
_WORD = re.compile(r"(?<![\w-])(?<!\d\.)[A-Z0|]{3,}(?![\w-])")
_MIXED = re.compile(r"(?<![\w-])(?<!\d\.)(?=[A-Z]{0,14}[0158Ql|])[A-Z0158l|]{3,15}(?![\w/-])")
_ENCLOSURES = {"TEA0": "TEAO", "OA0": "OAO", "0AO": "OAO", "0A0": "OAO"}
_TO_LETTERS = str.maketrans("0|", "OI")
_PLURALS = frozenset({"AMP5", "VOLT5"})
_AS_LETTERS = (str.maketrans("0158Ql|", "OISBOII"), str.maketrans("0158Ql|", "OLSBOLL"))
_TRADE = ("units", "labels", "facts", "rotation", "control")


def _figures(found: re.Match[str]) -> str:
    said = found.group()
    if _OF_NUMBER.search(found.string, max(0, found.start() - _LABEL), found.start()):
        return said
    return said.translate(_TO_FIGURES) if any(char.isdigit() for char in said) else said


def _word(found: re.Match[str]) -> str:
    said = found.group()
    if said in _ENCLOSURES:
        return _ENCLOSURES[said]
    letters = sum(char.isalpha() for char in said)
    return said.translate(_TO_LETTERS) if letters >= 2 and "0" not in said[-1:] else said


@cache
def _trade_words() -> frozenset[str]:
    """Return the words of the trade, in capitals, that a misread word may be."""
    said = (row["words"] for table in _TRADE for row in rows(f"reading/words/{table}"))
    return frozenset(word.upper() for words in said for word in words.split() if word.isalpha())


def _mixed(found: re.Match[str]) -> str:
    """Put right a word of letters and figures that is a word of the trade (`V0LTS`, `1NS`)."""
    said = found.group()
    label = said.rstrip("0158|")
    if 2 * len(label) < len(said) or (label in _trade_words() and said not in _PLURALS):
        return said  # `PH1`, `CAP5`: a label and its figure
    return next((word for word in map(said.translate, _AS_LETTERS) if word in _trade_words()), said)


def _frame(found: re.Match[str]) -> str:
    """`FR l82T`, `FRAME S6C`: the number of a frame that there is."""
    said = found.group()
    number = said.translate(_TO_FIGURES)
    return number if number in _FRAMES else said


def _labelled(found: re.Match[str]) -> str:
    start, end = found.start(1) - found.start(), found.end(1) - found.start()
    said = found.group()
    return said[:start] + said[start:end].translate(_TO_FIGURES) + said[end:]


def mend_figures(text: str) -> str:
    """Return the text with misread figures put right; same length."""
    if not _DOUBT.search(text):
        return text
    return _ONE.sub("1", _FIGURES.sub(_figures, text))


def _untied(text: str) -> str:
    """Part figures from labels that they are tied to, on plates that do so; one such may be a number."""
    text = _SPEED.sub(lambda tied: f"{tied.group()[:-1]} ", text)
    found = list(_TIED.finditer(text))
    if len(found) < _FEWEST_TIED:
        return text
    parts: list[str] = []
    at = 0
    for one in found:
        parts += [text[at : one.end() - 1], " "]
        at = one.end()
    return "".join([*parts, text[at:]])


def _unframed(text: str) -> str:
    """`[HP] 1/3 [V] 115`, `HP (1/3) V (115)`, `HP_1/3`: what frames the labels or figures of a form."""
    if text.count("[") >= _FEWEST_FRAMED and len(_FRAMED_LABEL.findall(text)) >= _FEWEST_FRAMED:
        text = _FRAMED_LABEL.sub(r" \1 ", text)
    if text.count("(") + text.count("[") >= _FEWEST_FRAMED and len(_FRAMED.findall(text)) >= _FEWEST_FRAMED:
        text = _FRAMED.sub(r"\1 \2 ", text)
    return text.replace("_", " ") if text.count("_") >= _FEWEST_FRAMED and "__" not in text else text


def mend_plate(text: str) -> str:
    """Return a plate's text with misread figures and letters put right; same length."""
    text = _unframed(text)
    if text.count("|") >= _BARS:
        text = text.replace("|", " ")
    text = mend_figures(text)
    if "0" in text or "|" in text:
        text = _WORD.sub(_word, text)
    text = _JOINED.sub(" ", _untied(text))
    text = _MIXED.sub(_mixed, text)
    text = _BEFORE_UNIT.sub(_labelled, _LABELLED.sub(_labelled, text))
    text = _SERVICE.sub("SF", text)
    text = _SERVICE_FACTOR.sub(lambda found: found.group().translate(_TO_FIGURES), text)
    text = _TEN.sub(lambda found: found.group().translate(_TO_FIGURES), text)
    text = _LONE_PHASE.sub(r"\g<1>1", text)
    text = _POINT.sub(" ", text)
    text = _CYCLES.sub(r"\1HZ", text)
    text = _FRAME.sub(_frame, text)
    return _FIVE.sub("5", _MICROFARAD.sub(r"\1MFD", text))
