"""Days of up to 60 loads: all bounds at once by prices, else stage by stage in whole numbers."""

from __future__ import annotations

import math
from contextlib import suppress
from dataclasses import dataclass

from loadplan.plan.bounds import WIDE
from loadplan.plan.clock import Steps, TooManyStepsError
from loadplan.plan.compact import Compact
from loadplan.plan.complete_search import MOST_LOADS
from loadplan.plan.greedy import greedy
from loadplan.plan.large import LargeSolve
from loadplan.plan.settle import Settled
from loadplan.plan.short import by_rank
from loadplan.plan.short_cage import ShortCage
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS
from loadplan.plan.stages import FIRST_TRY, SECOND_TRY, StagedSolve, strength_step
from loadplan.plan.start import begun_again

_AT_ONCE = 0.15  # share of the time left for a later stage by the compact program
_BY_PRICES = 0.6  # the same for the strength by prices
_AT_ONCE_WIDE = 0.4  # the same where prices meet articles with very many sets
_COUNTS = 0.8  # share of the time left for loads ready and tie-downs by it
_AT_BOUNDS = 0.5  # the same where bounds by prices are taken to be reached
_POLISH = 0.15  # share of the time left in which its plan is bettered
_FREEST = 8  # times as many sets as at first, freed at once to better its plan
_FAR = 0.02  # share of the bound beyond which the first try gives up
_WIDER = 30  # times that pricing of the later stages of few loads may meet such articles
_SECONDS = 4.0  # for the sets that are not whole, of more than a few loads
_TINY = 1e-6


