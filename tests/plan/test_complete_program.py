"""The complete program, tier patterns and all, agrees with the plan found over sets."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.plan import objectives
from loadplan.plan.matrix import matrix_of
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver
from tests.plan.build import binder, chain, day, machine


def tight_day(seed: int) -> Day:
    """Three machines and a cage that is too small for some seeds."""
    loads = [Load(id=str(n), priority=1 + n % 2) for n in range(3)]
    weights = [9_000 + 700 * seed, 14_000 + 1_300 * (seed % 5), 19_000 + 900 * (seed % 7)]
    articles = [machine(f"M{n}", str(n), weight, 9 + 4 * n) for n, weight in enumerate(weights)]
    gear = [
        chain("a", 3150, 3 + seed % 3),
        chain("b", 4700, 4),
        chain("c", 6600, 3 + seed % 4),
        binder("p", 4000, 5),
        binder("q", 5400, 4 + seed % 2),
    ]
    return day(loads, articles, gear)


def optimum(one: Day) -> list[Fraction]:
    program = build(sets_of(one), complete=True)
    variables = program.variables
    place = {variable: n for n, variable in enumerate(variables.all)}
    stages = [
        [(v, -w) for v, w in objectives.loads_ready(program.sets, variables, priority)]
        for priority in (1, 2)
    ]
    stages += [
        objectives.tie_downs(variables),
        objectives.mixed_sets(variables),
        objectives.strength_issued(variables),
    ]
    solver = Solver(matrix_of(program.problem, variables.all))
    found: list[Fraction] = []
    for stage in stages:
        cost = np.zeros(len(place))
        for variable, weight in stage:
            cost[place[variable]] += float(weight)
        solver.price(cost)
        outcome = solver.solve(60, 1.0)
        assert outcome.status is Status.OPTIMAL
        assert outcome.values is not None
        value = round(float(cost @ np.round(outcome.values)))
        found.append(Fraction(value))
        (columns,) = np.nonzero(cost)
        solver.add_row(columns, cost[columns], -np.inf, value)
    return [-found[0], -found[1], *found[2:]]


@pytest.mark.parametrize("seed", range(8))
def test_both_forms_have_the_same_optimum(seed: int) -> None:
    one = tight_day(seed)
    assert [stage.value for stage in plan_day(one).stages] == optimum(one)


def test_every_pair_of_a_set_longer_than_its_patterns_counts() -> None:
    """Four strong tie-downs for one machine; the other takes six weak ones, no two of them alike.

    Patterns list four and five. Two strong and three weak each would be one mixed set more.
    """
    weak = [chain(f"c{n}", 1_700, 1) for n in range(6)]
    gear = [chain("strong", 2_500, 4), *weak, binder("p", 4_000, 10)]
    loads = [Load(id="1", priority=1), Load(id="2", priority=2)]
    one = day(loads, [machine("M1", "1", 10_000), machine("M2", "2", 10_000)], gear)
    found = optimum(one)
    assert found[:4] == [1, 1, 10, 5]
    assert [stage.value for stage in plan_day(one).stages] == found
