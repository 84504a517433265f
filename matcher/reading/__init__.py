"""Reading: words become facts, each with the words behind it; what contradicts itself is left out.

A wrong value is worse than a missing one: where the words don't settle a fact, it isn't given.
"""

from matcher.reading.listing import read_listing, read_plate

__all__ = ["read_listing", "read_plate"]
