"""Where the cage is short: first plans, loads let in, and bounds of loads that go in part."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.plan.bounds import Bounder
from loadplan.plan.decode import decode
from loadplan.plan.greedy import greedy
from loadplan.plan.short import first_plan
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import ready_stages
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.plan.test_complete_program import tight_day
from tests.plan.test_fill import bounder_of, ready_by_priority

SEEDS = range(10)


def of_two_priorities(seed: int) -> Day:
    one = tight_day(seed)
    loads = tuple(replace(load, priority=1 + at % 2) for at, load in enumerate(one.loads))
    return replace(one, loads=loads)


def large(one: Day) -> Bounder:
    bounder = bounder_of(one)
    bounder.large = True
    return bounder


def judged(one: Day, bounder: Bounder, values: np.ndarray) -> list[int]:
    """The loads ready by priority of a plan that the judgement agrees with."""
    ready, tie_downs = decode(bounder.master, values)
    assert judge(one, ready, tie_downs).disagreements == ()
    return ready_by_priority(one, ready)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_bound_is_below_the_most(seed: int) -> None:
    one = of_two_priorities(seed)
    most = ready_by_priority(one, solve_day(one).ready)
    bounder = large(one)
    for stage, known in zip(ready_stages((1, 2)), most, strict=True):
        assert bounder.most_ready(stage) >= known
        assert bounder.ready_so_far(stage) >= known
        bounder.selection.ready[stage.priority] = known
        bounder.master.hold_ready(bounder.selection.ready)


def test_one_solution_in_parts_takes_the_place_of_proposals(tmp_path: Path) -> None:
    """Before any loads are proposed, loads in part tell that some of them stay."""
    path = tmp_path / "day.xlsx"
    write_workbook(generate(20, 1, tight=True), path)
    bounder = large(read_day(path))
    priorities = bounder.selection.priority
    lower = 0
    for stage in ready_stages(priorities.tolist()):
        bounder.selection.values[stage.name] = []
        there = bounder.ready_so_far(stage)
        bounder._learn_of_parts(stage)
        now = bounder.ready_so_far(stage)
        assert now <= there == (priorities == stage.priority).sum()
        lower += there - now
        bounder.selection.ready[stage.priority] = now
        bounder.master.hold_ready(bounder.selection.ready)
    assert lower >= 2


@pytest.mark.parametrize("seed", SEEDS)
def test_a_first_plan_has_no_fewer_ready_than_the_hand_rules(seed: int) -> None:
    one = of_two_priorities(seed)
    bounder = bounder_of(one)
    rough = greedy(bounder.master)
    values = first_plan(bounder, rough)
    by_hand, first = judged(one, bounder, rough), judged(one, bounder, values)
    assert by_hand <= first <= ready_by_priority(one, solve_day(one).ready)
