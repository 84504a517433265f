"""A pasted text that holds several listings, cut into them.

Listings are parted by rulers, by headings such as `Listing 2`, by numbers, or by blank lines. A cut
is made only where each piece looks like a listing of its own; else the text is one listing.
"""

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

from matcher.reading.page_words import has, is_just

Span = tuple[int, int]

LONGEST = 2_000_000
"""Characters of a text in which several listings are looked for."""

_RULER = re.compile(r"^[ \t]*(?:([-=_*~#+.–—])\1{2,}|([-=_*] )\2+[-=_*])[ \t\r]*$", re.MULTILINE)
_NAMED = re.compile(
    r"^[ \t#*]{0,6}(?:listing|ad|advert|offer|item|lot|candidate|motor|result|anzeige|angebot|annonce"
    r"|anuncio)"
    r"[ \t]?(?:no\.?|nr\.?|#)?[ \t]?(\d{1,3})(?:[ \t]*[:.)\-–—/]|[ \t\r]*$|[ \t]+of[ \t])",
    re.MULTILINE | re.IGNORECASE,
)
_NUMBERED = re.compile(r"^[ \t]{0,8}[(\[#]?(\d{1,3})[).:\]][ \t]+(?=\S)", re.MULTILINE)
_BLANK = re.compile(r"\n[ \t\r]*\n[ \t\r\n]*")
_MONEY = re.compile(
    r"[$€£]\s?\d|\d\s?[€£]|\b\d[\d.,]*\s?(?:usd|eur|gbp|cad|euros?|dollars|bucks|obo|firm)\b"
    r"|\b(?:asking|price:?)\s\d|\b\d{2,4}\sor\sbest\b",
    re.IGNORECASE,
)
_RATED = re.compile(r"\d\s?(?:hp|v|volts?|vac|kw|w|watts?|rpm|amps?|a|ps|cv)\b", re.IGNORECASE)
_CODE = re.compile(r"\b(?=[A-Za-z0-9/-]{0,20}\d)[A-Z]{1,6}[A-Z0-9/-]{0,14}-?[A-Z0-9/-]{1,14}\b")


def split_listings(text: str) -> list[Span]:
    """Return the character span of each listing in a text, in order; one span if it is one listing.

    Empty for a text of nothing but blanks.
    """
    whole = _trimmed(text, (0, len(text)))
    if whole is None:
        return []
    if len(text) > LONGEST:
        return [whole]
    for cut in _MARKED:
        pieces = [piece for piece in (_trimmed(text, span) for span in cut(text)) if piece]
        pieces = _with_asides(text, _with_adverts(text, pieces))
        if len(pieces) > 1:
            return pieces
    pieces = [piece for piece in (_trimmed(text, span) for span in _blank_lines(text)) if piece]
    # Paragraphs of one listing are parted by blank lines too, so each must have its own price and rating.
    pieces = _with_adverts(text, pieces)
    if len(pieces) > 1 and all(_is_priced(text[slice(*piece)]) for piece in pieces):
        return pieces
    return [whole]


def _with_asides(text: str, pieces: Sequence[Span]) -> list[Span]:
    """Keep the pieces that are listings; what stands between belongs to the one before, a preface to none."""
    kept: list[Span] = []
    for start, end in pieces:
        if _is_listing(text[start:end]):
            kept.append((start, end))
        elif kept:
            kept[-1] = (kept[-1][0], end)
    return kept


def _with_adverts(text: str, pieces: Sequence[Span]) -> list[Span]:
    """`Similar items` and what stands under it belongs to the listing before; all the rest, below a gap."""
    kept: list[Span] = []
    for start, end in pieces:
        head, _, below = text[start:end].partition("\n")
        if kept and is_just("heading", head.partition(":")[0]):
            if not below.split("\n", 1)[0].strip():
                kept[-1] = (kept[-1][0], pieces[-1][1])
                break
            kept[-1] = (kept[-1][0], end)
        else:
            kept.append((start, end))
    return kept


def _trimmed(text: str, span: Span) -> Span | None:
    piece = text[slice(*span)]
    left = len(piece) - len(piece.lstrip())
    length = len(piece.strip())
    return (span[0] + left, span[0] + left + length) if length else None


def _between(text: str, cuts: Sequence[Span]) -> list[Span]:
    """Return what lies between the cuts."""
    edges = [0, *(edge for cut in cuts for edge in cut), len(text)]
    return list(zip(edges[::2], edges[1::2], strict=True))


def _rulers(text: str) -> list[Span]:
    return _between(text, [found.span() for found in _RULER.finditer(text)])


def _headed(pattern: re.Pattern[str]) -> Callable[[str], list[Span]]:
    def cut(text: str) -> list[Span]:
        """Cut before each heading; they must count up, and little but a title may stand before the first."""
        found = list(pattern.finditer(text))
        numbers = [int(head.group(1)) for head in found]
        if len(found) < 2 or any(later != earlier + 1 for earlier, later in pairwise(numbers)):
            return []
        if _is_listing(text[: found[0].start()]):
            return []
        ends = [head.start() for head in found[1:]] + [len(text)]
        return [(head.end(), end) for head, end in zip(found, ends, strict=True)]

    return cut


def _blank_lines(text: str) -> list[Span]:
    """Cut at blank lines; a lone short line above a block is that block's title."""
    blocks = [
        block
        for block in _between(text, [found.span() for found in _BLANK.finditer(text)])
        if block[0] < block[1]
    ]
    joined: list[Span] = []
    waiting: int | None = None
    for start, end in blocks:
        if "\n" not in text[start:end].strip() and not _MONEY.search(text[start:end]) and waiting is None:
            waiting = start
            continue
        joined.append((start if waiting is None else waiting, end))
        waiting = None
    if waiting is not None:
        joined.append((waiting, blocks[-1][1]))
    return joined


def _is_listing(piece: str) -> bool:
    """Say whether a piece is a listing of its own: it names what is for sale, and a price or a number."""
    head = piece[:20_000]
    if not has("goods", head[:1500]) or not any(sign.isdigit() for sign in head):
        return False
    return _MONEY.search(head) is not None or _CODE.search(head) is not None


def _is_priced(piece: str) -> bool:
    """Say whether a piece is a listing with a price and a rating or number of its own."""
    head = piece[:20_000]
    rated = _RATED.search(head) is not None or _CODE.search(head) is not None
    return rated and _MONEY.search(head) is not None and _is_listing(head)


_MARKED: tuple[Callable[[str], list[Span]], ...] = (_rulers, _headed(_NAMED), _headed(_NUMBERED))
