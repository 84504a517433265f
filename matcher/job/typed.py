"""One fact as people type it: as a form takes it, or in the words of a listing or plate."""

from collections.abc import Callable

from matcher.errors import BadValue
from matcher.motor import Offer


def typed(field: str, text: str, read: Callable[[str], Offer], *, metric: bool = False) -> dict[str, object]:
    """Return what was typed of one fact as values by field: `1/2`, `CCWLE`, `belly band`.

    What a form can't take is read as words; those of a turn often say from which end as well, and that
    counts with them. Lengths without a unit are inches, with `metric` millimetres. Raises `UnknownField` or
    `BadValue`.
    """
    from matcher.entry import entered

    try:
        return {field: entered(field, text, metric=metric)}
    except BadValue:
        facts = read(text.strip())
        if getattr(facts, field, None) is None:
            raise
    view = {"seen_from": facts.seen_from} if field == "turn" and facts.seen_from else {}
    return {field: getattr(facts, field), **view}
