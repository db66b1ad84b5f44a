"""Whether given loads can all be ready at once, as proved questions about one day."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

import numpy as np

from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.outcome.tie_down import Shown
from loadplan.plan.clock import Clock, OutOfTimeError
from loadplan.plan.kept import least_with_kept
from loadplan.plan.matrix import Matrix
from loadplan.plan.sets import Sets
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.solver import Solver
from loadplan.purchase.program import PurchaseProgram, purchase_program
from loadplan.purchase.shown import Reader
from loadplan.shortfall.relaxed import Denial, Relaxed

Array = np.ndarray[Any, np.dtype[Any]]
_EACH = 5.0  # seconds for one question
MOST_TOGETHER = 400  # of more, no question is answered in that time, and it takes a gigabyte
_ONE = Fraction(1)


@dataclass(frozen=True, slots=True)
class Answer:
    """``can`` None: not settled in time. ``extra`` are pieces beyond those owned, by kind.

    ``least``: proved that no fewer extra pieces would do.
    """

    can: bool | None
    extra: dict[str, int]
    least: bool = False


@dataclass(slots=True)
class Servable:
    """The program of a day, built once and asked again with other loads, stocks and times.

    ``kinds`` are those of which more pieces than are owned may be asked about.
    """

    program: PurchaseProgram
    matrix: Matrix
    of_load: Array
    clock: Clock
    kinds: tuple[str, ...]
    place: dict[str, int]
    reader: Reader

    @classmethod
    def of(cls, day: Day, sets: Sets, clock: Clock, loads: Iterable[str]) -> Servable:
        """The questions of ``day`` about some ``loads``; ``sets`` are the day's own."""
        offers = [Price(specification=gear, price=_ONE) for gear in sets.gear]
        return cls.by(purchase_program(day, loads, offers), clock)

    @classmethod
    def by(cls, program: PurchaseProgram, clock: Clock) -> Servable:
        """The questions that ``program`` can answer; ``kinds`` are what it offers."""
        # The columns of each load stand behind the one that says whether it goes.
        columns = np.arange(len(program.matrix.lower))
        of_load = np.searchsorted(program.ready, columns, side="right") - 1
        of_load[program.bought] = -1
        return cls(
            program=program,
            matrix=program.matrix.columnwise(),
            of_load=of_load,
            clock=clock,
            kinds=program.names,
            place={one.load.id: at for at, one in enumerate(program.sets.loads)},
            reader=Reader(program.sets),
        )

    def at_times_of(self, day: Day, clock: Clock) -> Servable:
        """The same questions of ``day``, which differs in the times of its trips only."""
        program = self.program if day is self.program.day else self.program.at_times_of(day)
        matrix = self.matrix if program is self.program else program.matrix.columnwise()
        return replace(self, program=program, matrix=matrix, clock=clock)

    def can(self, loads: Collection[str], free: Collection[str] = ()) -> bool | None:
        """Whether ``loads`` can all be ready with the kinds ``free`` in plenty."""
        return self.extra(loads, free, ()).can

    def seconds(self) -> float:
        """What one question may take."""
        return min(_EACH, self.clock.left())

    def relaxed(self, loads: Sequence[str]) -> Relaxed:
        """The questions about ``loads`` alone, without whole numbers."""
        going = [self.place[load] for load in loads]
        keep = self._columns_of(going)
        part = self.matrix.part(keep, self.matrix.lower, self.matrix.upper)
        ready = np.searchsorted(keep, self.program.ready[going])
        bought = np.searchsorted(keep, self.program.bought)
        return Relaxed.of(part, loads, ready, self.kinds, bought)

    def denial(self, loads: Sequence[str], free: Collection[str]) -> Denial | None:
        """Why ``loads`` cannot all be ready with the kinds ``free`` in plenty, by fractions.

        None where they might be, or where that is not to be told in the time.
        """
        if len(loads) > MOST_TOGETHER:
            return None
        return self.relaxed(loads).denial(loads, free, self.seconds())

    def extra(
        self, loads: Collection[str], free: Collection[str], counted: Collection[str]
    ) -> Answer:
        """The fewest extra pieces of ``counted`` with which ``loads`` can all be ready."""
        outcome = self._solved(loads, free, counted)
        if outcome.status is Status.INFEASIBLE:
            return Answer(False, {}, True)
        if outcome.values is None:
            return Answer(None, {})
        pieces = np.round(outcome.values[self.program.bought])
        taken = {
            kind: int(number)
            for kind, number in zip(self.kinds, pieces, strict=True)
            if number and kind in counted
        }
        return Answer(True, taken, outcome.status is Status.OPTIMAL)

    def plan(self, loads: Collection[str]) -> Shown | None:
        """A plan, not judged, in which ``loads`` go and no others; None where there is none.

        Raises ``OutOfTimeError`` where that was not settled in the time.
        """
        outcome = self._solved(loads, (), ())
        if outcome.values is not None:
            return self.reader.plan(outcome.values)
        if outcome.status is Status.INFEASIBLE:
            return None
        raise OutOfTimeError

    def _solved(
        self, loads: Collection[str], free: Collection[str], counted: Collection[str]
    ) -> Outcome:
        """The least extra pieces of ``counted``; the values are those of every column."""
        none = np.zeros(0)
        if any(not self.program.sets.loads[self.place[load]].possible for load in loads):
            return Outcome(Status.INFEASIBLE, None, math.inf, none, none)
        if self.clock.over() or len(loads) > MOST_TOGETHER:
            return Outcome(Status.LIMIT, None, -math.inf, none, none)
        going = [self.place[load] for load in loads]
        keep = self._columns_of(going)
        lower, upper = self.matrix.lower.copy(), self.matrix.upper.copy()
        lower[self.program.ready[going]] = 1.0
        bought = self.program.bought
        open_ = np.array([kind in free or kind in counted for kind in self.kinds], dtype=bool)
        upper[bought] = np.where(open_, upper[bought], 0.0)
        cost = np.zeros(len(lower))
        cost[bought] = [float(kind in counted) for kind in self.kinds]
        outcome = self._least(self.matrix.part(keep, lower, upper), cost[keep])
        if outcome.values is None:
            return outcome
        values = np.zeros(len(lower))
        values[keep] = outcome.values
        return replace(outcome, values=values)

    def _least(self, part: Matrix, cost: Array) -> Outcome:
        outcome = least_with_kept(part, cost, self.seconds())
        if outcome.status is not Status.LIMIT:
            return outcome
        solver = Solver(part)
        solver.price(cost)
        return solver.solve(self.seconds(), 1.0)

    def _columns_of(self, going: Sequence[int]) -> Array:
        """The columns of some loads, and of what is bought."""
        return np.nonzero(np.isin(self.of_load, [-1, *going]))[0]
