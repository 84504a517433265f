"""Who gets which: pairs of rows and columns with the largest total gain, each used at most once.

Shortest augmenting paths with potentials (the Hungarian method as Kuhn, Munkres, Jonker and Volgenant gave
it): exact, one row after another, in about rows^2 x columns steps at worst.
"""

import numpy as np
import numpy.typing as npt

from matcher.tally import Points

Columns = npt.NDArray[np.int64]
NONE = -1


def best_assignment(gain: Points) -> Columns:
    """Return for each row its column, `NONE` where leaving it out gains more.

    `gain` is (rows, columns); entries of 0 or less are never used. The total gain is the largest there is.
    """
    rows, columns = gain.shape
    # A row may also stay alone: each has a column of its own that gains nothing.
    cost = np.concatenate([-np.maximum(gain, 0.0), np.zeros((rows, rows))], axis=1)
    owner = np.full(columns + rows, NONE, np.int64)
    of_row, of_column = np.zeros(rows), np.zeros(columns + rows)
    for row in range(rows):
        _give(row, cost, owner, of_row, of_column)
    found = np.full(rows, NONE, np.int64)
    taken = np.flatnonzero(owner[:columns] != NONE)
    found[owner[taken]] = taken
    used = found != NONE
    found[used] = np.where(gain[used, found[used]] > 0, found[used], NONE)
    return found


def _give(row: int, cost: Points, owner: Columns, of_row: Points, of_column: Points) -> None:
    """Give one more row a column, moving others along the cheapest chain of exchanges."""
    distance = np.full(cost.shape[1], np.inf)
    before = np.full(cost.shape[1], NONE, np.int64)
    done = np.zeros(cost.shape[1], bool)
    reached, at, last = 0.0, row, NONE
    while at != NONE:
        through = reached + cost[at] - of_row[at] - of_column
        nearer = ~done & (through < distance)
        distance[nearer], before[nearer] = through[nearer], last
        last = int(np.argmin(np.where(done, np.inf, distance)))
        reached, done[last] = distance[last], True
        at = int(owner[last])
    _settle(row, last, reached, (distance, before, done), (owner, of_row, of_column))


def _settle(
    row: int,
    last: int,
    reached: float,
    search: tuple[Points, Columns, npt.NDArray[np.bool_]],
    found: tuple[Columns, Points, Points],
) -> None:
    """Put down the new potentials and the exchanges along the path that ended at a free column."""
    distance, before, done = search
    owner, of_row, of_column = found
    passed = done.copy()
    passed[last] = False
    of_row[row] += reached
    of_row[owner[passed]] += reached - distance[passed]
    of_column[passed] -= reached - distance[passed]
    while last != NONE:
        previous = int(before[last])
        owner[last] = row if previous == NONE else owner[previous]
        last = previous
