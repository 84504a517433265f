"""What some words say of one field of the motor."""

from dataclasses import dataclass


@dataclass(slots=True, eq=False)
class Claim:
    """One value that some words give to one field; `strength` 0 counts only where nothing else does."""

    field: str
    value: object
    source: str
    span: tuple[int, int]
    clause: int
    strength: int = 1
    doubt: str = ""
    """`?` behind it, or `words` of doubt in its clause; empty where the seller is sure."""
