"""Filling up: from no load at all to as many as can go, priority by priority."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.plan.blocks import Arrays
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import Clock
from loadplan.plan.decode import decode
from loadplan.plan.fill import Fill
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.short import by_rank
from loadplan.plan.solve_day import solve_day
from loadplan.plan.stage_cost import STRENGTH
from loadplan.plan.start import begun
from loadplan.plan.stretch import Stretch
from tests.plan.test_complete_program import tight_day


def bounder_of(one: Day) -> Bounder:
    sets = sets_of(one)
    return begun(Arrays(sets), build(sets, complete=False), Clock(60.0))


def ready_by_priority(one: Day, ready: tuple[str, ...]) -> list[int]:
    priorities = sorted({load.priority for load in one.loads})
    by_id = one.load_by_id
    return [sum(1 for load in ready if by_id[load].priority == p) for p in priorities]


def filled(seed: int) -> tuple[list[int], list[int]]:
    """Loads ready by priority, filled up from none, and the most there are."""
    one = tight_day(seed)
    loads = tuple(
        replace(load, priority=1 + number % 2) for number, load in enumerate(reversed(one.loads))
    )
    one = replace(one, loads=loads)
    bounder = bounder_of(one)
    values = Fill(bounder, by_rank(bounder), STRENGTH).run(np.zeros(len(bounder.master.upper)))
    ready, tie_downs = decode(bounder.master, values)
    assert judge(one, ready, tie_downs).disagreements == ()
    return ready_by_priority(one, ready), ready_by_priority(one, solve_day(one).ready)


def test_from_no_load_to_the_most() -> None:
    found = [filled(seed) for seed in range(10)]
    assert all(ready <= most for ready, most in found)
    # All the sets of so small a day are free at once, but only those that were priced in are known.
    assert sum(ready == most for ready, most in found) >= 8
    assert all(sum(ready) >= sum(most) for ready, most in found)


@pytest.mark.parametrize("seed", range(4))
def test_a_stretch_leaves_the_rest_of_the_day_as_it_is(seed: int) -> None:
    one = tight_day(seed)
    bounder = bounder_of(one)
    master = bounder.master
    begin = Fill(bounder, by_rank(bounder), STRENGTH).run(np.zeros(len(master.upper)))
    for number in range(len(master.arrays.blocks)):
        better = Stretch(bounder, STRENGTH, begin, {number}).better(np.inf, 10.0)
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
