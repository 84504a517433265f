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
    """`keep`, `send_back` or `measure`."""
    why: tuple[str, ...]

    @property
    def says(self) -> str:
        """Return the advice in two or three words."""
        return {"keep": "Keep it", "send_back": "Send it back", "measure": "Measure on"}[self.what]


def advise(
    after: Judgement, differing: tuple[Deviation, ...], looks: tuple[Look, ...], left: tuple[Item, ...]
) -> Advice:
    """Return the advice; `left` are the hard facts that are not measured yet.

    A motor that differs from its listing and still fits is not condemned: the difference is named, the
    user decides.
    """
    faults = [f"{look.bad.capitalize()}." for look in looks if look.answer == BAD and look.decides]
    if after.verdict in USELESS:
        return Advice("send_back", (after.reason, *(one.says for one in differing), *faults))
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
