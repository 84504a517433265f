"""The last safe day to send a motor back.

Sellers count return days from delivery, in calendar days, and most want the parcel *back* within them; few
say so. The count here is the careful one: the day of delivery is day 0, the parcel must be back on the
last day, it travels for some days, and carriers collect from Monday to Friday. Terms that only ask to
*send* within the window can be counted so. Holidays are not known here.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from matcher.errors import BadValue

Counted = Literal["back", "sent"]
"""What has to happen within the return days: the parcel is back, or it is on its way."""

TRANSIT_DAYS = 5
"""Calendar days on the way, presumed when the seller's place isn't known; common practice."""

LONGEST_TRANSIT_DAYS = 60
LONGEST_DAYS = 3660
"""Ten years; a longer window is a slip of the pen."""

SATURDAY = 5


@dataclass(frozen=True, slots=True)
class Deadline:
    """The return window of one delivery, in calendar days."""

    delivered: date
    window_ends: date
    """The last day of the return days."""
    send_by: date
    """The last safe day to hand the parcel over."""
    days_left: int
    """From today to `send_by`; 0 = today, negative = too late."""
    is_tight: bool = False
    """The window is shorter than the way back: even sent on the first day it may come late."""

    @property
    def day(self) -> str:
        """Return the last safe day as people write it, `Fri 3 May 2030`."""
        return f"{self.send_by:%a} {self.send_by.day} {self.send_by:%b %Y}"

    @property
    def short(self) -> str:
        """Return the deadline in a few words, for a rail or a list: `send back by Fri 3 May 2030`."""
        return f"send back by {self.day}" if self.days_left >= 0 else f"last safe day was {self.day}"

    @property
    def says(self) -> str:
        """Return the deadline as one sentence."""
        day = self.day
        if self.is_tight and self.days_left >= 0:
            return (
                f"The return days end on {self.window_ends:%a} {self.window_ends.day} "
                f"{self.window_ends:%b %Y}, sooner than a parcel travels: agree the return with the seller "
                "in writing today."
            )
        if self.days_left < 0:
            return f"The last safe day to send it back was {day}; write to the seller before you pay the way."
        if self.days_left == 0:
            return f"Send it back today, {day}, or keep it."
        return f"Send it back by {day}: {self.days_left} day{'s' if self.days_left > 1 else ''} left."


def deadline(
    *,
    bought: date,
    delivered: date,
    return_days: int | None,
    today: date,
    transit_days: int = TRANSIT_DAYS,
    counted: Counted = "back",
) -> Deadline | None:
    """Return the last safe day, `None` when the seller takes nothing back or doesn't say.

    Raises BadValue for a delivery before the purchase or in the future, and for negative transit days.
    """
    check_dates(bought, delivered, today)
    if not 0 <= transit_days <= LONGEST_TRANSIT_DAYS:
        raise BadValue(f"transit days: {transit_days} can't be; enter how many days the parcel travels")
    if not return_days:
        return None
    if return_days > LONGEST_DAYS:
        raise BadValue(f"return days: {return_days} can't be; enter how many days the seller gives")
    window_ends = delivered + timedelta(days=return_days)
    send_by = _working_day(window_ends - timedelta(days=transit_days if counted == "back" else 0))
    is_tight = send_by < delivered
    send_by = max(send_by, delivered)
    return Deadline(delivered, window_ends, send_by, (send_by - today).days, is_tight)


def check_dates(bought: date, delivered: date, today: date) -> None:
    """Refuse dates that can't be. Raises BadValue."""
    if delivered < bought:
        raise BadValue(f"delivered {delivered} lies before the purchase on {bought}; one of the two is wrong")
    if delivered > today:
        raise BadValue(f"delivered {delivered} lies in the future; today is {today}")


def _working_day(day: date) -> date:
    """Move a Saturday or Sunday back to the Friday before it."""
    return day - timedelta(days=max(0, day.weekday() - SATURDAY + 1))
