# ruff: noqa: E402 - the paths must be set first
"""Many pairs against one pair at a time, by the same rules, in one run.

Run by hand: `python tests/bench/bench_many.py [largest power of ten]`; it prints what it finds and writes it into
RESULTS.md. Times are processor seconds of one core, so that other work on the machine disturbs them less.
"""

import gc
import math
import random
import sys
import time
import tracemalloc
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parent.parent)]

from motors import catalogue, market, wanted
from results import Picture, put, table

from matcher.many import Pile, best_pairs, rank_pile
from matcher.many.columns import BLOCK, Block
from matcher.many.lots import lots_for
from matcher.many.spread import Spread
from matcher.money.weigh import weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings

SHIPPED = Settings.shipped()
MODELS = 1_500
"""Different motors of the market; each listing leaves out other facts."""
CHANGED = SHIPPED.changed(weights={"power": 10, "shaft": 20}, priors={"rotation": 0.4})


class Clock:
    """Adds up processor seconds by name."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = {}

    @contextmanager
    def timed(self, name: str) -> Iterator[None]:
        """Add the time of what is done inside."""
        gc.collect()
        start = time.process_time()
        yield
        self.seconds[name] = self.seconds.get(name, 0.0) + time.process_time() - start


@dataclass
class Market:
    """Models, and a source of listings and old motors."""

    rng: random.Random

    def __post_init__(self) -> None:
        self.models = catalogue(self.rng, MODELS)

    def offers(self, size: int, start: int = 0) -> list[Record]:
        """Return new listings."""
        return market(self.rng, self.models, size, start)

    def old(self, number: int = 0) -> Wanted:
        """Return a failed motor of one of the models."""
        return wanted(self.rng, self.rng.choice(self.models), number).model_copy(update={"pays": 250.0})


def one_motor(place: Market, size: int) -> tuple[float, str]:
    """Rank one lot, again for another motor, and again with other figures; return a pair's time by itself."""
    clock, records, old = Clock(), place.offers(size), place.old()
    sample = records[:: size // 2000]
    with clock.timed("one"):
        for record in sample:
            weigh(old, record)
    single = clock.seconds["one"] / len(sample)
    with clock.timed("cut"):
        pile = Pile(records)
    spread = Spread([old])
    with clock.timed("first"):
        list(rank_pile(old, pile, spread=spread).best(20))
    with clock.timed("again"):
        list(rank_pile(old, pile, CHANGED, spread=spread).best(20))
    with clock.timed("other"):
        list(rank_pile(place.old(), pile).best(20))
    whole = single * size
    cut, first = clock.seconds["cut"], clock.seconds["first"]
    rows = [
        ("one pair at a time (a sample of 2,000, scaled)", whole),
        ("the lot cut into columns, once for all motors", cut),
        ("the first motor ranked", first),
        ("both together", cut + first),
        ("another motor ranked", clock.seconds["other"]),
        ("the first again with changed weights and priors", clock.seconds["again"]),
    ]
    cells = [(name, f"{seconds:.2f}", f"{whole / seconds:,.0f} x") for name, seconds in rows]
    return single, table((f"{size:,} offers, one motor", "seconds", "faster"), cells)


def many_motors(place: Market, olds: int, offers: int, single: float) -> str:
    """Rank the pairs of many motors and many offers, and assign lots."""
    clock, records = Clock(), place.offers(offers)
    plates = [place.old(number) for number in range(olds)]
    with clock.timed("top"):
        found = list(best_pairs(plates, records, top=100))
    with clock.timed("lots"):
        lots = lots_for(plates, records)
    assert len(found) == 100
    rows = [
        (
            name,
            f"{seconds:.1f}",
            f"{olds * offers / seconds / 1e6:.1f} million",
            f"{single * olds * offers / seconds:,.0f} x",
        )
        for name, seconds in (
            ("the best 100 pairs", clock.seconds["top"]),
            (f"lots assigned to plates ({len(lots.served)} served)", clock.seconds["lots"]),
        )
    ]
    return table((f"{olds:,} motors x {offers:,} offers", "seconds", "pairs a second", "faster"), rows)


def answers_of(spread: Spread) -> int:
    """Return how often a check was called."""
    return sum(int((book._answers >= 0).sum()) for book in spread._books)


@dataclass
class Point:
    """One size of the curve; seconds for each offer."""

    size: int
    cut: float
    first: float
    again: float
    answers: int


def curve(place: Market, largest: int) -> Iterator[Point]:
    """Rank lots of growing size block by block, so that no lot is held whole."""
    for power in range(2, largest + 1):
        size, clock, old = 10**power, Clock(), place.old()
        repeats = max(1, 10 ** (4 - power))
        spread = Spread([old])
        for start in range(0, size, BLOCK):
            records = place.offers(min(BLOCK, size - start), start)
            with clock.timed("cut"):
                blocks = [Block(records, start) for _ in range(repeats)]
            with clock.timed("first"):
                # Each repetition begins with empty books; blocks of one lot share theirs.
                for block in blocks:
                    spread = Spread([old]) if repeats > 1 else spread
                    spread.row(0, block, SHIPPED)
            with clock.timed("again"):
                for block in blocks[-1:] * repeats:
                    spread.row(0, block, CHANGED)
        each = {name: seconds / size / repeats for name, seconds in clock.seconds.items()}
        yield Point(size, each["cut"], each["first"], each["again"], answers_of(spread))


def peak(place: Market, size: int, top: int) -> tuple[float, float]:
    """Return the MiB that ranking takes beside the listings themselves, and the MiB of these."""
    old = place.old()
    tracemalloc.start()
    records = place.offers(size)
    held = tracemalloc.get_traced_memory()[0]
    tracemalloc.reset_peak()
    list(best_pairs([old], iter(records), top=top))
    highest = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return (highest - held) / 2**20, held / 2**20


def draw(points: list[Point], single: float) -> None:
    """Draw the time for each offer over the size of the lot, both as powers of ten."""
    high = math.log10(single * 1e6) + 0.3
    picture = Picture(
        (2, points[-1].size and math.log10(points[-1].size)), (-0.5, high), "Microseconds for each offer"
    )
    xs = [(float(power), f"10^{power}") for power in range(2, int(math.log10(points[-1].size)) + 1)]
    picture.frame(xs, [(float(power), f"{10**power:g}") for power in range(int(high) + 1)])
    ways = {
        "#1f6f8b": ("cut and ranked", lambda point: point.cut + point.first),
        "#c8553d": ("ranked again", lambda point: point.again),
    }
    for colour, (name, seconds) in ways.items():
        line = [(math.log10(point.size), math.log10(seconds(point) * 1e6)) for point in points]
        picture.line(line, colour)
        for x, y in line:
            picture.dot(x, y, colour, 3)
        picture.words(*line[-1], name, anchor="end", down=-8)
    flat = math.log10(single * 1e6)
    picture.line([(2, flat), (xs[-1][0], flat)], "#999", "4 4")
    picture.words(xs[-1][0], flat, "one pair at a time", anchor="end", down=-6)
    picture.save("many.svg")


def main() -> None:
    """Measure, print and write down."""
    largest = int(sys.argv[1]) if len(sys.argv) > 1 else 6
    place = Market(random.Random(1))
    single, one = one_motor(place, 100_000)
    print(one, flush=True)
    many = many_motors(place, 1_000, 10_000, single)
    print(many, flush=True)
    points = list(curve(place, largest))
    head = (
        "offers",
        "cut, us each",
        "ranked, us each",
        "ranked again, us each",
        "calls of checks",
        "calls for each offer",
    )
    rows = [
        (
            f"{p.size:,}",
            *(f"{seconds * 1e6:.1f}" for seconds in (p.cut, p.first, p.again)),
            f"{p.answers:,}",
            f"{p.answers / p.size:.3f}",
        )
        for p in points
    ]
    grown = table(head, rows)
    print(grown, flush=True)
    draw(points, single)
    sizes = (BLOCK, 2 * BLOCK, 4 * BLOCK)
    memory = [(f"{size:,}", *(f"{mib:,.0f}" for mib in peak(place, size, 100))) for size in sizes]
    bounded = table(("offers, the best 100 of them", "peak beside them, MiB", "the listings, MiB"), memory)
    print(bounded)
    put(
        "Many pairs, one rule",
        f"""
`python tests/bench/bench_many.py`: listings of {MODELS:,} invented models, each leaving out other facts
(`tests/motors.py`); processor seconds of one core, all in one run. No rule has a second copy: a check is called once
for each distinct combination of the facts that it declares, and `tests/property/test_many_equals_one.py` holds the
results equal to the last digit.

{one}

{many}

Time for each offer falls as lots grow, because what differs grows slower than what is offered. What stays is the
cutting into columns: one look at every fact of every listing, the same for all motors, done once for a lot.

![Time for each offer](many.svg)

{grown}

Memory is that of two blocks of {BLOCK:,} offers, one at hand and one being cut, however many come (tracemalloc's
peak):

{bounded}
""",
    )


if __name__ == "__main__":
    main()
