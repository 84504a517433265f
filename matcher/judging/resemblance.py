"""Numbers that nearly match, said as notes: nothing is ever presumed from them."""

from collections.abc import Iterator

from matcher.judging.pair import Pair
from matcher.judging.presume import BY_NUMBER
from matcher.trade.numbers import Likeness, compact, likeness

_NUMBERS = (
    ("part_number", "part number"),
    ("module_number", "module number"),
    ("program_number", "program number"),
)


def resemblances(pair: Pair) -> tuple[str, ...]:
    """Return what a person should know about the numbers of both sides."""
    return tuple(_notes(pair))


def _notes(pair: Pair) -> Iterator[str]:
    if BY_NUMBER in pair.presumed_new.values():
        yield (
            "Maker and number are the old one's, so what the listing leaves out is presumed equal."
            " Ask for a photo of the plate first."
        )
    for field, name in _NUMBERS:
        old, new = getattr(pair.old, field), getattr(pair.new, field)
        alike = likeness(old, new) if old and new else Likeness.DIFFERENT
        if alike is Likeness.LOOKALIKE:
            yield f"The {name} {new} differs from {old} only by look-alike characters: have it read again."
        elif alike is Likeness.SUFFIX:
            yield (
                f"The {name} {new} differs from {old} by a suffix, which often changes rotation, lead length"
                " or program."
            )
    yield from _among_others(pair)


def _among_others(pair: Pair) -> Iterator[str]:
    old = pair.old.part_number
    if old and pair.new.other_numbers and compact(old) in map(compact, pair.new.other_numbers):
        yield f"The listing names {old} among its other numbers; what it may replace, not what it is."
