"""Loads taken off and placed again: never fewer go, never is more gear out than there is."""

from __future__ import annotations

from collections import Counter
from random import Random

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.judge.judge import judge
from loadplan.plan.blocks import Arrays
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import Clock
from loadplan.plan.decode import decode
from loadplan.plan.greedy import greedy, orders
from loadplan.plan.placing import Placing
from loadplan.plan.program import build
from loadplan.plan.reshuffle import Reshuffle
from loadplan.plan.sets import sets_of
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, every_stage
from loadplan.plan.start import begun
from tests.plan.build import binder, chain, day, machine


def short_day(seed: int, loads: int = 24) -> Day:
    """Machines out for hours at a time, and gear for about half of them."""
    random = Random(seed)
    trips = [random.randrange(0, 20) for _ in range(loads)]
    those = [
        Load(
            id=f"L{n:02d}",
            out=3600 * at,
            back=3600 * (at + random.randint(2, 8)),
            priority=random.choice((1, 2, 3)),
        )
        for n, at in enumerate(trips)
    ]
    articles = [
        machine(f"M{n}", one.id, 1000 * random.randint(5, 24)) for n, one in enumerate(those)
    ]
    gear = [
        chain(f"c{n}", wll, random.randint(3, 8)) for n, wll in enumerate((2600, 3900, 5400, 6600))
    ]
    gear += [
        binder(f"b{n}", wll, random.randint(6, 12)) for n, wll in enumerate((2600, 5400, 9200))
    ]
    return day(those, articles, gear)


def bounder_of(one: Day) -> Bounder:
    sets = sets_of(one)
    return begun(Arrays(sets), build(sets, complete=False), Clock(60.0), large=True)


def order(bounder: Bounder, values: np.ndarray) -> list[float]:
    stages = every_stage(bounder.selection.priority)
    return [bounder.master.value(stage, values) for stage in stages]


@pytest.mark.parametrize("seed", range(12))
def test_more_go_and_the_judgement_agrees(seed: int) -> None:
    one = short_day(seed)
    bounder = bounder_of(one)
    rough = greedy(bounder.master)
    found = Reshuffle(bounder, {}).run(rough)
    priorities = len(set(bounder.selection.priority.tolist()))
    assert order(bounder, found)[:priorities] <= order(bounder, rough)[:priorities]
    judgement = judge(one, *decode(bounder.master, found))
    assert not judgement.disagreements


def test_it_finds_loads_that_one_pass_by_departure_does_not() -> None:
    gained = 0
    for seed in range(8):
        bounder = bounder_of(short_day(seed))
        placing = Placing(bounder.master, {}, alike=True)
        for load in orders(bounder.master)[0]:
            placing.place(load)
        rough = placing.values()
        found = Reshuffle(bounder, {}).run(rough)
        gained += found[bounder.master.going].sum() - rough[bounder.master.going].sum()
    assert gained >= 2


def test_it_is_the_same_on_every_run() -> None:
    found = []
    for _ in range(2):
        bounder = bounder_of(short_day(3))
        values = Reshuffle(bounder, {}).run(greedy(bounder.master))
        found.append(decode(bounder.master, values))
    assert found[0] == found[1]


def test_it_ends_where_as_many_go_as_can() -> None:
    """With nothing more to gain it hands back the very plan it was given."""
    bounder = bounder_of(short_day(0))
    rough = greedy(bounder.master)
    going = rough[bounder.master.going] > 0.5
    most = Counter(bounder.selection.priority[going].tolist())
    assert Reshuffle(bounder, {one: most[one] for one in (1, 2, 3)}).run(rough) is rough


def test_taking_a_load_off_frees_what_it_took_and_putting_it_back_takes_it() -> None:
    bounder = bounder_of(short_day(1))
    placing = Placing(bounder.master, {}, alike=True)
    placing.take_on(greedy(bounder.master))
    full, load = placing.left.copy(), min(placing.placed)
    was = placing.take_off(load)
    assert (placing.left >= full).all()
    assert (placing.left > full).any()
    placing.put_back(load, was)
    assert (placing.left == full).all()


def test_a_plan_taken_on_comes_to_what_it_did() -> None:
    bounder = bounder_of(short_day(2))
    values = greedy(bounder.master)
    placing = Placing(bounder.master, {}, alike=True)
    placing.take_on(values)
    again = placing.values()
    for stage in (TIE_DOWNS, MIXED_SETS, STRENGTH):
        assert placing.value(stage) == bounder.master.value(stage, values)
    assert order(bounder, again) == order(bounder, values)


def test_tie_downs_are_alike_where_there_is_gear_for_it() -> None:
    """Nine of each chain: two loads of 20,000 lb take four of the larger each, and mix nothing."""
    loads = [Load(id="1"), Load(id="2")]
    articles = [machine("a", "1", 20_000), machine("b", "2", 20_000)]
    gear = [chain("s", 3900, 9), chain("l", 5400, 9), binder("b", 5400, 20)]
    bounder = bounder_of(day(loads, articles, gear))
    assert order(bounder, greedy(bounder.master)) == [-2, 8, 0, 8 * 5400 + 8 * 5400]


def test_without_enough_alike_they_are_mixed() -> None:
    loads = [Load(id="1")]
    gear = [chain("s", 3900, 2), chain("l", 6600, 2), binder("b", 6600, 4)]
    bounder = bounder_of(day(loads, [machine("a", "1", 20_000)], gear))
    assert order(bounder, greedy(bounder.master))[:3] == [-1, 4, 1]
    alike = Placing(bounder.master, {}, alike=True, mixed=False)
    assert not alike.place(0)
