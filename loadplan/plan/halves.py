"""Halves: many (tension member, tensioner) choices as one choice of each, for whole-number solves.

Where every member of a list goes with every tensioner of another, the choice of a pair is the
choice of a member and of a tensioner, and everything a pair takes is the sum of what the two take.
m + t columns then say what m · t did, exactly: with fewer columns, none of them alike.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.choices import Choice, Members, Rests, choices
from loadplan.plan.master import Master
from loadplan.plan.matrix import Matrix
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Halves:
    """A whole-number problem with halves in place of pairs, and the way back.

    ``keep`` are the master's columns it still has, before the halves of ``choices`` in turn.
    """

    master: Master
    matrix: Matrix
    cost: Array
    keep: Array
    choices: tuple[Choice, ...]

    def least(self, below: float, seconds: float) -> Array | None:
        """The values, as of ``whole``, of the least solution worth ``below`` or less.

        None where none is found in ``seconds``.
        """
        return self._solved(self.cost, below, seconds)

    def any_within(self, most: float, seconds: float) -> Array | None:
        """The values of some solution worth ``most`` or less; None where none is found."""
        return self._solved(np.zeros(len(self.cost)), most, seconds)

    def _solved(self, cost: Array, most: float, seconds: float) -> Array | None:
        solver = Solver(self.matrix)
        solver.keep_within(self.cost, most)
        solver.price(cost)
        outcome = solver.solve(seconds, 1.0)
        return None if outcome.values is None else self.whole(outcome.values)

    def whole(self, values: Array) -> Array:
        """The values of the master's own columns; adds the columns that are new to it."""
        at = len(self.keep)
        sets: list[tuple[int, TieSet]] = []
        for choice in self.choices:
            middle, end = at + len(choice.members), at + len(choice.members) + len(choice.rests)
            members = np.nonzero(values[at:middle] > 0.5)[0]
            for member, rest in zip(members, np.nonzero(values[middle:end] > 0.5)[0], strict=True):
                sets.append(choice.set_of(choice.members[member], choice.rests[rest]))
            at = end
        self.master.add_sets(sets)
        found = np.zeros(len(self.master.upper))
        found[self.keep] = np.round(values[: len(self.keep)])
        found[[self.master.column_of(one) for one in sets]] = 1.0
        return found


def halved(
    master: Master,
    matrix: Matrix,
    stage: StageCost,
    could: Array,
    free: Array,
    tick: Callable[[], None] = lambda: None,
) -> Halves:
    """The problem over the columns ``could``, by halves where that is fewer.

    ``matrix`` has all the master's columns with the bounds to solve with; only columns that are
    ``free`` to be 0 may be replaced. ``tick`` is as in :func:`loadplan.plan.choices.choices`.
    """
    cost = master.traits.cost(stage)
    split = tuple(choices(master, could & free, tick))
    replaced = np.zeros(len(could), dtype=bool)
    for choice in split:
        replaced[[column for alike in choice.columns.values() for column in alike]] = True
    keep = np.nonzero(could & ~replaced)[0]
    part = matrix.part(keep, matrix.lower, matrix.upper)
    built = _Builder(master, matrix, cost, stage)
    for choice in split:
        built.add(choice)
    return Halves(
        master=master,
        matrix=built.joined(part),
        cost=np.concatenate((cost[keep], built.costs)),
        keep=keep,
        choices=split,
    )


class _Builder:
    """Collects the columns of halves and the rows that tie them together."""

    def __init__(self, master: Master, matrix: Matrix, cost: Array, stage: StageCost):
        self.matrix, self.cost, self.stage = matrix, cost, stage
        self.strength_rows = [(row, held.strength) for held, row in master.stage_rows]
        rows = master.limits.gear_of_rows()
        self.gear_of = {row: master.arrays.gear[gear] for row, gear in rows.items()}
        self.columns: list[dict[int, float]] = []
        self.costs: list[float] = []
        self.links = 0

    def add(self, choice: Choice) -> None:
        """Add the halves of ``choice`` and the row that keeps them as many as each other."""
        link = len(self.matrix.row_lower) + self.links
        self.links += 1
        of_members: dict[Members, tuple[Rests, int]] = {}
        of_rests: dict[Rests, int] = {}
        for (members, rests), (column, *_) in choice.columns.items():
            of_members.setdefault(members, (rests, column))
            of_rests.setdefault(rests, column)
        for members in choice.members:
            rests, column = of_members[members]
            strength = choice.strength[rests]
            entries = self._entries(column, rests, of_rests=False)
            for row, share in self.strength_rows:
                if share:
                    entries[row] -= share * strength
            cost = float(self.cost[column]) - self.stage.strength * strength
            self._column(entries | {link: 1.0}, cost)
        for rests in choice.rests:
            strength = choice.strength[rests]
            entries = self._entries(of_rests[rests], rests, of_rests=True)
            entries |= {row: share * strength for row, share in self.strength_rows if share}
            self._column(entries | {link: -1.0}, self.stage.strength * strength)

    def joined(self, part: Matrix) -> Matrix:
        """``part`` with the halves as columns behind its own, and the rows that tie them."""
        new = len(self.columns)
        whole = np.ones(new, dtype=bool)
        return part.with_columns(self.columns, np.ones(new), whole, [(0.0, 0.0)] * self.links)

    def _entries(self, column: int, rests: Rests, *, of_rests: bool) -> dict[int, float]:
        """The rows of a column that limit the gear of ``rests``, or all others; and with what."""
        first, end = int(self.matrix.starts[column]), int(self.matrix.starts[column + 1])
        rows = self.matrix.places[first:end].tolist()
        values = self.matrix.coefficients[first:end].tolist()
        gear = {one for rest in rests for one in rest}
        return {
            row: value
            for row, value in zip(rows, values, strict=True)
            if (self.gear_of.get(row) in gear) == of_rests
        }

    def _column(self, entries: dict[int, float], cost: float) -> None:
        self.columns.append(entries)
        self.costs.append(cost)
