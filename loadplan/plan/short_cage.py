"""Days on which loads must stay: a plan first, then more loads, then the later stages bettered."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from loadplan.plan.compact import Compact
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.exact import MOST_SEARCHED
from loadplan.plan.fill import Fill
from loadplan.plan.greedy import greedy
from loadplan.plan.partly import partly_settled
from loadplan.plan.reshuffle import Reshuffle
from loadplan.plan.settle import Settled
from loadplan.plan.short import first_plan
from loadplan.plan.stage_cost import GOING, MIXED_SETS, STRENGTH, TIE_DOWNS, StageCost
from loadplan.plan.stages import FIRST_TRY, SECOND_TRY, Array, StagedSolve, strength_step
from loadplan.plan.whole import whole_sets

_LAST, _LAST_SHARE = 1, 0.6  # loads that lack; share of the time left for the compact program
_FIRST, BOUNDS, _MORE = 0.5, 0.45, 0.25  # shares of the time left
_SHUFFLED = 0.1  # share of the time left for bettering a plan by hand rules
_FILLED, _FILLED_LARGE = 0.3, 0.6  # and for bettering it by planning some loads afresh
_BOUNDS_SHORT = 0.25  # and for bounds after a plan that is hardly bettered any more
_MADE = 0.01  # seconds a load, in which the compact program of a day is made
_MIXED = 0.85  # and for fewer mixed sets: every set is one at first where pairs did not count
_TINY = 1e-6


@dataclass(slots=True)
class ShortCage(StagedSolve):
    """A staged solve with a way for days whose bounds no plan is found to reach.

    ``at_once`` is how many seconds the sets may take that are not whole in a linear solution.
    ``tie_downs`` is what is known of those of the plan, where they have been settled.
    """

    at_once: float = 10.0
    tie_downs: Settled = field(default_factory=Settled)
    _search: CompleteSearch | None = None

    def _run(self) -> None:
        """Find a plan in which many loads go, bound how many can, and better the plan."""
        self.later_stages(self.as_many_ready(greedy(self.bounder.master)))

    def as_many_ready(self, rough: Array) -> dict[int, int]:
        """Find a plan in which many loads go; how many could at each priority, as far as known.

        ``rough`` is a plan to begin with.
        """
        self.values = rough
        with self._within(_FIRST):
            self.values = first_plan(self.bounder, rough)
        self._reshuffle({}, _SHUFFLED)
        if not self._very_large():
            with self._within(_FILLED):
                self._fill({})
        with self._within(BOUNDS if self._very_large() else _BOUNDS_SHORT):
            self._ready_bounds()
        most = dict(self.bounder.selection.ready)
        self.more_ready(most)
        return most

    def better(self, most: dict[int, int]) -> None:
        """Better a plan: more loads, ``most`` at each priority, then the later stages.

        Each for a share of the time.
        """
        self.more_ready(most)
        self.later_stages(most)

    def more_ready(self, most: dict[int, int]) -> None:
        """Better a plan in loads ready, up to ``most`` at each priority, and hold what it has."""
        if not self.has(most):
            self._release_ready()
            self._more_go(most)
        self._hold_those_ready()

    def later_stages(self, most: dict[int, int]) -> None:
        """Better a plan in the stages after loads ready; ``most`` is as many as those can be."""
        proved = self.has(most)
        self._hold_those_ready()
        if not proved:
            # The bounds of later stages so far are of plans with more loads ready.
            self.results[:] = [result for result in self.results if result.stage.priority]
        if self.tie_downs.proved and self.tie_downs.value == self._value(TIE_DOWNS):
            self._hold(TIE_DOWNS, self.tie_downs.value)
        else:
            proved = self._better_and_hold(TIE_DOWNS, FIRST_TRY, proved=proved)
        proved = self._better_and_hold(MIXED_SETS, _MIXED, proved=proved)
        step, least = strength_step(self.bounder), -math.inf
        if not proved:
            if not self.bounder.large:
                with self._within(FIRST_TRY):
                    least = self._bound(STRENGTH, step).least
            with self._within(SECOND_TRY):
                self._polish(STRENGTH, step)
        self._least_strength(step, least)

    def _more_go(self, most: dict[int, int]) -> None:
        """Let more loads go, by hand rules and then by planning some of them afresh.

        Where only one lacks of ``most``, the compact program is asked for it before that.
        """
        self.bounder.clock.stage = GOING.name
        if not self._very_large() and 0 < self._lacking(most) <= _LAST:
            with self._within(_LAST_SHARE):
                self._the_last(most)
        if self.has(most):
            return
        self._reshuffle(most, _MORE if self._very_large() else _SHUFFLED)
        if self.has(most):
            return
        with self._within(_FILLED_LARGE if self._very_large() else _FILLED):
            self._fill(most)

    def _reshuffle(self, most: dict[int, int], share: float) -> None:
        """Let more loads go by hand rules, up to ``most``, for a share of the time left."""
        assert self.values is not None
        with self._within(share):
            self.values = Reshuffle(self.bounder, most).run(self.values)

    def _fill(self, most: dict[int, int]) -> None:
        """Let more loads go by planning some of them afresh, up to ``most``.

        Not where making the program of the day would take the time there is.
        """
        assert self.values is not None
        made = _MADE * self.bounder.master.going.size
        if self._search is None and self.bounder.clock.left() < made:
            return
        for better in Fill(self.bounder, self._plain(), most).run(self.values):
            self.values = better

    def _plain(self) -> CompleteSearch:
        """The compact program of the day, in which nothing counts pairs."""
        if self._search is None:
            self._search = CompleteSearch.of(self.bounder.master, patterns=False, pairs=False)
        return self._search

    def _lacking(self, most: dict[int, int]) -> int:
        """How many loads lack of ``most`` ready, over all priorities."""
        now = self._ready()
        return sum(abs(number - now[priority]) for priority, number in most.items())

    def _the_last(self, most: dict[int, int]) -> None:
        """Find the fewest tie-downs with ``most`` loads ready by the compact program."""
        bounder, before = self.bounder, self.values
        bounder.selection.ready = dict(most)
        self.values = None
        try:
            compact = Compact(self._plain(), bounder.selection, bounder.clock)
            self.tie_downs = self._by_compact(compact, TIE_DOWNS, 1.0)
        finally:
            self.values = before if self.values is None else self.values
            bounder.selection.ready = {}

    def _better_and_hold(self, stage: StageCost, share: float, *, proved: bool) -> bool:
        """Better and hold ``stage``; whether its bound is reached, as those before it are."""
        least = -math.inf
        bounded = proved or not self.bounder.large
        if bounded:
            with self._within(FIRST_TRY):
                least = self._bound(stage).least
        with self._within(share):
            with self._within(FIRST_TRY):
                self._better_at_once(stage, 1.0)
            self._polish(stage, 1.0, least)
        if bounded and self._value(stage) > least:
            with self._within(FIRST_TRY):
                least = self._settle(stage, 1.0, self.values, least).bound
        value = self._hold(stage, self._value(stage))
        return proved and value <= least + _TINY

    def _better_at_once(self, stage: StageCost, step: float) -> None:
        """Better the plan by the sets that are whole in the linear solution for its loads.

        Where no plan comes of all of them, by every second one.
        """
        bounder, goes = self.bounder, self._goes()
        if goes is None or self._very_large():
            return
        bounder.clock.stage = stage.name
        linear = bounder.solve_at(stage, goes, goes)
        if linear.values is None:
            return
        below = self._value(stage) - step
        whole = whole_sets(bounder.master, linear.values)
        for kept in (whole, whole[::2]):
            if linear.bound > below + 0.1 * step:
                return
            found = partly_settled(bounder, stage, goes, kept, below, self._seconds())
            if found is not None:
                self.values = found
                return

    def _seconds(self) -> float:
        return min(self.at_once, _MORE * self.bounder.clock.left())

    def _very_large(self) -> bool:
        return self.bounder.master.going.size > MOST_SEARCHED

    def _release_ready(self) -> None:
        self.bounder.selection.ready = {}
        self.bounder.master.release_ready()
