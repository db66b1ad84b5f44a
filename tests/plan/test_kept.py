"""What is told at the linear bound, against every solution in whole numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.kept import least_with_kept
from loadplan.plan.matrix import Matrix
from loadplan.plan.solved import Status
from tests.plan.test_rounded_sums import Array, matrix, problems, whole_solutions

SECONDS = 60.0


@given(problems(), st.booleans())
def test_what_is_told_is_the_least_or_that_there_is_none(
    problem: tuple[Matrix, Array], asks_nothing: bool
) -> None:
    of, cost = problem
    cost = np.zeros(len(cost)) if asks_nothing else np.sign(cost)
    every = whole_solutions(of)
    told = least_with_kept(of, cost, SECONDS)
    if told.status is Status.INFEASIBLE:
        assert not len(every)
    elif told.status is Status.OPTIMAL:
        assert told.values is not None
        values = np.round(told.values)
        assert (every == values).all(axis=1).any()
        assert values @ cost == (every @ cost).min() == told.bound
    else:
        assert told.values is None
        assert not len(every) or told.bound <= (every @ cost).min()


@pytest.mark.parametrize(
    ("low", "status"), [(3.0, Status.OPTIMAL), (2.5, Status.LIMIT), (5.0, Status.INFEASIBLE)]
)
def test_three_endings(low: float, status: Status) -> None:
    # Two whole numbers up to 2 whose sum is exactly so much: 3 can be, 5 cannot, and that 2.5
    # cannot either is not told by fractions.
    of = matrix([[1, 1]], [low], [low], [2, 2])
    assert least_with_kept(of, np.zeros(2), SECONDS).status is status


def test_the_least_above_the_bound_is_left_to_a_search() -> None:
    # 2x + 2y >= 3 takes two pieces; fractions do with one and a half, rounded up two.
    told = least_with_kept(matrix([[2, 2]], [3.0], [9.0], [2, 2]), np.ones(2), SECONDS)
    assert (told.status, told.bound) == (Status.OPTIMAL, 2.0)
    # 4x + 4y >= 4 and 4x - 4y = 2 never hold in whole numbers; fractions do with one.
    rows = [[4, 4], [4, -4]]
    told = least_with_kept(matrix(rows, [4.0, 2.0], [9.0, 2.0], [2, 2]), np.ones(2), SECONDS)
    assert (told.status, told.bound) == (Status.LIMIT, 1.0)
