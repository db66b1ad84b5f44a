"""Loads planned afresh: the others stay as they are, and what is held is kept."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.plan.afresh import Afresh
from loadplan.plan.bounds import Bounder
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.decode import decode
from loadplan.plan.greedy import greedy
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import GOING, MIXED_SETS, STRENGTH, TIE_DOWNS
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.plan.test_complete_program import tight_day
from tests.plan.test_fill import bounder_of

SEEDS = range(6)


def begun_with(one: Day) -> tuple[Bounder, np.ndarray, dict[int, int]]:
    bounder = bounder_of(one)
    values = greedy(bounder.master)
    goes, priority = np.round(values[bounder.master.going]), bounder.selection.priority
    ready = {int(p): int(goes[priority == p].sum()) for p in np.unique(priority)}
    return bounder, values, ready


@pytest.mark.parametrize("seed", SEEDS)
def test_the_whole_day_afresh_is_the_least_there_is(seed: int) -> None:
    one = tight_day(seed)
    bounder, values, ready = begun_with(one)
    search = CompleteSearch.of(bounder.master, patterns=False, pairs=False)
    every = range(len(one.loads))
    most = Afresh(search, values, every, ready).least(GOING, 1.0, np.inf, 30.0)
    assert most is not None
    plan = solve_day(one)
    assert round(most[bounder.master.going].sum()) == len(plan.ready)
    ready = {1: len(plan.ready)}
    fewest = Afresh(search, most, every, ready).least(TIE_DOWNS, 1.0, np.inf, 30.0)
    assert fewest is not None
    assert judge(one, *decode(bounder.master, fewest)).disagreements == ()
    found = next(stage for stage in plan.stages if stage.name == "tie-downs")
    assert bounder.master.value(TIE_DOWNS, fewest) == found.value


@pytest.mark.parametrize("seed", SEEDS)
def test_all_other_loads_stay_as_they_are(seed: int, tmp_path: Path) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(20, seed, tight=True), path)
    one = read_day(path)
    bounder, values, ready = begun_with(one)
    master = bounder.master
    search = CompleteSearch.of(master, patterns=False)
    for free in ({0, 1, 2, 3}, {7, 9, 15}, {19}):
        below = master.value(STRENGTH, values)
        found = Afresh(search, values, free, ready).least(STRENGTH, 1.0, below, 30.0)
        assert found is not None
        others = ~np.isin(master.traits.load, list(free))
        before = np.zeros(len(found))
        before[: len(values)] = values
        assert (found[others] == before[others]).all()
        assert master.value(STRENGTH, found) <= below
        assert judge(one, *decode(master, found)).disagreements == ()


def test_what_is_held_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(20, 1, tight=True), path)
    one = read_day(path)
    bounder, values, ready = begun_with(one)
    master, search = bounder.master, CompleteSearch.of(bounder.master, patterns=False)
    for stage in (TIE_DOWNS, MIXED_SETS):
        master.add_stage(stage, master.value(stage, values))
    held = dict(master.held)
    free = range(12)
    found = Afresh(search, values, free, ready).least(STRENGTH, 1.0, np.inf, 30.0)
    assert found is not None
    for stage, row in master.stage_rows:
        assert master.value(stage, found) <= held[row]
    goes = np.round(found[master.going])
    for priority, number in ready.items():
        assert goes[bounder.selection.priority == priority].sum() >= number
    assert master.value(STRENGTH, found) < master.value(STRENGTH, values)


def test_none_where_more_is_asked_for_than_can_go() -> None:
    one = tight_day(0)
    bounder, values, ready = begun_with(one)
    search = CompleteSearch.of(bounder.master, patterns=False, pairs=False)
    again = Afresh(search, values, range(len(one.loads)), {1: len(one.loads) + 1})
    assert again.least(TIE_DOWNS, 1.0, np.inf, 30.0) is None
    most = bounder.master.value(TIE_DOWNS, values)
    again = Afresh(search, values, [0], ready)
    assert again.least(TIE_DOWNS, 1.0, most - 100.0, 30.0) is None
