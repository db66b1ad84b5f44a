"""The master: the program over the sets of tie-downs found so far, and its linear bound.

Columns are the variables of the program plus one per set; rows are its constraints, the stages
already settled, and those pool limits that a solution has run into. Solved as a linear program
and priced until no set outside could lower it, its value bounds every plan.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import numpy as np

from loadplan.plan.blocks import Arrays, Block
from loadplan.plan.clock import Clock
from loadplan.plan.program import Program
from loadplan.plan.solver import INFINITE, Outcome, Solver, matrix_of
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.traits import Traits, traits_of, traits_of_sets

Array = np.ndarray[Any, np.dtype[Any]]
_SLACK = 1e-6
_WORTH = 0.01  # a rounded limit broken by less is not worth a row
_DIVISORS = range(2, 8)


class Master:
    """The linear program over the sets found so far; grows by columns and rows, never shrinks."""

    def __init__(self, arrays: Arrays, program: Program, clock: Clock):
        self.arrays = arrays
        self.clock = clock
        self.program = program
        self.matrix = matrix_of(program.problem, program.variables.all)
        self.solver = Solver(replace(self.matrix, whole=np.zeros(len(self.matrix.lower), bool)))
        self.base = len(program.variables.all)
        self.traits = traits_of(arrays, program)
        self.upper = self.matrix.upper.copy()
        self.sets: list[tuple[int, TieSet]] = []
        self.known: set[tuple[int, TieSet]] = set()
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
        self.pool_rows: dict[tuple[int, int], int] = {}
        self.kit_rows: dict[tuple[int, int], int] = {}
        self.round_rows: dict[tuple[int, int, int], int] = {}

    def add_sets(self, found: Iterable[tuple[int, TieSet]]) -> int:
        """Add sets (block, set) not known yet as columns; answers with how many they were."""
        new = [one for one in dict.fromkeys(found) if one not in self.known]
        if not new:
            return 0
        self.known.update(new)
        self.sets += new
        fresh = traits_of_sets(self.arrays, new)
        starts, rows, values = [0], [], []
        for place, (number, chosen) in enumerate(new):
            for row, value in self._entries(number, chosen, fresh, place):
                rows.append(row)
                values.append(value)
            starts.append(len(rows))
        self.traits = self.traits.and_those(fresh)
        upper = np.ones(len(new))
        self.upper = np.concatenate((self.upper, upper))
        self.solver.add_columns(upper, starts[:-1], rows, values)
        self._grown = True
        return len(new)

    def add_stage(self, stage: StageCost, most: float) -> None:
        """Hold the value of ``stage`` at ``most`` or less from now on."""
        row = self._add_row(self.traits.cost(stage), -INFINITE, float(most))
        self.held[row] = float(most)
        self.stage_rows.append((stage, row))

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
        row[self.going] = np.where(np.abs(weights) < _SLACK / 10, 0.0, weights)
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
        while True:
            outcome = self.solver.relax(seconds)
            if outcome.values is None or not self.add_pool_rows(outcome.values):
                return outcome

    def add_every_pool_row(self) -> None:
        """Add every pool limit that some column stands in, for a whole-number solve."""
        pools, uses = self.arrays.pools, self.traits.uses
        for moment in range(len(pools.moments)):
            covers = self._covers(moment)
            taken = (covers * self.upper) @ uses
            for gear in np.nonzero((taken > pools.usable[moment]) & ~pools.kit)[0]:
                if (moment, int(gear)) not in self.pool_rows:
                    most = float(pools.usable[moment, gear])
                    row = self._add_row(covers * uses[:, gear], -INFINITE, most)
                    self.pool_rows[moment, int(gear)] = row
        (kits,) = np.nonzero(pools.kit)
        users = (self.upper[:, None] * uses[:, kits]).astype(float)
        taken_of_kit = np.zeros((len(pools.first), len(kits)))
        np.add.at(taken_of_kit, self.traits.load, users)
        for load, at in zip(*np.nonzero(taken_of_kit > pools.kit_usable[:, kits]), strict=True):
            self._kit_row(int(load), int(kits[at]))

    def add_pool_rows(self, values: Array) -> bool:
        """Add the pool limits that ``values`` breaks; answers whether there were any."""
        pools, traits = self.arrays.pools, self.traits
        taken = np.zeros((len(pools.first), len(self.arrays.gear)))
        going = np.nonzero(np.abs(values) > _SLACK / 10)[0]
        np.add.at(taken, traits.load[going], values[going, None] * traits.uses[going])
        out = _spread(taken, pools.first, pools.last, len(pools.moments))
        over = (out > pools.usable + _SLACK) & ~pools.kit
        kit_over = (taken > pools.kit_usable + _SLACK) & pools.kit
        for moment, gear in _worst(out - pools.usable, over):
            self.pool_rows[moment, gear] = self._add_row(
                self._covers(moment) * traits.uses[:, gear],
                -INFINITE,
                float(pools.usable[moment, gear]),
            )
        for load, gear in zip(*np.nonzero(kit_over), strict=True):
            self._kit_row(int(load), int(gear))
        return bool(over.any() or kit_over.any())

    def add_round_rows(self, values: Array) -> bool:
        """Add the rounded pool limits that ``values`` breaks; answers whether there were any.

        Where a pool keeps q pieces for columns that take u each, whole columns also keep
        Σ ⌊u / k⌋ x ≤ ⌊q / k⌋ for every whole k: with 7 binders, two sets of four cannot be made.
        """
        going = np.nonzero(values > _SLACK)[0]
        pools, found = self.arrays.pools, False
        for divisor in _DIVISORS:
            share = self.traits.uses[going] // divisor
            taken = np.zeros((len(pools.first), len(self.arrays.gear)))
            np.add.at(taken, self.traits.load[going], values[going, None] * share)
            out = _spread(taken, pools.first, pools.last, len(pools.moments))
            limit = pools.usable // divisor
            for moment, gear in _worst(out - limit, (out > limit + _WORTH) & ~pools.kit):
                if (moment, gear, divisor) in self.round_rows:
                    continue
                weights = self._covers(moment) * (self.traits.uses[:, gear] // divisor)
                row = self._add_row(weights, -INFINITE, float(limit[moment, gear]))
                self.round_rows[moment, gear, divisor] = row
                found = True
        return found

    def round_prices(self, prices: Array) -> dict[int, dict[tuple[int, int], float]]:
        """Per load, what each ⌊u / k⌋ of each kind of gear costs under the rounded limits."""
        pools = self.arrays.pools
        found: dict[int, dict[tuple[int, int], float]] = {}
        for (moment, gear, divisor), row in self.round_rows.items():
            price = -float(prices[row])
            if price > _SLACK:
                for load in np.nonzero((pools.first <= moment) & (pools.last >= moment))[0]:
                    here = found.setdefault(int(load), {})
                    here[gear, divisor] = here.get((gear, divisor), 0.0) + price
        return found

    def gear_prices(self, prices: Array) -> Array:
        """What one piece of each kind of gear costs each load (loads x gear), none below nought."""
        pools = self.arrays.pools
        at = np.zeros((len(pools.moments) + 1, len(self.arrays.gear)))
        for (moment, gear), row in self.pool_rows.items():
            at[moment + 1, gear] = -prices[row]
        total = np.cumsum(at, axis=0)
        found = total[pools.last + 1] - total[pools.first]
        for (load, gear), row in self.kit_rows.items():
            found[load, gear] -= prices[row]
        return np.asarray(np.maximum(found, 0.0))

    def shared_prices(self, name: str, prices: Array) -> Array:
        """The price per load of a shared row: "anchors", "winches" or "edges" (0 where none)."""
        rows = self.shared[name]
        if not len(rows):
            return np.zeros(0)
        return np.asarray(np.where(rows >= 0, prices[np.maximum(rows, 0)], 0.0))

    def block_of(self, column: int) -> tuple[Block, TieSet] | None:
        """The block and set a column stands for, None for the program's own variables."""
        if column < self.base:
            return None
        number, chosen = self.sets[column - self.base]
        return self.arrays.blocks[number], chosen

    def _kit_row(self, load: int, gear: int) -> None:
        """Add the limit on a kit's pieces for one load of its trailer, once."""
        if (load, gear) not in self.kit_rows:
            here = (self.traits.load == load) * self.traits.uses[:, gear]
            most = float(self.arrays.pools.kit_usable[load, gear])
            self.kit_rows[load, gear] = self._add_row(here, -INFINITE, most)

    def _add_row(self, weights: Array, low: float, high: float) -> int:
        (columns,) = np.nonzero(weights)
        return self.solver.add_row(columns, weights[columns].astype(float), low, high)

    def _covers(self, moment: int) -> Array:
        pools = self.arrays.pools
        covers = (pools.first <= moment) & (pools.last >= moment)
        return covers[self.traits.load]

    def _entries(
        self, number: int, chosen: TieSet, traits: Traits, place: int
    ) -> Iterable[tuple[int, float]]:
        """The rows a set's column stands in, and with what."""
        block = self.arrays.blocks[number]
        yield self.article_row[number], 1.0
        menu = block.menu
        winches = sum(n * menu.winch[assembly] for assembly, n in chosen.chosen)
        protectors = sum(n * menu.protectors[assembly] for assembly, n in chosen.chosen)
        for name, value in (
            ("anchors", float(sum(n * block.anchors[place] for place, n in chosen.chosen))),
            ("winches", float(winches)),
            ("edges", -float(protectors)),
        ):
            row = self.shared[name][block.load]
            if row >= 0 and value:
                yield int(row), value
        yield from self._late_entries(traits, place, block.load)

    def _late_entries(self, traits: Traits, place: int, load: int) -> Iterable[tuple[int, float]]:
        """Entries in the rows that were added after the program was posed."""
        for stage, row in self.stage_rows:
            value = float(traits.cost(stage)[place])
            if value:
                yield row, value
        pools = self.arrays.pools
        first, last = int(pools.first[load]), int(pools.last[load])
        for gear in np.nonzero(traits.uses[place])[0]:
            pieces = float(traits.uses[place, gear])
            row_of_kit = self.kit_rows.get((load, int(gear)))
            if row_of_kit is not None:
                yield row_of_kit, pieces
            for moment in range(first, last + 1):
                row_of_pool = self.pool_rows.get((moment, int(gear)))
                if row_of_pool is not None:
                    yield row_of_pool, pieces
        for (at, kind, divisor), rounded in self.round_rows.items():
            share = int(traits.uses[place, kind]) // divisor
            if share and first <= at <= last:
                yield rounded, float(share)


def _spread(taken: Array, first: Array, last: Array, moments: int) -> Array:
    """Pieces out per moment and kind of gear, from the pieces each load takes."""
    change = np.zeros((moments + 1, taken.shape[1]))
    np.add.at(change, first, taken)
    np.subtract.at(change, last + 1, taken)
    return np.cumsum(change, axis=0)[:-1]


def _worst(excess: Array, over: Array) -> list[tuple[int, int]]:
    """Of each kind of gear, the broken moments that stand out: each the worst of its run."""
    found: list[tuple[int, int]] = []
    for gear in np.nonzero(over.any(axis=0))[0]:
        moments = np.nonzero(over[:, gear])[0]
        for run in np.split(moments, np.nonzero(np.diff(moments) > 1)[0] + 1):
            found.append((int(run[np.argmax(excess[run, gear])]), int(gear)))
    return found
