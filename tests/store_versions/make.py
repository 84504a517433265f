"""Keep a store file of the version at hand: `python tests/store_versions/make.py`, once before a release.

Beside `<version>.db` stands `<version>.json`, what the store must give when a newer program opens it.
"""

import json
import sys
from pathlib import Path

from matcher import __version__
from matcher.job import Attachment, Fallback, Job, Listing, Reading
from matcher.motor import Offer
from matcher.record import Conflict, Mark, Origin, Record
from matcher.store import Store

HERE = Path(__file__).parent


def _record(n: int) -> Record:
    return Record(
        f"lot.csv#{n}",
        Offer(part_number=f"QV-{n:05d}", power_hp=0.5, volts="208-230", price=20.0 + n, currency="USD"),
        {"power_hp": Mark(Origin.READ, "text", (0, 6), "1/2 HP")},
        (Conflict("turn", ("cw", "ccw"), ("CW", "CCW")),),
        f"Motor {n}",
        f"1/2 HP 208-230V QV-{n:05d} CW CCW",
    )


def _jobs(store: Store) -> list[Job]:
    picture = Attachment(name="front.png", digest=store.attach(b"\x89PNG picture"))
    listing = Listing.of(_record(1)).corrected("turn", "cw", origin=Origin.ANSWERED, note="seller: clockwise")
    full = Job(
        name="Drying cabinet",
        place="Hill Street",
        note="two lines\nof note \u202e\u00e9",
        plate_text="TRK-88120 1/2 HP",
        listings=(
            listing.edited(pictures=(picture,)),
            Listing(title="unread", text="half", reading=Reading()),
        ),
        fallback=Fallback(price=1150, currency="USD", what="quote"),
        pictures=(picture,),
        settings_changes={"weights": {"power": 12.5}},
        triage={"spin": "free"},
        arrival={"delivered": "2030-01-02", "measured": {"shaft_diameter_in": 0.5}},
        proof={"amps": [2.5, None, True]},
        sheet_notes={},
        worth={"hours": 3},
    )
    full = full.with_given("part_number", "TRK-88120").with_given("turn", None).with_site("altitude_ft", 5200)
    return [full, Job(name="Empty"), Job(name="Removed")]


def main() -> int:
    """Write the two files; an existing one is never overwritten."""
    path = HERE / f"{__version__}.db"
    if path.exists():
        print(f"{path.name} is kept already; a released version's file never changes", file=sys.stderr)
        return 1
    with Store.open(path) as store:
        jobs = _jobs(store)
        saved = [store.save(job).job for job in jobs]
        store.delete(saved[2].id)
        shelf = store.add_shelf("Back room", "by the door")
        store.add_offers(shelf, [_record(n) for n in range(5)])
        expected = {
            "jobs": [json.loads(job.model_dump_json()) for job in saved],
            "removed": [saved[2].id],
            "offers": [record.facts.said() for record in store.records(shelf)],
        }
        store._db.execute("PRAGMA journal_mode = DELETE").fetchone()
        store._wrote = False
    (HERE / f"{__version__}.json").write_text(json.dumps(expected, indent=1), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
