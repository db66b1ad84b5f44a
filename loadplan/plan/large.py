"""Large days: a good plan first, then the bounds it is held against, then bettering it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from loadplan.plan.bounds import Bound
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.dive import SURE, Dive
from loadplan.plan.exact import MOST_SETS, narrow_budget
from loadplan.plan.fill import Fill
from loadplan.plan.greedy import greedy
from loadplan.plan.partly import partly_settled
from loadplan.plan.polish import Polish
from loadplan.plan.pricing import prices_of, sets_within
from loadplan.plan.settle import Settled
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.stages import FIRST_TRY, SECOND_TRY, Array, StagedSolve, strength_step

MANY_LOADS = 60
_MOST_AT_ONCE = 400  # loads for which one whole solve soon finds what polishing does
_FREE_NARROWLY, _FREEST_NARROWLY = 100, 8  # sets freed at once, of few columns each; at the most
_BOUNDS = 0.5  # share of the time left
_WHOLE = 0.75  # share of the time left for a whole solve
_MOSTLY = 0.7  # share of the sets that are whole in a linear solution
_SECONDS = 10.0  # for what is not whole


@dataclass(slots=True)
class LargeSolve(StagedSolve):
    """The staged solve of a day of more than ``MANY_LOADS`` loads.

    A plan that reaches the bounds is looked for as soon as it is known which loads could go. Where
    none is found, tie-downs and mixed sets are priced, and loads are left if need be.
    """

    free: int = 48
    freest: int = 8

    def _run(self) -> None:
        nearest = Bound(-math.inf, None)
        with self._within(_BOUNDS):
            self._ready_bounds()
            nearest = self._bound(TIE_DOWNS)
            self._hold(TIE_DOWNS, nearest.least)
            self._hold(MIXED_SETS, self._bound(MIXED_SETS).least)
        step = strength_step(self.bounder)
        strength = Settled()
        if nearest.goes is not None:
            with self._within(SECOND_TRY):
                self._near_the_bound(nearest.goes)
        if self.values is None:
            self._freer_plan(nearest.goes)
        elif self.bounder.master.going.size > _MOST_AT_ONCE:
            strength.bound = self._bound(STRENGTH, step).least
            with self._within(SECOND_TRY):
                self._polish_narrowly(step)
        elif self._near(STRENGTH):
            with self._within(_WHOLE):
                strength = self._settle(STRENGTH, step, self.values)
        if strength.proved:
            return
        with self._within(SECOND_TRY):
            self._polish(STRENGTH, step)
        if nearest.goes is not None and self._as_many_as(nearest.goes):
            self._settle(STRENGTH, step, self.values, strength.bound)
        self._polish(STRENGTH, step)

    def _near_the_bound(self, goes: Array) -> None:
        """Find a plan with ``goes`` ready that has every stage before the strength at its bound.

        Where most sets are whole in the linear solution, they are kept and the rest is solved for.
        """
        bounder, master = self.bounder, self.bounder.master
        bounder.clock.stage = STRENGTH.name
        linear = bounder.solve_at(STRENGTH, goes, goes)
        if linear.values is None:
            return
        whole = np.nonzero(linear.values[master.base :] > SURE)[0] + master.base
        if len(whole) >= _MOSTLY * master.arrays.sets_for(goes):
            kept = whole.tolist()
            self.values = partly_settled(bounder, STRENGTH, goes, kept, math.inf, _SECONDS)
        if self.values is None:
            self._dive(STRENGTH, goes)

    def _polish_narrowly(self, step: float) -> None:
        """Better a plan by the sets that cost hardly more than the linear solution pays."""
        bounder, goes = self.bounder, self._goes()
        assert goes is not None
        assert self.values is not None
        master = bounder.master
        linear = bounder.solve_at(STRENGTH, goes, goes, rounded=True)
        budget = narrow_budget(master, linear.bound, goes)
        prices = prices_of(master, STRENGTH, linear)
        master.add_sets(sets_within(master, prices, budget, MOST_SETS, goes) or ())
        linear = bounder.solve_at(STRENGTH, goes, goes)
        if linear.values is None:
            return
        usable = (linear.reduced <= budget) | (linear.values > 0)
        polish = Polish(bounder, STRENGTH, step, _FREE_NARROWLY, _FREEST_NARROWLY, usable)
        self.values = polish.run(self.values)

    def _freer_plan(self, goes: Array | None) -> None:
        """Dive for a plan that reaches no bounds, loads left if need be, and hold what it has."""
        self._drop(MIXED_SETS)
        self._drop(TIE_DOWNS)
        lean, selection = self._lean(), self.bounder.selection
        selection.ready = {}
        self.bounder.master.release_ready()
        with self._within(SECOND_TRY):
            sets = Dive(self.bounder, lean).sets(selection.possible if goes is None else goes)
            self.values = greedy(self.bounder.master, sets)
        if self.values is None:
            raise OutOfTimeError
        with self._within(SECOND_TRY):
            self.values = Fill(self.bounder, lean).run(self.values)
        self._hold_those_ready()
        self._hold(TIE_DOWNS, self._value(TIE_DOWNS))
        with self._within(FIRST_TRY):
            self._polish(MIXED_SETS, 1.0)
        self._hold(MIXED_SETS, self._value(MIXED_SETS))

    def _lean(self) -> StageCost:
        """Least strength, tie-downs and mixed sets priced at the strongest tie-down there is."""
        menus = (block.menu for block in self.bounder.master.arrays.blocks)
        strongest = max((float(menu.strength.max(initial=1.0)) for menu in menus), default=1.0)
        price = math.ceil(strongest)
        return replace(STRENGTH, mixed=price, tie_downs=price)

    def _as_many_as(self, goes: Array) -> bool:
        now = self._goes()
        return now is not None and float(now.sum()) >= float(goes.sum())

    def _hold_those_ready(self) -> None:
        """Hold as many loads ready at each priority as the plan has."""
        selection, now = self.bounder.selection, self._goes()
        assert now is not None
        for priority in np.unique(selection.priority).tolist():
            selection.ready[priority] = round(float(now[selection.priority == priority].sum()))
        self.bounder.master.hold_ready(selection.ready)
