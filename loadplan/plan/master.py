"""The master: the program over the sets of tie-downs found so far, and its linear bound.

Columns are the variables of the program plus one per set; rows are its constraints, the stages
already settled, and those pool limits that a solution has run into. Solved as a linear program
and priced until no set outside could lower it, its value bounds every plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.limits import Limits
from loadplan.plan.matrix import INFINITE, matrix_of
from loadplan.plan.program import Program
from loadplan.plan.solved import Outcome
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.traits import traits_of, traits_of_sets

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6
_SMALL = 1e-7


class Master:
    """The linear program over the sets found so far; grows by columns and rows, never shrinks."""

    def __init__(self, arrays: Arrays, program: Program, clock: Clock):
        self.arrays = arrays
        self.clock = clock
        self.program = program
        self.matrix = matrix_of(program.problem, program.variables.all)
        self.solver = Solver(self.matrix.linear())
        self.base = len(program.variables.all)
        self.traits = traits_of(arrays, program)
        self.upper = self.matrix.upper.copy()
        self.sets: list[tuple[int, TieSet]] = []
        self.known: dict[tuple[int, TieSet], int] = {}
        self.article_row = [program.rows["article", b.load, b.place] for b in arrays.blocks]
        loads = range(len(arrays.sets.loads))
        self.shared = {
            name: np.array([program.rows.get((name, load), -1) for load in loads])
            for name in ("anchors", "winches", "edges")
        }
        self.place = {variable: n for n, variable in enumerate(program.variables.all)}
        self.going = np.array([self.place[variable] for variable in program.variables.ready])
        self.possible = self.upper[self.going].copy()
        self.stage_rows: list[tuple[StageCost, int]] = []
        self.ready_rows: dict[int, int] = {}
        self.held: dict[int, float] = {}
        self.cut_rows: list[tuple[int, int]] = []
        self._priced: StageCost | None = None
        self._grown = False
        self.limits = Limits(arrays.pools, self.solver.at_most)

    def add_sets(self, found: Iterable[tuple[int, TieSet]]) -> int:
        """Add sets (block, set) not known yet as columns; answers with how many they were."""
        new = [one for one in dict.fromkeys(found) if one not in self.known]
        if not new:
            return 0
        self.known |= {one: len(self.sets) + at for at, one in enumerate(new)}
        self.sets += new
        fresh = traits_of_sets(self.arrays, new)
        costs = [(row, fresh.cost(stage).tolist()) for stage, row in self.stage_rows]
        starts, rows, values = [0], [], []
        for place, (number, chosen) in enumerate(new):
            stages = [(row, cost[place]) for row, cost in costs if cost[place]]
            for row, value in self._entries(number, chosen, stages, fresh.uses[place]):
                rows.append(row)
                values.append(value)
            starts.append(len(rows))
        self.traits = self.traits.and_those(fresh)
        upper = np.ones(len(new))
        self.upper = np.concatenate((self.upper, upper))
        self.solver.add_columns(upper, starts[:-1], rows, values)
        self._grown = True
        return len(new)

    def values_of(self, other: Master, values: Array) -> Array:
        """The values here of a plan that another master of the same day has; adds its sets."""
        has = values[other.base :] > 0.5
        chosen = [one for one, there in zip(other.sets, has, strict=False) if there]
        self.add_sets(chosen)
        found = np.zeros(len(self.upper))
        found[: self.base] = values[: other.base]
        found[[self.column_of(one) for one in chosen]] = 1.0
        return found

    def add_stage(self, stage: StageCost, most: float) -> None:
        """Hold the value of ``stage`` at ``most`` or less from now on."""
        row = self._add_row(self.traits.cost(stage), -INFINITE, float(most))
        self.held[row] = float(most)
        self.stage_rows.append((stage, row))

    def holds(self, stage: StageCost) -> bool:
        """Whether the value of ``stage`` is held."""
        return any(value < INFINITE for value in self.held_values(stage))

    def held_values(self, stage: StageCost) -> list[float]:
        """At what the value of ``stage`` is held, infinite where it was let go."""
        return [self.held[row] for held, row in self.stage_rows if held == stage]

    def loosen(self, stage: StageCost, most: float) -> None:
        """Change the value at which ``stage`` is held."""
        row = next(row for held, row in self.stage_rows if held == stage)
        self.solver.bound_row(row, -INFINITE, float(most))
        self.held[row] = float(most)

    def hold_ready(self, ready: dict[int, int]) -> None:
        """Hold the number of loads ready at each priority in ``ready`` from below."""
        for priority, number in ready.items():
            if priority not in self.ready_rows:
                same = 1.0 * (self.traits.priority == priority)
                self.ready_rows[priority] = self._add_row(same, float(number), INFINITE)
            self.solver.bound_row(self.ready_rows[priority], float(number), INFINITE)

    def release_ready(self) -> None:
        """Let any number of loads be ready for now."""
        for row in self.ready_rows.values():
            self.solver.bound_row(row, -INFINITE, INFINITE)

    def add_cut(self, weights: Array, limit: float) -> None:
        """Add what is known of sets of loads: Σ weights · goes ≤ ``limit``."""
        row = np.zeros(len(self.traits.load))
        row[self.going] = np.where(np.abs(weights) < _SMALL, 0.0, weights)
        self.cut_rows.append((len(self.stage_rows), self._add_row(row, -INFINITE, limit)))

    def forget_cuts(self, depth: int) -> None:
        """Let go of the cuts that were found with more than ``depth`` stages held."""
        for found, row in self.cut_rows:
            if found > depth:
                self.solver.bound_row(row, -INFINITE, INFINITE)

    def hold_loads(self, lower: Array, upper: Array) -> None:
        """Bound which loads go in the linear solves that follow (1 goes, 0 stays)."""
        self.solver.bound_columns(self.going, lower, upper)

    def relax(self, stage: StageCost, seconds: float) -> Outcome:
        """The linear solution over what is here, with every pool limit kept."""
        if stage != self._priced or self._grown:
            self.solver.price(self.traits.cost(stage))
            self._priced, self._grown = stage, False
        end = self.clock.spent() + seconds
        while True:
            outcome = self.solver.relax(end - self.clock.spent())
            if outcome.values is None or not self.limits.keep_broken(self.traits, outcome.values):
                return outcome

    def roughly(self, stage: StageCost, moments: int, share: float, seconds: float) -> Outcome:
        """A linear solution of ``stage`` over the sets so far, any loads ready.

        Limits are kept at so many moments over the day, less a ``share`` of the pieces: all at
        once from nothing, which on a large day takes a fifth of finding out which ones matter.
        """
        matrix = self.solver.matrix()
        solver = Solver(replace(matrix, lower=np.zeros(len(self.upper)), upper=self.upper))
        solver.at_most(self.limits.spread(self.traits, moments, share))
        solver.price(self.traits.cost(stage))
        return solver.relax(seconds)

    def keep_every_limit(self) -> None:
        """Add every limit on gear that some column stands in, for a whole-number solve."""
        self.limits.keep_all(self.traits, self.upper)

    def keep_rounded(self, values: Array) -> bool:
        """Add the rounded limits that ``values`` breaks; answers whether there were any."""
        return self.limits.round_broken(self.traits, values)

    def keeps_held(self, values: Array) -> bool:
        """Whether a plan is at what is held of every stage, or less."""
        return all(
            self.value(stage, values) <= self.held[row] + _TINY for stage, row in self.stage_rows
        )

    def value(self, stage: StageCost, values: Array) -> float:
        """What ``values`` come to in ``stage``; columns added since then are none of theirs."""
        return float(self.traits.cost(stage)[: len(values)] @ values)

    def column_of(self, one: tuple[int, TieSet]) -> int:
        """The column of a set (block, set) that has one."""
        return self.base + self.known[one]

    def blocks_of(self, columns: Iterable[int]) -> set[int]:
        """The blocks that sets stand for, by their columns."""
        return {self.sets[column - self.base][0] for column in columns}

    def settle(self, columns: Sequence[int]) -> None:
        """Choose the sets of ``columns`` in the linear solves that follow."""
        ones = np.ones(len(columns))
        self.solver.bound_columns(np.array(columns, dtype=int), ones, ones)

    def unsettle(self, columns: Sequence[int]) -> None:
        """Let the sets of ``columns`` be chosen or not again."""
        ones = np.ones(len(columns))
        self.solver.bound_columns(np.array(columns, dtype=int), 0.0 * ones, ones)

    def shared_prices(self, name: str, prices: Array) -> Array:
        """The price per load of a shared row: "anchors", "winches" or "edges" (0 where none)."""
        rows = self.shared[name]
        if not len(rows):
            return np.zeros(0)
        return np.asarray(np.where(rows >= 0, prices[np.maximum(rows, 0)], 0.0))

    def _add_row(self, weights: Array, low: float, high: float) -> int:
        (columns,) = np.nonzero(weights)
        return self.solver.add_row(columns, weights[columns].astype(float), low, high)

    def _entries(
        self, number: int, chosen: TieSet, stages: Iterable[tuple[int, float]], uses: Array
    ) -> Iterable[tuple[int, float]]:
        """The rows a set's column stands in, and with what; ``stages`` and ``uses`` are its own."""
        block = self.arrays.blocks[number]
        yield self.article_row[number], 1.0
        for name, sign, each in (
            ("anchors", 1, block.anchors),
            ("winches", 1, block.menu.winch),
            ("edges", -1, block.menu.protectors),
        ):
            row = self.shared[name][block.load]
            if row >= 0:
                value = sign * sum(n * each[place] for place, n in chosen.chosen)
                if value:
                    yield int(row), float(value)
        yield from stages
        yield from self.limits.entries(uses, block.load)
