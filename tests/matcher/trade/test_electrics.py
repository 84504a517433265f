import pytest

from matcher.errors import BadValue
from matcher.trade.electrics import circuit_amps_needed, slip, table_amps, unbalance, unbalance_factor


def test_slip() -> None:
    assert slip(1075, 60, 6) == pytest.approx(0.1042, abs=5e-5)
    assert slip(1200, 60, 6) == 0


def test_the_circuit_carries_a_quarter_more() -> None:
    assert circuit_amps_needed(12) == 15


def test_balanced_volts() -> None:
    assert unbalance([460, 460, 460]) == 0


@pytest.mark.parametrize(("percent", "factor"), [(0, 1), (0.5, 1), (1.25, 0.985), (4.75, 0.77), (5, 0.76)])
def test_between_the_points(percent: float, factor: float) -> None:
    assert unbalance_factor(percent) == pytest.approx(factor)


@pytest.mark.parametrize("percent", [-0.1, 5.01])
def test_beyond_the_graph_it_must_not_run(percent: float) -> None:
    with pytest.raises(BadValue, match="must not run"):
        unbalance_factor(percent)


def test_no_such_motor() -> None:
    with pytest.raises(BadValue, match="430"):
        table_amps(3, 3, 115)
