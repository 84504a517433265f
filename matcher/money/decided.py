"""Which candidates still count as something to try, once a motor was bought and looked at.

What was decided comes by id: `keep` or `send_back`. Nothing is left to try once one is kept.
"""

from collections.abc import Mapping, Sequence

from matcher.money.weigh import Weighed

KEEP = "keep"


def still_to_try(candidates: Sequence[Weighed], decided: Mapping[str, str]) -> tuple[Weighed, ...]:
    """Return the candidates that can still be tried, in their order."""
    if KEEP in decided.values():
        return ()
    return tuple(one for one in candidates if one.id not in decided)


def why_not_tried(candidate: str, decided: Mapping[str, str]) -> str:
    """Say why one candidate is not to be tried any more; empty while it is."""
    if candidate in decided:
        return "It was bought and is kept." if decided[candidate] == KEEP else "It was bought and goes back."
    return "Another one was bought and is kept." if KEEP in decided.values() else ""


def what_was_decided(decided: Mapping[str, str], names: Mapping[str, str]) -> str:
    """Say in one line what the plan leaves out since it was bought; empty for nothing."""
    kept = [names.get(one, one) for one, decision in decided.items() if decision == KEEP]
    if kept:
        return f"Nothing is left to try: {kept[0]} was bought and is kept."
    back = [names.get(one, one) for one in decided]
    verb, which = ("goes", "it is") if len(back) == 1 else ("go", "they are")
    return f"{' and '.join(back)} {verb} back: {which} not in the plan." if back else ""
