"""Listings on their way into a job: pasted text, dropped or opened files. Runs on a worker."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from matcher.job import Listing
from matcher.job.text import LONGEST_TEXT
from matcher.reading import read_listing
from ui.pauses import without_pauses

STEP = 16
"""Records between two reports of progress."""
PICTURES = frozenset({".png", ".jpg", ".jpeg", ".gif", ".bmp", ".webp"})


@dataclass(frozen=True)
class Intake:
    """What came in: listings already read, one line for each thing that could not be."""

    listings: tuple[Listing, ...]
    problems: tuple[str, ...] = ()


def from_text(tick: Callable[[float], None], text: str, source_name: str) -> Intake:
    """Cut pasted text into its listings and read each."""
    from matcher.reading.split import split_listings

    spans = split_listings(text) or [(0, len(text))]
    made, problems = [], []
    for done, (start, stop) in enumerate(spans):
        tick(done / len(spans))
        if stop - start > LONGEST_TEXT:
            problems.append(_too_long(f"{source_name} {done + 1}", stop - start))
        else:
            made.append(one_listing("", text[start:stop], source_name))
    return Intake(tuple(made), tuple(problems))


def _too_long(name: str, length: int) -> str:
    return f"{name}: {length:,} characters are more than a listing holds ({LONGEST_TEXT:,}); split it"


def one_listing(title: str, text: str, source_name: str) -> Listing:
    """Read one listing's words."""
    return Listing.of(read_listing(text, title), source_name)


def from_files(tick: Callable[[float], None], paths: Sequence[Path]) -> Intake:
    """Read the listings of any mixture of files; what can't be read becomes a line."""
    from matcher.reading.sources import Problem, records

    problems: list[str] = []
    made = []

    def report(problem: Problem) -> None:
        problems.append(f"{problem.where}: {problem.why}")

    with without_pauses():
        for number, record in enumerate(records(paths, on_problem=report)):
            if not number % STEP:
                tick(0.0)
            if len(record.text) > LONGEST_TEXT:
                problems.append(_too_long(record.id, len(record.text)))
            else:
                made.append(Listing.of(record))
    return Intake(tuple(made), tuple(problems))
