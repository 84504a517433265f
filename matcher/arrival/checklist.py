"""The check list of one delivery: the facts that this job's checks rest on and that can be measured."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

from matcher.arrival.measured import TURN, in_words
from matcher.checks import BY_NAME, length
from matcher.checks.mounting import held_by_frame
from matcher.finding import Finding
from matcher.judging.saying import fact
from matcher.motor import MOTOR_FIELDS, Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.tables import Row, rows
from matcher.verdict import Judgement

WITHIN_REACH = ("plate", "measure")
"""Groups of `data/fields.tsv` whose facts stand on the plate or can be measured."""
OF_A_MODULE = ("module", "module_number", "program_number", "control_signal")
IDENTITY = ("brand", "part_number")


@dataclass(frozen=True, slots=True)
class Item:
    """One fact to measure: what the old motor has, what the listing says, and in which words."""

    field: str
    label: str
    how: str
    old: str
    listed: str
    said: str
    """The listing's own words behind its value."""
    checks: tuple[str, ...]
    """The checks that read it, hard ones first."""
    doubt: str
    """`presumed`, `contradicted`, `not said`, or empty for what the listing says."""
    hard: bool
    """A hard check rests on it: not kept before it is measured."""


def checklist(wanted: Wanted, candidate: Record, judgement: Judgement) -> tuple[Item, ...]:
    """Return what to measure for this job: doubts first, then hard facts, then in the plate's order."""
    old = wanted.motor
    read_by = _read_by(judgement, wanted.site)
    items = [
        _item(row, old, candidate, judgement, read_by[row["field"]])
        for row in _fields()
        if row["field"] in read_by and _matters(row["field"], old, candidate, judgement)
    ]
    urgency = {item.field: _urgency(item) for item in items}
    partner = min(urgency.get(name, _LEAST) for name in TURN)
    urgency |= dict.fromkeys(urgency.keys() & set(TURN), partner)  # a turn means nothing without its view
    return tuple(sorted(items, key=lambda item: urgency[item.field]))


_LEAST = (True, True, True)


def _urgency(item: Item) -> tuple[bool, bool, bool]:
    return not (item.hard and item.doubt), not item.hard, not item.doubt


@cache
def _fields() -> tuple[Row, ...]:
    return tuple(
        row for row in rows("fields") if row["group"] in WITHIN_REACH and row["field"] in MOTOR_FIELDS
    )


def _read_by(judgement: Judgement, site: Site) -> dict[str, list[Finding]]:
    """Return, by fact of the new motor, the findings whose checks read it.

    Where the room is known the length is a hard check, even while its finding is a good one.
    """
    found: dict[str, list[Finding]] = {name: [] for name in IDENTITY}
    for one in judgement.findings:
        finding = replace(one, hard=True) if one.check == "length" and length.is_hard(site) else one
        for name in (*BY_NAME[finding.check].reads.new, *finding.questions):
            found.setdefault(name, []).append(finding)
    return found


def _matters(name: str, old: Motor, candidate: Record, judgement: Judgement) -> bool:
    """Leave out what neither motor has and nobody asks for."""
    said = getattr(candidate.facts, name) is not None or name in candidate.contradicted
    asked = any(name in finding.questions for finding in judgement.findings)
    if name in OF_A_MODULE:
        return said or asked
    if name == "seen_from":
        return candidate.facts.turn != "either"
    return said or asked or (getattr(old, name) is not None and name not in IDENTITY)


def _item(row: Row, old: Motor, candidate: Record, judgement: Judgement, findings: list[Finding]) -> Item:
    name = row["field"]
    mark = candidate.where.get(name)
    known = getattr(candidate.facts, name) is not None or getattr(old, name) is not None
    by_frame = held_by_frame(old) or held_by_frame(candidate.facts)
    hard = any(
        finding.hard and _rests_on(finding, name, known=known) and not (name == "frame" and not by_frame)
        for finding in findings
    )
    return Item(
        field=name,
        label=fact(name),
        how=row["how"],
        old=in_words(name, Offer.model_validate(dict(old))),
        listed=in_words(name, candidate.facts),
        said=mark.said if mark and mark.source else "",
        checks=tuple(
            dict.fromkeys(finding.check for finding in sorted(findings, key=lambda one: not one.hard))
        ),
        doubt=_doubt(name, candidate, judgement),
        hard=hard,
    )


def _rests_on(finding: Finding, name: str, *, known: bool) -> bool:
    if name in finding.questions:
        return True
    check = BY_NAME[finding.check]
    return known and name in check.reads.new and name not in check.in_passing


def _doubt(name: str, candidate: Record, judgement: Judgement) -> str:
    if name in candidate.contradicted:
        return "contradicted"
    if getattr(candidate.facts, name) is not None:
        return ""
    return "presumed" if name in judgement.presumed else "not said"


def open_hard(items: tuple[Item, ...], measured: Mapping[str, object]) -> Iterator[Item]:
    """Yield the hard items that are not measured yet; a motor that turns either way needs no view."""
    return (
        item
        for item in items
        if item.hard
        and item.field not in measured
        and not (item.field == "seen_from" and measured.get("turn") == "either")
    )
