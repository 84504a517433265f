from collections.abc import Callable

import pytest

Told = Callable[..., str]


def plate(volts: str | None, *amps: float) -> dict[str, object]:
    facts: dict[str, object] = {"hertz": "60"}
    if volts:
        facts["volts"] = volts
    return facts | ({"amps": amps} if amps else {})


RATIOS = [
    (10.0, 10.0, "same"),
    (10.0, 8.0, "ok"),
    (10.0, 11.0, "ok"),
    (10.0, 11.01, "loss 0.3"),
    (10.0, 12.5, "loss 0.3"),
    (10.0, 12.51, "loss 0.7"),
]


@pytest.mark.parametrize(("old", "new", "expected"), RATIOS)
def test_limits(told: Told, old: float, new: float, expected: str) -> None:
    assert told("current", plate("115", old), plate("115", new)) == expected


PLATES = [
    # old plate, new plate, supply volts, outcome
    (("115/230", 10, 5), ("115/230", 10, 5), 120, "same"),
    (("115/230", 10, 5), ("115/230", 10, 6), 240, "loss 0.3"),
    (("115/230", 10, 5), ("115/230", 12, 5), 120, "loss 0.3"),
    (("115/230", 10, 5), ("115/230", 12, 5), 240, "same"),
    (("115/230", 10, 5), ("115/208-230", 10, 5), 208, "same"),
    (("115/208-230", 10.8, 5.6, 5.4), ("115/208-230", 10.8, 5.6, 5.4), 208, "same"),
    (("115/208-230", 10, 5.6, 5), ("230", 5.3), 240, "ok"),
    (("115/208-230", 10, 5.6, 5), ("230", 5.6), 240, "loss 0.3"),  # 1.12 of the 230 V figure
    (("115/208-230", 10, 5.6, 5), ("230", 5.6), 208, "same"),
    (("208-230", 2.6, 2.4), ("208-230", 2.6), 208, "same"),
    (("208-230", 2.6, 2.0), ("208-230", 2.6), 240, "loss 0.7"),
    (("208-230", 2.6), ("208-230", 2.6), 240, "same"),
    (("208-230", 3.0, 2.6, 2.4), ("208-230", 3.0), 240, "same"),  # not one for each end: the highest
    (("115", 5.0, 4.0, 3.0), ("115", 5.0), 120, "same"),
    (("115/230", 10), ("115/230", 10, 5), 120, "unknown"),  # one figure on a dual plate
    (("115/230", 10, 5), ("115/230", 10), 120, "unknown"),
    (("115/230", 10, 7, 5), ("115", 10), 120, "unknown"),
    ((None, 10), ("115", 10), 120, "unknown"),
    (("115", 10), (None, 10), 120, "unknown"),
    (("115",), ("115", 10), 120, "unknown"),
    (("115", 10), ("115",), 120, "unknown"),
    (("115", 10), ("230", 5), 120, "ok"),  # a single rating's figure always counts
    (("230", 5), ("115/230", 10, 5), 120, "loss 0.7"),
    # the supply unsaid: the first pair that both sides have
    (("115/230", 10, 5), ("230", 5), None, "same"),
    (("115/230", 10, 5), ("115", 10), None, "same"),
    (("115/230", 10, 5), ("115/230", 12, 5), None, "loss 0.3"),
    (("208-230", 2.6), ("230", 2.6), None, "same"),
    (("230/460", 6.2, 3.1), ("460", 3.1), None, "same"),
]


@pytest.mark.parametrize(("old", "new", "supply", "expected"), PLATES)
def test_the_figure_at_the_supply(told: Told, old, new, supply, expected) -> None:  # type: ignore[no-untyped-def]
    site = {} if supply is None else {"supply_volts": supply}
    assert told("current", plate(*old), plate(*new), site) == expected


CIRCUIT = [
    (("115", 10), ("115", 12), 15, "loss 0.3"),
    (("115", 12), ("115", 12.01), 15, "loss 1 poor"),
    (("115",), ("115", 12), 15, "unknown"),
    (("115",), ("115", 12.1), 15, "loss 1 poor"),  # even when the old amperes are missing
    (("115/230", 13, 6.5), ("115/230", 13, 6.5), 15, "loss 1 poor"),
    ((None,), ("115", 13), 15, "loss 1 poor"),  # the supply unknown too: the first figure
    ((None,), ("115/230", 13, 6.5), 15, "loss 1 poor"),
    ((None,), ("115/230", 13), 15, "loss 1 poor"),
    ((None,), (None, 13), 15, "loss 1 poor"),
    ((None,), ("115", 12), 15, "unknown"),
    (("115", 10), ("115",), 15, "unknown"),
]


@pytest.mark.parametrize(("old", "new", "circuit", "expected"), CIRCUIT)
def test_the_circuit(told: Told, old, new, circuit, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("current", plate(*old), plate(*new), {"circuit_amps": circuit}) == expected


def test_the_circuit_at_the_supply_s_volts(told: Told) -> None:
    site = {"circuit_amps": 15, "supply_volts": 240}
    assert told("current", plate("115/230", 13, 6.5), plate("115/230", 13, 6.5), site) == "same"
    assert told("current", plate("115/230"), plate("115/230", 13, 6.5), site) == "unknown"
    assert told("current", plate("115/230"), plate("115/230", 26, 13), site) == "loss 1 poor"


def test_measured_volts_place_the_figure(told: Told) -> None:
    assert (
        told("current", plate("115/230", 10, 5), plate("115/230", 10, 6), {"measured_volts": 236})
        == "loss 0.3"
    )


def test_contradicted_amperes(told: Told) -> None:
    assert told("current", plate("115", 10), plate("115"), twice_new=("amps",)) == "unknown"
