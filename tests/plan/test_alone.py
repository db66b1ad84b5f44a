"""What loads come to alone bounds what any plan comes to, and is met where the cage is ample."""

from __future__ import annotations

from collections import Counter

import pytest

from loadplan.plan.alone import least_alone
from loadplan.plan.blocks import Arrays
from loadplan.plan.sets import sets_of
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS
from tests.plan.build import binder, chain, day, machine
from tests.plan.test_bounds import day_of
from tests.plan.test_complete_program import tight_day

LOADS = day_of(0).loads[:2]


@pytest.mark.parametrize("one", [*map(day_of, range(20)), *map(tight_day, range(10))])
def test_no_plan_comes_to_less(one) -> None:
    plan = solve_day(one)
    assert plan.proved
    going = Counter(load.priority for load in one.loads if load.id in plan.ready)
    arrays = Arrays(sets_of(one))
    least = [least_alone(arrays, stage, going) for stage in (TIE_DOWNS, MIXED_SETS, STRENGTH)]
    for bound, stage in zip(least, plan.stages[-3:], strict=True):
        assert bound <= stage.value


def test_with_gear_for_all_it_is_the_least() -> None:
    """Four chains of half of half the weight each: 10,000 lb take 2,500, 14,000 lb take 3,500."""
    machines = [machine("a", LOADS[0].id, 10_000), machine("b", LOADS[1].id, 14_000)]
    gear = [chain("small", 2500, 9), chain("large", 3500, 9), binder("any", 3500, 99)]
    arrays = Arrays(sets_of(day(LOADS, machines, gear)))
    assert least_alone(arrays, TIE_DOWNS, {1: 2}) == 8
    assert least_alone(arrays, STRENGTH, {1: 2}) == 4 * 2500 + 4 * 3500 + 8 * 3500
    assert least_alone(arrays, STRENGTH, {1: 1}) == 4 * 2500 + 4 * 3500


def test_a_load_that_cannot_go_is_none_of_those_that_do() -> None:
    machines = [machine("a", LOADS[0].id, 10_000), machine("b", LOADS[1].id, 900_000)]
    gear = [chain("small", 2500, 4), binder("any", 3500, 4)]
    arrays = Arrays(sets_of(day(LOADS, machines, gear)))
    assert least_alone(arrays, TIE_DOWNS, {1: 2}) == 4
