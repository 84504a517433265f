"""The entries of the reckoning: `data/worth_entries.tsv`, as typed in `Job.worth`."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from pydantic import JsonValue

from matcher import tables
from matcher.airflow.entry import measured
from matcher.entry import amount, number
from matcher.errors import BadValue
from matcher.job import Job
from matcher.job.section import texts, with_text


@dataclass(frozen=True, slots=True)
class WorthEntry:
    """One thing to enter, and what it can be."""

    name: str
    label: str
    unit: str
    low: float
    high: float
    how: str
    source: str


@cache
def worth_entries() -> tuple[WorthEntry, ...]:
    """Return every entry in the order of its table."""
    return tuple(
        WorthEntry(
            row["name"],
            row["label"],
            row["unit"],
            tables.number(row, "low"),
            tables.number(row, "high"),
            row["how"],
            row["source"],
        )
        for row in tables.rows("worth_entries")
    )


def texts_in(section: Mapping[str, JsonValue]) -> dict[str, str]:
    """Return the entries as they were typed; other things in the section are passed over."""
    return texts(section, {entry.name for entry in worth_entries()})


def with_worth(job: Job, name: str, text: str) -> Job:
    """Return the job with one entry as typed; emptied, it is taken out."""
    return job.edited(worth=with_text(job.worth, name, text))


def values_in(typed: Mapping[str, str]) -> tuple[dict[str, float], dict[str, str]]:
    """Return the numbers of all texts that can be, and by entry why the others can't."""
    values: dict[str, float] = {}
    faults: dict[str, str] = {}
    for entry in worth_entries():
        if entry.name not in typed:
            continue
        try:
            found = _typed(entry.name, typed[entry.name])
            values[entry.name] = measured(entry.label, found, low=entry.low, high=entry.high, unit=entry.unit)
        except BadValue as refused:
            faults[entry.name] = str(refused)
    return values, faults


_SUMS = frozenset({"paid", "extras", "quote"})
"""Entries where `1,150` is a sum of money; a kWh costs `0.145`."""


def _typed(name: str, text: str) -> float:
    return amount(text) if name in _SUMS else number(text.lstrip("$ "))
