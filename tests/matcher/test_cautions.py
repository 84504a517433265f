"""Cautions stand where work can hurt, and each kind of motor gets its own."""

import pytest

from matcher.cautions import cautions_for
from matcher.motor import Motor
from matcher.tables import rows

PSC, ECM, BARE = Motor(motor_type="psc"), Motor(rpm_range=(300, 1200)), Motor()


@pytest.mark.parametrize("motor", [PSC, ECM, BARE], ids=["psc", "ecm", "not known"])
def test_the_bench_starts_dead_and_locked_out(motor: Motor) -> None:
    first, *_rest, last = cautions_for("bench", motor)
    assert "lock out" in first
    assert "verify dead" in first
    assert "qualified" in last


@pytest.mark.parametrize(
    ("motor", "capacitor", "module"),
    [(PSC, True, False), (ECM, False, True), (BARE, True, True)],
    ids=["psc", "ecm", "not known"],
)
def test_stored_charge_is_named_for_the_kind_of_motor(motor: Motor, capacitor: bool, module: bool) -> None:
    said = " ".join(cautions_for("bench", motor))
    assert ("run capacitor keeps its charge" in said, "wait 5 minutes" in said) == (capacitor, module)


def test_live_readings_and_reaching_in_have_their_caution() -> None:
    assert "qualified" in cautions_for("proof")[0]
    assert "locked out" in cautions_for("measure")[0]


def test_every_caution_names_its_source() -> None:
    assert all(row["source"] for row in rows("cautions"))
