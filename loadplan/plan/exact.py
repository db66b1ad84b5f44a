"""The exact least of a stage for one given set of ready loads."""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError, Steps
from loadplan.plan.complete_search import MOST_LOADS
from loadplan.plan.found import Ending, Found
from loadplan.plan.halves import halved
from loadplan.plan.master import Master
from loadplan.plan.matrix import Matrix
from loadplan.plan.pricing import prices_of, sets_within
from loadplan.plan.raised_plan import RaisedPlan
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.within_held import within_held

Array = np.ndarray[Any, np.dtype[Any]]
MOST_SETS = 40_000  # listed on a large day
_MOST_LISTED = 150_000  # on a small one
_FEW_LISTED = 30_000  # on a small one of more than a few loads, in a first try that may give up
_MANY = 20_000  # of more the search is widened step by step though a plan is there
MOST_SEARCHED = 400  # loads: beyond, no whole solve ends in time
_LEAST_RAISED = 8_000  # columns of a few loads: less are as soon searched
_MOST_COLUMNS = 30_000  # of a whole solve; with more the solver may not keep its time
_MOST_JOINED = 400_000  # ways to join members and tensioners that are tried with patience
_NARROW_SETS = 0.04  # of what a set costs on average: how much dearer sets may be at first
_MOST_HALVED = 2  # times that a budget with too many sets or columns is halved
_NARROW = 0.6  # share of the time left, for a search that is not the widest
_TINY = 1e-6


