"""A store in a folder of its own, and things to put into it."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from matcher.job import Fallback, Job, Listing, Reading
from matcher.motor import Offer
from matcher.record import Mark, Origin, Record
from matcher.store import Store


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "samespin.db"


@pytest.fixture
def store(path: Path) -> Iterator[Store]:
    with Store.open(path, wait_s=0.2) as opened:
        yield opened


def make_record(n: int, words: str = "pulled from a working unit") -> Record:
    text = f"Blower motor 1/2 HP 208-230V number QV-{n:05d} {words}"
    facts = Offer(brand="Orsholm", part_number=f"QV-{n:05d}", power_hp=0.5, volts="208-230", price=20.0 + n)
    where = {"power_hp": Mark(Origin.READ, "text", (13, 19), "1/2 HP")}
    return Record(f"lot.csv#{n}", facts, where, (), f"Motor {n}", text)


def make_job(name: str = "Drying cabinet", listings: int = 3) -> Job:
    job = Job(
        name=name,
        place="Hill Street",
        plate_text="TRK-88120 1/2 HP 208-230V",
        fallback=Fallback(price=900),
        arrival={"delivered": "2030-01-02", "measured": {"shaft_diameter_in": 0.5}, "photos": []},
    )
    job = (
        job.with_given("part_number", "TRK-88120")
        .with_given("amps", [2.8, 1.4])
        .with_site("altitude_ft", 5200)
    )
    for n in range(listings):
        job = job.with_listing(Listing.of(make_record(n)).corrected("shaft_flats", 1, origin=Origin.SEEN))
    return job


@pytest.fixture
def job() -> Job:
    return make_job()


@pytest.fixture
def new_job() -> Callable[..., Job]:
    return make_job


@pytest.fixture
def new_record() -> Callable[..., Record]:
    return make_record


@pytest.fixture
def unread() -> Reading:
    return Reading()
