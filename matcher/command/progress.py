"""Progress on long input: a counter on standard error, only where somebody sees it."""

import sys
import time
from collections.abc import Iterable, Iterator
from typing import TypeVar

Thing = TypeVar("Thing")

QUIET_S = 1.0
"""Seconds of work before anything is shown; short work needs no counter."""


def counted(things: Iterable[Thing], what: str) -> Iterator[Thing]:
    """Pass `things` through and count them on a terminal's standard error."""
    if not sys.stderr.isatty():
        yield from things
        return
    shown = start = time.monotonic()
    number = 0
    for number, thing in enumerate(things, 1):
        yield thing
        now = time.monotonic()
        if now - start > QUIET_S and now - shown > 0.2:
            shown = now
            print(f"\r{number} {what}", end="", file=sys.stderr, flush=True)
    if shown > start:
        print(f"\r{number} {what}", file=sys.stderr)
