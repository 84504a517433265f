"""Was it worth it: money, hours and energy, with what is assumed in sight."""

from matcher.worth.entries import texts_in, with_worth, worth_entries
from matcher.worth.reckoning import Worth, reckon

__all__ = ["Worth", "reckon", "texts_in", "with_worth", "worth_entries"]
