"""What a solve starts from: for each article the cheapest few sets, and bounds of these alone."""

from __future__ import annotations

from contextlib import suppress
from itertools import islice

import numpy as np

from loadplan.plan.blocks import Arrays, Block
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import Clock, Steps, TooManyStepsError
from loadplan.plan.master import Master
from loadplan.plan.pricing import have_of
from loadplan.plan.program import Program
from loadplan.plan.selection import Selection
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.sets_of_one import sets_of_one
from loadplan.plan.tie_set import TieSet

_EACH = 10
_MOST_STEPS = 500


def begun(arrays: Arrays, program: Program, clock: Clock, *, large: bool = False) -> Bounder:
    """Bounds of a day of which nothing is known but the sets to start from."""
    master = Master(arrays, program, clock)
    master.add_sets(starting_sets(master))
    priority = np.array([one.load.priority for one in arrays.sets.loads], dtype=np.int64)
    return Bounder(master, Selection(priority, master.possible.copy()), clock, large)


def begun_again(bounder: Bounder) -> Bounder:
    """Bounds that know of loads what ``bounder`` does, and no sets but those to start from."""
    master = bounder.master
    fresh = begun(master.arrays, master.program, bounder.clock, large=bounder.large)
    fresh.selection.cuts = [cut for cut in bounder.selection.cuts if cut.depth == 0]
    return fresh


def starting_sets(master: Master) -> list[tuple[int, TieSet]]:
    """Of every block some sets that issue little strength, of one assembly where it is all free."""
    found: list[tuple[int, TieSet]] = []
    for number, block in enumerate(master.arrays.blocks):
        sets = _first(master, block) if block.apart else _of_one(master, block)
        found += [(number, one) for one in sets]
    return found


def _of_one(master: Master, block: Block) -> list[TieSet]:
    sets = sets_of_one(block, have_of(master, block))
    return sorted(sets, key=lambda one: (one.strength(block), one.chosen))[:_EACH]


def _first(master: Master, block: Block) -> list[TieSet]:
    price = block.menu.strength.tolist()
    steps = Steps(_MOST_STEPS)
    sets = enumerate_sets(block, price, 0.0, float("inf"), have_of(master, block), steps.tick)
    found: list[TieSet] = []
    with suppress(TooManyStepsError):
        found += [one for _, one in islice(sets, _EACH)]
    return found
