"""Edits, undos and saves in one long sitting: the memory stays flat and the store in order.

A few hundred in the test run; `SOAK_STEPS=1000` makes it thousands.
"""

import gc
import os
import random
import tracemalloc
from pathlib import Path

from matcher.job import Job, Listing, Reading
from matcher.store import Store

ROUNDS, STEPS = 5, int(os.environ.get("SOAK_STEPS", "50"))
GROWTH = 400_000
"""Bytes that the memory may grow after the first round; one leaked job a step would be 20 times that."""


def _step(dice: random.Random, job: Job) -> Job:
    listing = dice.choice(job.listings)
    match dice.randrange(6):
        case 0:
            return job.with_given("power_hp", dice.choice([0.25, 0.5, 0.75]))
        case 1:
            return job.edited(note=f"note {dice.random()}")
        case 2:
            return job.with_listing(listing.corrected("volts", dice.choice(["115", "208-230"])))
        case 3:
            return job.with_listing(listing.withdrawn("turn").edited(decision=f"{dice.random()}"))
        case 4:
            return job.edited(proof={"amps": dice.random(), "deep": {"static": dice.random()}})
        case _:
            return job.without_listing(listing.id).with_listing(
                listing.edited(title=f"{dice.random()}", reading=Reading())
            )


def test_an_hour_in_a_moment(path: Path) -> None:
    dice = random.Random(3)
    job = Job(
        name="Soak",
        listings=tuple(Listing(title=f"{n}", text="word " * 50, reading=Reading()) for n in range(8)),
    )
    sizes = []
    tracemalloc.start()
    try:
        with Store.open(path) as store:
            version = store.save(job).version
            undo: list[Job] = [job]
            for _ in range(ROUNDS):
                for step in range(STEPS):
                    undo = [*undo[-20:], job]
                    job = undo[-1 - step % 3] if step % 5 == 0 else _step(dice, job)
                    saved = store.save(job, version)
                    version = saved.version
                    assert saved.clashes == ()
                    if step % 25 == 0:
                        assert store.load(job.id).job.edited(changed=job.changed) == job
                        store.jobs("soak")
                gc.collect()
                sizes.append(tracemalloc.get_traced_memory()[0])
            store.check()
    finally:
        tracemalloc.stop()
    assert max(sizes[1:]) - sizes[0] < GROWTH
