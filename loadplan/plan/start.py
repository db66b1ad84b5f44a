"""Sets to start from: for each article its cheapest sets of one assembly."""

from __future__ import annotations

from loadplan.plan.master import Master
from loadplan.plan.pricing import have_of
from loadplan.plan.tie_set import TieSet

_EACH = 10


def starting_sets(master: Master) -> list[tuple[int, TieSet]]:
    """Of every block the sets of one assembly that issue the least strength."""
    found: list[tuple[int, TieSet]] = []
    for number, block in enumerate(master.arrays.blocks):
        have, menu = have_of(master, block), block.menu
        fit: list[tuple[float, int, int]] = []
        for place, tie_downs in enumerate(block.reach.alone):
            enough = all(
                have[int(gear)] >= tie_downs * menu.uses[place, gear]
                for gear in menu.uses[place].nonzero()[0]
            )
            winches = not menu.winch[place] or have[-1] >= tie_downs
            if tie_downs <= block.room and enough and winches:
                fit.append((tie_downs * float(menu.strength[place]), place, tie_downs))
        found += [(number, TieSet(((place, size),))) for _, place, size in sorted(fit)[:_EACH]]
    return found
