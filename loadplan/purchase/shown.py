"""The plan that a purchase program's solution shows: which loads go, with which tie-downs."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property

from loadplan.outcome.tie_down import Shown
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.decode import decode
from loadplan.plan.master import Master
from loadplan.plan.program import build
from loadplan.plan.sets import Sets
from loadplan.purchase.program import Array


@dataclass(frozen=True)
class Reader:
    """Reads the solutions of purchase programs made from ``sets``, whatever the times of trips."""

    sets: Sets

    def plan(self, values: Array) -> Shown:
        """The loads ready in ``values`` and their tie-downs, in workbook order, not judged."""
        return decode(self._search.master, self._search.translate(values))

    @cached_property
    def _search(self) -> CompleteSearch:
        """Made when first asked for: it takes as long as the program itself."""
        # Gear on by Fixed is in the slots; what it takes from the pools is in the program's rows.
        sets = replace(self.sets, day=replace(self.sets.day, fixed=()))
        master = Master(Arrays(sets), build(sets, complete=False), Clock(math.inf))
        return CompleteSearch.of(master, patterns=False, pairs=False)
