"""The maker's name: behind a label, before its number, or a name that stands where a maker's stands.

A name is a word with a capital that neither the trade nor ordinary listings use. Without a label or a
number beside it, it counts only at the head of a sentence or right before `motor`, a rating or the like.
"""

import re
from functools import cache

from matcher.reading.code import mended, written
from matcher.reading.items import Items
from matcher.reading.things import things
from matcher.tables import rows

_AFTER_NAME = ("motor", "num", "unit", "fact", "label", "subject", "turn", "turnview", "other_thing")
_REACH = 4
_LONGEST_NAME = 6
_MARKS = frozenset({"logo", "tm", "reg", "registered"})
_MISREAD = re.compile(r"(?=[A-Z01]{6,})[A-Z]+[01][A-Z]{3,}")
_LETTERS = str.maketrans("01", "OI")
_BEFORE_SENTENCE = frozenset("\n.;|?!")
_STEPPED_OVER = frozenset({"#", "-", "brand", ",", "number", "no"})
_STEPS = 4
_TORN = frozenset({"..", "…"})
_LIKE = frozenset({"style", "type", "like", "compatible", "equivalent", "equiv", "brand style"})
_AGENCIES = frozenset({"UL", "CUL", "CSA", "CE", "ETL", "RU", "NEMA", "IEC", "ISO", "ROHS"})
_NAMES_FOLLOW = frozenset({"brand", "maker", "mfr", "manufacturer", "marca", "marque", "hersteller"})
_CALLS = frozenset({"it's", "its", "is", "this", "has"})


@cache
def ordinary() -> frozenset[str]:
    """Return the words that are no names, however written."""
    return frozenset(word for row in rows("reading/ordinary") for word in row["words"].split())


def is_name(items: Items, k: int) -> bool:
    """Say whether item `k` can be (a word of) a maker's name."""
    raw = items.raw(k)
    if len(raw) < 2 or not raw[0].isalpha() or not raw[0].isupper() or items.roles[k] or items.used[k]:
        return False
    if (items.is_glued(k - 1) and _opens_code(items.raw(k - 1))) or _opens_number(items, k):
        return False  # `M0DEL`, `TK4411`, `U-DUO 33`
    if items.plate and items.word(k - 1)[:2] in _TORN and items.word(k - 2) in ("", "\n"):
        return False  # `...LS NO. GR-917`
    if items.word(k + 1) in _LIKE and (items.is_glued(k) or items.word(k + 1) == "style"):
        return False  # `PMI-style motor`
    # `Gebläsemotor`: such a word says what it is, not who made it.
    return items.word(k) not in ordinary() and items.word(k)[-5:] != "motor"


def _opens_code(before: str) -> bool:
    return before[0].isdigit() or (len(before) == 1 and before.isalpha())


def _opens_number(items: Items, k: int) -> bool:
    return items.is_glued(k) and items.scan.gaps[items.last[k]] == "" and items.raw(k + 1)[0].isdigit()


def _name_from(items: Items, k: int) -> int:
    """Return the last item of the name that starts at `k`: `Fosk & Dray`, `Ashcombe-Tull`, `Bell Harrow`."""
    last = k
    while last - k < _REACH:
        if _is_lettered_code(items, k, last + 1):
            break
        if (is_name(items, last + 1) and _near(items, last)) or _hyphened(items, last):
            last += 1
        elif items.raw(last + 1) == "&" and items.raw(last + 2)[:1].isupper():
            last += 2
        else:
            break
    return last


def _is_lettered_code(items: Items, k: int, j: int) -> bool:
    """`Norquell NQ-RET`: capitals on both sides of a hyphen, behind a name in small letters, number it."""
    one, two = items.raw(j), items.raw(j + 1)
    short = one.isupper() and two.isupper() and len(one) < 5 and len(two) < 6
    if not short or j == k or items.raw(k).isupper() or items.scan.gaps[items.last[j]] != "-":
        return False
    known = not _AGENCIES.isdisjoint((one, two)) or items.roles[j] or items.word(j) in ordinary()
    ends = j + 2 >= len(items) or items.clause[j + 2] != items.clause[j] or items.has(j + 2, "motor")
    return ends and not known


def _hyphened(items: Items, k: int) -> bool:
    """`Grimshaw-Pole`: the second half may be any word."""
    raw = items.raw(k + 1)
    return items.scan.gaps[items.last[k]] == "-" and len(raw) > 2 and raw.isalpha() and raw[0].isupper()


