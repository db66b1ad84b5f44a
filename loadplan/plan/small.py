"""Days that one whole-number program can hold: for articles with more sets than can be walked."""

from __future__ import annotations

import math
from dataclasses import dataclass

from loadplan.plan.bounds import WIDE, up
from loadplan.plan.clock import Steps, TooManyStepsError
from loadplan.plan.compact import Compact
from loadplan.plan.complete_search import MOST_LOADS
from loadplan.plan.settle import Settled
from loadplan.plan.stage_cost import MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.stages import SECOND_TRY, StagedSolve, strength_step

_AT_ONCE = 0.15  # share of the time left for a later stage by the compact program
_POLISH = 0.15  # share of the time left in which its plan is bettered
_TINY = 1e-6


@dataclass(slots=True)
class SmallSolve(StagedSolve):
    """The staged solve of a day small enough for the compact program.

    Prices come first. Where they meet articles with very many sets, the compact program settles
    loads ready and tie-downs exactly, and the later stages where that does not take long.
    """

    def _run(self) -> None:
        self.bounder.patience = Steps(WIDE)
        try:
            self._early_bounds()
        except TooManyStepsError:
            self.bounder.patience = None
            self._in_whole_numbers(strength_step(self.bounder))
        else:
            self.bounder.patience = None
            self._later_stages()

    def _beyond_bounds(self, step: float) -> None:
        """As of any day, or in whole numbers where the compact program is small."""
        if len(self.bounder.master.possible) > MOST_LOADS:
            StagedSolve._beyond_bounds(self, step)
            return
        self._drop(MIXED_SETS)
        self._drop(TIE_DOWNS)
        self._in_whole_numbers(step, prices_first=True)

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
