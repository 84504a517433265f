"""Put together the figures that blanks, signs and words part: `5 5/8`, `208-230 / 460`, `250 to 1300`."""

import re

from matcher.numeral import numeral

FIRST_OF_NUMBER = frozenset("0123456789½¼¾⅛⅜⅝⅞⅓⅔⅕⅙")
EIGHTHS = frozenset(
    f"{top}/{bottom}" for bottom in (2, 4, 8, 16, 32, 64) for top in range(1, bottom, 2)
) | frozenset("½¼¾⅛⅜⅝⅞")
_JOINTS = {"/": "/", "-": "–", "and": "/", "&": "/", "or": "|"} | dict.fromkeys(
    ("to", "thru", "through", "bis", "..", "..."), "-"
)
GOES_ON = frozenset({*_JOINTS, ","}) | {"point"}
"""What may stand between the figures of one number or list."""
_SAME_FORM_ONLY = frozenset({"/", "and", "&", "or"})
_MONEY = frozenset({"$", "€", "£", "usd", "eur", "gbp", "cad", "euro", "chf", "sek", "aud", "+"})
_COUNTED = frozenset({"ph", "phase", "phases", "phasen", "fase", "fas", "qty", "speed", "speeds", "spd"})
_PIECES = 6
_FARTHEST = 4.5  # times; 460 V beside 115 V is the widest pair of one list
_HUNDREDS = 100.0
_PARTED = 3.0
# Decimals as they are spoken: `seven point six amps`.
_SPOKEN = {
    "one": "1",
    "two": "2",
    "three": "3",
    "four": "4",
    "five": "5",
    "six": "6",
    "seven": "7",
    "eight": "8",
    "nine": "9",
    "oh": "0",
}
_THOUSANDS = frozenset({"1", "2", "3"})
_SPEEDS = frozenset({"rpm", "tr", "u", "min", "min-1", "r", "tpm", "giri", "omw", "varv", "ot"})
_FLATS = frozenset({"flat", "flats", "flt", "flts"})
_AND = frozenset({"and", "&", "n"})
# Fractions as they are spoken behind a whole number: `five and three eighths`, `5 and 3 eighths`.
_TOPS = {
    "a": 1,
    "an": 1,
    "one": 1,
    "three": 3,
    "five": 5,
    "seven": 7,
    "nine": 9,
    "eleven": 11,
    "thirteen": 13,
} | {str(top): top for top in range(1, 16, 2)}
_BOTTOMS = {"half": 2, "quarter": 4, "quarters": 4, "fourths": 4, "eighth": 8, "eighths": 8} | {
    "sixteenth": 16,
    "sixteenths": 16,
}
_POINTED = re.compile(r"\.\d")
_SHARES = EIGHTHS | {"1/3", "2/3", "1/5", "1/6", "1/10", "1/12", "1/15", "1/20", "1/25", "1/30", "1/40"}
_POWER = frozenset({"hp", "p", "horsepower"})
_LABELS = frozenset({"rpm", "amps", "amp", "a", "fla", "hp"})
_SMALLEST_SHARE = 0.3  # of the figure before it in a list; `1750, 184T` is no list
# Figures that stand in lists, going down: speeds, amperes, fractions of a horsepower.
_FORMS = (re.compile(r"1?\d{3}"), re.compile(r"\d{1,2}\.\d{1,2}"), re.compile(r"1/\d{1,2}"))
_LAST_FIGURE = re.compile(r"(?:1/\d{1,2}|[\d.]+)$")

Words = list[str]


def gather(words: Words, token: int, figures: str, length: int) -> tuple[str, int]:
    """Return the figures from `token` on with all that belongs to them, and how many tokens they take."""
    if token and words[token - 1] in _MONEY:
        return figures, length
    for _ in range(_PIECES):
        figures, taken = _go_on(words, token, figures, token + length)
        if not taken:
            break
        length += taken
    return figures, length


def _go_on(words: Words, token: int, figures: str, after: int) -> tuple[str, int]:
    """Return the figures with the next piece that belongs to them, and its tokens; none where they end."""
    following = words[after] if after < len(words) else "\n"
    if following == "point":
        decimal = _SPOKEN.get(words[after + 1]) if figures.isdigit() and after + 1 < len(words) else None
        return (f"{figures}.{decimal}", 2) if decimal else (figures, 0)
    if following[0] not in FIRST_OF_NUMBER and following != "," and following not in _JOINTS:
        return figures, 0
    if token and words[token - 1] == "x" and words[after + 2 : after + 3] == ["x"]:
        return figures, 0  # `1/2 x 5 & 1/2 x 5`: two extents each
    if _is_thousand(words, token, figures, after):
        return figures + following, 1
    fraction, taken = _fraction_behind(words, token, figures, after)
    if taken:
        return f"{figures}-{fraction}", taken
    if _lists(words, figures, token, after):
        comma = following == ","
        more = words[after + comma]
        return f"{figures}{'–' if '/' in more else '/'}{more}", 1 + comma
    if _joins(words, figures, after) or _is_share(words, figures, token, after):
        joint = "–" if "–" in figures and following in _AND else _JOINTS[following]
        return f"{figures}{joint}{words[after + 1]}", 2
    return figures, 0


