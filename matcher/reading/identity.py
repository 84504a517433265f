"""The numbers of a motor: its own, its module's and program's, and those of others that it replaces."""

import re

from matcher.reading import brand, number_end
from matcher.reading.code import is_ball_bearing, is_series, mended, reach, written
from matcher.reading.items import NO_ROLES, Items
from matcher.reading.spaced_code import RATED, further_pieces

_ON_PLATES = "nothing on plates"
"""`SERIAL T88-0127` on a plate; in a listing `serial` may be the way a motor is controlled."""
_NUMBER_LIKE = re.compile(r"[A-Za-z0-9]+(?:[-./ ][A-Za-z0-9]+)*")
_TWO_CODES = re.compile(r"([A-Z]{1,5}-?\d[A-Z0-9-]+)/([A-Z]{1,5}-?\d[A-Z0-9-]+)")
_SHORTEST_OTHER = 4  # `interchange T5 and T8` tells of leads
_NAMES = 3
_KINDS_OF_NUMBERS = frozenset(
    {"factory", "oem", "original", "models", "parts", "old", "older", "part", "dealer"}
)
_SUPPLIES = frozenset({"115", "120", "208", "220", "230", "240", "277", "460"})
_WORDS = frozenset({"part", "model", "number is", "type", "style", "also"})
_LIKENING = frozenset({"same as", "is the same as", "identical to", "comparable to", "compare to", "comp to"})
_MAKERS = frozenset(
    {
        "company's",
        "maker's",
        "manufacturer's",
        "dealer's",
        "their",
        "furnace's",
        "customer's",
        "company",
        "oem's",
    }
)
_LIST_SIGNS = frozenset({",", "/", "&", "and", "or", "+", ";"})
_FILLS = frozenset({"#", ".", "(", "-", "no", "number", "nos", "nr", "numbers"})
_NUMBER_WORDS = frozenset({"#", "no", "number"})
_ARTICLES = frozenset({"an", "of", "as"})
"""Words that no plate has: `COD. AN 3V-90` has the letters of a number."""
_PLAIN = frozenset({"part_number", "other_numbers", "module_number", "program_number"})


def label(items: Items, i: int, field: str) -> None:
    """A label that announces a number or a name."""
    if items.used[i] or _inside_code(items, i):
        return
    strength = (
        1 if field.endswith("?") else 2
    )  # `style`, `art. no.`: a part number where nothing better stands
    field = field.removesuffix("?")
    if field == _ON_PLATES and not items.plate:
        return
    if field == "brand":
        brand.labelled(items, i)
        return
    if field == "part_number":
        field = _whose(items, i)
    codes = _announced(items, i, field) if field else []
    if not codes:
        return
    items.used[i] = True
    for text, first, last in codes:
        asked = items.word(last + 1) == "?" or items.has(last + 1, "takeback")
        if asked and field == "other_numbers":
            continue  # `replaces TK-825-4? no`
        take(items, first, last)
        two = _TWO_CODES.fullmatch(text) if field == "other_numbers" else None
        for part in two.groups() if two else (text,) if text else ():
            _claim_plain(items, field, part, (first, last), strength)
    if field == "part_number" and not items.plate:
        brand.before(items, i, 1)
        brand.in_brackets(items, codes[0][2] + 1)


def _claim_plain(items: Items, field: str, text: str, place: tuple[int, int], strength: int) -> None:
    if is_ball_bearing(text) and not items.plate:
        items.claim("bearing", "ball", *place)  # `bearings replaced 6202-2RS`
        return
    if field in _PLAIN and not (field == "other_numbers" and len(text) < _SHORTEST_OTHER):
        claim_number(items, field, text, *place, strength)


def _announced(items: Items, i: int, field: str) -> list[tuple[str, int, int]]:
    """Return the codes behind label `i`, with their first and last items."""
    j = _behind_fills(items, i + 1)
    if field != "other_numbers":
        return _codes(items, j, several=False)
    while items.word(j) in _KINDS_OF_NUMBERS or "label" in items.roles[j]:
        j = _behind_fills(items, j + 1)  # `replaces factory part numbers 61-2201`
    if items.has(j, "num") and items.has(j + 1, "unit") and not items.is_glued(j + 1):
        j += 2  # `replaces 1/3 HP FH-CS13`
    start = _behind_names(items, j)
    codes = _codes(items, start, several=True, named=start > j)
    if codes and items.word(i) in _LIKENING and items.word(codes[-1][2] + 1) in ("but", "except", "only"):
        return []
    return codes


def _behind_fills(items: Items, j: int) -> int:
    """Walk over `:`, `#`, `is`; not over the capitals of a number (`Model: OF 7/1140`)."""
    for _ in range(4):
        series = items.has(j + 1, "num") and items.raw(j).isupper() and not items.raw(j - 1).isupper()
        series = series and items.word(j) not in _NUMBER_WORDS  # `PROG. NO. 50-2A-11`
        series = series or (items.plate and items.word(j) in _ARTICLES and items.has(j + 1, "num"))
        if _opens_number(items, j):
            break
        if series or not (items.has(j, "fill") or items.word(j) in _FILLS or "onplate" in items.roles[j]):
            break
        if items.word(j) == "." and items.segment[j] != items.segment[j - 1] and items.word(j - 1) in _WORDS:
            break  # `it was a spare part. 35 EUR`
        j += 1
    return j


def _opens_number(items: Items, j: int) -> bool:
    """`TYPE AT-80-6`, `PROG A44-71`: capitals that touch figures are a part of the number."""
    lettered = items.raw(j).isalpha() and items.raw(j).isupper() and items.word(j) not in _NUMBER_WORDS
    if not lettered or not items.is_glued(j):
        return False
    hyphen = items.word(j + 1) == "-" and items.is_glued(j + 1)
    return items.has(j + 2 if hyphen else j + 1, "num")


