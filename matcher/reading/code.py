"""Codes: part, module and program numbers as they stand in a text, and what only looks like one."""

import re
from functools import lru_cache

from matcher.reading.items import Items
from matcher.reading.run_together import behind_figure, pieces
from matcher.reading.vocabulary import heads

_SHAPE = re.compile(r"[A-Za-zÀ-ÖØ-öø-ÿ0-9]+(?:[-./_][A-Za-zÀ-ÖØ-öø-ÿ0-9]+)*")
_NO_CODE = re.compile(
    r"(?:4[28]|56|66|14[35]|18[24]|21[35]|25[46])[A-Z]{1,3}"  # NEMA frames
    r"|\d{0,2}\.\d{1,3}(?:[/-]\d{0,2}\.\d{1,3})*(?:FLA|RLA|LRA|SFA?|AMPS?)"
    r"|FR-(?:4[28]|56|66|14[35]|18[24]|21[35]|25[46])[A-Z]{0,2}|HZ-(?:50|60)|PH-[13]|(?:MFD|UF)-\d{3}V?(?:AC)?|IEC-?\d{2,3}[A-Z]?|IP-?\d\d[A-Z]?|IM-?B?\d+|B\d{1,2}|S\d|R-?\d{2,3}[A-Z]?"
    r"|\d+(?:[.,/-]\d+)*(?:ST|ND|RD|TH|R|S|X|K|M|AM|PM|PCS?|AWG|GA|LBS?|OZ|MM|CM|IN|FT|YRS?|W|WIRE)?"
    r"|\d+(?:[.,/-]\d+)*[Xx]\d+(?:[.,/Xx-]\d+)*(?:IN|V|VAC)?"
    r"|(?:MID|PRE|POST|CIRCA|EARLY|LATE|CAT|CLASS|TYPE|RS|ISO|EN|DIN|UL|NEMA|MG|GROUP|DIV|COVID)-?\d+\w*",
    re.IGNORECASE,
)
_SECOND = re.compile(
    r"\d{3,}[A-Z]?|\d{1,2}-\d{3}(?:-?[A-Z])?|\d{2,4}[A-Z]{0,2}(?:[-/][A-Z0-9]+)+|\d{2,3}[A-Z]-?\d"
)
_RATING = re.compile(r"\d(?:RPM|SPD|HZ|HP|MFD|VAC|UF)(?![A-Z]*-)", re.IGNORECASE)
_RATED = re.compile(
    r"(?:HZ[56]0|PH[13]|FR(?:42|48|56|66|14[35]|18[24])[A-Z]{0,3}|RPM\d{3,4}|CAP\d+(?:\.\d+)?/(?:370|440)|AMB\d0C)"
    r"(?![A-Z]*\d{3})"
)
_UNIT_FIRST = re.compile(r"(?:RPM|HP|HZ|VAC|VOLTS?|AMPS?|PH|MFD|UF|SPD)/\d", re.IGNORECASE)
_TERMINALS = re.compile(r"[TLU]\d{1,2}(?:[-/][TLUP]\d{1,2})+")
_SIGNS = re.compile(r"[-/]")
_FACT = re.compile(r"[ABFH]|(?:40|50|55|60|65|70|104|130|155)[CF]|(?:48|56)[A-Z]{1,2}")
_OF_PLATES = frozenset({"fact", "weak", "bearing", "insclass", "turnview"})
_LONGEST = 24  # tokens behind the first one of a code
_REMEMBERED = 20_000  # words that stand together come back in listing after listing
_LETTERS = re.compile(r"[^\W\d_]+")
_FIGURES_FIRST = re.compile(r"\d{1,3}[A-Z]{1,2}\d{2,}-\d+[A-Z]?")  # `9C115-24`
_HYPHENED = re.compile(r"[A-Z]{1,4}-\d{2}")
_LABELS = frozenset({"V", "HP", "RPM", "HZ", "A", "W", "KW", "FLA", "LRA", "PH"})
_JOINED = re.compile(r"[A-Z]{1,3}\d{3,}[A-Z-]")
_MEANT = str.maketrans("01", "OI")
_SEALED = r"(?:[-/]?(?:J|2?RS\w*|ZZ\w*|2Z|Z|DDU|LLU|LLB|2RSR|C3))*"
_BALL = re.compile(rf"6[0-3]\d\d{_SEALED}(?:[/-]6[0-3]\d\d{_SEALED})?", re.IGNORECASE)


