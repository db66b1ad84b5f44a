"""A stage is proved by a bound that meets its value, and by nothing else."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest

from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.stage import Stage
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.outcomes import stages_of
from loadplan.plan.sets import sets_of
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, ready_stages
from loadplan.plan.stages import StageResult
from tests.plan.test_complete_program import tight_day

FIRST, SECOND = ready_stages((1, 2))


def stages(plan: DayPlan, results: list[StageResult]) -> tuple[Stage, ...]:
    """The stages of ``plan`` where ``results`` are all that was bounded."""
    sets = sets_of(plan.day)
    master = SimpleNamespace(arrays=Arrays(sets))
    bounder = SimpleNamespace(clock=Clock(1.0), master=master)
    solve = SimpleNamespace(results=results, bounder=bounder)
    return stages_of(sets, solve, plan.ready, plan.tie_downs)


def met(plan: DayPlan) -> list[StageResult]:
    """A result for every stage, its bound the plan's value."""
    order = (FIRST, SECOND, TIE_DOWNS, MIXED_SETS, STRENGTH)
    return [
        StageResult(stage, float(found.value), 0.0)
        for stage, found in zip(order, plan.stages, strict=True)
    ]


@pytest.mark.parametrize("bound", [-math.inf, 0.0])
def test_a_bound_that_was_never_found_proves_nothing(bound: float) -> None:
    plan = solve_day(tight_day(0))
    results = [*met(plan)[:-1], StageResult(STRENGTH, bound, 0.0)]
    *before, strength = stages(plan, results)
    assert all(stage.proved for stage in before)
    assert not strength.proved
    assert 0 < strength.bound < strength.value


def test_what_loads_take_alone_bounds_a_plan_that_nothing_else_does() -> None:
    """Each of the three machines needs four tie-downs, whatever the cage has."""
    plan = solve_day(tight_day(0))
    *ready, tie_downs, mixed, strength = stages(plan, [])
    assert [stage.bound for stage in ready] == [2, 1]
    assert tie_downs.bound == 4 * len(plan.ready)
    assert mixed.bound == 0
    assert 0 < strength.bound < strength.value


def test_a_bound_of_plans_with_more_loads_ready_says_nothing() -> None:
    plan = solve_day(tight_day(0))
    more = ((FIRST, float(plan.stages[0].value) + 1.0),)
    results = [*met(plan)[:2], StageResult(TIE_DOWNS, float(plan.stages[2].value), 0.0, more)]
    same = [*met(plan)[:2], StageResult(TIE_DOWNS, float(plan.stages[2].value), 0.0)]
    assert stages(plan, same)[2].proved
    alone = stages(plan, [])[2]
    assert stages(plan, results)[2].bound == alone.bound


@pytest.mark.parametrize(
    ("held", "usable"),
    [((TIE_DOWNS, 0.0), True), ((TIE_DOWNS, -1.0), False), ((STRENGTH, 1.0), False)],
)
def test_a_bound_holds_for_plans_that_come_to_no_more(held, usable) -> None:
    """Held at what the plan has, at one less, and with a stage held that comes later."""
    plan = solve_day(tight_day(0))
    before, mixed = met(plan)[:3], float(plan.stages[3].value)
    stage, beside = held
    limit = beside + (float(plan.stages[2].value) if stage is TIE_DOWNS else 0.0)
    found = stages(plan, [*before, StageResult(MIXED_SETS, mixed, 0.0, ((stage, limit),))])[3]
    assert found.bound == (mixed if usable else 0)
