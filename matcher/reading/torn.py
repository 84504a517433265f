"""Figures that are no quantity of their own: torn, parted by a blank, without their stroke, inside a code."""

from matcher.reading.items import Items

_DENOMINATORS = frozenset({"2", "3", "4", "5", "6", "8"})
_TORN = frozenset("?_*.")
_LOST = frozenset("?_*.x#")


def in_code(items: Items, j: int, i: int) -> bool:
    """`OL-HP8`: letters that touch a hyphen with capitals before it and their figure are a code's."""
    touches = items.is_glued(j) and items.scan.gaps[items.first[j] - 1] == "-" and j == i - 1
    return touches and items.raw(j - 1).isupper() and "unit" not in items.roles[j - 1]


def is_parted(items: Items, i: int) -> bool:
    """`VOLTS 1 15 HP 1/4`: a figure with a blank in it."""
    labelled = "unit" in items.roles[i - 2] and not items.used[i - 2]
    return i > 1 and labelled and "num" in items.roles[i - 1] and items.scan.gaps[items.last[i - 1]] == " "


def damaged(items: Items, i: int) -> bool:
    """Say whether a figure beside a stroke is torn off (`1/.`, `?/3`) or its fraction misread (`HP 3/A`)."""
    if items.words[i - 1] == "/" and i > 1 and items.words[i - 2] in _TORN and items.is_glued(i - 1):
        return "unit" not in items.roles[i - 3]  # `1075rpm./2spd.`
    if items.words[i + 1] == ".":  # `A 4.?`
        return items.is_glued(i) and items.is_glued(i + 1) and items.words[i + 2] in _LOST
    torn = items.words[i + 1] == "/" and items.is_glued(i) and i + 2 < len(items) and items.is_glued(i + 1)
    letter = items.plate and len(items.word(i + 2)) == 1 and items.said(i - 1, "unit") == "hp"
    return torn and (not items.roles[i + 2] or letter)


def lost_stroke(items: Items, i: int) -> bool:
    """`1 3 hp`: who has no key for the stroke leaves it out."""
    one = items.numbers.get(i - 1)
    return (
        one is not None
        and one.text == "1"
        and items.numbers[i].text in _DENOMINATORS
        and not items.used[i - 1]
        and items.clause[i - 1] == items.clause[i]
    )