def _near(items: Items, k: int) -> bool:
    """Say whether the next item is a blank or hyphen away, in the same clause."""
    return (
        k + 1 < len(items)
        and items.clause[k + 1] == items.clause[k]
        and len(items.scan.gaps[items.last[k]]) <= 1
    )


def claim_name(items: Items, first: int, last: int, strength: int) -> None:
    """Claim the items from `first` to `last` as the maker's name, as written."""
    last -= last > first and items.scan.gaps[items.last[last]] == "-"  # `KARROWGATE HERM-X`
    name = written(items, items.first[first], items.last[last]).removesuffix("'s").removesuffix("’s")
    if items.plate and any(items.word(k) in things("company") for k in range(first + 1, last + 1)):
        name = mended(items, items.first[first], items.last[last])  # `ARDWELM M0T0RS`
    words = {items.word(k) for k in range(first, last + 1)}
    if (
        name.lower() not in things("company")
        and not words <= things("company")
        and any(map(str.isalpha, name))
    ):
        items.claim("brand", name, first, last, strength)


def labelled(items: Items, i: int) -> None:
    """`Make: Tessary`, `MFD BY ARDWELM CO`, `by Sundervale`: what is written, to the end of the name."""
    j = items.skip(i + 1, 1)
    j += items.word(j) == "-"
    if j >= len(items) or items.segment[j] != items.segment[i] or not _may_be_labelled(items, i, j):
        return
    if items.roles[j] or items.word(j) in things("by_what"):
        return
    last = _name_from(items, j)
    while (
        items.plate
        and items.word(last + 1) in things("company")
        and items.clause[last + 1] == items.clause[j]
    ):
        last += 1
    end = items.last[last]
    if items.scan.gaps[end] == "-" or (
        items.scan.glued(end) and items.scan.words[end + 1 : end + 2] == ["-"]
    ):
        return  # the letters of a code
    items.used[i] = True
    claim_name(items, j, last, 3)


def _may_be_labelled(items: Items, i: int, j: int) -> bool:
    """Say whether item `j` can be a name behind a label; in small letters behind `brand` alone."""
    if items.raw(j)[:1].isupper():
        return True
    word = items.raw(j)
    return items.word(i) in _NAMES_FOLLOW and word.isalpha() and len(word) > 4 and word not in ordinary()


def before(items: Items, start: int, strength: int = 2) -> None:
    """Take the words right before a number as the maker's name."""
    k = start - 1
    steps = 0
    while (
        k >= 0
        and steps < _STEPS
        and (
            any(kind in items.roles[k] for kind in ("label", "fill", "motor", "module"))
            or items.word(k) in _STEPPED_OVER
            or items.word(k) in things("describes")
        )
    ):
        k, steps = k - 1, steps + 1
    last = k
    while k >= 0 and last - k < _REACH and (k == last or _near(items, k)):
        if is_name(items, k) or _lower_name(items, k, start):
            k -= 1
        elif items.raw(k) == "&" and k and items.raw(k - 1)[:1].isupper():
            k -= 2
        else:
            break
    if (
        last - k > 1
        and items.raw(last).isupper()
        and len(items.raw(last)) < 4
        and not items.raw(k + 1).isupper()
    ):
        last -= 1  # the series letters of a number: `Huberlein HL 63`
    if k < last:
        claim_name(items, k + 1, last, strength)


def in_brackets(items: Items, j: int) -> None:
    """`Part # 9721-D (Vintorel)`: a name that is all of the bracket behind a number."""
    if items.word(j) == "(" and items.word(j + 2) == ")" and is_name(items, j + 1):
        claim_name(items, j + 1, j + 1, 0)


def _lower_name(items: Items, k: int, start: int) -> bool:
    """A seller who writes no capitals: an unknown word right before a number without capitals."""
    raw = items.raw(k)
    opens = k == 0 or items.word(k - 1) in _BEFORE_SENTENCE
    return (
        k == start - 1
        and len(raw) > 3
        and raw.isalpha()
        and raw.islower()
        and (items.raw(start).islower() or opens)
        and not items.roles[k]
        and raw not in ordinary()
    )


def is_misread(text: str) -> bool:
    """Say whether one figure in a long word of capitals is a letter that a scan misread: `TARR0WICK`."""
    return _MISREAD.fullmatch(text) is not None


