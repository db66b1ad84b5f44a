"""Bounds: what no plan can pass, stage by stage, over every set of ready loads."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from loadplan.plan.bound import Bound, up
from loadplan.plan.clock import Clock, OutOfTimeError, Steps, TooManyStepsError
from loadplan.plan.compact import Compact
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.master import Master
from loadplan.plan.pricing import improving_sets, prices_of
from loadplan.plan.selection import Cut, Selection
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.stage_cost import GOING, MIXED_SETS, StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6
_SETS_A_ROUND = 4
WIDE = 6  # times that pricing may meet an article with very many sets
_MOMENT = 1.0  # seconds
_MOST_IN_CONFLICT = 16  # loads of which a least conflict is looked for


@dataclass(slots=True)
class Bounder:
    """Finds bounds by turns: the selection proposes loads, the master prices them.

    ``patience`` is as in :func:`loadplan.plan.pricing.improving_sets`. Where there is a ``compact``
    program, it says which loads can go where prices do not soon tell. ``searched`` is how dear the
    sets were that searches which came to their end looked among, by what they searched for.

    On a ``large`` day some loads of a proposal are solved for from nothing, which is sooner than
    from where all of them ended, and the next proposal goes on from there; small days gain nothing.
    """

    master: Master
    selection: Selection
    clock: Clock
    large: bool = False
    patience: Steps | None = None
    compact: Compact | None = None
    searched: dict[tuple[object, ...], float] = field(default_factory=dict)
    _complete: CompleteSearch | None = None

    def complete(self) -> CompleteSearch:
        """The complete program of the day, built when first asked for."""
        if self._complete is None:
            self._complete = CompleteSearch.of(self.master)
        return self._complete

    def most_ready(self, stage: StageCost) -> int:
        """The most loads of the stage's priority that could be ready, those before it held.

        Raises ``OutOfTimeError`` where the time is up before such loads are found that could go.
        """
        self.selection.values[stage.name] = []
        if self.large:
            self._learn_of_parts(stage)
        while True:
            goes, bound = self.selection.most_ready(stage, self.clock.left())
            if goes is None or self.clock.over():
                raise OutOfTimeError
            self.clock.report(None, bound)
            if self._can_go(goes):
                return round(float(goes[self.selection.priority == stage.priority].sum()))

    def ready_so_far(self, stage: StageCost) -> int:
        """As many loads of the stage's priority as what is known by now leaves possible."""
        return math.floor(self.selection.most_so_far(stage, _MOMENT) + _TINY)

    def _learn_of_parts(self, stage: StageCost) -> None:
        """Learn how many loads of the stage's priority could go if they could go in part.

        One linear solution that takes the place of a hundred proposals of whole loads.
        """
        upper = np.where(self.selection.priority <= stage.priority, self.master.possible, 0.0)
        self._afresh()
        self.learn(stage, self.solve_at(stage, np.zeros(len(upper)), upper))

    def value(self, stage: StageCost, step: float, rounds: int) -> Bound:
        """The bound of ``stage`` with everything before it held.

        ``step`` is how far apart its values lie; after ``rounds`` proposals the bound so far does.
        """
        self.selection.values[stage.name] = []
        self.learn(stage, self._free(stage))
        best, at = math.inf, None
        while True:
            goes, bound = self.propose(stage, step)
            if goes is None:
                return Bound(math.inf, None)
            self.clock.report(None, bound)
            outcome = self.solve_at(stage, goes, goes)
            self.learn(stage, outcome)
            if outcome.bound < best:
                best, at = outcome.bound, goes
            rounds -= 1
            if rounds <= 0 or up(best, step) <= bound:
                return Bound(bound, at)

    def propose(self, stage: StageCost, step: float) -> tuple[Array | None, float]:
        """Loads for which ``stage`` could be least and that could go, and that least.

        None where no set of loads, as many ready as held, is left.
        """
        while True:
            goes, bound = self.selection.least(stage, self.clock.left(), 0.1 * step)
            if goes is None:
                if self.clock.over():
                    raise OutOfTimeError
                return None, math.inf
            if self._can_go(goes):
                return goes, up(bound, step)

    def _free(self, stage: StageCost) -> Outcome:
        outcome = self.solve_at(stage, np.zeros(len(self.master.possible)), self.master.possible)
        if outcome.values is None:
            raise OutOfTimeError
        return outcome

    def _can_go(self, goes: Array) -> bool:
        """Whether ``goes`` can all go as far as a linear solve tells; if not, learn why.

        Where pricing meets too many articles with very many sets, the compact program tells.
        """
        if not goes.any():
            return True
        patience, compact = self.patience, self.compact
        if compact is not None and not self.master.holds(MIXED_SETS):
            self.patience = Steps(WIDE)
        self.master.release_ready()
        try:
            return self._can_go_by_prices(goes)
        except TooManyStepsError:
            if compact is None:
                raise
            return self._can_go_by(compact, goes)
        finally:
            self.patience = patience
            self.master.hold_ready(self.selection.ready)

    def _can_go_by_prices(self, goes: Array) -> bool:
        whole = self._gone(goes)
        possible = _all_of(goes, whole)
        if not possible:
            basis = self.master.solver.basis() if self.large else None
            self._learn_why(goes.copy(), whole)
            if basis is not None:
                self.master.solver.go_back(basis)
        return possible

    def _can_go_by(self, compact: Compact, goes: Array) -> bool:
        possible = compact.can_go(goes)
        if not possible:
            core = compact.conflict(goes)
            self._cut_off(np.nonzero(goes)[0].tolist() if core is None else core)
        return possible

    def _learn_why(self, left: Array, outcome: Outcome) -> None:
        """Learn what stands in the way of ``left``, of whom as many go as ``outcome`` tells.

        Loads that stand in each other's way are left out and the rest looked at again, so that
        conflicts that have nothing to do with each other are learnt at once.
        """
        while not _all_of(left, outcome):
            assert outcome.values is not None
            reduced = outcome.reduced[self.master.going]
            limit = float(reduced @ outcome.values[self.master.going]) - outcome.bound
            self._cut(1.0 + reduced, limit + _TINY)
            (conflict,) = np.nonzero((1.0 + reduced > _TINY) & (left > 0))
            self._afresh()
            left[self._core(conflict) if len(conflict) <= _MOST_IN_CONFLICT else conflict] = 0.0
            if not left.any():
                return
            self._afresh()
            outcome = self._gone(left)

    def _afresh(self) -> None:
        if self.large:
            self.master.solver.forget()

    def _gone(self, goes: Array) -> Outcome:
        """As many of ``goes`` as can go; the bound is that number, below nought."""
        outcome = self.solve_at(GOING, np.zeros(len(goes)), goes, enough=-float(goes.sum()))
        if outcome.values is None:
            raise OutOfTimeError
        return outcome

    def _core(self, conflict: Array) -> list[int]:
        """Loads of ``conflict`` that must stay in part, learnt as the strongest cuts there are.

        Those that cannot even go alone, or else loads that cannot all go though they could with
        any one of them left out.
        """
        alone = [int(load) for load in conflict if not self._all_go([int(load)])]
        if alone:
            for load in alone:
                self._cut_off([load])
            return alone
        core = [int(load) for load in conflict]
        for load in list(core):
            rest = [one for one in core if one != load]
            if not self._all_go(rest):
                core = rest
        self._cut_off(core)
        return core

    def _all_go(self, loads: list[int]) -> bool:
        goes = np.zeros(len(self.master.possible))
        goes[loads] = 1.0
        return _all_of(goes, self._gone(goes))

    def cap_ready(self) -> None:
        """Learn that no more loads can be ready than are held, priority by priority."""
        for priority, number in self.selection.ready.items():
            self._cut(1.0 * (self.selection.priority == priority), float(number))

    def _cut_off(self, core: list[int]) -> None:
        """At least one of ``core`` stays."""
        weights = np.zeros(len(self.master.possible))
        weights[core] = 1.0
        self._cut(weights, float(len(core) - 1))

    def _cut(self, weights: Array, limit: float) -> None:
        self.selection.cuts.append(Cut(weights, limit, len(self.master.stage_rows)))
        self.master.add_cut(weights, limit)

    def learn(self, stage: StageCost, outcome: Outcome) -> None:
        """Let the selection know what a linear solution of ``stage`` says of every set of loads."""
        if outcome.values is None:
            raise OutOfTimeError
        reduced = outcome.reduced[self.master.going]
        limit = outcome.bound - float(reduced @ outcome.values[self.master.going])
        cut = Cut(-reduced, limit - _TINY, len(self.master.stage_rows))
        self.selection.values[stage.name].append(cut)

    def solve_at(
        self,
        stage: StageCost,
        lower: Array,
        upper: Array,
        enough: float = -math.inf,
        *,
        rounded: bool = False,
    ) -> Outcome:
        """The linear solution with the loads held between bounds, priced to the end.

        Pricing stops early at a value of ``enough`` or less. ``rounded`` adds rounded pool limits
        before each round of pricing, where the solution so far breaks them. Raises
        ``OutOfTimeError`` where the time is up before a round.
        """
        self.master.hold_loads(lower, upper)
        restored = False
        while True:
            self.clock.tick()
            outcome = self.master.relax(stage, self.clock.left())
            if rounded and outcome.status is Status.INFEASIBLE:
                # The limits may leave no solution over the sets so far, and one over others.
                if restored:
                    return replace(outcome, status=Status.LIMIT)
                restored = self._could_go(lower)
                if not restored:
                    return outcome
                self.master.hold_loads(lower, upper)
                continue
            restored = False
            if outcome.values is None:
                return outcome
            if outcome.bound <= enough + _TINY:
                return outcome
            if rounded and self.master.keep_rounded(outcome.values):
                continue
            prices = prices_of(self.master, stage, outcome)
            sets = improving_sets(self.master, prices, _SETS_A_ROUND, patience=self.patience)
            if not self.master.add_sets(sets):
                return outcome

    def _could_go(self, goes: Array) -> bool:
        """Whether ``goes`` can all go, without whole numbers, over all sets there are.

        If so, the master knows sets with which they do.
        """
        self.master.release_ready()
        try:
            return _all_of(goes, self._gone(goes))
        finally:
            self.master.hold_ready(self.selection.ready)


def _all_of(goes: Array, gone: Outcome) -> bool:
    """Whether as many go as there are of ``goes``."""
    return gone.bound <= -float(goes.sum()) + _TINY
