"""Questions about some loads answered without whole numbers: what is denied here is proved."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from loadplan.plan.matrix import Matrix
from loadplan.plan.solved import Status
from loadplan.plan.solver import Solver

Array = np.ndarray[Any, np.dtype[Any]]
_TINY = 1e-6


@dataclass(frozen=True, slots=True)
class Denial:
    """Loads that cannot all be ready because of these kinds of gear, whatever else there is."""

    loads: tuple[str, ...]
    kinds: tuple[str, ...]


@dataclass(slots=True)
class Relaxed:
    """As many of ``loads`` as can be ready at once, loads and tie-downs in fractions.

    No plan has more of them ready than that. One model, kept and asked again from its last
    solution. ``ready`` is a column per load, ``bought`` one per kind of gear: pieces beyond those
    there are, up to ``most``. ``possible`` is 0 for a load that can never go.
    """

    loads: Sequence[str]
    kinds: Sequence[str]
    solver: Solver
    ready: Array
    bought: Array
    most: Array
    possible: Array

    @classmethod
    def of(
        cls, matrix: Matrix, loads: Sequence[str], ready: Array, kinds: Sequence[str], bought: Array
    ) -> Relaxed:
        """The questions to ``matrix``, whose columns ``ready`` and ``bought`` are."""
        solver = Solver(matrix.linear())
        cost = np.zeros(len(matrix.lower))
        cost[ready] = -1.0
        solver.price(cost)
        return cls(loads, kinds, solver, ready, bought, matrix.upper[bought], matrix.upper[ready])

    def denial(
        self, loads: Collection[str], free: Collection[str], seconds: float
    ) -> Denial | None:
        """Why ``loads`` cannot all be ready with the kinds ``free`` in plenty.

        None where they might be, or where ``seconds`` were not enough to tell.
        """
        asked = np.array([float(load in loads) for load in self.loads])
        self.solver.bound_columns(self.ready, np.zeros(len(asked)), asked * self.possible)
        open_ = np.array([kind in free for kind in self.kinds], dtype=bool)
        nothing = np.zeros(len(open_))
        self.solver.bound_columns(self.bought, nothing, np.where(open_, self.most, nothing))
        outcome = self.solver.relax(seconds)
        if outcome.status is not Status.OPTIMAL or outcome.bound <= _TINY - float(asked.sum()):
            return None
        # A load whose reduced cost makes up for its worth, and a kind without a price, do not
        # matter to what the solution proves.
        matters = (1.0 + outcome.reduced[self.ready] > _TINY) & (asked > 0)
        priced = (np.abs(outcome.reduced[self.bought]) > _TINY) & ~open_
        return Denial(_chosen(self.loads, matters), _chosen(self.kinds, priced))


def _chosen(names: Sequence[str], marks: Array) -> tuple[str, ...]:
    return tuple(name for name, marked in zip(names, marks, strict=True) if marked)
