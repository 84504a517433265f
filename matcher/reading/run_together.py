"""Words that a plate's scan runs together: `ENCLTENVINSBAMB`, `BRGBALLSHAFTUPROTCCWLE`, `SPDOAO`."""

from collections.abc import Container
from functools import lru_cache

_LABELS = (
    "enclosure encl enc insul bearings bearing brg rotation rot ins class cl amb time duty mount mtg shaft "
    "shft type prot thcl isokl wkl iskl ph fr frame hp rpm volts amps hz cap spd speed thermally thermal "
    "therm"
)
_VALUES = (
    "single three split shaded ball sleeve slv impedance resilient rigid manual auto tenv teao tefc odp oao "
    "open up down dn horiz any all cwle ccwle cwse ccwse cwode ccwode cw ccw le se ode de rev cont ao "
    "reversible continuous protected phase pole band studs stud cradle facing lead end air over"
)
_PIECES = frozenset(f"{_LABELS} {_VALUES}".split())
_LETTERED = frozenset({"ins", "insul", "cl", "class", "thcl", "isokl", "wkl", "iskl"})
_LETTERS = frozenset("abfh")
_FRAME_LETTERS = ("yz", "y", "z", "c", "t")
_OF_NUMBERS = ("model", "mod", "pn")
_LONGEST_SERIES = 4
_UNITS = frozenset({"hp", "rpm", "hz", "ph", "spd", "v", "vac", "w"})
_LONGEST_PIECE = max(map(len, _PIECES))
_LONGEST = 60
_SHORTEST = 5


@lru_cache(20_000)
def pieces(word: str) -> tuple[str, ...]:
    """Return the known words that a longer one is made of, without remainder; nothing when it isn't."""
    if not _SHORTEST <= len(word) <= _LONGEST:
        return ()
    ends: dict[int, tuple[str, ...]] = {0: ()}
    for start in range(len(word)):
        before = ends.get(start)
        if before is None:
            continue
        if before and before[-1] in _LETTERED and word[start] in _LETTERS:
            ends.setdefault(start + 1, (*before, word[start]))
        for length in range(min(_LONGEST_PIECE, len(word) - start), 1, -1):
            piece = word[start : start + length]
            if piece in _PIECES:
                ends.setdefault(start + length, (*before, piece))
    found = ends.get(len(word), ())
    return found if len(found) > 1 else ()


def parted(
    word: str,
    known: Container[str],
    *,
    figure_before: bool,
    figure_behind: bool,
    hyphen_behind: bool,
    opens_line: bool,
) -> tuple[str, ...]:
    """Return the words that a plate's word is made of; one word when nothing says that it is more.

    Behind a figure it may start with the letters of a frame (`48YZENCLOAO`) or with a unit before the
    label of the next figure (`3SPDA4.1`); at the start of a line a label may stand with the letters of a
    number (`MODNB-4815`, `MODHC6-2210`).
    """
    if word in known or not word.isalpha():
        return (word,)
    if hyphen_behind or (figure_behind and opens_line):
        label = next((label for label in _OF_NUMBERS if word.startswith(label)), None)
        series = len(word) - len(label) if label else 0
        if label and opens_line and 0 < series <= _LONGEST_SERIES and word != "modern":
            return label, word[len(label) :]
    if hyphen_behind:
        return (word,)
    found = pieces(word)
    if found or not figure_before:
        return found or (word,)
    if figure_behind and word[-1] in "av" and word[:-1] in _UNITS:
        return word[:-1], word[-1]
    return behind_figure(word) or (word,)


@lru_cache(20_000)
def behind_figure(word: str) -> tuple[str, ...]:
    """Return the letters of a frame or a unit, and the words behind them: `48YZENCLOAO`, `40CINSB`."""
    for letters in _FRAME_LETTERS:
        rest = word.removeprefix(letters)
        lettered = rest[:-1] in _LETTERED and rest[-1] in _LETTERS  # `60CINSB`
        more = (rest,) if rest in _PIECES else (rest[:-1], rest[-1]) if lettered else pieces(rest)
        if rest != word and more:
            return (letters, *more)
    return ()
