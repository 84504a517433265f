"""The code's full-load currents, row by row, with their own ratios, and the speeds of pole counts."""

from functools import cache

import pytest
from fluids import pump

from matcher import tables
from matcher.checks import current
from matcher.checks.speed import poles
from matcher.judging.pair import Pair
from matcher.motor import Motor, Offer, Site

pytestmark = pytest.mark.published

# NEC Table 430.248, single phase: hp, then amperes at 115, 200, 208, 230 V.
SINGLE_PHASE = [
    (1 / 6, (4.4, 2.5, 2.4, 2.2)),
    (1 / 4, (5.8, 3.3, 3.2, 2.9)),
    (1 / 3, (7.2, 4.1, 4.0, 3.6)),
    (1 / 2, (9.8, 5.6, 5.4, 4.9)),
    (3 / 4, (13.8, 7.9, 7.6, 6.9)),
    (1, (16, 9.2, 8.8, 8.0)),
    (1.5, (20, 11.5, 11.0, 10)),
    (2, (24, 13.8, 13.2, 12)),
    (3, (34, 19.6, 18.7, 17)),
    (5, (56, 32.2, 30.8, 28)),
    (7.5, (80, 46.0, 44.0, 40)),
    (10, (100, 57.5, 55.0, 50)),
]
# NEC Table 430.250, three phase (edition of 2008): hp, then amperes at 115, 200, 208, 230, 460, 575 V.
THREE_PHASE = [
    (0.5, (4.4, 2.5, 2.4, 2.2, 1.1, 0.9)),
    (0.75, (6.4, 3.7, 3.5, 3.2, 1.6, 1.3)),
    (1, (8.4, 4.8, 4.6, 4.2, 2.1, 1.7)),
    (1.5, (12.0, 6.9, 6.6, 6.0, 3.0, 2.4)),
    (2, (13.6, 7.8, 7.5, 6.8, 3.4, 2.7)),
    (3, (None, 11.0, 10.6, 9.6, 4.8, 3.9)),
    (5, (None, 17.5, 16.7, 15.2, 7.6, 6.1)),
    (7.5, (None, 25.3, 24.2, 22, 11, 9)),
    (10, (None, 32.2, 30.8, 28, 14, 11)),
]


@cache
def table_amps(phase: int, hp: float, volts: float) -> float:
    return next(
        float(row["amps"])
        for row in tables.rows("full_load_amps")
        if (int(row["phase"]), float(row["volts"])) == (phase, volts)
        and float(row["hp"]) == pytest.approx(hp, abs=1e-4)
    )


@pytest.mark.parametrize(("hp", "amps"), SINGLE_PHASE)
def test_nec_430_248(hp: float, amps: tuple[float, ...]) -> None:
    assert tuple(table_amps(1, hp, volts) for volts in (115, 200, 208, 230)) == amps


@pytest.mark.parametrize(("hp", "amps"), THREE_PHASE)
def test_nec_430_250(hp: float, amps: tuple[float | None, ...]) -> None:
    for volts, figure in zip((115, 200, 208, 230, 460, 575), amps, strict=True):
        if figure is not None:
            assert table_amps(3, hp, volts) == figure


@pytest.mark.parametrize("hp", [hp for hp, _ in SINGLE_PHASE])
def test_the_single_phase_table_s_own_ratios(hp: float) -> None:
    """115 V draws twice the 230 V figure, 208 V 1.10 and 200 V 1.15 times, as rounded in the table."""
    base = table_amps(1, hp, 230)
    assert table_amps(1, hp, 115) == pytest.approx(2 * base, abs=0.05)
    assert table_amps(1, hp, 208) == pytest.approx(1.10 * base, abs=0.06)
    assert table_amps(1, hp, 200) == pytest.approx(1.15 * base, abs=0.06)


@pytest.mark.parametrize("hp", [hp for hp, _ in THREE_PHASE])
def test_the_three_phase_table_s_own_ratios(hp: float) -> None:
    assert table_amps(3, hp, 460) == pytest.approx(table_amps(3, hp, 230) / 2, abs=0.051)
    assert table_amps(3, hp, 208) == pytest.approx(1.10 * table_amps(3, hp, 230), abs=0.06)


@pytest.mark.parametrize(
    ("full_load", "circuit"),
    # NEC 430.22: 125 % of the full-load current of a single continuous-duty motor.
    [(9.8, 12.25), (12, 15), (16, 20), (13, 16.25)],
)
def test_nec_430_22(full_load: float, circuit: float) -> None:
    def outcome(there: float) -> str | None:
        plate = {"amps": (full_load,), "volts": "115"}
        pair = Pair(Motor(**plate), Offer(**plate), Site(circuit_amps=there))
        found = current.judge(pair)
        return found.outcome.value if found else None

    assert (outcome(circuit), outcome(circuit - 0.01)) == ("same", "loss")


@pytest.mark.parametrize("count", [2, 4, 6, 8, 12])
@pytest.mark.parametrize("hertz", [50, 60])
def test_poles_against_the_synchronous_speeds_of_fluids(hertz: float, count: int) -> None:
    synchronous = pump.speed_synchronous(hertz, count)
    assert (poles(synchronous, hertz), poles(0.96 * synchronous, hertz)) == (count, count)
    assert poles(1.01 * synchronous, hertz) == count - 2


@pytest.mark.parametrize(
    ("power", "size"),
    # fluids.pump.motor_round_size: the next NEMA size up from 1/4 hp, all of which are steps here.
    [(0.2, 0.25), (0.3, 1 / 3), (0.45, 0.5), (0.6, 0.75), (0.9, 1.0), (1.2, 1.5)],
)
def test_sizes_against_fluids(power: float, size: float) -> None:
    steps = [float(row["hp"]) for row in tables.rows("ratings")]
    watts = pump.motor_round_size(power * 745.6998715822702)
    assert watts / 745.6998715822702 == pytest.approx(size, rel=1e-6)
    assert min(step for step in steps if step >= max(power, 0.25)) == pytest.approx(size, rel=1e-6)
