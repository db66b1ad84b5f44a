"""The way large days are planned, on days small enough to know the least."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from loadplan.api import plan_day
from loadplan.day.load import Load
from loadplan.plan import exact, large, short_cage, solve_day
from loadplan.plan.raised_bound import Raised
from loadplan.plan.raised_plan import RaisedPlan
from loadplan.plan.solved import Outcome, Status
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.plan.against import held_against, order
from tests.plan.build import binder, chain, day, machine

LOADS = 7


@pytest.mark.parametrize("at_once", [400, 0], ids=["large", "very large"])
@pytest.mark.parametrize("tight", [False, True], ids=["ample", "tight"])
@pytest.mark.parametrize("number", range(2))
def test_never_better_than_the_least_and_equal_where_proved(
    number: int, tight: bool, at_once: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(LOADS, number, tight), path)
    one = read_day(path)
    least = plan_day(one, time_limit=60.0)
    assert all(stage.proved for stage in least.stages)
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)
    monkeypatch.setattr(short_cage, "MOST_SEARCHED", at_once)
    monkeypatch.setattr(exact, "MOST_SEARCHED", at_once)
    plan = plan_day(one, time_limit=4.0)
    held_against(plan, least)
    assert len(plan.ready) >= len(least.ready) - 1


def test_loads_are_left_where_no_plan_reaches_the_bounds(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(LOADS, 1, True), path)
    one = read_day(path)
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)
    monkeypatch.setattr(large.LargeSolve, "_near_the_bound", lambda self, goes: None)
    plan = plan_day(one, time_limit=4.0)
    monkeypatch.undo()
    least = plan_day(one, time_limit=60.0)
    assert order(plan) >= order(least)
    assert len(plan.ready) >= len(least.ready) - 1


def test_sets_that_are_whole_already_are_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(LOADS, 2, tight=False), path)
    one = read_day(path)
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)

    def never(self: large.LargeSolve, stage: object, goes: object) -> None:
        raise AssertionError("nothing is left to dive for")

    monkeypatch.setattr(large.LargeSolve, "_dive", never)
    plan = plan_day(one, time_limit=20.0)
    assert plan.proved


def test_a_bound_is_no_higher_than_strengths_that_are_not_whole(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    gear = [chain("C", Fraction("6600.1"), 8), binder("B", Fraction("6600.2"), 8)]
    one = day([Load(id="a")], [machine("A", "a", 10_000)], gear)
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)
    monkeypatch.setattr(short_cage, "MOST_SEARCHED", 0)
    plan = plan_day(one, time_limit=10.0)
    strength = plan.stages[-1]
    assert strength.value == 4 * (Fraction("6600.1") + Fraction("6600.2"))
    assert strength.bound == strength.value


def test_nothing_is_bettered_once_it_is_proved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(LOADS, 0, tight=False), path)
    polished: list[str] = []
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)
    monkeypatch.setattr(large.LargeSolve, "_near", lambda self, stage: False)
    monkeypatch.setattr(
        large.LargeSolve, "_polish", lambda self, stage, *rest: polished.append(stage.name)
    )
    plan = plan_day(read_day(path), time_limit=60.0)
    assert all(stage.proved for stage in plan.stages)
    assert len(polished) == 1


@pytest.mark.parametrize("searched", [400, 0], ids=["and searched", "only raised"])
def test_a_plan_at_the_raised_bound_is_the_least(
    searched: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Days whose first plan is not the least, so that the bound is raised: no other is less."""
    ended: list[Status] = []
    outcome = RaisedPlan.outcome

    def heard(self: RaisedPlan, raised: Raised, *, plan: bool) -> Outcome:
        found = outcome(self, raised, plan=plan)
        ended.append(found.status)
        return found

    monkeypatch.setattr(RaisedPlan, "outcome", heard)
    monkeypatch.setattr(exact, "MOST_SEARCHED", searched)
    for loads, number in ((7, 3), (6, 606)):
        path = tmp_path / f"day{number}.xlsx"
        write_workbook(generate(loads, number, tight=True), path)
        one = read_day(path)
        least = plan_day(one, time_limit=60.0)
        with monkeypatch.context() as patched:
            patched.setattr(solve_day, "MANY_LOADS", 0)
            held_against(plan_day(one, time_limit=30.0), least)
    assert {Status.INFEASIBLE, Status.OPTIMAL} <= set(ended)
