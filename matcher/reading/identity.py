"""Who made it and its numbers: brand, part, module, program and other numbers."""

import re

from matcher.reading.code import is_ball_bearing, is_code, reach, written
from matcher.reading.items import Items

_NUMBER_LIKE = re.compile(r"[A-Za-z0-9]+(?:[-./][A-Za-z0-9]+)*")
_LIST_SIGNS = frozenset({",", "/", "&", "and", "or", "+", ";"})
_PLAIN = frozenset({"part_number", "other_numbers", "module_number", "program_number"})


def label(items: Items, i: int, field: str) -> None:
    """A label that announces a number or a name."""
    if items.used[i]:
        return
    if field == "brand":
        _labelled_brand(items, i)
        return
    j = i + 1
    for _ in range(4):
        if items.has(j, "fill") or (
            j < len(items) and items.word(j) in ("#", ".", "(", "-", "no", "number", "nos")
        ):
            j += 1
    codes = _codes(items, j)
    if not codes:
        return
    items.used[i] = True
    if field == "other_numbers":
        for text, first, last in codes:
            _claim_number(items, field, text, first, last)
        return
    text, first, last = codes[0]
    _spend(items, first, last)
    if field in _PLAIN:
        _claim_number(items, field, text, first, last)


def _claim_number(items: Items, field: str, text: str, first: int, last: int) -> None:
    _spend(items, first, last)
    muted = items.muted[first]
    if field == "other_numbers":
        items.muted[first] = False
    items.claim(field, text, first, last, 2)
    items.muted[first] = muted


def _spend(items: Items, first: int, last: int) -> None:
    for k in range(first, last + 1):
        items.used[k] = True


def _codes(items: Items, j: int) -> list[tuple[str, int, int]]:
    """Return the codes of a list that starts at item `j`, with their first and last items."""
    codes = []
    for _ in range(12):
        code = _code_at(items, j)
        if code is None:
            break
        codes.append(code)
        j = code[2] + 1
        while j < len(items) and items.word(j) in _LIST_SIGNS:
            j += 1
    return codes


def _code_at(items: Items, j: int) -> tuple[str, int, int] | None:
    """Return the labelled code that starts at item `j`; digits alone will do behind a label."""
    if j >= len(items):
        return None
    token = items.first[j]
    first, last = reach(items, token)
    first = max(first, token)
    text = written(items, first, last)
    if text.isalpha() and text.isupper() and len(text) <= 4 and last + 1 < len(items.scan.words):
        after, end = reach(items, last + 1)
        if items.scan.words[after][0].isdigit() and after == last + 1 and "-" in written(items, after, end):
            last = end
            text = written(items, first, last)
    if not any(char.isdigit() for char in text) or len(text) < 2:
        return None
    if not _NUMBER_LIKE.fullmatch(text.replace(" ", "-")):
        return None
    end_item = _item_of(items, j, last)
    if items.has(j, "num") and end_item == j and _is_quantity(items, j):
        return None
    return text, j, end_item


def _is_quantity(items: Items, j: int) -> bool:
    return items.has(j + 1, "unit") or items.has(j + 1, "after")


def _item_of(items: Items, j: int, token: int) -> int:
    while j + 1 < len(items) and items.last[j] < token:
        j += 1
    return j


def loose_codes(items: Items) -> None:
    """Find codes without a label; the first that is about the motor is its part number."""
    for i in items.numbers:
        if items.used[i]:
            continue
        first, last = reach(items, items.first[i])
        if first == last:
            continue
        text = written(items, first, last)
        if is_ball_bearing(text):
            items.claim("bearing", "ball", i)
            items.used[i] = True
        elif is_code(items, first, last):
            start = i
            while start and items.first[start] > first:
                start -= 1
            end = _item_of(items, i, last)
            _spend(items, start, end)
            _loose(items, text, start, end)


def _loose(items: Items, text: str, start: int, end: int) -> None:
    owner = _owner(items, start)
    if owner == "other":
        return
    field = "module_number" if owner == "module" else "part_number"
    items.claim(field, text, start, end)
    _brand_before(items, start)


def _owner(items: Items, start: int) -> str:
    """Return what the words before a loose code are about."""
    segment = items.segment[start]
    for j in range(start - 1, max(-1, start - 9), -1):
        if items.segment[j] != segment:
            break
        if "module" in items.roles[j]:
            return "module"
        if "motor" in items.roles[j] or "other_thing" in items.roles[j]:
            break
    return "motor"


def _brand_before(items: Items, start: int) -> None:
    """Take the capitalised words right before a code as the maker's name."""
    k = start - 1
    while k >= 0 and (
        items.has(k, "label") or items.has(k, "fill") or items.has(k, "module") or items.has(k, "motor")
    ):
        if items.has(k, "motor") or items.word(k) in ("is", "a"):
            return
        k -= 1
    last = k
    while k >= 0 and last - k < 4 and _is_name(items, k):
        k -= 1
    first = k + 1
    while first <= last and not items.raw(first)[0].isalpha():
        first += 1
    if first <= last:
        items.claim("brand", written(items, items.first[first], items.last[last]), first, last)


def _is_name(items: Items, k: int) -> bool:
    raw = items.raw(k)
    if raw == "&":
        return k > 0 and items.raw(k - 1)[0].isupper()
    return raw[0].isalpha() and raw[0].isupper() and not items.roles[k] and len(raw) > 1


def _labelled_brand(items: Items, i: int) -> None:
    j = items.skip(i + 1, 1)
    last = j
    while last < len(items) and last - j < 5 and items.clause[last] == items.clause[j]:
        if not (_is_name(items, last) or items.raw(last) == "&"):
            break
        last += 1
    if last > j and items.clause[j] == items.clause[i]:
        items.used[i] = True
        items.claim("brand", written(items, items.first[j], items.last[last - 1]), j, last - 1, 2)


def plate_brand(items: Items) -> None:
    """The first line of a plate is its maker's name when nothing in it is a fact."""
    end = 0
    while end < len(items) and items.word(end) != "\n":
        end += 1
    if end and end <= 5 and all(not items.roles[k] and not items.word(k).isdigit() for k in range(end)):
        items.claim("brand", written(items, items.first[0], items.last[end - 1]), 0, end - 1, 2)
