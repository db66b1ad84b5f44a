"""Large days: a good plan first, then the bounds it is held against, then bettering it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from loadplan.plan.bound import Bound
from loadplan.plan.exact import MOST_SETS, narrow_budget
from loadplan.plan.greedy import greedy
from loadplan.plan.partly import partly_settled
from loadplan.plan.polish import Polish
from loadplan.plan.pricing import prices_of, sets_within
from loadplan.plan.settle import Settled
from loadplan.plan.short import first_plan
from loadplan.plan.short_cage import BOUNDS, ShortCage
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS
from loadplan.plan.stages import FIRST_TRY, SECOND_TRY, Array, strength_step
from loadplan.plan.whole import whole_sets

MANY_LOADS = 60
_FREE_NARROWLY, _FREEST_NARROWLY = 100, 8  # sets freed at once, of few columns each; at the most
_FREE_SHORT, _FREEST_SHORT = 20, 16  # where the cage is short, and many sets are mixed at first
_AMPLE = 0.9  # share of the loads that go by hand rules where the cage is ample
_WHOLE, _WHOLE_LARGE = 0.75, 0.95  # shares of the time left for the exact search
_MOSTLY = 0.4  # share of the sets that are whole in a linear solution
_SECONDS = 10.0  # for what is not whole


@dataclass(slots=True)
class LargeSolve(ShortCage):
    """The staged solve of a day of more than ``MANY_LOADS`` loads.

    Where nearly all loads go by hand rules, a plan that reaches the bounds is looked for as soon as
    it is known which loads could go. Where the cage is short, a plan comes first, which loads could
    go is bounded, and most of the time goes into letting more of them go.
    """

    free: int = 48
    freest: int = 8

    def _run(self) -> None:
        master = self.bounder.master
        rough = greedy(master)
        if rough[master.going].sum() < _AMPLE * self.bounder.selection.possible.sum():
            if not self._very_large():
                self.free, self.freest = _FREE_SHORT, _FREEST_SHORT
            self.later_stages(self.as_many_ready(rough))
        else:
            self._of_an_ample_cage(rough)

    def _of_an_ample_cage(self, rough: Array) -> None:
        """Look for a plan that reaches the bounds, and better that."""
        nearest = Bound(-math.inf, None)
        with self._within(BOUNDS):
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
            self._drop(MIXED_SETS)
            self._drop(TIE_DOWNS)
            most = dict(self.bounder.selection.ready)
            self._release_ready()
            self.values = first_plan(self.bounder, rough)
            self.better(most)
            return
        if self._very_large() or self._near(STRENGTH):
            with self._within(_WHOLE_LARGE if self._very_large() else _WHOLE):
                strength = self._settle(STRENGTH, step, self.values)
        if strength.proved:
            return
        if self._very_large():
            with self._within(SECOND_TRY):
                self._polish_narrowly(step)
        with self._within(SECOND_TRY):
            self._polish(STRENGTH, step)
        if nearest.goes is not None and self._as_many_as(nearest.goes):
            strength = self._settle(STRENGTH, step, self.values, strength.bound)
        if not strength.proved:
            self._polish(STRENGTH, step)

    def _least_strength(self, step: float, least: float) -> None:
        with self._within(FIRST_TRY):
            self._better_at_once(STRENGTH, step)
        with self._within(SECOND_TRY):
            self._polish(STRENGTH, step)
        if not self._settle(STRENGTH, step, self.values, least).proved:
            self._polish(STRENGTH, step)

    def _ready_bounds(self) -> None:
        """Bound the loads ready priority by priority, as far as the time for each goes."""
        stages, bounder, selection = self._priorities(), self.bounder, self.bounder.selection
        for place, stage in enumerate(stages):
            bounder.clock.stage = stage.name
            number: int | None = None
            with self._within(1 / (len(stages) - place)):
                number = bounder.most_ready(stage)
            if number is None and not selection.values[stage.name]:
                return
            selection.ready[stage.priority] = (
                bounder.ready_so_far(stage) if number is None else number
            )
            bounder.master.hold_ready(selection.ready)
            self._note(stage, float(selection.ready[stage.priority]))

    def _near_the_bound(self, goes: Array) -> None:
        """Find a plan with ``goes`` ready that has every stage before the strength at its bound.

        Where most sets are whole in the linear solution, they are kept and the rest is solved for.
        """
        bounder, master = self.bounder, self.bounder.master
        bounder.clock.stage = STRENGTH.name
        linear = bounder.solve_at(STRENGTH, goes, goes)
        if linear.values is None:
            return
        kept = whole_sets(master, linear.values)
        if len(kept) >= _MOSTLY * master.arrays.sets_for(goes):
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

    def _as_many_as(self, goes: Array) -> bool:
        now = self._goes()
        return now is not None and float(now.sum()) >= float(goes.sum())
