"""After the delivery: measure again, judge again, keep it or send it back in time."""

from matcher.arrival.section import Entries, bought, entries_in, with_bought
from matcher.arrival.standing import Standing, due, stand

__all__ = ["Entries", "Standing", "bought", "due", "entries_in", "stand", "with_bought"]
