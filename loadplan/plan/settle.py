"""Settling a stage: its exact least over every set of ready loads, or as far as time goes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.bound import up
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError, TooManyStepsError
from loadplan.plan.exact import ExactSearch
from loadplan.plan.found import Ending
from loadplan.plan.selection import Cut
from loadplan.plan.stage_cost import StageCost

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6
_ROUNDS = 60
_MOMENT = 1.0  # seconds


@dataclass(slots=True, eq=False)
class Settled:
    """The outcome of a stage: the best plan's values (None if none), its value, and the bound.

    Value and bound are both infinite where it is proved that there is no plan at all. ``wide`` is
    whether it was given up because pricing met too many articles with very many sets.
    """

    values: Array | None = None
    value: float = math.inf
    bound: float = -math.inf
    wide: bool = False

    @property
    def proved(self) -> bool:
        """Whether nothing can be less than ``value``."""
        return self.bound >= self.value - _TINY


@dataclass(slots=True)
class Settling:
    """The search for the least of one stage with the stages before it held.

    Sets of ready loads are looked into in the order of what they could reach at best; each is
    solved exactly or ruled out by its bound. ``farthest`` is as in :class:`ExactSearch`.
    """

    bounder: Bounder
    stage: StageCost
    step: float
    farthest: float = math.inf

    def run(self, known: Array | None = None) -> Settled:
        """Settle the stage; ``known`` are the values of a plan that is there already."""
        best = Settled()
        if known is not None:
            best.values, best.value = known, self.bounder.master.value(self.stage, known)
        try:
            first = self.bounder.value(self.stage, self.step, _ROUNDS)
            best.bound, goes = first.least, first.goes
            while goes is not None and best.bound < self._target(best) - self.step + _TINY:
                self.bounder.clock.tick()
                self._look_into(best, goes)
                goes, least = self.bounder.propose(self.stage, self.step)
                best.bound = max(best.bound, least)
        except (OutOfTimeError, TooManyStepsError) as end:
            self._raise_bound(best)
            best.wide = isinstance(end, TooManyStepsError)
            return best
        best.bound = best.value
        return best

    def _look_into(self, best: Settled, goes: Array) -> None:
        """Solve exactly at ``goes`` and let the selection know what came out."""
        bounder, target = self.bounder, self._target(best)
        linear = bounder.solve_at(self.stage, goes, goes)
        bounder.learn(self.stage, linear)
        if linear.bound > target - self.step + _TINY:
            return
        known = best.values is not None
        found = ExactSearch(bounder, self.stage, self.step, self.farthest, known).at(goes, target)
        if found.values is not None:
            best.values, best.value = found.values, found.value
            bounder.clock.report(found.value, best.bound)
        if found.ending is Ending.OPEN:
            if math.isfinite(found.bound):
                self._at_least(best, goes, found.bound)
            raise OutOfTimeError
        bounder.selection.values[self.stage.name].append(
            self._only_there(goes, found.value, best.bound)
        )

    def _at_least(self, best: Settled, goes: Array, least: float) -> None:
        """Raise the bound by what is known of ``goes``; a moment's work, done though time is up."""
        selection = self.bounder.selection
        only_there = self._only_there(goes, up(least, self.step), best.bound)
        selection.values[self.stage.name].append(only_there)
        self._raise_bound(best)

    def _raise_bound(self, best: Settled) -> None:
        """Raise the bound to what the selection knows by now, if it knows of any value."""
        selection = self.bounder.selection
        if not selection.values.get(self.stage.name):
            return
        _, bound = selection.least(self.stage, _MOMENT, 0.1 * self.step)
        if math.isfinite(bound):
            best.bound = max(best.bound, up(bound, self.step))

    def _target(self, best: Settled) -> float:
        """What a plan must beat: the best so far, or more than any plan can come to."""
        if math.isfinite(best.value):
            return best.value
        loads = self.bounder.master.arrays.sets.loads
        tie_downs = sum(article.most() for load in loads for article in load.articles)
        articles = (article for load in loads for article in load.articles)
        strongest = max((a.strength for one in articles for a in one.assemblies()), default=0)
        return self.step + tie_downs * (float(strongest) if self.stage.strength else 1.0)

    def _only_there(self, goes: Array, value: float, bound: float) -> Cut:
        """The stage's value is ``value`` or more at ``goes``; of other loads no more is said.

        As many loads are ready as there can be, so any other set of them lacks one of these. With
        these the value is ``bound`` or more, as with any: to go down to nothing would be as true,
        but the solver keeps its rows to a ten millionth only, and fifty million times that is not
        little.
        """
        depth = len(self.bounder.master.stage_rows)
        drop = value - min(value, max(0.0, bound))
        return Cut(-drop * goes, value - drop * float(goes.sum()), depth)
