"""What one check found out about one pair of motors, and what may follow from all findings."""

from dataclasses import dataclass
from enum import StrEnum


class Outcome(StrEnum):
    """The answer of a check, worst last."""

    SAME = "same"
    OK = "ok"
    LOSS = "loss"
    UNKNOWN = "unknown"
    FAIL = "fail"


class Verdict(StrEnum):
    """What all findings together say of a motor, best first; `None` stands for a part that is no motor."""

    FITS = "fits"
    FITS_WITH_WORK = "fits_with_work"
    ASK = "ask"
    POOR = "poor"
    WONT_FIT = "wont_fit"


@dataclass(frozen=True, slots=True)
class Finding:
    """One check's answer: what it compared, what follows, and on what the rule rests."""

    check: str
    """The name of the check, which is the name of the file that holds it."""
    outcome: Outcome
    why: str
    """One sentence that a person would say aloud: both values, the limit, what to do."""
    source: str
    """The published standard behind the rule, or "common practice"."""
    old: str = ""
    """The old motor's value as people say it; empty when not known."""
    new: str = ""
    """The candidate's value as people say it; empty when not known."""
    loss: float = 0.0
    """0 .. 1; above 0 only when the outcome is `loss`."""
    weight: float = 0.0
    """Points the check can cost; hard checks weigh only when they lose."""
    hard: bool = False
    at_best_poor: bool = False
    """The verdict can't be better than `poor`."""
    asks: bool = False
    """This finding alone makes the verdict `ask` (a hard unknown, or power's, speed's, the module's)."""
    questions: tuple[str, ...] = ()
    """Names of the facts that should be asked of the seller (or found out at home)."""
    needs: tuple[str, ...] = ()
    """Rows of `data/swap_costs.tsv` that the swap needs because of this finding."""
    presumed: tuple[str, ...] = ()
    """Names of the facts that were presumed and not said."""
