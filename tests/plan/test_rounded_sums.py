"""Rounded sums of rows hold for every solution in whole numbers, and raise the linear bound."""

from __future__ import annotations

import math
from itertools import product
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.clock import Clock
from loadplan.plan.matrix import Matrix, matrix_of_rows
from loadplan.plan.raised_bound import Raising
from loadplan.plan.rounded_sums import SummedRows
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver

Array = np.ndarray[Any, np.dtype[Any]]


def matrix(rows: list[list[int]], low: list[float], high: list[float], upper: list[int]) -> Matrix:
    return matrix_of_rows(
        np.array(rows, dtype=float),
        low,
        high,
        np.array(upper, dtype=float),
        np.ones(len(upper), dtype=bool),
    ).columnwise()


def whole_solutions(of: Matrix) -> Array:
    """Every solution in whole numbers, one a row."""
    bounds = zip(of.lower, of.upper, strict=True)
    every = np.array(list(product(*(range(int(a), int(b) + 1) for a, b in bounds))), dtype=float)
    activity = every @ _dense(of).T
    return every[((activity >= of.row_lower) & (activity <= of.row_upper)).all(axis=1)]


def _dense(of: Matrix) -> Array:
    dense = np.zeros((len(of.row_lower), len(of.lower)))
    dense[of.places, np.repeat(np.arange(len(of.lower)), np.diff(of.starts))] = of.coefficients
    return dense


def _relaxed(of: Matrix, cost: Array) -> tuple[Solver, Array | None]:
    """The solver of the linear problem, and its solution if there is one."""
    solver = Solver(of.linear(), presolve=False)
    solver.price(cost)
    return solver, solver.relax(10.0).values


@st.composite
def problems(draw: st.DrawFn) -> tuple[Matrix, Array]:
    """A problem and a cost.

    Up to six columns; rows of all three kinds, one of them often a choice of exactly one.
    """
    columns = draw(st.integers(3, 6))
    upper = draw(st.lists(st.integers(0, 2), min_size=columns, max_size=columns))
    rows, low, high = [], [], []
    if draw(st.booleans()):
        rows.append([1] * (columns - 1) + [0])
        low.append(1.0)
        high.append(1.0)
    for _ in range(draw(st.integers(2, 4))):
        row = draw(st.lists(st.integers(-2, 4), min_size=columns, max_size=columns))
        most = float(draw(st.integers(0, 9)))
        kind = draw(st.sampled_from(["most", "least", "between"]))
        rows.append(row)
        low.append(-math.inf if kind == "most" else most - 4 * (kind == "between"))
        high.append(math.inf if kind == "least" else most)
    cost = draw(st.lists(st.integers(-5, 9).map(float), min_size=columns, max_size=columns))
    return matrix(rows, low, high, upper), np.array(cost)


@given(problems(), st.data())
def test_every_whole_solution_keeps_a_rounded_sum_of_any_weights(
    problem: tuple[Matrix, Array], data: st.DataObject
) -> None:
    one, cost = problem
    solver, values = _relaxed(one, cost)
    if values is None:
        return
    share = st.sampled_from([0.0, 0.25, 1 / 3, 0.5, -0.5, 2 / 3, 0.1, -0.7])
    many = st.lists(share, min_size=solver.rows, max_size=solver.rows)
    weights = np.array(data.draw(st.lists(many, min_size=1, max_size=5)))
    solutions = whole_solutions(one)
    activity = solver.activity(values)
    for found in SummedRows(one).rounded(weights, activity, values, one.upper, 99):
        assert found.excess(values) > 0
        sums = solutions[:, found.columns] @ found.coefficients
        assert (sums <= found.most).all()


@given(problems(), st.integers(-20, 30))
def test_a_raised_bound_holds_and_leaves_out_nothing_that_is_better(
    problem: tuple[Matrix, Array], most: int
) -> None:
    one, cost = problem
    below = most + 0.5
    raised = Raising(one, cost, below).run(Clock(10.0))
    solutions = whole_solutions(one)
    better = solutions[solutions @ cost <= below]
    if len(better):
        assert raised.bound <= float((better @ cost).min()) + 1e-6
        assert not better[:, ~raised.could].any()
    if raised.values is not None:
        activity = _dense(one) @ raised.values
        assert (activity >= one.row_lower - 1e-6).all()
        assert (activity <= one.row_upper + 1e-6).all()
        assert not raised.values[~raised.could & (one.lower == 0)].any()


