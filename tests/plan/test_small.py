"""Days of up to 60 loads: the ways on where no plan is found that reaches all bounds at once."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.plan import small, solve_day
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.compact import Compact
from loadplan.plan.decode import decode
from loadplan.plan.exact import ExactSearch
from loadplan.plan.greedy import greedy
from loadplan.plan.large import LargeSolve
from loadplan.plan.settle import Settled
from loadplan.plan.small import SmallSolve
from loadplan.plan.solved import Outcome
from loadplan.plan.stage_cost import STRENGTH
from loadplan.plan.start import begun_again
from loadplan.workbook.read import read_day
from tests.bench.generate import generate
from tests.bench.many_kinds import many_kinds
from tests.bench.sheet import Rows, write_workbook
from tests.plan.against import held_against
from tests.plan.test_complete_program import tight_day
from tests.plan.test_fill import bounder_of, ready_by_priority

LIMIT = 20.0
Values = np.ndarray[Any, np.dtype[Any]]


def day_of(rows: Rows, folder: Path) -> Day:
    path = folder / "day.xlsx"
    write_workbook(rows, path)
    return read_day(path)


@pytest.fixture
def loads_are_many(monkeypatch: pytest.MonkeyPatch) -> None:
    """Too many for the compact program, as beyond 25 loads."""
    monkeypatch.setattr(small, "MOST_LOADS", 0)


@pytest.mark.parametrize("seed", range(10))
def test_stage_by_stage(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    least = plan_day(tight_day(seed))
    assert least.proved
    monkeypatch.setattr(small, "MOST_LOADS", 0)
    plan = plan_day(tight_day(seed), time_limit=LIMIT)
    held_against(plan, least)
    assert len(plan.ready) == len(least.ready)


@pytest.mark.parametrize("seed", range(10))
def test_a_plan_without_the_compact_program(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    least = plan_day(tight_day(seed))
    fallen: list[LargeSolve] = []

    def many(self: LargeSolve, rough: Values) -> dict[int, int]:
        fallen.append(self)
        return made(self, rough)

    made = LargeSolve.as_many_ready
    monkeypatch.setattr(LargeSolve, "as_many_ready", many)
    monkeypatch.setattr(small, "FIRST_TRY", 0.0)  # no time for what comes before it
    monkeypatch.setattr(SmallSolve, "_by_compact", nothing_found)
    monkeypatch.setattr(SmallSolve, "_most_ready", nothing_found)
    plan = plan_day(tight_day(seed), time_limit=LIMIT)
    assert len(fallen) == 1
    held_against(plan, least)
    assert len(plan.ready) == len(least.ready)


@pytest.mark.parametrize("seed", range(3))
def test_no_later_stage_costs_a_load(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the time comes between two priorities, what the plan has of the second stays too."""

    def most_ready(self: Compact, priority: int) -> Outcome:
        if priority > 1:
            raise OutOfTimeError
        return made(self, priority)

    def mixed(self: SmallSolve, *_: object, **__: object) -> float:
        held.append((dict(self.bounder.selection.ready), self._ready()))
        raise OutOfTimeError

    held: list[tuple[dict[int, int], dict[int, int]]] = []
    made = Compact.most_ready
    monkeypatch.setattr(Compact, "most_ready", most_ready)
    monkeypatch.setattr(SmallSolve, "_bounded", lambda self: False)
    monkeypatch.setattr(SmallSolve, "_mixed_by", mixed)
    plan_day(tight_day(seed), time_limit=LIMIT)
    ((known, ready),) = held
    assert known == ready


def nothing_found(*_: object) -> Settled:
    """What takes longer than there is time for."""
    raise OutOfTimeError


@pytest.mark.parametrize("seed", range(10))
def test_in_whole_numbers_after_no_try_at_all_bounds(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    least = plan_day(tight_day(seed))
    monkeypatch.setattr(small, "FIRST_TRY", 0.0)
    plan = plan_day(tight_day(seed), time_limit=LIMIT)
    held_against(plan, least)
    assert len(plan.ready) == len(least.ready)


@pytest.mark.usefixtures("loads_are_many")
def test_many_kinds_of_gear_for_many_loads(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    one = day_of(many_kinds(4, 2, 0.75), tmp_path)
    taken: list[LargeSolve] = []

    def later(self: LargeSolve, most: dict[int, int]) -> None:
        taken.append(self)
        made(self, most)

    made = LargeSolve.later_stages
    monkeypatch.setattr(LargeSolve, "later_stages", later)
    plan = plan_day(one, time_limit=6.0)
    assert taken, "the day is one of those with very many sets"
    monkeypatch.undo()
    held_against(plan, plan_day(one, time_limit=120))
    bounder = bounder_of(one)
    by_hand, _ = decode(bounder.master, greedy(bounder.master))
    assert ready_by_priority(one, plan.ready) >= ready_by_priority(one, by_hand)


def test_never_worse_than_by_hand(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    one = day_of(generate(6, 1, tight=True), tmp_path)

    def nothing(self: SmallSolve) -> None:
        self.values = np.zeros(len(self.bounder.master.upper))
        raise OutOfTimeError

    monkeypatch.setattr(SmallSolve, "_run", nothing)
    plan = plan_day(one)
    assert plan.ready
    assert not plan.proved
    bounder = bounder_of(one)
    assert plan.ready == decode(bounder.master, greedy(bounder.master))[0]


def test_a_plan_is_the_same_among_other_sets() -> None:
    one = tight_day(3)
    bounder = bounder_of(one)
    values = greedy(bounder.master)
    taken = begun_again(bounder).master
    assert decode(taken, taken.values_of(bounder.master, values)) == decode(bounder.master, values)


def test_a_search_that_came_to_its_end_is_not_made_again() -> None:
    bounder = bounder_of(tight_day(0))
    goes = greedy(bounder.master)[bounder.master.going]
    found = ExactSearch(bounder, STRENGTH, 1.0).at(goes, 1e9)
    assert found.values is not None
    widest = max(bounder.searched.values())
    again = ExactSearch(bounder, STRENGTH, 1.0)
    assert again._first_budget(found.value, goes) > widest
    assert again.at(goes, found.value).values is None
    assert again.at(goes, found.value + 1.0).value == found.value


def test_large_days_keep_the_plan_they_have(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(solve_day, "MANY_LOADS", 0)
    monkeypatch.setattr(LargeSolve, "later_stages", lambda self, most: None)
    one = tight_day(1)
    plan = plan_day(one, time_limit=LIMIT)
    bounder = bounder_of(one)
    by_hand, _ = decode(bounder.master, greedy(bounder.master))
    assert ready_by_priority(one, plan.ready) >= ready_by_priority(one, by_hand)
