"""One way to ask one check about a pair: through all that is presumed before it is judged."""

from collections.abc import Callable
from typing import Any

import pytest

from matcher.checks import BY_NAME
from matcher.finding import Finding
from matcher.judging.presume import prepare
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record

Facts = dict[str, Any]


def look(
    check: str,
    old: Facts | None = None,
    new: Facts | None = None,
    site: Facts | None = None,
    *,
    twice_old: tuple[str, ...] = (),
    twice_new: tuple[str, ...] = (),
) -> Finding | None:
    wanted = Wanted(motor=Motor(**(old or {})), site=Site(**(site or {})), contradicted=frozenset(twice_old))
    conflicts = tuple(Conflict(name, (), ()) for name in twice_new)
    candidate = Record("c", Offer(**(new or {})), conflicts=conflicts)
    return BY_NAME[check].judge(prepare(wanted, candidate))


def told(*given: Any, **named: Any) -> str:
    """Return outcome and loss in a word: `same`, `ok`, `loss 0.4`, `loss 0.8 poor`, `fail`, `none`."""
    found = look(*given, **named)
    if found is None:
        return "none"
    assert found.why.strip()
    assert found.source
    assert (found.loss > 0) == (found.outcome == "loss")
    words = [str(found.outcome)]
    if found.loss:
        words.append(f"{round(found.loss, 3):g}")
    if found.at_best_poor:
        words.append("poor")
    return " ".join(words)


@pytest.fixture(name="look")
def _look() -> Callable[..., Finding | None]:
    return look


@pytest.fixture(name="told")
def _told() -> Callable[..., str]:
    return told
