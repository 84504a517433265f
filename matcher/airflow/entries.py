"""The entries of a proof run: `data/proof_entries.tsv`, and texts that become readings or are refused."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf
from typing import Literal

from pydantic import JsonValue

from matcher import tables
from matcher.airflow.entry import measured
from matcher.entry import number
from matcher.errors import BadValue, UnknownField
from matcher.job import Job
from matcher.job.section import texts, with_text

GROUPS = {
    "heat": "Airflow from heat",
    "flow": "Airflow otherwise",
    "static": "Static pressure",
    "motor": "The motor under load",
    "other": "Another speed",
}
MOST_NUMBERS = 400
_THOUSANDS = 1000
"""Above it a figure can be; only there are groups of three behind a comma or a blank thousands."""
_GROUPED = re.compile(r"[1-9]\d{0,2}(?:[, ]\d{3})+(?:\.\d+)?")
_BARE = re.compile(r"\+?[-\d.,/ ]+")
"""A number without a unit: `25 C` isn't 25 F."""
Kind = Literal["number", "numbers", "range", "choice"]
_KINDS: Mapping[str, Kind] = {"number": "number", "numbers": "numbers", "range": "range"}
_BETWEEN = re.compile(r"(?<=[\d.,]) ?[-\u2013] ?(?=\d)")
Values = Mapping[str, tuple[float, ...]]
"""Readings by entry; one number is a tuple of one."""


@dataclass(frozen=True, slots=True)
class ProofEntry:
    """One thing to measure, and what it can be."""

    name: str
    group: str
    kind: Kind
    choices: tuple[str, ...]
    label: str
    unit: str
    low: float
    high: float
    above: bool
    how: str
    source: str


@cache
def proof_entries() -> tuple[ProofEntry, ...]:
    """Return every entry in the order of its table."""
    return tuple(_entry(row) for row in tables.rows("proof_entries"))


def _entry(row: tables.Row) -> ProofEntry:
    kind = _KINDS.get(row["kind"], "choice")
    return ProofEntry(
        name=row["name"],
        group=row["group"],
        kind=kind,
        choices=tuple(row["kind"].split()) if kind == "choice" else (),
        label=row["label"],
        unit=row["unit"],
        low=tables.number(row, "low", empty=-inf),
        high=tables.number(row, "high", empty=inf),
        above=row["above"] == "yes",
        how=row["how"],
        source=row["source"],
    )


def entry_named(name: str) -> ProofEntry:
    """Return one entry. Raises UnknownField for a name that is none."""
    for entry in proof_entries():
        if entry.name == name:
            return entry
    known = ", ".join(entry.name for entry in proof_entries())
    raise UnknownField(f"{name!r:.60} is no entry of a proof run; the entries are {known}")


def reading(entry: ProofEntry, text: str) -> tuple[float, ...]:
    """Return the numbers in a text, one or several. Raises BadValue with the reason for what can't be."""
    if entry.choices:
        if text not in entry.choices:
            raise BadValue(f"{entry.label}: {text!r:.40} is no choice; {' or '.join(entry.choices)}")
        return (float(entry.choices.index(text)),)
    words = text.replace(";", " ").split()
    if entry.kind == "range":
        words = _BETWEEN.sub(" ", " ".join(words)).split()
    if entry.kind == "number":
        words = [" ".join(words)]
    numbers = [_typed(entry, word) for word in words[: MOST_NUMBERS + 1]]
    if not numbers or len(numbers) > MOST_NUMBERS:
        raise BadValue(f"{entry.label}: enter 1 to {MOST_NUMBERS} numbers")
    if entry.kind == "range" and (len(numbers) != 2 or numbers[0] > numbers[1]):
        raise BadValue(f"{entry.label}: enter the lowest and the highest, as 35-65")
    return tuple(
        measured(entry.label, number, low=entry.low, high=entry.high, unit=entry.unit, above=entry.above)
        for number in numbers
    )


def _typed(entry: ProofEntry, word: str) -> float:
    """Return a number as people on both sides of the ocean type it: `9,600` W is 9600, `0,125` is 0.125."""
    if entry.high > _THOUSANDS and _GROUPED.fullmatch(word):
        return float(re.sub("[, ]", "", word))
    if not _BARE.fullmatch(word):
        raise BadValue(f"{entry.label}: {word!r:.40} is no number; write it like 25 or 0.35")
    try:
        return number(word.removeprefix("+"))
    except BadValue as refused:
        raise BadValue(f"{entry.label}: {refused}") from None


def values_in(typed: Mapping[str, str]) -> tuple[Values, dict[str, str]]:
    """Return the readings of all texts that can be, and by entry why the others can't."""
    values: dict[str, tuple[float, ...]] = {}
    faults: dict[str, str] = {}
    for name, text in typed.items():
        if not text.strip():
            continue
        try:
            values[name] = reading(entry_named(name), text.strip())
        except (BadValue, UnknownField) as refused:
            faults[name] = str(refused)
    return values, faults


def texts_in(section: Mapping[str, JsonValue]) -> dict[str, str]:
    """Return the entries that `Job.proof` keeps under `entries`, as typed; other things are passed over."""
    return texts(section.get("entries"), {entry.name for entry in proof_entries()})


def with_reading(job: Job, name: str, text: str) -> Job:
    """Return the job with one entry of its proof run as typed; emptied, it is taken out."""
    return job.edited(proof={**job.proof, "entries": with_text(texts_in(job.proof), name, text)})
