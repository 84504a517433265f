"""The best assignment against an independent solver and by hand."""

import numpy as np
import pytest
from scipy.optimize import linear_sum_assignment

from matcher.many.assign import NONE, best_assignment


@pytest.mark.parametrize("seed", range(40))
def test_total_gain_equals_an_independent_solver(seed: int) -> None:
    rng = np.random.default_rng(seed)
    rows, columns = rng.integers(1, 12, 2)
    gain = np.round(rng.uniform(-50, 100, (rows, columns)) * (rng.random((rows, columns)) < 0.7), 2)
    mine = best_assignment(gain)
    padded = np.concatenate([np.maximum(gain, 0), np.zeros((rows, rows))], axis=1)
    theirs = linear_sum_assignment(padded, maximize=True)
    used = np.flatnonzero(mine != NONE)
    assert gain[used, mine[used]].sum() == pytest.approx(padded[theirs].sum())
    assert len(set(mine[used].tolist())) == len(used)
    assert (gain[used, mine[used]] > 0).all()


@pytest.mark.parametrize(
    ("gain", "columns"),
    [
        pytest.param([[10.0, 9.0], [9.0, 1.0]], [1, 0], id="the dearest pair is not in the best whole"),
        pytest.param([[0.0, -3.0]], [NONE], id="nothing earns"),
        pytest.param([[5.0], [6.0]], [NONE, 0], id="one piece for two plates"),
        pytest.param([[2.0, 2.0], [2.0, 2.0]], [0, 1], id="ties"),
    ],
)
def test_by_hand(gain: list[list[float]], columns: list[int]) -> None:
    assert best_assignment(np.array(gain)).tolist() == columns


def test_no_columns() -> None:
    assert best_assignment(np.empty((3, 0))).tolist() == [NONE] * 3
