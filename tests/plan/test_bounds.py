"""A linear solution with rounded limits never denies what can go over sets not known yet."""

from __future__ import annotations

from random import Random
from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.plan.blocks import Arrays
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import Clock
from loadplan.plan.exact import ExactSearch
from loadplan.plan.found import Ending
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS
from loadplan.plan.start import begun
from tests.plan.build import binder, chain, day, machine

# Of the first 600 days those on which the limits left nothing over the sets known so far, and a
# plan over others.
SEEDS = [9, 80, 117, 127, 128, 152, 162, 177, 188, 211]


def day_of(seed: int) -> Day:
    """Three to five machines out at once, and hardly enough gear for them."""
    random = Random(seed)
    number = random.randint(3, 5)
    loads = [Load(id=str(n)) for n in range(number)]
    articles = [
        machine(f"M{n}", str(n), random.randrange(6_000, 22_000, 500)) for n in range(number)
    ]
    kinds = random.randint(2, 4)
    gear = [
        chain(f"c{n}", random.choice((3900, 5400, 6600, 7100)), random.randint(2, 9))
        for n in range(kinds)
    ]
    gear += [
        binder(f"b{n}", random.choice((3300, 5400, 9200)), random.randint(2, 9))
        for n in range(kinds)
    ]
    return day(loads, articles, gear)


def held_at_bounds(one: Day) -> tuple[Bounder, np.ndarray]:
    """Every load to go, with as few tie-downs and mixed sets as their linear bounds say."""
    sets = sets_of(one)
    bounder = begun(Arrays(sets), build(sets, complete=False), Clock(60.0))
    goes = np.ones(len(one.loads))
    assert bounder._can_go(goes)
    for stage in (TIE_DOWNS, MIXED_SETS):
        least = bounder.solve_at(stage, goes, goes).bound
        bounder.master.add_stage(stage, float(np.ceil(least - 1e-6)))
        assert bounder._can_go(goes)
    return bounder, goes


@pytest.mark.parametrize("seed", SEEDS)
def test_limits_that_leave_no_known_set_are_no_proof(seed: int) -> None:
    bounder, goes = held_at_bounds(day_of(seed))
    known = len(bounder.master.sets)
    linear = bounder.solve_at(STRENGTH, goes, goes, rounded=True)
    assert linear.status is Status.OPTIMAL
    assert len(bounder.master.sets) > known
    found = ExactSearch(bounder, STRENGTH, 1.0).at(goes, 1e9)
    least = bounder.complete().at(STRENGTH, goes, 1e9, 1.0, Clock(60.0))
    assert least.values is not None
    assert found.ending is Ending.LEAST
    assert found.value == bounder.master.value(STRENGTH, least.values) >= linear.bound - 1e-3


def test_what_cannot_go_in_whole_numbers_may_be_denied() -> None:
    bounder, goes = held_at_bounds(day_of(17))
    assert bounder.solve_at(STRENGTH, goes, goes, rounded=True).status is Status.INFEASIBLE
    assert bounder.complete().at(STRENGTH, goes, 1e9, 1.0, Clock(60.0)).values is None
    assert ExactSearch(bounder, STRENGTH, 1.0).at(goes, 1e9).ending is Ending.NONE


@pytest.mark.parametrize(("keeps", "ending"), [(True, Ending.LEAST), (False, Ending.OPEN)])
def test_a_plan_that_breaks_what_is_held_is_neither_kept_nor_a_proof(
    keeps: bool, ending: Ending
) -> None:
    """Another program found it: what it counts is counted again before it is believed."""
    found = Outcome(Status.OPTIMAL, np.ones(1), 5.0, np.zeros(0), np.zeros(0))
    master = SimpleNamespace(keeps_held=lambda values: keeps, value=lambda stage, values: 5.0)
    complete = SimpleNamespace(at=lambda *asked: found)
    bounder = SimpleNamespace(master=master, clock=None, complete=lambda: complete)
    search = ExactSearch(cast(Bounder, bounder), STRENGTH, 1.0)
    search.value = 9.0
    assert search._completely(np.ones(1)) is ending
    assert (search.best is None) is not keeps
