"""How a figure is held against a limit: one that is met exactly counts as met."""

EPSILON = 1e-9
"""Keeps a limit that is met exactly on the good side of binary fractions (0.1 + 0.2 is a little over 0.3)."""


def at_most(figure: float, limit: float) -> bool:
    """Say whether a figure doesn't exceed a limit of its own unit.

    >>> at_most(0.1 + 0.2, 0.3), over(0.1 + 0.2, 0.3), under(0.3, 0.1 + 0.2)
    (True, False, False)
    """
    return figure <= limit + EPSILON


def over(figure: float, limit: float) -> bool:
    """Say whether a figure exceeds a limit of its own unit."""
    return figure > limit + EPSILON


def under(figure: float, limit: float) -> bool:
    """Say whether a figure falls short of a limit of its own unit."""
    return figure < limit - EPSILON
