"""The note that a clerk hands over with a substitute: what stands in for what, and how it differs.

The customer signs that he knows. It says nothing that the rules don't say, and it isn't a warranty.
"""

from collections.abc import Iterator
from datetime import date

from matcher.finding import Finding, Outcome
from matcher.judging.saying import CONDITIONS, check
from matcher.motor import Motor, Offer
from matcher.printed import document, heading, paragraph, table
from matcher.rest import Rest
from matcher.tables import rows

DIFFERS = (Outcome.OK, Outcome.LOSS, Outcome.UNKNOWN, Outcome.FAIL)


def substitution_note(rest: Rest, today: date) -> str:
    """Return the note as a page that prints; empty while nothing is bought, and for what goes back."""
    if rest.swap is None or rest.standing is None or rest.entries.decision == "send_back":
        return ""
    return document("Substitution note", _parts(rest, rest.swap.old, rest.swap.new, today))


def _parts(rest: Rest, old: Motor, new: Offer, today: date) -> Iterator[str]:
    yield paragraph("  ·  ".join(filter(None, [rest.job.name, rest.job.place, today.isoformat()])), soft=True)
    yield table([("Wanted", _name(old)), ("Supplied instead", _name(new)), ("Condition", _condition(new))])
    findings = rest.standing.after.findings if rest.standing else ()
    yield from _differences(findings)
    yield from _work(findings)
    yield heading("What the customer should know")
    yield paragraph(
        "The motor supplied is not the one that was asked for. It was chosen by comparing the plates and "
        "measurements at hand; where the table says that something isn't known, it must be checked before "
        "it is fitted. Fitting is for people who may do such work; gas, refrigerant and fixed wiring are for "
        "licensed people. Local code and the appliance's own instructions come first. This is no warranty."
    )
    yield paragraph("")
    yield table(
        [("Supplied by", "", "Date", ""), ("I have read this and take the substitute", "", "Date", "")]
    )


def _name(motor: Motor) -> str:
    return " ".join(filter(None, [motor.brand, motor.part_number])) or "not named on its plate"


def _condition(new: Offer) -> str:
    words = CONDITIONS.get(new.condition or "", "not said")
    if new.warranty_days is None:
        return f"{words}; warranty not said"
    return f"{words}; {f'{new.warranty_days} days warranty' if new.warranty_days else 'no warranty'}"


def _differences(findings: tuple[Finding, ...]) -> Iterator[str]:
    yield heading("Where it differs")
    differing = [one for one in findings if one.outcome in DIFFERS and (one.old or one.new)]
    if not differing:
        yield paragraph("In nothing that was compared.")
        return
    yield table(
        [(check(one.check), one.old or "not known", one.new or "not known", one.why) for one in differing],
        ("", "Wanted", "Supplied", "What follows"),
    )


def _work(findings: tuple[Finding, ...]) -> Iterator[str]:
    wanted = {need for finding in findings for need in finding.needs}
    needs = [row["what"] for row in rows("swap_costs") if row["name"] in wanted]
    if needs:
        yield heading("What it needs besides")
        yield paragraph("; ".join(needs) + ".")
