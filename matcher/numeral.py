"""What a run of digits may mean: one number, a fraction, a list, a range.

`Numeral` keeps all readings of the run; the quantity that owns it picks the one that makes sense.
Runs repeat from listing to listing, so each is parsed once and remembered.
"""

import re
from dataclasses import dataclass

_VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅕": "1/5",
    "⅙": "1/6",
}
_THOUSANDS = re.compile(r"[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?")
_CONTINENTAL = re.compile(r"[1-9]\d{0,2}(?:\.\d{3})+,\d+")
_LIMIT = 20_000


@dataclass(frozen=True, slots=True, eq=False)
class Numeral:
    """The readings of one run of digits.

    `atoms` are its bare figures in order and `signs` what separates them (`208-230/460`: `-/`);
    `value` is the one number it may be (`5-5/8`: 5.625), else None;
    `shares` reads fractions in a dash list (`1/2-1/3-1/5`: 0.5, 0.333, 0.2).
    """

    text: str
    atoms: tuple[float, ...]
    signs: str
    value: float | None
    shares: tuple[float, ...]
    whole: bool
    """Made of plain integers alone."""


def _atom(figures: str) -> float:
    """Read one figure; a comma is a thousands sign before just three digits, else a decimal sign."""
    if "," in figures:
        if _THOUSANDS.fullmatch(figures):
            figures = figures.replace(",", "")
        elif _CONTINENTAL.fullmatch(figures):
            figures = figures.replace(".", "").replace(",", ".")
        else:
            figures = figures.replace(",", ".")
    if figures.count(".") > 1:
        figures = figures.replace(".", "")
    try:
        return float(figures)
    except ValueError:
        return 0.0


def _share(piece: str) -> float | None:
    """Read `3`, `0.5` or `1/3`; nothing else is one share."""
    top, slash, bottom = piece.partition("/")
    if not slash:
        return _atom(top) if top else None
    if "/" in bottom or not top or not bottom:
        return None
    below = _atom(bottom)
    return _atom(top) / below if below else None


def _shares(plain: str) -> tuple[float, ...]:
    shares = [_share(piece) for piece in plain.split("-")]
    return tuple(share for share in shares if share is not None) if None not in shares else ()


def _listed(groups: list[str]) -> tuple[float, ...]:
    """Read `1-1/2 – 3/4`: between free-standing dashes a whole and a fraction are one share."""
    listed: list[float] = []
    for group in groups:
        shares = _shares(group)
        whole = _value(group, shares)
        if not shares:
            return ()
        listed += shares if whole is None else [whole]
    # `1-1/2-3/4`: shares go down, so the first two are one.
    if len(listed) == 3 and listed[0] % 1 == 0 and 0 < listed[1] < listed[2] < 1:
        return listed[0] + listed[1], listed[2]
    return tuple(listed)


def _value(plain: str, shares: tuple[float, ...]) -> float | None:
    """Return the single number meant, a whole and a fraction (`5-5/8`) included."""
    if len(shares) == 1:
        return shares[0]
    whole, _, fraction = plain.partition("-")
    if len(shares) == 2 and "/" in fraction and "/" not in whole and shares[1] < 1 and shares[0] % 1 == 0:
        return shares[0] + shares[1]
    return None


def _spelled(text: str) -> str:
    plain = text
    for sign, fraction in _VULGAR.items():
        if sign in plain:
            before = plain[: plain.index(sign)][-1:]
            plain = plain.replace(sign, f"-{fraction}" if before.isdigit() else fraction)
    return plain


def _parse(text: str) -> Numeral:
    plain = _spelled(text)
    # A free-standing dash (`1 – 1/3`) parts two numbers, it never makes one of a whole and a fraction.
    groups = plain.replace("|", "–").split("–")
    parted = "–" in plain
    plain = plain.replace("–", "-")
    pieces = re.split(r"([/\-])", plain.replace("|", "/"))
    atoms = tuple(_atom(piece) for piece in pieces[::2] if piece)
    shares = _shares(plain) if len(groups) == 1 and plain.count("-") < 2 else _listed(groups)
    whole = "." not in plain and "," not in plain
    return Numeral(
        text,
        atoms,
        "".join(pieces[1::2]),
        None if parted or "|" in plain else _value(plain, shares),
        shares,
        whole,
    )


_KNOWN: dict[str, Numeral] = {}


def numeral(text: str) -> Numeral:
    """Return the readings of a run of digits as `scan` cuts it."""
    known = _KNOWN.get(text)
    if known is None:
        if len(_KNOWN) > _LIMIT:
            _KNOWN.clear()
        known = _KNOWN[text] = _parse(text)
    return known
