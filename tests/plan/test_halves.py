"""Choices of members and of tensioners say the same as choices of pairs."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from loadplan.day.load import Load
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.halves import halved
from loadplan.plan.master import Master
from loadplan.plan.pricing import improving_sets, prices_of
from loadplan.plan.program import build
from loadplan.plan.sets import sets_of
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.start import starting_sets
from tests.plan.build import binder, chain, day, machine


def ample(seed: int, pieces: int = 5) -> Master:
    """A day on which each machine may take 3 chains with 3 binders, with columns for all pairs.

    ``pieces`` of each kind at least: with 4 a machine can have to mix.
    """
    loads = [Load(id=str(n)) for n in range(3)]
    articles = [machine(f"M{n}", str(n), 9_000 + 2_000 * n + 300 * seed, 10) for n in range(3)]
    gear = [chain(f"c{n}", 6600 + 100 * n, pieces + (seed + n) % 3) for n in range(3)]
    gear += [binder(f"b{n}", 5400 + 100 * n, pieces + (seed * n) % 3) for n in range(3)]
    sets = sets_of(day(loads, articles, gear))
    master = Master(Arrays(sets), build(sets, complete=False), Clock(60.0))
    master.add_sets(starting_sets(master))
    outcome = master.relax(TIE_DOWNS, 10.0)
    everything = replace(
        prices_of(master, TIE_DOWNS, outcome), earns=np.full(len(master.arrays.blocks), 99.0)
    )
    master.add_sets(improving_sets(master, everything, 60))
    master.keep_every_limit()
    return master


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize("pieces", [4, 5])
@pytest.mark.parametrize("stage", [MIXED_SETS, STRENGTH], ids=lambda stage: stage.name)
def test_halves_have_the_same_least(seed: int, pieces: int, stage: StageCost) -> None:
    master = ample(seed, pieces)
    cost = master.traits.cost(stage)
    every = np.ones(len(master.upper), dtype=bool)
    lower = np.zeros(len(master.upper))
    lower[master.going] = 1.0
    whole = replace(master.solver.matrix(), lower=lower, upper=master.upper)
    plain = Solver(replace(whole, whole=every))
    plain.price(cost)
    pairs = plain.solve(10.0, 1.0)
    halves = halved(master, whole, stage, every, lower == 0)
    assert halves.choices, "the day must have something to halve"
    mixed = [one for one in halves.choices if len(one.members[0]) > 1]
    assert mixed or pieces == 5, "sets of several pairs are halved too"
    assert len(halves.cost) < len(cost)
    solver = Solver(halves.matrix)
    solver.price(halves.cost)
    outcome = solver.solve(10.0, 1.0)
    assert pairs.values is not None
    assert outcome.values is not None
    values = halves.whole(outcome.values)
    assert round(float(cost @ pairs.values)) == round(
        float(master.traits.cost(stage)[: len(values)] @ values)
    )
    rows = master.solver.matrix()
    columns = np.repeat(np.arange(len(values)), np.diff(rows.starts))
    taken = np.zeros(len(rows.row_upper))
    np.add.at(taken, rows.places, rows.coefficients * values[columns])
    assert (taken <= rows.row_upper).all()
    assert (taken >= rows.row_lower).all()


def test_a_plan_is_read_though_the_time_is_up() -> None:
    master, time_is_up = ample(1), False

    def tick() -> None:
        if time_is_up:
            raise OutOfTimeError

    lower = np.zeros(len(master.upper))
    lower[master.going] = 1.0
    whole = replace(master.solver.matrix(), lower=lower, upper=master.upper)
    every = np.ones(len(master.upper), dtype=bool)
    halves = halved(master, whole, STRENGTH, every, lower == 0, tick)
    solver = Solver(halves.matrix)
    solver.price(halves.cost)
    outcome = solver.solve(10.0, 1.0)
    assert outcome.values is not None
    taken = outcome.values[len(halves.keep) :]
    assert taken.max() > 0.5, "some set is made of halves"
    time_is_up = True
    values = halves.whole(outcome.values)
    assert master.value(STRENGTH, values) == pytest.approx(outcome.bound)