def reach(items: Items, token: int) -> tuple[int, int]:
    """Return the first and last token that stand together with `token` without a blank."""
    words, tight = items.scan.words, items.scan.tight
    first = last = token
    lowest, end = token - _LONGEST, len(words) - 1
    while first > 0 and tight[first - 1] and first > lowest and _may_join(words[first - 1]):
        first -= 1
    highest = first + _LONGEST
    while tight[last] and last < end and last < highest and _may_join(words[last + 1]):
        last += 1
    while last > first and not words[last][-1].isalnum():
        last -= 1
    while first < last and not words[first][0].isalnum():
        first += 1
    return first, last


def _may_join(word: str) -> bool:
    return word[-1].isalnum() or word in ("-", "/", ".", "_")


def written(items: Items, first: int, last: int) -> str:
    """Return the words from token `first` to `last` as the seller wrote them."""
    return items.scan.text[items.scan.starts[first] : items.scan.end(last)]


def mended(items: Items, first: int, last: int) -> str:
    """Return the words from token `first` to `last`, which touch, with misread figures put right."""
    scan = items.scan
    if first == last:
        return scan.raw[first]
    pairs = zip(scan.raw[first:last], scan.gaps[first:last], strict=True)
    return "".join(map("".join, pairs)) + scan.raw[last]


@lru_cache(_REMEMBERED)
def is_code(text: str) -> bool:
    """Say whether words that stand together are a code rather than a quantity, a frame or a size."""
    if not 3 <= len(text) <= 30 or not _SHAPE.fullmatch(text) or _NO_CODE.fullmatch(text):
        return False
    if is_misread_word(text) or _TERMINALS.fullmatch(text) or _are_facts(text):
        return False
    letters = _LETTERS.findall(text)
    if not letters or not any(char.isdigit() for char in text) or _RATING.search(text):
        return False
    if _UNIT_FIRST.match(text) or ("-" not in text and _RATED.match(text)):
        return False  # `1725 RPM/4P`, `HZ60PH1FR48YZ`, `FR48YZ`
    if text == text.lower() and ("-" not in text or text[0].isdigit()):
        return False
    if all(_stands_alone(word.lower()) for word in letters):
        # `V208-230HZ60PH1` has more than one known word in it, a code one at most.
        if _FIGURES_FIRST.fullmatch(text):
            return letters[0] not in _LABELS
        return bool(_HYPHENED.match(text)) or (
            bool(_JOINED.match(text)) and len(letters) == 1 and letters[0] not in _LABELS
        )
    return True


def _are_facts(text: str) -> bool:
    """`48Y/OAO`, `B/40C`, `TEAO/48Y/B/CONT`: facts of a plate with a stroke or hyphen between them."""
    pieces = _SIGNS.split(text)
    if len(pieces) < 2 or not any(map(_FACT.fullmatch, pieces)):
        return False
    return all(_FACT.fullmatch(piece) or _is_fact(piece.lower()) for piece in pieces)


def _is_fact(word: str) -> bool:
    known = heads().get(word)
    return known is not None and not _OF_PLATES.isdisjoint(known.roles)


@lru_cache(_REMEMBERED)
def is_misread_word(text: str) -> bool:
    """`M0DEL`, `V0LTS`: a word of the trade with a figure for a letter."""
    return text.isalnum() and not text.isalpha() and text.translate(_MEANT).lower() in heads()


@lru_cache(_REMEMBERED)
def is_series(text: str) -> bool:
    """`GZ`, `VM`: capitals that open a code of two pieces."""
    return text.isalpha() and text.isupper() and 1 < len(text) <= 4 and not _stands_alone(text.lower())


@lru_cache(_REMEMBERED)
def is_second_piece(text: str) -> bool:
    """Say whether a piece can follow a series (`GZ 90S-4`, `VM 4830`): a figure first, more than a rating."""
    return _SECOND.fullmatch(text) is not None


def _stands_alone(word: str) -> bool:
    """Say whether a word means something by itself."""
    known = heads().get(word)
    return (known is not None and bool(known.roles)) or bool(pieces(word) or behind_figure(word))


@lru_cache(_REMEMBERED)
def is_ball_bearing(text: str) -> bool:
    """Say whether a code is a deep-groove ball bearing's (60xx to 63xx)."""
    return _BALL.fullmatch(text) is not None
