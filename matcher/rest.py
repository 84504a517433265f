"""The rest of one job, worked out in one go: bench, arrival, sheet, proof run and reckoning.

The window asks for this on a worker; the record of a finished job is printed from it.
"""

from dataclasses import dataclass
from datetime import date

from matcher.airflow.chart import Chart, chart_of
from matcher.airflow.entries import texts_in as proof_texts
from matcher.airflow.entries import values_in as proof_values
from matcher.airflow.flow import one
from matcher.airflow.proof import Proof, prove
from matcher.arrival.section import Entries, bought, entries_in
from matcher.arrival.standing import Standing, stand
from matcher.job import Job, Listing
from matcher.job.section import with_text
from matcher.motor import Offer, Wanted
from matcher.settings import Settings
from matcher.sheet import Sheet, Swap, swap_sheet
from matcher.triage import Bench, bench_of
from matcher.worth import Worth, reckon
from matcher.worth import texts_in as worth_texts


@dataclass(frozen=True, slots=True)
class Rest:
    """Everything after the choice of a motor, as far as the job has come."""

    job: Job
    wanted: Wanted
    bench: Bench
    entries: Entries
    bought: Listing | None
    standing: Standing | None
    """`None` while nothing is bought; so are the swap and its sheet, which a mere part doesn't get either."""
    swap: Swap | None
    sheet: Sheet | None
    proof: Proof
    chart: Chart | None
    """What to draw of the proof run."""
    worth: Worth


def rest_of(job: Job, today: date, settings: Settings | None = None) -> Rest:
    """Return how the rest of a job stands today."""
    wanted = job.wanted()
    entries, listing = entries_in(job.arrival), bought(job)
    standing = stand(wanted, listing.record(), entries, today, settings) if listing else None
    swap = _swap(wanted, standing)
    new = swap.new if swap else Offer()
    proof = prove(proof_texts(job.proof), new, wanted.motor, wanted.site)
    whole = (wanted.motor, new, wanted.site) if swap else None
    return Rest(
        job=job,
        wanted=wanted,
        bench=bench_of(job, wanted.motor),
        entries=entries,
        bought=listing,
        standing=standing,
        swap=swap,
        sheet=swap_sheet(swap, job.sheet_notes) if swap else None,
        proof=proof,
        chart=chart_of(proof),
        worth=reckon(
            worth_texts(job.worth), whole, job.fallback, proof_watts(job), _unproven(standing, entries, proof)
        ),
    )


def _unproven(standing: Standing | None, entries: Entries, proof: Proof) -> str:
    """Return why nothing is saved yet; empty once the motor is here and its proof run found nothing wrong."""
    if standing is None:
        return "nothing is bought yet"
    if entries.decision == "send_back":
        return "it goes back"
    if standing.advice.what in ("wait", "cancel"):
        return "it isn't delivered yet"
    if proof.outcome == "note":  # nothing was held against a limit
        return "no proof run is in yet"
    return "the proof run isn't right yet" if proof.outcome == "bad" else ""


def _swap(wanted: Wanted, standing: Standing | None) -> Swap | None:
    if standing is None or standing.after.verdict is None:  # a wheel needs no sheet for a motor
        return None
    return Swap.of(wanted, standing.measured, standing.after)


def proof_watts(job: Job) -> float | None:
    """Return the motor's input in watts as the proof run measured it; `None` when it didn't."""
    values, _faults = proof_values(proof_texts(job.proof))
    return one(values, "watts")


def with_note(job: Job, step: str, text: str) -> Job:
    """Return the job with what was written down beside one step of its sheet; emptied, it is taken out."""
    return job.edited(sheet_notes=with_text(job.sheet_notes, step, text))