def claim_misread(items: Items, first: int, last: int) -> None:
    """Claim a misread name as it is meant."""
    name = written(items, items.first[first], items.last[last])
    items.claim("brand", name.translate(_LETTERS), first, last, 2)


def _without_series(items: Items, k: int, last: int) -> int:
    """`Klausbrink GZ 80`: capitals before a figure open a number; return the last item of the name."""
    raw = items.raw(last)
    series = raw.isupper() and len(raw) < 4 and not items.raw(k).isupper() and items.has(last + 1, "num")
    return last - 1 if last > k and series else last


def by_place(items: Items) -> None:
    """A name at the head of a sentence or before what names lead to; the weakest evidence."""
    roles, raws = items.roles, items.raws
    for k in range(len(items)):
        if items.plate and items.segment[k] > 1:
            return
        if roles[k] or not raws[k][0].isupper():
            continue  # most words; what follows is asked of few
        if is_name(items, k) and not items.muted[k]:
            whole = _name_from(items, k)
            last = _without_series(items, k, whole)
            coded = _is_lettered_code(items, k, whole + 1)
            if last < whole or coded or _stands_as_maker(items, k, last):
                claim_name(items, k, last, 0)
                if coded:
                    code = written(items, items.first[whole + 1], items.last[whole + 2])
                    items.claim("part_number", code, whole + 1, whole + 2, 0)
                return


def _stands_as_maker(items: Items, k: int, last: int) -> bool:
    """Say whether the name from item `k` to `last` stands where a maker's name does."""
    at_end = last + 1 >= len(items)
    if items.plate and items.word(last + 1)[:2] == "..":
        return False  # torn off
    leads = at_end or any(kind in items.roles[last + 1] for kind in _AFTER_NAME)
    if items.roles[k - 1].get("label") == "nothing" and items.has(last + 1, "subject"):
        return False  # `from a Hallowick furnace`
    if items.word(k - 1) in ("a", "an") and items.word(k - 2) in _CALLS:  # `it's a Brindlecoe,`
        return leads or items.clause[last + 1] != items.clause[k]
    if items.raw(k).isupper() and len(items.raw(k)) > 4 and not items.scan.text.isupper():
        return True
    if k == 0 or items.segment[k - 1] != items.segment[k] or items.word(k - 1) in _BEFORE_SENTENCE:
        closed = at_end or items.segment[last + 1] != items.segment[k]
        return leads or closed or (items.plate and k == 0)
    rated = items.has(last + 1, "num") and items.said(last + 2, "unit") == "hp" and len(items.raw(k)) > 4
    if rated and items.word(k - 1) in ("the", "my", "this"):
        return True  # `still have the Glimsholt 1/2 hp`
    return leads and (
        items.source == "title" or (k < items.head and len(items.raw(k)) > 3) or items.has(last + 1, "motor")
    )


def _parts_country(items: Items, k: int) -> bool:
    """`TREZZALE S.p.A. - ITALIA`: a free-standing dash ends the maker's name."""
    return items.word(k) == "-" and items.scan.gaps[items.last[k]] == " "


def of_plate(items: Items) -> None:
    """The first line of a plate, or its first column, is its maker's name when nothing in it is a fact."""
    end = 0
    while end < len(items) and items.word(end) != "\n":
        if end and (len(items.scan.gaps[items.last[end - 1]]) > 3 or _parts_country(items, end)):
            break
        end += 1
    first, end = _without_signs(items, end)
    if not 0 < end - first <= _LONGEST_NAME:
        return
    plain = [k for k in range(first, end) if not items.roles[k] or items.word(k) in things("company")]
    if len(plain) == end - first and not any(
        items.word(k).isdigit() or items.word(k) in ordinary() - things("company") for k in plain
    ):
        claim_name(items, first, end - 1, 3)


def _without_signs(items: Items, end: int) -> tuple[int, int]:
    """`* ARDWELM *`, `(logo) ARDWELM`, `ARDWELM (TM)`: the first item of a name and the one behind it.

    Points at either end say that a part is torn off: then it is no name.
    """
    first = 0
    while first < end and _is_sign(items, first):
        first += 1
    while end > first and _is_sign(items, end - 1) and items.raw(end - 1) != ".":
        end -= 1
    torn = any(items.word(k)[:2] == ".." for k in (first - 1, end) if k >= 0)
    return (0, 0) if torn else (first, end)


def _is_sign(items: Items, k: int) -> bool:
    return not items.raw(k)[:1].isalnum() or items.word(k) in _MARKS
