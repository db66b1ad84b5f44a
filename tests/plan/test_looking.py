"""Dives and polishing find whole plans: never better than the least, never breaking a limit."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.plan.bounds import Bounder
from loadplan.plan.decode import decode
from loadplan.plan.dive import Dive
from loadplan.plan.partly import partly_settled
from loadplan.plan.polish import Polish
from loadplan.plan.small import SmallSolve
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.stretch import Stretch
from tests.plan.test_complete_program import tight_day
from tests.plan.test_fill import bounder_of

Array = np.ndarray[Any, np.dtype[Any]]


def held_to_count(one: Day) -> tuple[Bounder, Array]:
    """A bounder with loads and tie-downs held at the day's optimum, and the loads that go."""
    solve = SmallSolve(bounder_of(one))
    solve.run()
    assert solve.values is not None
    master = solve.bounder.master
    for stage, _ in master.stage_rows:
        if stage in (MIXED_SETS, STRENGTH):
            master.loosen(stage, np.inf)
    return solve.bounder, np.round(solve.values[master.going])


def value(bounder: Bounder, stage: StageCost, values: Array) -> float:
    return float(bounder.master.traits.cost(stage)[: len(values)] @ values)


@pytest.mark.parametrize("seed", range(6))
def test_a_dive_finds_a_plan_that_the_judge_accepts(seed: int) -> None:
    one = tight_day(seed)
    bounder, goes = held_to_count(one)
    values = Dive(bounder, MIXED_SETS).run(goes)
    assert values is not None
    ready, tie_downs = decode(bounder.master, values)
    assert len(ready) == int(goes.sum())
    assert judge(one, ready, tie_downs).disagreements == ()
    optimum = {stage.name: stage.value for stage in solve_day(one).stages}
    assert len(tie_downs) == optimum["tie-downs"]
    assert value(bounder, MIXED_SETS, values) >= optimum["mixed sets"]


@pytest.mark.parametrize("seed", range(6))
def test_polishing_ends_at_the_least_where_all_sets_are_free_at_once(seed: int) -> None:
    one = tight_day(seed)
    bounder, goes = held_to_count(one)
    # The strongest plan with as many tie-downs: the worst there is to begin with.
    worst = StageCost(name="strongest", strength=-1)
    begin = partly_settled(bounder, worst, goes, [], np.inf, 10.0)
    assert begin is not None
    polished = Polish(bounder, MIXED_SETS, 1.0).run(begin)
    assert value(bounder, MIXED_SETS, polished) <= value(bounder, MIXED_SETS, begin)
    ready, tie_downs = decode(bounder.master, polished)
    assert judge(one, ready, tie_downs).disagreements == ()
    optimum = {stage.name: stage.value for stage in solve_day(one).stages}
    assert value(bounder, MIXED_SETS, polished) == optimum["mixed sets"]


def test_the_stretches_that_are_passed_over_hold_nothing_better() -> None:
    passed = {True: 0, False: 0}
    for seed in range(6):
        bounder, goes = held_to_count(tight_day(seed))
        values = partly_settled(bounder, STRENGTH, goes, [], np.inf, 10.0)
        assert values is not None
        for stage in (TIE_DOWNS, MIXED_SETS):
            polish, now = Polish(bounder, stage, 1.0), value(bounder, stage, values)
            for load in np.nonzero(goes)[0]:
                stretch = set(bounder.master.arrays.of_load[load])
                over = bool(stretch) and not polish.could_gain(values, stretch)
                passed[over] += 1
                if over:
                    again = Stretch(bounder, stage, values, stretch)
                    assert again.better(now - 0.9, 10.0) is None
    assert min(passed.values()) > 5


def test_what_is_settled_stays_and_nothing_is_found_below_the_least() -> None:
    bounder, goes = held_to_count(tight_day(3))
    master = bounder.master
    values = partly_settled(bounder, STRENGTH, goes, [], np.inf, 10.0)
    assert values is not None
    kept = [int(c) for c in np.nonzero(values[master.base :] > 0.5)[0][:1] + master.base]
    again = partly_settled(bounder, STRENGTH, goes, kept, np.inf, 10.0)
    assert again is not None
    assert again[kept[0]] == 1.0
    least = value(bounder, STRENGTH, values)
    assert partly_settled(bounder, STRENGTH, goes, [], least - 1.0, 10.0) is None
