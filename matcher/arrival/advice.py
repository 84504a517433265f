"""Keep it, send it back, or measure on: what the looks, the measuring and the judging anew come to."""

from dataclasses import dataclass

from matcher.arrival.checklist import Item
from matcher.arrival.looks import BAD, Look
from matcher.arrival.measured import Deviation
from matcher.judging.saying import both
from matcher.verdict import FITTING, USELESS, Judgement


@dataclass(frozen=True, slots=True)
class Advice:
    """What to do with the delivered motor, and why."""

    what: str
    """`keep`, `send_back` or `measure`; before it is there `cancel` or `wait`."""
    why: tuple[str, ...]
    is_asked: bool = False
    """The listing promises no return, and nothing differs from it: the seller must be asked to take it."""

    @property
    def says(self) -> str:
        """Return the advice in two or three words."""
        if self.is_asked:
            return "Ask the seller to take it back"
        return {
            "keep": "Keep it",
            "send_back": "Send it back",
            "measure": "Measure on",
            "cancel": "Cancel it if you still can",
            "wait": "Measure it when it is there",
        }[self.what]


def advise(
    after: Judgement,
    differing: tuple[Deviation, ...],
    looks: tuple[Look, ...],
    left: tuple[Item, ...],
    *,
    takes_back: bool = True,
) -> Advice:
    """Return the advice on what is there; `left` are the hard facts that are not measured yet.

    `takes_back` tells whether the listing speaks of a return.

    A motor that differs from its listing and still fits is not condemned: the difference is named, the
    user decides.
    """
    faults = [f"{look.bad.capitalize()}." for look in looks if look.answer == BAD and look.decides]
    if after.verdict in USELESS:
        why = (after.reason, *(one.says for one in differing), *faults)
        return Advice("send_back", why, is_asked=not (takes_back or differing or faults))
    if faults:
        return Advice("send_back", (*faults, *(one.says for one in differing)))
    if left:
        names = both([item.label for item in left[:6]])
        more = f" and {len(left) - 6} more" if len(left) > 6 else ""
        return Advice("measure", (f"Still to measure: {names}{more}.", *(one.says for one in differing)))
    if after.verdict in FITTING:
        same = (
            "It measures as the listing says." if not differing else "It differs from the listing, yet fits:"
        )
        return Advice("keep", (after.reason, same, *(one.says for one in differing)))
    return Advice("measure", (after.reason, *(one.says for one in differing)))


def advise_before(after: Judgement) -> Advice:
    """Return the advice on what was bought and isn't there yet."""
    return Advice("cancel" if after.verdict in USELESS else "wait", (after.reason,))
