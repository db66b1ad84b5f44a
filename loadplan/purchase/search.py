"""Solving a purchase program: least cost, most loads ready, fewest pieces, one after the other."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

import numpy as np

from loadplan.day.gear import Price
from loadplan.outcome.tie_down import Shown
from loadplan.plan.clock import Clock
from loadplan.plan.kept import least_with_kept
from loadplan.plan.matrix import INFINITE
from loadplan.plan.solved import Outcome, Status
from loadplan.plan.solver import Solver
from loadplan.plan.step import common_step
from loadplan.problems import SolverFailed
from loadplan.purchase.owned import gear_ids
from loadplan.purchase.program import PurchaseProgram
from loadplan.purchase.purchase import Purchase, purchase_of
from loadplan.purchase.shown import Reader

Array = np.ndarray[Any, np.dtype[Any]]
_SLACK = 1e-5
_FINEST = 5e6  # beyond it the solver's tolerance on one whole number would come to a step


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """What one solve found: whole ``values`` (None if nothing), and what nothing can be below.

    ``bound`` is a whole number of the objective's steps; ``proved`` says that the search ended.
    """

    values: Array | None
    bound: int
    proved: bool


@dataclass(slots=True)
class Search:
    """One program, asked again and again with more rows and other objectives.

    Prices are whole multiples of ``step``, the greatest amount that all of them are. ``possible``
    is, per priority in order, how many loads some purchase without limit might get ready.
    """

    program: PurchaseProgram
    clock: Clock
    step: Fraction = field(init=False)
    prices: Array = field(init=False)
    solver: Solver = field(init=False)
    possible: tuple[int, ...] = field(init=False)
    _cost_row: int = field(init=False)
    _pieces_row: int = field(init=False)
    _reader: Reader = field(init=False)
    _of: list[Array] = field(init=False)
    _ready_rows: list[int] = field(init=False)

    def __post_init__(self) -> None:
        if any(offer.price < 0 for offer in self.program.offers):
            raise ValueError("a price is below nought")
        self.step, self.prices = whole_prices([one.price for one in self.program.offers])
        self._reader = Reader(self.program.sets)
        tell = self.clock.report if self.clock.tell is not None else None
        self.solver = Solver(self.program.matrix, tell)
        columns = self.program.bought
        self._cost_row = self.solver.add_row(columns, self.prices, -INFINITE, INFINITE)
        ones = np.ones(len(columns))
        self._pieces_row = self.solver.add_row(columns, ones, -INFINITE, INFINITE)
        loads = self.program.sets.loads
        self._of = [
            self.program.ready[[one.load.priority == priority for one in loads]]
            for priority in sorted({one.load.priority for one in loads})
        ]
        self.possible = tuple(int(self.program.matrix.upper[of].sum()) for of in self._of)
        self._ready_rows = [
            self.solver.add_row(of, np.ones(len(of)), 0.0, float(most))
            for of, most in zip(self._of, self.possible, strict=True)
        ]

    def spend(self, most: Fraction | None) -> None:
        """Let nothing cost more than ``most`` from now on; None: any amount."""
        steps = INFINITE if most is None else float(most // self.step)
        self.solver.bound_row(self._cost_row, -INFINITE, steps)

    def hold_ready(self, counts: Sequence[int]) -> None:
        """Hold the loads ready at each of the first priorities from below, any number after."""
        for row, most in zip(self._ready_rows, self.possible, strict=True):
            self.solver.bound_row(row, 0.0, float(most))
        for row, least in zip(self._ready_rows, counts, strict=False):
            self.solver.bound_row(row, float(least), INFINITE)

    def least_cost(self, start: Array | None = None) -> Answer:
        """The least cost, in steps."""
        return self._least(self.program.bought, self.prices, start)

    def fewest_pieces(self, start: Array | None = None) -> Answer:
        """The fewest pieces bought."""
        bought = self.program.bought
        return self._least(bought, np.ones(len(bought)), start)

    def most_ready(self, priority: int, start: Array | None = None) -> Answer:
        """The most loads ready at the ``priority``-th priority, counted below nought."""
        columns = self._of[priority]
        return self._least(columns, -np.ones(len(columns)), start)

    def ready(self, values: Array) -> tuple[int, ...]:
        """Loads ready at each priority in ``values``."""
        return tuple(int(values[columns].sum()) for columns in self._of)

    @property
    def one_price(self) -> bool:
        """Whether the cheapest has the fewest pieces: all cost the same, or nothing is offered."""
        return bool((self.prices == self.prices[:1]).all() and self.prices.min(initial=1) > 0)

    @property
    def most(self) -> Array:
        """How many of each offer can be bought."""
        return self.program.matrix.upper[self.program.bought]

    def bought_within(self, lower: Array, upper: Array, most: int) -> Answer:
        """A purchase of ``most`` pieces or fewer, each offer's between ``lower`` and ``upper``."""
        bought = self.program.bought
        self.solver.bound_columns(bought, lower, upper)
        self.solver.bound_row(self._pieces_row, -INFINITE, float(most))
        nothing = np.zeros(len(bought))
        answer = self._least(bought, nothing, None)
        self.solver.bound_row(self._pieces_row, -INFINITE, INFINITE)
        self.solver.bound_columns(bought, nothing, self.most)
        return answer

    def cost(self, values: Array) -> Fraction:
        """What the purchase in ``values`` costs."""
        return self.step * int(self.prices @ values[self.program.bought])

    def purchase(self, values: Array, *, bound: Fraction | None, proved: bool) -> Purchase:
        """The purchase in ``values``."""
        pieces = [int(number) for number in values[self.program.bought]]
        lines = tuple(zip(self.program.offers, pieces, strict=True))
        return purchase_of(lines, bound=bound, proved=proved, plan=self._plan(lines, values))

    def _plan(self, lines: tuple[tuple[Price, int], ...], values: Array) -> Shown | None:
        """The plan in ``values``, if its new gear has the ids that it has once it is bought."""
        bought = [offer for offer, pieces in lines if pieces]
        names = dict(zip(self.program.offers, self.program.names, strict=True))
        if gear_ids(self.program.day, bought) != [names[offer] for offer in bought]:
            return None
        if not self.program.sets.loads:
            return (), ()
        return self._reader.plan(values)

    def _least(self, columns: Array, weights: Array, start: Array | None) -> Answer:
        cost = np.zeros(self.solver.columns)
        cost[columns] = weights
        soon = start is None and abs(weights).max(initial=0) <= 1
        outcome = self._at_bound(cost) if soon else None
        if outcome is None:
            self.solver.price(cost)
            outcome = self.solver.solve(self.clock.left(), 1.0, start)
        values = None if outcome.values is None else self._whole(outcome.values)
        ended = outcome.status is not Status.LIMIT
        exact = values is None or bool(weights.max(initial=0.0) <= _FINEST)
        return Answer(values, _bound(outcome), ended and exact)

    def _at_bound(self, cost: Array) -> Outcome | None:
        """What is soon told of a whole number of pieces or loads; None where that is nothing."""
        matrix = replace(self.solver.matrix(), whole=self.program.matrix.whole)
        outcome = least_with_kept(matrix, cost, self.clock.left())
        return None if outcome.status is Status.LIMIT else outcome

    def _whole(self, values: Array) -> Array:
        """``values`` as whole numbers, held against every row of the program once more."""
        matrix = self.program.matrix
        found = np.where(matrix.whole, np.round(values), values)
        sums = np.add.reduceat(
            np.append(matrix.coefficients * found[matrix.places], 0.0), matrix.starts[:-1]
        )
        sums[np.diff(matrix.starts) == 0] = 0.0
        low, high = matrix.row_lower - _SLACK, matrix.row_upper + _SLACK
        if ((sums < low) | (sums > high)).any():
            raise SolverFailed(
                "The solver cannot be trusted: its purchase does not hold in whole numbers. "
                "Nothing was written."
            )
        return found


def whole_prices(prices: Sequence[Fraction]) -> tuple[Fraction, Array]:
    """The greatest amount that every price is a whole number of, and those numbers."""
    step = common_step(prices) or Fraction(1)
    return step, np.array([int(price / step) for price in prices], dtype=float)


def _bound(outcome: Outcome) -> int:
    if not math.isfinite(outcome.bound):
        return 0
    return math.ceil(outcome.bound - _SLACK)
