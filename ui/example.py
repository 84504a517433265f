"""The example job from the folder that is shipped with the program."""

import tomllib
from pathlib import Path

from matcher.job import Fallback, Job, Listing
from matcher.reading.sources import Problem, records
from matcher.record import Origin

PLATE = "plate.txt"
OLD = "old.toml"
QUOTE = 1180.0
"""What the example's contractor asks for the whole job, US dollars; invented like all of it."""


def example_job(folder: Path) -> Job:
    """Read the example: the old motor as typed in, its plate, every listing beside it."""
    known = tomllib.loads((folder / OLD).read_text(encoding="utf-8"))
    plate = folder / PLATE
    job = Job(name="Example: the drying cabinet at Tolvane", place="seed house, Tolvane")
    job = job.edited(plate_text=plate.read_text(encoding="utf-8") if plate.exists() else "")
    read = job.plate().facts
    for field, value in known.get("motor", {}).items():
        if read.said().get(field) != value:
            job = job.with_given(field, value, origin=Origin.MEASURED)
    for field, value in known.get("site", {}).items():
        job = job.with_site(field, value)
    problems: list[Problem] = []
    paths = sorted(path for path in folder.iterdir() if path.name not in {PLATE, OLD})
    found = records(paths, on_problem=problems.append)
    return job.edited(
        listings=tuple(Listing.of(record) for record in found),
        fallback=Fallback(price=QUOTE, what="contractor's quote"),
    )
