"""The stages in whole numbers by the complete program without its patterns, loads free to go.

It is small. Where an article can choose among very many sets it answers at once what prices over
those sets cannot tell: how many loads can be ready, in how few tie-downs, and which loads can go
together. Of small days it settles every stage.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.master import Master
from loadplan.plan.matrix import INFINITE
from loadplan.plan.selection import Selection
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.stage_cost import MIXED_SETS, StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_MOST_SHRUNK = 20  # loads of which a least conflict is looked for


@dataclass(slots=True)
class Compact:
    """The program of a day without patterns, asked again and again.

    As many loads are held ready as in ``selection``, and the stages as in the master. ``answers``
    are the sets of loads that are known to have a plan, or none, with the stages held as given.
    Until mixed sets matter nothing counts pairs: ``plain`` is a third of the program and ten times
    as soon solved.
    """

    plain: CompleteSearch
    selection: Selection
    clock: Clock
    answers: dict[tuple[tuple[float, ...], bytes], bool] = field(default_factory=dict)
    _with_pairs: CompleteSearch | None = None

    @classmethod
    def of(cls, master: Master, selection: Selection) -> Compact:
        """The program of the master's day."""
        plain = CompleteSearch.of(master, patterns=False, pairs=False)
        return cls(plain, selection, master.clock)

    def _search(self, *, pairs: bool) -> CompleteSearch:
        """The program in which pairs are counted, or need not be."""
        if not pairs:
            return self.plain
        if self._with_pairs is None:
            self._with_pairs = CompleteSearch.of(self.plain.master, patterns=False)
        return self._with_pairs

    def most_ready(self, priority: int) -> Outcome:
        """As many loads of ``priority`` as can be, those before it held; the bound is below 0.

        Answers, like ``least``, with the master's values. Raises ``OutOfTimeError`` where no plan
        at all is found in time.
        """
        cost = np.zeros(len(self.plain.apart.matrix.lower))
        cost[self._of(self.plain, priority)] = -1.0
        outcome = self._least(self.plain, cost, 1.0)
        if outcome.values is None:
            raise OutOfTimeError
        return outcome

    def least(self, stage: StageCost, step: float) -> Outcome:
        """The least of ``stage`` with as many loads ready as are held, and the stages held.

        Without values where no plan is found in time.
        """
        search = self._search(pairs=bool(stage.mixed) or self.plain.master.holds(MIXED_SETS))
        return self._least(search, search.cost(stage), step)

    def can_go(self, goes: Array) -> bool:
        """Whether a plan has exactly ``goes`` ready; if so, the master knows its sets."""
        return self._can_go(goes, held=True)

    def conflict(self, goes: Array) -> list[int] | None:
        """Loads of ``goes`` that cannot all go, though they could with any one left out.

        None where they could with no stage held, or are too many to look for it.
        """
        loads = [int(load) for load in np.nonzero(goes)[0]]
        if len(loads) > _MOST_SHRUNK or self._can_go(goes, held=False):
            return None
        for load in list(loads):
            rest = np.zeros(len(goes))
            rest[[one for one in loads if one != load]] = 1.0
            if not self._can_go(rest, held=False):
                loads.remove(load)
        return loads

    def _can_go(self, goes: Array, *, held: bool) -> bool:
        master = self.plain.master
        key = (tuple(master.held.values()) if held else (), goes.tobytes())
        if key not in self.answers:
            search = self._search(pairs=held and master.holds(MIXED_SETS))
            solver = search.solver(held=held)
            solver.bound_columns(search.going, goes, goes)
            solver.price(np.zeros(solver.columns))
            outcome = solver.solve(self.clock.left(), 1.0)
            if outcome.status is Status.LIMIT and outcome.values is None:
                raise OutOfTimeError
            if outcome.values is not None:
                search.read(outcome.values)
            self.answers[key] = outcome.values is not None
        return self.answers[key]

    def _least(self, search: CompleteSearch, cost: Array, step: float) -> Outcome:
        solver = search.solver()
        for priority, number in self.selection.ready.items():
            mine = self._of(search, priority)
            solver.add_row(mine, np.ones(len(mine)), float(number), INFINITE)
        # These hold whatever stages are held.
        cuts = [cut for cut in self.selection.cuts if cut.depth == 0]
        if cuts:
            solver.at_most([(search.going, cut.weights, cut.limit) for cut in cuts])
        solver.price(cost)
        outcome = solver.solve(self.clock.left(), step)
        if outcome.values is None:
            return outcome
        return replace(outcome, values=search.read(outcome.values))

    def _of(self, search: CompleteSearch, priority: int) -> Array:
        """The columns that say whether the loads of a priority go."""
        return np.asarray(search.going[self.selection.priority == priority])
