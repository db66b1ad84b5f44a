"""Days of up to 60 loads: all bounds at once, else in whole numbers, or from a plan on."""

from __future__ import annotations

import math
from contextlib import suppress
from dataclasses import dataclass

import numpy as np

from loadplan.plan.bounds import WIDE, up
from loadplan.plan.clock import OutOfTimeError, Steps, TooManyStepsError
from loadplan.plan.compact import Compact
from loadplan.plan.complete_search import MOST_LOADS
from loadplan.plan.greedy import greedy
from loadplan.plan.large import LargeSolve
from loadplan.plan.settle import Settled, Settling
from loadplan.plan.short import by_rank
from loadplan.plan.short_cage import ShortCage
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.stages import FIRST_TRY, SECOND_TRY, StagedSolve, strength_step
from loadplan.plan.start import begun_again

_AT_ONCE = 0.15  # share of the time left for a later stage by the compact program
_POLISH = 0.15  # share of the time left in which its plan is bettered
_FAR = 0.02  # share of the bound beyond which the first try gives up
_SPARE = 0.12  # share of the time left for a plan to fall back on
_TINY = 1e-6


@dataclass(slots=True)
class SmallSolve(StagedSolve):
    """The staged solve of a day of up to 60 loads.

    The bounds of the stages by prices are taken to be reached, and the first whole plan that
    reaches them proves them all at once. Where prices meet articles with very many sets, or no plan
    reaches their bounds, the compact program settles few loads exactly, and the later stages where
    that does not take long. With more loads a plan is found first, and bettered.
    """

    def _run(self) -> None:
        if self._bounded_by_prices():
            self._later_stages()
        elif self._few():
            self._in_whole_numbers(strength_step(self.bounder))
        else:
            self._like_a_large_day()

    def _bounded_by_prices(self) -> bool:
        """Take the bounds to be reached; not where there are very many sets, or it takes long."""
        done = False
        self.bounder.patience = Steps(WIDE)
        with suppress(TooManyStepsError), self._within(SECOND_TRY):
            self._early_bounds()
            done = True
        self.bounder.patience = None
        return done

    def _early_bounds(self) -> None:
        """Take the bounds of loads ready and tie-downs to be reached."""
        self._ready_bounds()
        self._hold(TIE_DOWNS, self._bound(TIE_DOWNS).least)

    def _later_stages(self) -> None:
        """Settle mixed sets and strength; what comes before, where its bounds are not reached."""
        self._hold(MIXED_SETS, self._bound(MIXED_SETS).least)
        step = strength_step(self.bounder)
        strength = Settled()
        with self._within(FIRST_TRY):
            strength = self._settle(STRENGTH, step, self.values, farthest=_FAR)
        if self.values is None:
            self._beyond_bounds(step)
        elif not strength.proved:
            self._least_strength(step, strength.bound)

    def _beyond_bounds(self, step: float) -> None:
        """As of any day, or in whole numbers where the compact program is small."""
        if not self._few():
            self._stage_by_stage(step)
            return
        self._drop(MIXED_SETS)
        self._drop(TIE_DOWNS)
        self._in_whole_numbers(step, prices_first=True)

    def _few(self) -> bool:
        return len(self.bounder.master.possible) <= MOST_LOADS

    def _like_a_large_day(self) -> None:
        """A plan first, then its bounds: so many loads take the compact program too long.

        It has a try where fewer loads go than could.
        """
        bounder, rank = self.bounder, by_rank(self.bounder)
        other = LargeSolve(begun_again(bounder), self.results)
        master = other.bounder.master
        try:
            most = other.as_many_ready(greedy(master))
            if not other.has(most):
                with self._within(SECOND_TRY):
                    self._most_ready(Compact.of(bounder.master, bounder.selection))
                if self.values is not None:
                    found = master.values_of(bounder.master, self.values)
                    other.values = min(other.values, found, key=lambda one: master.value(rank, one))
            other.later_stages(most)
        finally:
            self.bounder, self.values = other.bounder, other.values

    def _stage_by_stage(self, step: float) -> None:
        """Settle the mixed sets with the bounds before reached; if no plan does, let loads stay."""
        most, mixed = dict(self.bounder.selection.ready), Settled()
        spare = ShortCage(begun_again(self.bounder), self.results)
        try:
            with self._within(_SPARE):
                spare.fill()
            self._drop(MIXED_SETS)
            with self._within(FIRST_TRY):
                mixed = self._settle(MIXED_SETS, 1.0)
            if mixed.values is None and mixed.proved:
                with self._within(SECOND_TRY):
                    mixed = self._one_by_one()
            if mixed.values is None:
                spare.better(most)
        finally:
            if self.values is None:
                self.bounder, self.values = spare.bounder, spare.values
        if mixed.values is not None:
            self._hold(MIXED_SETS, mixed.value)
            self._least_strength(step, -math.inf)

    def _one_by_one(self) -> Settled:
        """Settle the earlier stages in whole numbers, since no plan reaches their bounds."""
        self._drop(TIE_DOWNS)
        tie_downs = self._settle(TIE_DOWNS, 1.0)
        if tie_downs.values is None and tie_downs.proved:
            self._fewer_ready()
            tie_downs = self._settle(TIE_DOWNS, 1.0)
        if tie_downs.values is None:
            raise OutOfTimeError
        self._hold(TIE_DOWNS, tie_downs.value)
        return self._settle(MIXED_SETS, 1.0, self.values)

    def _fewer_ready(self) -> None:
        """Find how many loads can be ready in whole plans, priority by priority."""
        selection, master = self.bounder.selection, self.bounder.master
        possible = selection.possible
        selection.ready = {}
        master.release_ready()
        for stage in self._priorities():
            selection.possible = np.where(selection.priority <= stage.priority, possible, 0.0)
            number = self.bounder.most_ready(stage)
            while not self._attained(stage.priority, number):
                number -= 1
            self._note(stage, float(selection.ready[stage.priority]))
        selection.possible = possible

    def _attained(self, priority: int, number: int) -> bool:
        """Whether some whole plan has ``number`` loads ready at ``priority``; holds it so."""
        self.bounder.selection.ready[priority] = number
        self.bounder.master.hold_ready(self.bounder.selection.ready)
        settled = Settling(self.bounder, TIE_DOWNS, 1.0).run()
        if not settled.proved:
            raise OutOfTimeError
        return settled.values is not None

    def _in_whole_numbers(self, step: float, *, prices_first: bool = False) -> None:
        """Settle every stage, those that take long in turn with prices.

        ``prices_first``: the strength by prices before the compact program has a try.
        """
        bounder = self.bounder
        compact = Compact.of(bounder.master, bounder.selection)
        self._most_ready(compact)
        self._hold(TIE_DOWNS, self._at_once(compact, TIE_DOWNS, 1.0).value)
        bounder.compact = compact
        self._hold(MIXED_SETS, self._mixed_by(compact))
        strength = Settled()
        if prices_first:
            with self._within(_AT_ONCE):
                strength = self._settle(STRENGTH, step, self.values)
        least = strength.bound
        if not strength.proved:
            with self._within(_AT_ONCE):
                strength = self._at_once(compact, STRENGTH, step)
        if not strength.proved:
            if not self._near(STRENGTH):
                with self._within(FIRST_TRY):
                    self._polish(STRENGTH, step)
            self._least_strength(step, max(least, strength.bound))

    def _most_ready(self, compact: Compact) -> None:
        """Settle how many loads can be ready, priority by priority."""
        bounder, proved = self.bounder, True
        selection = bounder.selection
        selection.ready = {}
        for stage in self._priorities():
            bounder.clock.stage = stage.name
            with bounder.clock.at_most(SECOND_TRY):
                found = compact.most_ready(stage.priority)
            self.values = found.values
            goes = self._goes()
            assert goes is not None
            same = selection.priority == stage.priority
            number = round(float(goes[same].sum()))
            most = math.floor(min(float(same.sum()), _TINY - found.bound))
            selection.ready[stage.priority] = number
            proved = proved and most == number
            self._note(stage, most)
        bounder.master.hold_ready(selection.ready)
        if proved:
            bounder.cap_ready()

    def _mixed_by(self, compact: Compact) -> float:
        """Settle the mixed sets as far as time goes; answers with those of the best plan."""
        mixed = Settled()
        with self._within(_AT_ONCE):
            mixed = self._at_once(compact, MIXED_SETS, 1.0)
        if not mixed.proved:
            with self._within(_POLISH):
                self._polish(MIXED_SETS, 1.0, mixed.bound)
            with self._within(SECOND_TRY):
                self._settle(MIXED_SETS, 1.0, self.values, mixed.bound)
        return self._value(MIXED_SETS)

    def _at_once(self, compact: Compact, stage: StageCost, step: float) -> Settled:
        """The least of ``stage`` by the compact program, or what it came to in the time."""
        clock = self.bounder.clock
        clock.stage = stage.name
        known = self._value(stage)
        found = compact.least(stage, step)
        bound = up(found.bound, step) if math.isfinite(found.bound) else -math.inf
        if found.values is not None and self._cost(stage, found.values) < known:
            self.values = found.values
        self._note(stage, bound)
        return Settled(self.values, self._value(stage), bound)
