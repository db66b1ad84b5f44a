"""The sets of one assembly that an article could take by itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from loadplan.plan.blocks import Block
from loadplan.plan.tie_set import TieSet


def sets_of_one(block: Block, have: Mapping[int, int]) -> Iterator[TieSet]:
    """As few tie-downs of each assembly as are enough, where there is gear for them.

    ``have`` is what there is of each kind of gear, and of winches at -1. None where tie-downs are
    settled apart: these are of other assemblies.
    """
    menu = block.menu
    if block.apart:
        return
    alone = np.array(block.reach.alone)
    there = np.array([have[gear] for gear in range(menu.uses.shape[1])])
    fits = (alone[:, None] * menu.uses <= there).all(axis=1)
    fits &= (alone <= block.room) & (alone * menu.winch <= have[-1])
    for place in np.nonzero(fits)[0].tolist():
        yield TieSet(((place, int(alone[place])),))
