"""A stage is proved by a bound that meets its value, and by nothing else."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest

from loadplan.plan.clock import Clock
from loadplan.plan.outcomes import stages_of
from loadplan.plan.sets import sets_of
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, ready_stages
from loadplan.plan.stages import StageResult
from tests.plan.test_complete_program import tight_day


@pytest.mark.parametrize("bound", [-math.inf, 0.0])
def test_a_bound_that_was_never_found_proves_nothing(bound: float) -> None:
    one = tight_day(0)
    plan = solve_day(one)
    given = {stage.name: float(stage.value) for stage in plan.stages}
    results = [
        StageResult(stage, given[stage.name], 0.0)
        for stage in (*ready_stages((1, 2)), TIE_DOWNS, MIXED_SETS)
    ]
    solve = SimpleNamespace(
        results=[*results, StageResult(STRENGTH, bound, 0.0)],
        bounder=SimpleNamespace(clock=Clock(1.0)),
    )
    *before, strength = stages_of(sets_of(one), solve, plan.ready, plan.tie_downs)
    assert all(stage.proved for stage in before)
    assert not strength.proved
    assert strength.bound == 0
    assert strength.gap == strength.value > 0