@dataclass(slots=True)
class ExactSearch:
    """Solves in whole numbers over the sets that could be in a better plan, found by their price.

    A set whose reduced cost is more than what separates the linear bound from the best plan known
    can be in no better plan; all others are enumerated, so the answer holds over every set.
    ``farthest`` is the share of the linear bound beyond which to give up where nothing was found;
    ``known`` whether what is to be beaten is a plan's value.
    """

    bounder: Bounder
    stage: StageCost
    step: float
    farthest: float = math.inf
    known: bool = False
    best: Array | None = None
    value: float = math.inf
    bound: float = -math.inf
    tried: float = 0.0

    def at(self, goes: Array, beat: float) -> Found:
        """The least with exactly ``goes`` ready, if it is below ``beat`` by a step."""
        self.best, self.value, self.bound, self.tried = None, beat, -math.inf, 0.0
        try:
            ending = self._search(goes)
        except OutOfTimeError:
            ending = Ending.OPEN
        return Found(ending, self.value, self.best, min(self.bound, self.value))

    def _search(self, goes: Array) -> Ending:
        """Widen the search until it is exact; ``best`` and ``value`` are kept on the way."""
        budget = 0.0
        while True:
            linear = self.bounder.solve_at(self.stage, goes, goes, rounded=True)
            if linear.status is Status.INFEASIBLE:
                return self._ended()
            if linear.values is None:
                return Ending.OPEN
            most = self.value - self.step - linear.bound + _TINY
            if most < 0:
                return self._ended()
            budget = min(most, budget or self._first_budget(linear.bound, goes))
            with self._time_for(budget, most):
                found, budget, listed = self._sets(goes, linear, budget)
                outcome, listed = self._widen(goes, found, budget, listed)
            complete = 0.0 < budget <= listed
            if complete and outcome.status is not Status.LIMIT:
                self.bounder.searched[self._what(goes)] = budget
            if outcome.values is not None:
                self._keep(outcome.values)
            # A better plan than that would be made of sets that were listed, though not all were.
            left = self.value - self.step - linear.bound
            if left < -_TINY or (0.0 < listed >= left and outcome.status is not Status.LIMIT):
                return self._ended()
            if not complete and goes.sum() <= MOST_LOADS:
                return self._completely(goes)
            # A plan with a set beyond what is listed is worth more than that above the bound.
            self.bound = max(self.bound, min(outcome.bound, linear.bound + listed))
            # On a large day the wider search may still raise the bound.
            last = budget >= left
            if outcome.status is Status.LIMIT and (last or not self.bounder.large):
                return Ending.OPEN
            far = self.best is None and budget > self.farthest * abs(linear.bound)
            if far or (not complete and outcome.values is None):
                return Ending.OPEN
            self.tried, budget = budget, self._more(budget) if self.best is None else math.inf

    def _keep(self, values: Array) -> None:
        """Keep a plan that beats the best so far; a solve cut short may have found a worse one."""
        value = self.bounder.master.value(self.stage, values)
        if value < self.value - 0.5 * self.step:
            self.best, self.value = values, value

    def _completely(self, goes: Array) -> Ending:
        """The exact least by the complete program, which lists no sets."""
        complete = self.bounder.complete()
        below = self.value - self.step
        outcome = complete.at(self.stage, goes, below, self.step, self.bounder.clock)
        if outcome.values is not None:
            # Another program found it: what it counts is counted again before it is believed.
            if not self.bounder.master.keeps_held(outcome.values):
                return Ending.OPEN
            self._keep(outcome.values)
        return Ending.OPEN if outcome.status is Status.LIMIT else self._ended()

    def _ended(self) -> Ending:
        return Ending.NONE if self.best is None else Ending.LEAST

    @contextmanager
    def _time_for(self, budget: float, most: float) -> Iterator[None]:
        """On a large day keep some of the time for a wider search."""
        narrow = self.bounder.large and budget < most
        with self.bounder.clock.at_most(_NARROW if narrow else 1.0):
            yield

    def _first_budget(self, bound: float, goes: Array) -> float:
        """Narrow, or wider than a search for the same that has come to its end already."""
        before = self.bounder.searched.get(self._what(goes), 0.0)
        if before:
            return self._more(before)
        if not self.stage.strength:
            return 0.5 * self.step
        return narrow_budget(self.bounder.master, bound, goes)

    def _most_listed(self, goes: Array) -> int:
        """How many sets to list at the most; with very many all that follows takes longer."""
        if self.bounder.large:
            return MOST_SETS
        beats = self.known or self.best is not None
        return _MOST_LISTED if beats or goes.sum() <= MOST_LOADS else _FEW_LISTED

    def _what(self, goes: Array) -> tuple[object, ...]:
        """What is searched for: the stage, what is held, and the loads that go."""
        return (self.stage, tuple(self.bounder.master.held.items()), goes.tobytes())

    def _more(self, budget: float) -> float:
        return 4 * budget if self.stage.strength else budget + self.step

    def _cost(self) -> Array:
        return self.bounder.master.traits.cost(self.stage)

    def _sets(
        self, goes: Array, linear: Outcome, budget: float
    ) -> tuple[list[tuple[int, TieSet]], float, float]:
        """The sets within ``budget``, the budget to search, and within how much all are listed.

        The budget is less where there are very many sets and the last search was far narrower:
        a better plan found on the way makes the widest search a smaller one.
        """
        master, most = self.bounder.master, self._most_listed(goes)
        prices = prices_of(master, self.stage, linear)
        parts, more = _parts(budget), self._more(self.tried)
        if self.tried > 0.0 and more < budget:
            many = MOST_SETS if self.bounder.large else _MANY
            found = sets_within(master, prices, budget, many, goes)
            if found is not None:
                return found, budget, budget
            parts, budget = _parts(more), more
        for part in parts:
            found = sets_within(master, prices, part, most, goes)
            if found is not None:
                return found, budget, part
        return [], budget, 0.0

    def _widen(
        self, goes: Array, found: list[tuple[int, TieSet]], budget: float, listed: float
    ) -> tuple[Outcome, float]:
        """Solve over the sets ``found`` too; within how much of ``budget`` they are all there are.

        ``listed`` is within how much they were listed.
        """
        master, clock = self.bounder.master, self.bounder.clock
        master.add_sets(found)
        master.keep_every_limit()
        again = self.bounder.solve_at(self.stage, goes, goes)
        if again.values is None:
            return again, 0.0
        for part in _parts(budget):
            outcome = self._whole(goes, again, part, clock.left())
            if outcome is not None:
                return outcome, min(part, listed)
        none = np.zeros(0)
        return Outcome(Status.LIMIT, None, again.bound, none, none), 0.0

    def _whole(self, goes: Array, linear: Outcome, budget: float, seconds: float) -> Outcome | None:
        """The whole-number program over the columns that could be in a plan within ``budget``.

        None where they are too many.
        """
        master = self.bounder.master
        assert linear.values is not None
        reduced, upper = linear.reduced, master.upper.copy()
        lower = np.zeros(len(upper))
        lower[master.going], upper[master.going] = goes, goes
        at_most = linear.values >= upper - _TINY
        lower = np.where((reduced < -budget - _TINY) & at_most, upper, lower)
        could = (reduced <= budget + _TINY) | (linear.values > _TINY) | (lower > 0)
        stays = goes[master.traits.load] == 0
        could &= ~(stays & (np.arange(len(upper)) >= master.base))
        could, slack_rows = within_held(master, goes, could)
        clock, large, bound = self.bounder.clock, self.bounder.large, -math.inf
        report = clock.report if clock.tell is not None else None
        whole = replace(master.solver.matrix(), lower=lower, upper=upper)
        beats = self.best is not None or self.known
        few = not large and bool(goes.sum() <= MOST_LOADS)
        nearly_widest = 2 * budget >= self.value - self.step - linear.bound
        # Of a few loads only where it leaves out much that would have to be searched.
        worth_it = not few or (nearly_widest and could.sum() >= _LEAST_RAISED)
        if beats and self.stage.strength and worth_it:
            raised, could = self._raised(whole, could, plan=not few)
            if raised.status is not Status.LIMIT or goes.sum() > MOST_SEARCHED:
                return raised
            bound = raised.bound
        # With patience, days on which halves take long to find are left to the compact program.
        patient = self.bounder.patience is not None
        tick = Steps(_MOST_JOINED, clock).tick if patient else clock.tick
        halves = halved(master, whole, self.stage, could, lower == 0, tick)
        if len(halves.cost) > _MOST_COLUMNS:
            return None
        # The columns are what pricing has left: on most small days none of these saves its time. A
        # large day's plan is there before the search, and may be far from the least.
        searches = large and self.best is None
        solver = Solver(halves.matrix, report, presolve=large, searches=searches, symmetry=large)
        for row in slack_rows:
            solver.bound_row(row, -math.inf, math.inf)
        if beats:
            solver.keep_within(halves.cost, self.value - 0.5 * self.step)
        solver.price(halves.cost)
        enough = bound + 0.5 * self.step
        outcome = solver.solve(min(seconds, clock.left()), self.step, enough=enough)
        bound = max(bound, outcome.bound)
        if outcome.values is None:
            return replace(outcome, bound=bound)
        return replace(outcome, values=halves.whole(outcome.values), bound=bound)

    def _raised(self, whole: Matrix, could: Array, *, plan: bool) -> tuple[Outcome, Array]:
        """What comes of raising the bound, and the columns ``could`` that a better plan may take.

        A plan that is better, though not at the bound, is kept; looked for if ``plan``.
        """
        bounder, below = self.bounder, self.value - 0.5 * self.step
        at = RaisedPlan(bounder.master, self.stage, whole, below, self.step, bounder.clock)
        raised = at.bound(could)
        outcome = at.outcome(raised, plan=plan)
        if outcome.values is not None:
            self._keep(outcome.values)
        return outcome, raised.could


def narrow_budget(master: Master, bound: float, goes: Array) -> float:
    """A small part of what a set of ``goes`` costs on average, ``bound`` being all of them."""
    return _NARROW_SETS * abs(bound) / max(1, master.arrays.sets_for(goes))


def _parts(budget: float) -> list[float]:
    """``budget``, and less where it lets too much in."""
    return [budget / 2**times for times in range(_MOST_HALVED + 1)]
