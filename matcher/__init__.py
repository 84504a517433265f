"""Samespin's engine: words become facts, facts are judged, judgements are weighed.

Nothing in this package knows the window. DEVELOPERS.md walks one example through it.
"""

__version__ = "0.1.0"
