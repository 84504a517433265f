"""How far a figure may move, against ranking and planning anew at many values."""

import random
from collections.abc import Sequence
from dataclasses import replace

import pytest
from motors import catalogue, market, wanted

from matcher.money.plan import best_plan
from matcher.money.sensitivity import Room, room_of_chances, room_of_weights
from matcher.money.weigh import Weighed, place, ranked, weigh, weighed_again
from matcher.settings import Settings
from matcher.verdict import judge

SHIPPED = Settings.shipped()
FALLBACK = 300.0
STEPS = (1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2)


def weighed_job(seed: int, size: int = 16) -> list[Weighed]:
    rng = random.Random(seed)
    models = catalogue(rng, 4)
    old = wanted(rng, models[0])
    records = market(rng, models[:1] * 3 + models, size)
    # Without numbers, so that candidates differ in what is known and not only in price.
    plain = [
        replace(r, facts=r.facts.model_copy(update={"part_number": None, "item": None})) for r in records
    ]
    return ranked(old, plain)


def first_three(candidates: Sequence[Weighed], settings: Settings) -> list[str]:
    again = sorted((weighed_again(one, settings) for one in candidates), key=place)
    return [one.id for one in again[:3]]


def first_steps(candidates: Sequence[Weighed], settings: Settings) -> list[str]:
    again = [weighed_again(one, settings) for one in candidates]
    return [step.id for step in best_plan((one.gamble for one in again if one.gamble), FALLBACK).steps[:3]]


def changed(room: Room, value: float) -> Settings:
    return SHIPPED.changed(**{room.group: {room.name: value}})  # type: ignore[arg-type]


def tried(room: Room, most: float, rng: random.Random) -> list[float]:
    low = 0.0 if room.lowest is None else room.lowest
    high = most if room.highest is None else room.highest
    return [rng.uniform(low, high) for _ in range(5)] + [room.now]


@pytest.mark.parametrize("seed", range(3))
def test_within_its_room_a_weight_changes_nothing(seed: int) -> None:
    job = weighed_job(seed)
    now = first_three(job, SHIPPED)
    rooms = room_of_weights(job, SHIPPED)
    assert len(rooms) >= 5
    for room in rooms:
        for value in tried(room, 500, random.Random(seed)):
            assert first_three(job, changed(room, value)) == now, room


@pytest.mark.parametrize("seed", range(3))
def test_just_outside_its_room_a_weight_changes_the_first_three(seed: int) -> None:
    job = weighed_job(seed)
    now = first_three(job, SHIPPED)
    rooms = room_of_weights(job, SHIPPED)
    for room in rooms:
        # Where two scores are shown as equal, a change may last for a tiny step only.
        if room.lowest is not None:
            below = [max(0.0, room.lowest - step) for step in STEPS]
            assert any(first_three(job, changed(room, value)) != now for value in below), room
        if room.highest is not None:
            above = [room.highest + step for step in STEPS]
            assert any(first_three(job, changed(room, value)) != now for value in above), room
    assert any(room.highest is not None or room.lowest is not None for room in rooms)


@pytest.mark.parametrize("seed", range(3))
def test_a_chance_changes_the_plan_outside_its_room_only(seed: int) -> None:
    job = weighed_job(seed)
    now = first_steps(job, SHIPPED)
    rooms = room_of_chances(job, FALLBACK, SHIPPED)
    assert rooms
    for room in rooms:
        for value in tried(room, 1.0, random.Random(seed)):
            if abs(value - (room.lowest or -1)) > 1e-6 and abs(value - (room.highest or -1)) > 1e-6:
                assert first_steps(job, changed(room, value)) == now, room
        if room.lowest is not None:
            assert first_steps(job, changed(room, max(0.0, room.lowest - 1e-6))) != now, room
        if room.highest is not None:
            assert first_steps(job, changed(room, min(1.0, room.highest + 1e-6))) != now, room


def test_one_candidate_alone_is_first_whatever_the_weights() -> None:
    rooms = room_of_weights(weighed_job(1)[:1], SHIPPED)
    assert all(room.lowest is None and room.highest is None for room in rooms)


def test_no_candidates_have_no_figures() -> None:
    assert room_of_weights([], SHIPPED) == []
    assert room_of_chances([], FALLBACK, SHIPPED) == []


@pytest.mark.parametrize("seed", range(3))
def test_weighing_again_is_weighing_anew(seed: int) -> None:
    rng = random.Random(seed)
    models = catalogue(rng, 3)
    old = wanted(rng, models[0])
    settings = SHIPPED.changed(
        weights={"power": 3, "shaft": 40},
        priors={"shaft": 0.2},
        swap_costs={"capacitor": 99},
        wise_parts=True,
    )
    for record in market(rng, models, 40):
        again = weighed_again(weigh(old, record), settings)
        assert again == weigh(old, record, settings)
        assert again.judgement == judge(old, record, settings)
