"""How a figure is held against a limit: one that is met exactly counts as met."""

EPSILON = 1e-9
"""Keeps a limit that is met exactly on the good side of binary fractions (0.1 + 0.2 is a little over 0.3)."""