@dataclass(slots=True)
class SmallSolve(StagedSolve):
    """The staged solve of a day of up to 60 loads.

    The bounds of the stages by prices are taken to be reached, and the first whole plan that
    reaches them proves them all at once. Where prices meet articles with very many sets, or no plan
    reaches their bounds, the compact program settles loads ready and tie-downs exactly, and of few
    loads the later stages where that does not take long.
    """

    def _run(self) -> None:
        step, strength = strength_step(self.bounder), Settled()
        wide = not self._bounded()
        if not wide:
            self.bounder.patience = Steps(_WIDER) if self._few() else None
            with self._within(FIRST_TRY):
                strength = self._settle(STRENGTH, step, farthest=_FAR)
            self.bounder.patience, wide = None, strength.wide
        if self.values is None:
            self._drop(MIXED_SETS)
            self._drop(TIE_DOWNS)
            self._in_whole_numbers(step, wide=wide)
        elif not strength.proved and self._few():
            self._least_in_turn(self._compact(), step, strength.bound, wide=wide)
        elif not strength.proved:
            self._least_strength(step, strength.bound)

    def _bounded(self) -> bool:
        """Take the bounds to be reached; not where there are very many sets, or it takes long."""
        done = False
        with suppress(TooManyStepsError), self._within(SECOND_TRY):
            self.bounder.patience = Steps(WIDE)
            self._ready_bounds()
            self._hold(TIE_DOWNS, self._bound(TIE_DOWNS).least)
            self.bounder.patience = Steps(_WIDER) if self._few() else None
            self._hold(MIXED_SETS, self._bound(MIXED_SETS).least)
            done = True
        self.bounder.patience = None
        return done

    def _few(self) -> bool:
        return len(self.bounder.master.possible) <= MOST_LOADS

    def _in_whole_numbers(self, step: float, *, wide: bool) -> None:
        """Settle loads ready and tie-downs by the compact program, and go on from its plan.

        Both at once where as many loads can go as their bounds say. With ``wide`` prices meet
        articles with very many sets, and there are no such bounds.
        """
        if wide and not self._few():
            self._like_a_large_day()
            return
        compact, tie_downs = self._compact(), Settled()
        most = dict(self.bounder.selection.ready)
        if not wide:
            with self._within(_AT_BOUNDS):
                tie_downs = self._by_compact(compact, TIE_DOWNS, 1.0)
        if self.values is None:
            with self._within(_COUNTS):
                most = self._most_ready(compact)
                tie_downs = self._by_compact(compact, TIE_DOWNS, 1.0)
        if self.values is None:
            self._like_a_large_day()
            return
        if not self._few():
            self._better(most, tie_downs)
            return
        # Where the time came between two priorities, no later stage may cost a load.
        self._hold_those_ready()
        self._hold(TIE_DOWNS, self._value(TIE_DOWNS))
        self.bounder.compact = compact
        self._hold(MIXED_SETS, self._mixed_by(compact, wide=wide))
        self._least_in_turn(compact, step, -math.inf, wide=wide)

    def _compact(self) -> Compact:
        return Compact.of(self.bounder.master, self.bounder.selection)

    def _like_a_large_day(self) -> None:
        """A plan first, then its bounds: prices and the compact program take too long.

        The compact program has a try where fewer loads go than could.
        """
        bounder, rank = self.bounder, by_rank(self.bounder)
        other = LargeSolve(begun_again(bounder), self.results)
        master = other.bounder.master
        try:
            most = other.as_many_ready(greedy(master))
            if not other.has(most):
                with self._within(SECOND_TRY):
                    self._most_ready(self._compact())
                if self.values is not None:
                    found = master.values_of(bounder.master, self.values)
                    other.values = min(other.values, found, key=lambda one: master.value(rank, one))
            other.later_stages(most)
        finally:
            self.bounder, self.values = other.bounder, other.values

    def _better(self, most: dict[int, int], tie_downs: Settled) -> None:
        """Better the plan there is, of which ``most`` loads can be ready; ``tie_downs`` is its."""
        other = ShortCage(self.bounder, self.results, self.values, freest=_FREEST, at_once=_SECONDS)
        other.tie_downs = tie_downs
        try:
            other.better(most)
        finally:
            self.values = other.values

    def _most_ready(self, compact: Compact) -> dict[int, int]:
        """Settle how many loads can be ready, priority by priority; answers with how many could."""
        bounder, most = self.bounder, dict[int, int]()
        selection = bounder.selection
        selection.ready = {}
        for stage in self._priorities():
            bounder.clock.stage = stage.name
            with bounder.clock.at_most(_COUNTS):
                found = compact.most_ready(stage.priority)
            self.values = found.values
            same = float((selection.priority == stage.priority).sum())
            most[stage.priority] = math.floor(min(same, _TINY - found.bound))
            selection.ready[stage.priority] = self._ready()[stage.priority]
            self._note(stage, float(most[stage.priority]))
        bounder.master.hold_ready(selection.ready)
        if most == selection.ready:
            bounder.cap_ready()
        return most

    def _mixed_by(self, compact: Compact, *, wide: bool) -> float:
        """Settle the mixed sets as far as time goes; answers with those of the best plan."""
        mixed = Settled()
        if not wide:
            with self._within(FIRST_TRY):
                mixed = self._settle(MIXED_SETS, 1.0, self.values)
        if not mixed.proved:
            with self._within(_AT_ONCE_WIDE if wide else _AT_ONCE):
                mixed = self._by_compact(compact, MIXED_SETS, 1.0, mixed.bound)
        if not mixed.proved:
            with self._within(_POLISH):
                self._polish(MIXED_SETS, 1.0, mixed.bound)
            with self._within(SECOND_TRY):
                self._settle(MIXED_SETS, 1.0, self.values, mixed.bound)
        return self._value(MIXED_SETS)

    def _least_in_turn(self, compact: Compact, step: float, least: float, *, wide: bool) -> None:
        """Settle the strength by prices and compact program in turn; none is below ``least``."""
        strength = Settled(bound=least)
        if not wide:
            with self._within(_BY_PRICES):
                strength = self._settle(STRENGTH, step, self.values, least)
        if not strength.proved:
            with self._within(_AT_ONCE_WIDE if wide else _AT_ONCE):
                strength = self._by_compact(compact, STRENGTH, step, strength.bound)
        if strength.proved:
            return
        if not self._near(STRENGTH):
            with self._within(FIRST_TRY):
                self._polish(STRENGTH, step)
        self._least_strength(step, max(least, strength.bound))