def _is_thousand(words: Words, token: int, figures: str, after: int) -> bool:
    """`1 380 tr/min`: a blank parts the thousands of a speed; not in `PH 1 825 RPM`."""
    more = words[after]
    if figures not in _THOUSANDS or len(more) != 3 or not more.isdigit() or after + 1 >= len(words):
        return False
    return words[after + 1] in _SPEEDS and not (token and words[token - 1] in _COUNTED)


def _fraction_behind(words: Words, token: int, figures: str, after: int) -> tuple[str, int]:
    """Return what makes a whole a mixed number (`5 5/8`, `five and a half`) and its tokens, or none."""
    if not figures.isdigit() or len(figures) > 2:
        return "", 0
    if words[after] in EIGHTHS:
        return (words[after], 1) if words[token].isdigit() else ("", 0)
    fraction, taken = _fraction(words, after + 1) if words[after] in _AND else ("", 0)
    behind = "".join(words[after + 1 + taken : after + 2 + taken])
    return (fraction, 1 + taken) if taken and behind not in _POWER else ("", 0)


def _fraction(words: Words, token: int) -> tuple[str, int]:
    """Return the fraction of an inch at a token (`5/8`, `a half`, `five eighths`) and its tokens, or none."""
    if token >= len(words):
        return "", 0
    if words[token] in EIGHTHS:
        return words[token], 1
    top = _TOPS.get(words[token])
    bottom = _BOTTOMS.get("".join(words[token + 1 : token + 2]))
    if top and bottom and top < bottom:
        return f"{top}/{bottom}", 2
    bottom = _BOTTOMS.get(words[token])
    return (f"1/{bottom}", 1) if bottom else ("", 0)


def _lists(words: Words, figures: str, token: int, after: int) -> bool:
    """`1075, 950`, `1/2, 1/3, 1/4`, `AMP 2.1 1.6 1.1`: figures of one form in a row, going down."""
    comma = words[after] == ","
    if after + comma >= len(words):
        return False
    more = words[after + comma]
    last = _LAST_FIGURE.search(figures) if more[0] in FIRST_OF_NUMBER else None
    if last is None:
        return False
    form = next((form for form in _FORMS if form.fullmatch(last[0]) and form.fullmatch(more)), None)
    if form is None:
        return False
    if form is _FORMS[0] and numeral(figures).atoms[0] < numeral(last[0]).atoms[0]:
        return False  # `120/240, 200 - 1250 RPM`
    one, two = numeral(last[0]).value, numeral(more).value
    third = words[after + comma + 1] if after + comma + 1 < len(words) else ""
    sure = comma or "/" in more or "/" in figures or form.fullmatch(third) is not None
    sure = sure or (token > 0 and words[token - 1] in _LABELS)
    return bool(one and two and one > two > _SMALLEST_SHARE * one and sure)


def _is_share(words: Words, figures: str, token: int, after: int) -> bool:
    """`H P 1 / 8`, `1 / 6 HP`: a fraction of a horsepower, its stroke between blanks."""
    if words[after] != "/" or f"{figures}/{''.join(words[after + 1 : after + 2])}" not in _SHARES:
        return False
    return (token > 0 and words[token - 1] in _POWER) or words[after + 2 : after + 3] in (["hp"], ["h"])


def _alike(figures: str, following: str) -> bool:
    """Say whether two figures may stand in one list: both fractions or neither, and not far apart."""
    last = _LAST_FIGURE.search(figures)
    if last is None or ("/" in last[0]) != ("/" in following):
        return False
    one, two = numeral(last[0]).atoms[0], numeral(following).atoms[0]
    return 0 < one <= _FARTHEST * two and two <= _FARTHEST * one


def _far_apart(figures: str, following: str) -> bool:
    """`1760 - 230/460 - 25.0/12.5 A`: dashes that part the cells of a line, no range."""
    one, two = numeral(figures).atoms[-1], numeral(following).atoms[0]
    return max(one, two) >= _HUNDREDS and (one > _PARTED * two or two > _PARTED * one)


def _is_counted(words: Words, token: int) -> bool:
    return "".join(words[token : token + 1]) in _COUNTED


def _joins(words: Words, figures: str, after: int) -> bool:
    """Say whether the word at `after` joins the figures before it with the number behind it."""
    if words[after] not in _JOINTS or after + 1 >= len(words):
        return False
    following = words[after + 1]
    if following[0] not in FIRST_OF_NUMBER and not _POINTED.match(following):
        return False
    if "".join(words[after + 2 : after + 3]) in _FLATS:
        return False  # `1/2 - 2 flat`: flats are counted
    if words[after] == "/" and "." in figures and "." not in following and _is_counted(words, after + 2):
        return False  # `11.2 / 3PH`
    if words[after] == "-" and ("/" in following or not figures.isdigit()) and _far_apart(figures, following):
        return False
    if words[after] in _SAME_FORM_ONLY:
        # `115 / 1/2 HP` and `2 and 1/2` are two things; `208-230 / 460` is one.
        return _alike(figures, following)
    return True