def _behind_names(items: Items, j: int) -> int:
    """`replaces Quennor QN-88-12`: walk over the name of the maker of another motor."""
    k = j
    while k - j < _NAMES and brand.is_name(items, k) and items.clause[k] == items.clause[j]:
        series = items.raw(k).isupper() and len(items.raw(k)) < 4 and items.has(k + 1, "num")
        if items.is_glued(k) or series:
            return k  # the letters of a number
        k += 1
    return k


def _whose(items: Items, i: int) -> str:
    """Return the field of a plain label (`number is`, `part no.`) by what is before it."""
    if _is_of_a_part(items, i):
        return ""
    if _is_modules(items, i):
        return "module_number"
    before = (items.word(i - 1), items.word(i - 2))
    others = not _MAKERS.isdisjoint(before) or before[0][-2:] == "'s" or _is_of_another(items, i)
    return "other_numbers" if others and not items.plate else "part_number"


def _is_of_another(items: Items, i: int) -> bool:
    """`Motor mod: CR-K50. Halvorst part # is 61-2088`: a name labels a second number of its own."""
    if i == 0 or not brand.is_name(items, i - 1):
        return False
    known = [claim for claim in items.claims if claim.field == "part_number" and claim.strength >= 2]
    if not known or any(claim.field == "brand" for claim in items.claims):
        return False
    items.used[i - 1] = True  # it isn't the motor's maker either
    return True


def _is_of_a_part(items: Items, i: int) -> bool:
    """`capacitor part KC-75-370`, `belly band part no.`: the number of a thing that is named right before."""
    names = {"cap", "plug"} & items.roles[i - 1].keys() or items.said(i - 1, "subject") == "other"
    return i > 0 and bool(names) and items.clause[i - 1] == items.clause[i] and items.first[i - 1] > 0


def _is_modules(items: Items, i: int) -> bool:
    """`Electronic module: yes, p/n LMD-19`: the label speaks of the module that its sentence has named."""
    for j in range(i - 1, max(-1, i - 6), -1):
        if items.segment[j] != items.segment[i] or "motor" in items.roles[j] or j in items.numbers:
            return False
        if "module" in items.roles[j]:
            return True
    return False


def _inside_code(items: Items, i: int) -> bool:
    """`TR-MOD-75`: a label between hyphens is none."""
    gaps, first, last = items.scan.gaps, items.first[i], items.last[i]
    if items.is_glued(i) and items.scan.words[last + 1] == "-":
        return True
    return gaps[last] == "-" or (
        first > 0 and (gaps[first - 1] == "-" or (items.scan.words[first - 1] == "-" and not gaps[first - 1]))
    )


def claim_number(items: Items, field: str, text: str, first: int, last: int, strength: int = 2) -> None:
    """Numbers of others, of the module and of the program stay facts where the sentence turns away."""
    items.claim(field, text, first, last, strength, though_muted=field != "part_number")


def _codes(items: Items, j: int, *, several: bool, named: bool = False) -> list[tuple[str, int, int]]:
    """Return the codes of a list that starts at item `j`, with their first and last items.

    `named` says that a maker's name stands before the first one, as it may before the others.
    """
    codes: list[tuple[str, int, int]] = []
    while len(codes) < (12 if several else 1):
        code = _code_at(items, j)
        if code is None:
            break
        codes.append(code)
        j = _behind_comment(items, code[2] + 1) if several else code[2] + 1
        while items.word(j) in _LIST_SIGNS:
            j += 1
        j = _behind_names(items, j) if named else j
    return codes


def _behind_comment(items: Items, j: int) -> int:
    """`QN-88-12 (old), QN-88-13 (new)`: walk over a word or two in brackets."""
    if items.word(j) == "(":
        close = next((k for k in range(j + 2, j + 4) if items.word(k) == ")"), None)
        return j if close is None else close + 1
    return j


def _code_at(items: Items, j: int) -> tuple[str, int, int] | None:
    """Return the labelled code that starts at item `j`; digits alone will do behind a label.

    Its text is empty where it isn't clear where the code ends.
    """
    if j >= len(items):
        return None
    token = items.first[j]
    last = reach(items, token)[1]
    text = written(items, token, last)
    if is_series(text) or (text.isupper() and text.isalpha() and len(text) < 4 and text not in RATED):
        last = further_pieces(items, last)
        text = written(items, token, last)
    end = number_end.end_of(items, token, last, labelled=True)
    if end == number_end.UNCLEAR:
        return "", j, item_of(items, j, reach(items, last + 1)[1])
    if end != last:
        last, text = end, written(items, token, end)
    plain = text if text.isascii() else mended(items, token, last)
    if not any(char.isdigit() for char in text) or len(text) < 2 or not _NUMBER_LIKE.fullmatch(plain):
        return None
    end_item = item_of(items, j, last)
    if (
        re.fullmatch(r"\d{1,2}/\d{1,2}", text)
        or text in _SUPPLIES
        or (items.has(j, "num") and items.has(end_item + 1, "money"))
    ):
        return None
    if (
        "-" not in text
        and items.has(j, "num")
        and end_item <= j + 1
        and (items.has(j + 1, "unit") or items.has(j + 1, "after"))
    ):
        return None
    return (text, j, end_item) if token == items.first[j] else None


def take(items: Items, first: int, last: int) -> None:
    """Spend the items of a code; what looks like a word inside it means nothing."""
    for k in range(first, last + 1):
        items.used[k] = True
        items.roles[k] = NO_ROLES


def item_of(items: Items, j: int, token: int) -> int:
    """Return the item, from `j` on, that a token belongs to."""
    while j + 1 < len(items) and items.last[j] < token:
        j += 1
    return j
