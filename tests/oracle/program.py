"""A small integer program, handed to HiGHS row by row."""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

import highspy
import numpy

INFINITY = highspy.kHighsInf
Terms = Mapping[int, Fraction | int]


@dataclass(kw_only=True)
class Answer:
    """What the solver says of one objective; ``values`` are rounded to whole numbers."""

    values: list[int]
    bound: float
    proved: bool


@dataclass
class Program:
    """Whole-number variables by index, and rows ``low <= terms <= high``."""

    upper: list[int] = field(default_factory=list)
    rows: list[tuple[float, dict[int, float], float]] = field(default_factory=list)

    def variable(self, upper: int) -> int:
        """A new variable from 0 to ``upper``."""
        self.upper.append(upper)
        return len(self.upper) - 1

    def at_least(self, terms: Terms, low: Fraction | int) -> None:
        """Adds ``terms >= low``."""
        self._row(terms, float(low), INFINITY)

    def at_most(self, terms: Terms, high: Fraction | int) -> None:
        """Adds ``terms <= high``."""
        self._row(terms, -INFINITY, float(high))

    def equal(self, terms: Terms, value: Fraction | int) -> None:
        """Adds ``terms = value``."""
        self._row(terms, float(value), float(value))

    def _row(self, terms: Terms, low: float, high: float) -> None:
        self.rows.append((low, {v: float(c) for v, c in terms.items() if c}, high))

    def least(self, terms: Terms, seconds: float) -> Answer | None:
        """Minimises ``terms``; None where no plan was found in the time."""
        model = highspy.Highs()
        for option, value in {
            "output_flag": False,
            "threads": 1,
            "random_seed": 0,
            "mip_rel_gap": 0.0,
            "mip_abs_gap": 1e-6,
            "time_limit": max(0.1, seconds),
        }.items():
            model.setOptionValue(option, value)
        model.passModel(self._model(terms))
        model.run()
        info, status = model.getInfo(), model.getModelStatus()
        if info.primal_solution_status != 2:  # no plan that keeps every row
            return None
        return Answer(
            values=[round(v) for v in model.getSolution().col_value],
            bound=info.mip_dual_bound,
            proved=status == highspy.HighsModelStatus.kOptimal,
        )

    def _model(self, terms: Terms) -> highspy.HighsLp:
        lp = highspy.HighsLp()
        count = len(self.upper)
        lp.num_col_, lp.num_row_ = count, len(self.rows)
        cost = numpy.zeros(count)
        for variable, coefficient in terms.items():
            cost[variable] = float(coefficient)
        lp.col_cost_ = cost
        lp.col_lower_ = numpy.zeros(count)
        lp.col_upper_ = numpy.array(self.upper, dtype=float)
        lp.row_lower_ = numpy.array([low for low, _, _ in self.rows])
        lp.row_upper_ = numpy.array([high for _, _, high in self.rows])
        lp.integrality_ = [highspy.HighsVarType.kInteger] * count
        starts, index, value = [0], [], []
        for _, row, _ in self.rows:
            index += row.keys()
            value += row.values()
            starts.append(len(index))
        lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        lp.a_matrix_.start_ = numpy.array(starts)
        lp.a_matrix_.index_ = numpy.array(index, dtype=numpy.int32)
        lp.a_matrix_.value_ = numpy.array(value, dtype=float)
        return lp


class Clock:
    """Seconds left of a limit."""

    def __init__(self, limit: float) -> None:
        self.end = time.monotonic() + limit

    @property
    def left(self) -> float:
        """Never below zero."""
        return max(0.0, self.end - time.monotonic())
