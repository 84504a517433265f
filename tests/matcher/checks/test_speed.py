from collections.abc import Callable

import pytest

from matcher.checks.speed import poles

Told = Callable[..., str]


@pytest.mark.parametrize(
    ("rpm", "hertz", "count"),
    [
        (3450, 60, 2), (3600, 60, 2), (1801, 60, 2), (1800, 60, 4), (1725, 60, 4), (1625, 60, 4), (1201, 60, 4),
        (1200, 60, 6), (1140, 60, 6), (1075, 60, 6), (901, 60, 6), (900, 60, 8), (825, 60, 8), (600, 60, 12),
        (1425, 50, 4), (1075, 50, 4), (1000, 50, 6), (900, 50, 6), (2850, 50, 2), (4000, 60, 0),
    ],
)  # fmt: skip
def test_poles(rpm: int, hertz: float, count: int) -> None:
    assert poles(rpm, hertz) == count


FIXED = [
    (1075, 1075, "same"),
    (1075, 1100, "ok"),
    (1000, 1050, "ok"),
    (1000, 1051, "loss 0.161"),
    (1000, 950, "ok"),
    (1000, 949, "loss 0.102"),
    (1190, 1210, "loss 0.051"),  # 6 and 4 poles
    (1210, 1190, "loss 0.033"),
    (1625, 1075, "loss 0.677 poor"),
    (1075, 825, "loss 0.465 poor"),
    (825, 1075, "loss 1 poor"),
    (850, 1050, "loss 0.885 poor"),
    (1000, 1077, "loss 0.249"),
    (1000, 1078, "loss 0.253 poor"),
    (1000, 800, "loss 0.4"),
    (1000, 799, "loss 0.402 poor"),
    (2000, 900, "loss 1 poor"),
]


@pytest.mark.parametrize(("old", "new", "expected"), FIXED)
def test_fixed_speeds(told: Told, old: int, new: int, expected: str) -> None:
    assert told("speed", {"rpm": (old,), "hertz": "60"}, {"rpm": (new,)}) == expected
    assert told("speed", {"rpm": (old,)}, {"rpm": (new,)}) == expected  # 60 where it isn't settled


def test_the_highest_of_several_speeds_is_compared(told: Told) -> None:
    assert told("speed", {"rpm": (1075, 950, 825)}, {"rpm": (825, 1075)}) == "same"


def test_poles_at_the_supply_s_hertz(told: Told) -> None:
    old, new = {"rpm": (990,), "hertz": "50"}, {"rpm": (1010,)}
    assert told("speed", old, new) == "loss 0.062"  # 6 and 4 poles at 50 Hz
    assert told("speed", old, new, {"supply_hertz": 60}) == "ok"
    assert told("speed", old | {"hertz": "50/60"}, new) == "ok"
    assert told("speed", old | {"hertz": "60"}, new, {"supply_hertz": 50}) == "loss 0.062"


VARIABLE = [
    # both variable: tops
    ((500, 1250), (500, 1250), "same"),
    ((500, 1250), (400, 1188), "ok"),
    ((500, 1250), (400, 1187), "loss 0.101"),
    ((500, 1250), (400, 1000), "loss 0.4"),
    ((500, 1250), (400, 999), "loss 0.402 poor"),
    ((500, 1250), (900, 2000), "ok"),
    # new variable, old fixed
    (1000, (300, 1000), "ok"),
    (1000, (300, 950), "ok"),
    (1000, (300, 949), "loss 0.102"),
    (1000, (300, 799), "loss 0.402 poor"),
    (1000, (1050, 1300), "ok"),
    (1000, (1051, 1300), "loss 0.161"),
    (1000, (1100, 1300), "loss 0.331 poor"),
    # old variable, new fixed
    ((500, 1250), 1075, "unknown"),
    ((500, 1250), 1250, "unknown"),
]


@pytest.mark.parametrize(("old", "new", "expected"), VARIABLE)
def test_variable_speeds(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def facts(speed: int | tuple[int, int]) -> dict[str, object]:
        return {"rpm": (speed,)} if isinstance(speed, int) else {"rpm_range": speed}

    assert told("speed", facts(old), facts(new)) == expected


def test_missing_speeds_ask(told: Told, look) -> None:  # type: ignore[no-untyped-def]
    assert told("speed", {"rpm": (1075,)}, {}) == "unknown"
    assert told("speed", {}, {"rpm": (1075,)}) == "unknown"
    assert look("speed", {"rpm": (1075,)}, {}).asks
    assert look("speed", {"rpm_range": (300, 1300)}, {"rpm": (1075,)}).asks
    twice = look("speed", {"rpm": (1075,)}, {"rpm": (1075,)}, twice_new=("rpm_range",))
    assert (twice.outcome, twice.asks) == ("unknown", True)
