"""Filling up: from no load at all to as many as can go, priority by priority."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise, product
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.plan.blocks import Arrays
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import Clock
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.decode import decode
from loadplan.plan.fill import Fill
from loadplan.plan.greedy import greedy
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import STRENGTH
from loadplan.plan.start import begun
from loadplan.plan.stretch import Stretch
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.plan.test_complete_program import tight_day

Array = np.ndarray[Any, np.dtype[Any]]


def bounder_of(one: Day) -> Bounder:
    sets = sets_of(one)
    return begun(Arrays(sets), build(sets, complete=False), Clock(60.0))


def ready_by_priority(one: Day, ready: tuple[str, ...]) -> list[int]:
    priorities = sorted({load.priority for load in one.loads})
    by_id = one.load_by_id
    return [sum(1 for load in ready if by_id[load].priority == p) for p in priorities]


def forty_loads(tmp_path: Path) -> Day:
    """A day of three priorities on which a third of the loads stay by hand rules."""
    path = tmp_path / "day.xlsx"
    write_workbook(generate(40, 2, tight=True), path)
    return read_day(path)


def filled(seed: int) -> tuple[list[int], list[int]]:
    """Loads ready by priority, filled up from none, and the most there are."""
    one = tight_day(seed)
    loads = tuple(
        replace(load, priority=1 + number % 2) for number, load in enumerate(reversed(one.loads))
    )
    one = replace(one, loads=loads)
    bounder = bounder_of(one)
    values = filled_from_none(bounder)
    ready, tie_downs = decode(bounder.master, values)
    assert judge(one, ready, tie_downs).disagreements == ()
    return ready_by_priority(one, ready), ready_by_priority(one, solve_day(one).ready)


def filled_from_none(bounder: Bounder) -> Array:
    """The last of the plans that filling up from no load at all leads to."""
    search = CompleteSearch.of(bounder.master, patterns=False, pairs=False)
    return [*Fill(bounder, search, {}).run(np.zeros(len(bounder.master.upper)))][-1]


def test_from_no_load_to_the_most() -> None:
    found = [filled(seed) for seed in range(10)]
    # So small a day is planned afresh all at once.
    assert all(ready == most for ready, most in found)


def test_every_plan_on_the_way_is_better_than_the_one_before(tmp_path: Path) -> None:
    one = forty_loads(tmp_path)
    bounder = bounder_of(one)
    search = CompleteSearch.of(bounder.master, patterns=False, pairs=False)
    found = [ready_by_priority(one, decode(bounder.master, greedy(bounder.master))[0])]
    for values in Fill(bounder, search, {}).run(greedy(bounder.master)):
        ready, tie_downs = decode(bounder.master, values)
        assert judge(one, ready, tie_downs).disagreements == ()
        found.append(ready_by_priority(one, ready))
    assert len(found) >= 3
    assert all(later > earlier for earlier, later in pairwise(found))


def test_no_load_more_is_asked_for_than_there_can_be(tmp_path: Path) -> None:
    one = forty_loads(tmp_path)
    bounder = bounder_of(one)
    search = CompleteSearch.of(bounder.master, patterns=False, pairs=False)
    first = next(Fill(bounder, search, {}).run(greedy(bounder.master)))
    most = dict(enumerate(ready_by_priority(one, decode(bounder.master, first)[0]), 1))
    assert list(Fill(bounder, search, most).run(greedy(bounder.master))) != []
    assert list(Fill(bounder, search, most).run(first)) == []


@pytest.mark.parametrize("seed", range(4))
def test_a_stretch_leaves_the_rest_of_the_day_as_it_is(seed: int) -> None:
    one = tight_day(seed)
    bounder = bounder_of(one)
    master = bounder.master
    begin = filled_from_none(bounder)
    master.keep_every_limit()
    for number in range(len(master.arrays.blocks)):
        # A limit that a new set comes up against is kept from then on.
        tries = (Stretch(bounder, STRENGTH, begin, {number}).better(np.inf, 10.0) for _ in "123")
        better = next((one for one in tries if one is not None), None)
        assert better is not None
        others = [c for c, (block, _) in enumerate(master.sets) if block != number]
        kept = np.zeros(len(master.sets))
        kept[: len(begin) - master.base] = begin[master.base :]
        now = np.zeros(len(master.sets))
        now[: len(better) - master.base] = better[master.base :]
        assert (kept[others] == now[others]).all()
        assert (better[master.going] == begin[master.going]).all()
        assert master.value(STRENGTH, better) <= master.value(STRENGTH, begin)
        assert judge(one, *decode(master, better)).disagreements == ()


def test_moments_together_are_those_of_both(tmp_path: Path) -> None:
    pools = bounder_of(forty_loads(tmp_path)).master.arrays.pools
    spans = [
        set(range(int(first), int(last) + 1))
        for first, last in zip(pools.first, pools.last, strict=True)
    ]
    for load, other in product(range(40), repeat=2):
        assert pools.together(load)[other] == len(spans[load] & spans[other])
        assert pools.beside(load)[other] == bool(pools.together(load)[other])