@given(problems(), st.data())
def test_rounded_sums_hold_over_the_columns_that_are_left(
    problem: tuple[Matrix, Array], data: st.DataObject
) -> None:
    """Columns are left out between rounds; rows made before and after hold for what remains."""
    one, cost = problem
    solver, relaxed = _relaxed(one, cost)
    if relaxed is None:
        return
    weights = np.eye(solver.rows) / data.draw(st.sampled_from([2, 3, 4]))
    activity, rows = solver.activity(relaxed), SummedRows(one)
    before = list(rows.rounded(weights, activity, relaxed, one.upper, 9))
    rows.add(before)
    activity = np.append(activity, [made.excess(relaxed) + made.most for made in before])
    gone = (relaxed == 0) & np.array(data.draw(_marks(len(cost))))
    rows.leave_out(gone)
    values, upper = relaxed[~gone], one.upper[~gone]
    solutions = whole_solutions(one)
    solutions = solutions[~solutions[:, gone].any(axis=1)][:, ~gone]
    for found in rows.rounded(np.eye(len(activity)) / 2, activity, values, upper, 9):
        assert found.excess(values) > 0
        assert (solutions[:, found.columns] @ found.coefficients <= found.most).all()


def test_a_solve_ends_with_a_solution_that_is_enough() -> None:
    """Two of three, at 5, 4 and 4: any pair is enough at 10 or less, else the least is 8."""
    one = matrix([[1, 1, 1]], [2.0], [2.0], [1, 1, 1])
    for enough, worst in ((10.0, 10.0), (-math.inf, 8.0)):
        solver = Solver(one, presolve=False)
        solver.price(np.array([5.0, 4.0, 4.0]))
        outcome = solver.solve(10.0, 1.0, enough=enough)
        assert outcome.status is Status.OPTIMAL
        assert outcome.values is not None
        assert float(outcome.values @ [5.0, 4.0, 4.0]) <= worst


def _marks(number: int) -> st.SearchStrategy[list[bool]]:
    return st.lists(st.booleans(), min_size=number, max_size=number)


def test_columns_that_are_too_dear_are_taken_away_and_the_rest_keep_their_places() -> None:
    """Nine of ten cost more than the bound leaves room for."""
    one = matrix([[1] * 10, [2] * 9 + [0]], [1.0, -math.inf], [1.0, 3.0], [1] * 10)
    cost = np.array([50.0] * 9 + [10.0])
    raised = Raising(one, cost, 40.0).run(Clock(10.0))
    assert raised.could.tolist() == [False] * 9 + [True]
    assert raised.values is not None
    assert raised.values.tolist() == [0.0] * 9 + [1.0]
    assert raised.bound == pytest.approx(10.0)


def test_a_problem_without_entries_is_settled_by_its_bounds() -> None:
    """The solver has no inverse of a basis then, and asking for it would end the program."""
    one = matrix([[0, 0, 0]], [-math.inf], [0.0], [0, 2, 0])
    assert Raising(one, np.array([1.0, -1.0, 1.0]), 5.0).run(Clock(10.0)).bound == -2.0


def test_a_linear_problem_that_the_primal_simplex_loses_is_solved() -> None:
    """From nothing, without presolve, it ends without knowing where (HiGHS 1.13)."""
    rows = [[3, 2, -1, -2, 4, -2], [0, 4, 2, 1, -1, 3], [3, 1, 2, 0, 0, -1]]
    one = matrix(rows, [3.0, 3.0, 0.0], [math.inf, 7.0, 4.0], [1, 0, 1, 2, 2, 1])
    solver = Solver(one.linear(), presolve=False)
    solver.price(np.array([4.0, -2.0, -3.0, 4.0, -2.0, -1.0]))
    assert solver.relax(10.0).bound == pytest.approx(-8.0)


@pytest.mark.parametrize("around", [5, 7, 9])
def test_the_inequality_of_an_odd_ring_is_found(around: int) -> None:
    """Of an odd ring of n, no two neighbours taken, at most (n - 1) / 2 can be.

    The linear bound is n / 2. Chvátal's example of what one rounding gives (1973; from memory).
    """
    rows = [[int(c in (r, (r + 1) % around)) for c in range(around)] for r in range(around)]
    one = matrix(rows, [-math.inf] * around, [1.0] * around, [1] * around)
    raised = Raising(one, -np.ones(around), 0.0).run(Clock(10.0))
    assert raised.bound == pytest.approx(-(around - 1) / 2)


def test_sets_of_four_out_of_seven_pieces_are_one_set() -> None:
    """Two articles of four tie-downs, seven binders and a dearer kind: the second takes that."""
    rows = [[1, 1, 0, 0], [0, 0, 1, 1], [4, 0, 4, 0]]
    one = matrix(rows, [1.0, 1.0, -math.inf], [1.0, 1.0, 7.0], [1, 1, 1, 1])
    raised = Raising(one, np.array([10.0, 30.0, 10.0, 30.0]), 100.0).run(Clock(10.0))
    assert raised.bound == pytest.approx(40.0)
    closed = Raising(one, np.array([10.0, 30.0, 10.0, 30.0]), 39.5).run(Clock(10.0))
    assert closed.bound == math.inf
