"""The staged solve: every stage of the objective, each settled before the next."""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from loadplan.plan.bound import Bound, up
from loadplan.plan.bounds import Bounder
from loadplan.plan.clock import OutOfTimeError
from loadplan.plan.compact import Compact
from loadplan.plan.dive import Dive
from loadplan.plan.polish import Polish
from loadplan.plan.settle import Settled, Settling
from loadplan.plan.stage_cost import (
    STRENGTH,
    StageCost,
    every_stage,
    ready_stages,
)
from loadplan.plan.step import common_step

Array = np.ndarray[Any, np.dtype[Any]]
_FINEST = 0.001
FIRST_TRY, SECOND_TRY = 0.25, 0.6  # shares of the time left
_ROUNDS = 60
_NEAR = 0.008  # share of the bound within which a plan is settled without bettering it first


@dataclass(slots=True)
class StageResult:
    """What came of a stage: the bound, and when it was settled (seconds from the start).

    ``held`` is what the other stages were held at: the bound is of plans that have as many loads
    ready, or come to no more. One with another stage held that comes later is of no plan's use.
    """

    stage: StageCost
    bound: float
    seconds: float
    held: tuple[tuple[StageCost, float], ...] = ()


@dataclass(slots=True)
class StagedSolve(ABC):
    """Runs the stages; ``results`` grows as they are settled, ``values`` is the best plan so far.

    ``free`` is how many sets are freed at once to better a plan, ``freest`` how many times as many
    at the most.
    """

    bounder: Bounder
    results: list[StageResult] = field(default_factory=list)
    values: Array | None = None
    free: int = 8
    freest: int = 2

    def run(self) -> None:
        """Settle every stage, or as many as the time allows."""
        try:
            self._run()
        except OutOfTimeError:
            return

    @abstractmethod
    def _run(self) -> None:
        """Settle every stage; ``OutOfTimeError`` ends it."""

    def settled(self) -> bool:
        """Whether the plan is at the bound of every stage."""
        bounds = {result.stage: result.bound for result in self.results}
        return all(
            abs(self._value(stage)) == abs(bounds.get(stage, math.inf))
            for stage in every_stage(self.bounder.selection.priority)
        )

    def _least_strength(self, step: float, least: float) -> None:
        """Settle the strength from the plan there is; none is below ``least``."""
        strength = Settled(bound=least)
        with self._within(SECOND_TRY):
            strength = self._settle(STRENGTH, step, self.values, least)
        if not strength.proved:
            with self._within(SECOND_TRY):
                self._polish(STRENGTH, step)
            self._settle(STRENGTH, step, self.values, strength.bound)

    @contextmanager
    def _within(self, share: float) -> Iterator[None]:
        """Try what is inside for a share of the time left, and go on whatever comes of it."""
        try:
            with self.bounder.clock.at_most(share):
                yield
        except OutOfTimeError:
            if self.bounder.clock.over():
                raise

    def _dive(self, stage: StageCost, goes: Array | None) -> None:
        """Dive for a plan, and keep it if it is better."""
        if goes is None:
            return
        self.bounder.clock.stage = stage.name
        found = Dive(self.bounder, stage).run(goes)
        if found is not None and self._cost(stage, found) < self._value(stage):
            self.values = found

    def _near(self, stage: StageCost) -> bool:
        """Whether the best plan is near the least that its loads could come to."""
        goes = self._goes()
        if goes is None:
            return False
        linear = self.bounder.solve_at(stage, goes, goes, rounded=True)
        return self._value(stage) <= (1.0 + _NEAR) * linear.bound

    def _goes(self) -> Array | None:
        master = self.bounder.master
        return None if self.values is None else np.round(self.values[master.going])

    def has(self, ready: dict[int, int]) -> bool:
        """Whether the plan has so many loads ready at every priority."""
        return self._ready() == ready

    def _ready(self) -> dict[int, int]:
        """How many loads of each priority the plan has ready."""
        now = self._goes()
        assert now is not None
        return self.bounder.selection.number_ready(now)

    def _hold_those_ready(self) -> None:
        """Hold as many loads ready at each priority as the plan has."""
        self.bounder.selection.ready = self._ready()
        self.bounder.master.hold_ready(self.bounder.selection.ready)

    def _polish(self, stage: StageCost, step: float, enough: float = -math.inf) -> None:
        assert self.values is not None
        self.bounder.clock.stage = stage.name
        self.values = Polish(self.bounder, stage, step, self.free, self.freest).run(
            self.values, enough
        )

    def _value(self, stage: StageCost) -> float:
        return math.inf if self.values is None else self._cost(stage, self.values)

    def _cost(self, stage: StageCost, values: Array) -> float:
        return self.bounder.master.value(stage, values)

    def _ready_bounds(self) -> None:
        for stage in self._priorities():
            self.bounder.clock.stage = stage.name
            number = self.bounder.most_ready(stage)
            self.bounder.selection.ready[stage.priority] = number
            self.bounder.master.hold_ready(self.bounder.selection.ready)
            self._note(stage, float(number))

    def _priorities(self) -> tuple[StageCost, ...]:
        return ready_stages(one.load.priority for one in self.bounder.master.arrays.sets.loads)

    def _bound(self, stage: StageCost, step: float = 1.0) -> Bound:
        """The bound of ``stage``, whose values lie ``step`` apart."""
        self.bounder.clock.stage = stage.name
        bound = self.bounder.value(stage, step, _ROUNDS)
        self._note(stage, bound.least)
        return bound

    def _settle(
        self,
        stage: StageCost,
        step: float,
        known: Array | None = None,
        least: float = -math.inf,
        farthest: float = math.inf,
    ) -> Settled:
        """Settle ``stage``; no plan is below ``least``, as is known with the same stages held."""
        self.bounder.clock.stage = stage.name
        settled = Settling(self.bounder, stage, step, farthest).run(known)
        settled.bound = max(settled.bound, least)
        if settled.values is not None:
            self.values = settled.values
        if settled.values is not None or not settled.proved:
            self._note(stage, settled.bound)
        return settled

    def _by_compact(
        self, compact: Compact, stage: StageCost, step: float, least: float = -math.inf
    ) -> Settled:
        """The least of ``stage`` by the compact program, or what it came to in the time."""
        self.bounder.clock.stage = stage.name
        known = self._value(stage)
        found = compact.least(stage, step)
        bound = up(found.bound, step) if math.isfinite(found.bound) else -math.inf
        values, master = found.values, self.bounder.master
        if values is not None and master.keeps_held(values) and self._cost(stage, values) < known:
            self.values = values
        bound = max(bound, least)
        self._note(stage, bound)
        return Settled(self.values, self._value(stage), bound)

    def _drop(self, stage: StageCost) -> None:
        if any(held == stage for held, _ in self.bounder.master.stage_rows):
            self.bounder.master.loosen(stage, math.inf)
        self.bounder.selection.forget(0)
        self.bounder.master.forget_cuts(0)

    def _hold(self, stage: StageCost, value: float) -> float:
        master = self.bounder.master
        if any(held == stage for held, _ in master.stage_rows):
            master.loosen(stage, value)
        else:
            master.add_stage(stage, value)
        return value

    def _held_beside(self, stage: StageCost) -> tuple[tuple[StageCost, float], ...]:
        """At what the other stages are held while ``stage`` is looked at."""
        ready, master = self.bounder.selection.ready, self.bounder.master
        held = [
            (one, float(ready[one.priority])) for one in self._priorities() if one.priority in ready
        ]
        held += [(one, master.held[row]) for one, row in master.stage_rows if master.holds(one)]
        return tuple((one, value) for one, value in held if one != stage)

    def _note(self, stage: StageCost, bound: float) -> None:
        result = StageResult(stage, bound, self.bounder.clock.spent(), self._held_beside(stage))
        for place, earlier in enumerate(self.results):
            if earlier.stage == stage:
                self.results[place] = result
                return
        self.results.append(result)


def strength_step(bounder: Bounder) -> float:
    """How far apart two values of the strength stage lie at least.

    The greatest common divisor of every assembly's strength; a thousandth of a unit where figures
    converted from other units have none worth naming.
    """
    loads = bounder.master.arrays.sets.loads
    articles = [article for load in loads for article in load.articles]
    strengths = {a.strength for article in articles for a in article.assemblies()}
    return max(float(common_step(strengths)), _FINEST)
