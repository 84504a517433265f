"""One fact as people type it: as a form takes it, or in the words of a listing, a plate or an answer."""

from collections.abc import Callable

from matcher.errors import BadValue
from matcher.motor import Offer


def typed(field: str, text: str, read: Callable[[str], Offer], *, metric: bool = False) -> dict[str, object]:
    """Return what was typed of one fact as values by field: `1/2`, `CCWLE`, `belly band`, `the wire end`.

    What a form can't take is read as words; those of a turn often say from which end as well, and that
    counts with them. The question of plugs is also answered by loose wires, and theirs by plugs. Lengths
    without a unit are inches, with `metric` millimetres. Raises `UnknownField` or `BadValue`.
    """
    from matcher.entry import entered

    try:
        return {field: entered(field, text, metric=metric)}
    except BadValue as refused:
        values = _by_answer(field, text.strip()) or _by_words(field, read(text.strip()))
        if not values:
            raise _in_words(field, text, refused) from None
    return values


def _by_words(field: str, facts: Offer) -> dict[str, object]:
    """Return the fact that a text's words give, with what is said in the same breath."""
    value = getattr(facts, field)
    if value is None:
        # An answer that names the pins says that there are plugs.
        return {"plug_pins": facts.plug_pins} if field == "leads" and facts.plug_pins else {}
    view = {"seen_from": facts.seen_from} if field == "turn" and facts.seen_from else {}
    return {field: value, **view}


def _by_answer(field: str, text: str) -> dict[str, object]:
    """Return what a short answer says that only its question makes clear."""
    from matcher.entry import entered, is_length
    from matcher.reading import answers  # only an answer in words pays for the reader

    if field == "seen_from":
        return {field: view} if (view := answers.view(text)) else {}
    if field in {"plug_pins", "leads"}:
        return {"leads": True} if answers.is_leads(text) else {}
    if is_length(field) and (figures := answers.inches(text)):
        return {field: entered(field, f"{figures} in")}
    return {}


def _in_words(field: str, text: str, refused: BadValue) -> BadValue:
    """Say what can be answered in the words that people use, where the form's own are code."""
    ways = {
        "seen_from": "write lead end or shaft end",
        "plug_pins": "write the pins of each plug, such as 5/16, or loose wires",
        "leads": "write loose wires, or the pins of each plug",
    }
    return (
        BadValue(f"{field}: {text.strip()!r:.40} can't be taken; {ways[field]}") if field in ways else refused
    )
