"""The boundary to the solver: arrays in, one type of outcome out. Nothing else knows HiGHS."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

import highspy
import numpy as np

from loadplan.plan.matrix import INFINITE, Matrix
from loadplan.plan.run import DUAL, run
from loadplan.plan.solution_check import cost_flaw, flaw
from loadplan.plan.solved import Outcome, Status
from loadplan.problems import PLAN_AGAIN, SolverFailed

Array = np.ndarray[Any, np.dtype[Any]]
_FRACTION = 1e-5  # nearer to a whole number a value is none
_PRIMAL = 4  # HiGHS's number for its primal simplex
_KINDS = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)


class Solver:
    """One HiGHS model kept in memory, changed and run again.

    Single-threaded with a fixed seed, so that the same model gives the same answer. Whole-number
    solves are exact: no relative gap, and an absolute gap below the least step of the objective.
    ``searches`` is whether to look for solutions by smaller programs, of use where none is known;
    ``symmetry`` whether to look for columns that could change places, which takes seconds where
    they are many.
    """

    def __init__(
        self,
        matrix: Matrix,
        report: Callable[[float, float], None] | None = None,
        *,
        presolve: bool = True,
        searches: bool = True,
        symmetry: bool = True,
    ):
        self._highs = highspy.Highs()
        self._report = report
        self._cost = np.zeros(0)
        for option, value in (
            ("output_flag", False),
            ("threads", 1),
            ("random_seed", 0),
            ("mip_rel_gap", 0.0),
            ("mip_feasibility_tolerance", 1e-7),
            ("presolve", "choose" if presolve else "off"),
            ("mip_heuristic_run_rins", searches),
            ("mip_heuristic_run_rens", searches),
            ("mip_heuristic_run_root_reduced_cost", searches),
            ("mip_detect_symmetry", symmetry),
        ):
            self._highs.setOptionValue(option, value)
        self._pass(matrix)
        if report is not None:
            self._highs.setCallback(self._callback, None)
            self._highs.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)

    @property
    def rows(self) -> int:
        """Number of rows."""
        return int(self._highs.getNumRow())

    @property
    def columns(self) -> int:
        """Number of columns."""
        return int(self._highs.getNumCol())

    def matrix(self) -> Matrix:
        """The model as it is now, by column, with every column continuous."""
        self._highs.ensureColwise()
        model = self._highs.getLp()
        return Matrix(
            lower=np.array(model.col_lower_),
            upper=np.array(model.col_upper_),
            whole=np.zeros(model.num_col_, dtype=bool),
            row_lower=np.array(model.row_lower_),
            row_upper=np.array(model.row_upper_),
            starts=np.array(model.a_matrix_.start_, dtype=np.int64),
            places=np.array(model.a_matrix_.index_, dtype=np.int32),
            coefficients=np.array(model.a_matrix_.value_),
            by_column=True,
        )

    def activity(self, values: Array) -> Array:
        """What each row comes to at ``values``."""
        (used,) = np.nonzero(values)
        starts, rows, coefficients = self._entries(used)
        weights = coefficients * np.repeat(values[used], np.diff(starts))
        return np.bincount(rows, weights=weights, minlength=self.rows)

    def columns_alone(self, chosen: Array, upper: Array, taken: Array) -> Matrix:
        """The whole-number problem of the ``chosen`` columns, from 0 to ``upper``.

        The others are there without entries. ``taken`` is what they take of each row; a row that no
        chosen column stands in limits nothing.
        """
        (used,) = np.nonzero(chosen)
        starts, rows, coefficients = self._entries(used)
        every = np.arange(self.rows, dtype=np.int32)
        _, _, low, high, _ = self._highs.getRows(self.rows, every)
        stands = np.zeros(self.rows, dtype=bool)
        stands[rows] = True
        sizes = np.zeros(self.columns, dtype=np.int64)
        sizes[used] = np.diff(starts)
        return Matrix(
            lower=np.zeros(self.columns),
            upper=upper,
            whole=np.ones(self.columns, dtype=bool),
            row_lower=np.where(stands, low - taken, -INFINITE),
            row_upper=np.where(stands, high - taken, INFINITE),
            starts=np.concatenate(([0], np.cumsum(sizes))),
            places=rows,
            coefficients=coefficients,
            by_column=True,
        )

    def _entries(self, columns: Array) -> tuple[Array, Array, Array]:
        """Where each column's entries start, with the end of the last; their rows and values."""
        if not len(columns):
            # The solver answers with entries of its own choice.
            return np.zeros(1, dtype=np.int64), np.zeros(0, dtype=np.int32), np.zeros(0)
        _, starts, rows, values = self._highs.getColsEntries(len(columns), columns.astype(np.int32))
        return np.append(starts, len(rows)), rows, values

    def _next_is(self, strategy: int) -> None:
        """Choose the simplex that can go on from the last basis."""
        self._highs.setOptionValue("simplex_strategy", strategy)

    def forget(self) -> None:
        """Start the next solve from nothing: the last solution is of no use to it."""
        self._highs.clearSolver()

    def basis(self) -> highspy.HighsBasis:
        """Where the last linear solve ended."""
        return self._highs.getBasis()

    def go_back(self, basis: highspy.HighsBasis) -> None:
        """Start the next linear solve where an earlier one ended."""
        kinds = highspy.HighsBasisStatus
        columns, rows = list(basis.col_status), list(basis.row_status)
        basis.col_status = columns + [kinds.kLower] * (self.columns - len(columns))
        basis.row_status = rows + [kinds.kBasic] * (self.rows - len(rows))
        self._highs.setBasis(basis)

    def add_row(self, columns: Array, coefficients: Array, low: float, high: float) -> int:
        """Append a row; answers with its number."""
        self._next_is(DUAL)
        self._highs.addRow(low, high, len(columns), columns.astype(np.int32), coefficients)
        return self.rows - 1

    def keep_within(self, weights: Array, most: float) -> None:
        """Append Σ weights x ≤ most over every column, if ``most`` is finite."""
        (columns,) = np.nonzero(weights)
        if np.isfinite(most):
            self.add_row(columns, weights[columns], -INFINITE, most)

    def at_most(self, rows: Sequence[tuple[Array, Array, float]]) -> int:
        """Append rows (columns, coefficients, most) without a lower limit; the first's number."""
        self._next_is(DUAL)
        sizes = [len(columns) for columns, _, _ in rows]
        self._highs.addRows(
            len(rows),
            np.full(len(rows), -INFINITE),
            np.array([most for _, _, most in rows]),
            sum(sizes),
            np.cumsum([0, *sizes[:-1]]).astype(np.int32),
            np.concatenate([columns for columns, _, _ in rows]).astype(np.int32),
            np.concatenate([coefficients for _, coefficients, _ in rows]),
        )
        return self.rows - len(rows)

    def add_columns(
        self, upper: Array, starts: Sequence[int], rows: Sequence[int], values: Sequence[float]
    ) -> None:
        """Append columns from 0 to ``upper`` given column by column."""
        self._next_is(_PRIMAL)
        self._highs.addCols(
            len(upper),
            np.zeros(len(upper)),
            np.zeros(len(upper)),
            upper,
            len(rows),
            np.array(starts, dtype=np.int32),
            np.array(rows, dtype=np.int32),
            np.array(values, dtype=float),
        )

    def remove_columns(self, columns: Array) -> None:
        """Remove columns; those behind them move up."""
        self._highs.deleteCols(len(columns), columns.astype(np.int32))
        self._cost = np.delete(self._cost, columns)

    def remove_rows(self, rows: Array) -> None:
        """Remove rows; those behind them move up."""
        self._highs.deleteRows(len(rows), rows.astype(np.int32))

    def weights_of_fractions(self, values: Array, most: int) -> Iterator[Array]:
        """The weights of rows that sum to a column the last linear solution has a fraction of.

        One per such column, from the inverse of the basis, the furthest from whole first.
        """
        if not (np.abs(values - np.round(values)) > _FRACTION).any():
            # Nor is there an inverse to ask for where nothing had to be solved.
            return
        _, basic = self._highs.getBasicVariables()
        columns = np.array(basic)
        off = np.where(columns >= 0, values[np.maximum(columns, 0)], 0.0)
        off = np.abs(off - np.round(off))
        for place in np.argsort(-off, kind="stable")[:most].tolist():
            if off[place] > _FRACTION:
                yield np.array(self._highs.getBasisInverseRow(place)[1])

    def bound_columns(self, columns: Array, lower: Array, upper: Array) -> None:
        """Change the bounds of some columns."""
        self._next_is(DUAL)
        self._highs.changeColsBounds(len(columns), columns.astype(np.int32), lower, upper)

    def in_whole_numbers(self, marks: Array) -> None:
        """Ask for whole numbers in the columns marked, and in no others."""
        every = np.arange(len(marks), dtype=np.int32)
        kinds = np.array([int(_KINDS[int(mark)]) for mark in marks], dtype=np.uint8)
        self._highs.changeColsIntegrality(len(marks), every, kinds)

    def bound_row(self, row: int, low: float, high: float) -> None:
        """Change the bounds of a row."""
        self._highs.changeRowBounds(row, low, high)

    def price(self, cost: Array, *, afresh: bool = False) -> None:
        """Set the objective, to be least; ``afresh`` where no solution is there to go on from."""
        self._next_is(DUAL if afresh else _PRIMAL)
        self._cost = np.asarray(cost, dtype=float)
        every = np.arange(len(cost), dtype=np.int32)
        self._highs.changeColsCost(len(cost), every, np.asarray(cost, dtype=float))

    def relax(self, seconds: float) -> Outcome:
        """Least cost without whole numbers; the model must have none."""
        status = self._run(seconds)
        solution = self._highs.getSolution()
        values = np.array(solution.col_value) if status is Status.OPTIMAL else None
        value = float(self._highs.getInfo().objective_function_value)
        if values is not None and (wrong := cost_flaw(self._cost, values, value)):
            raise SolverFailed(f"The solver cannot be trusted: {wrong}. {PLAN_AGAIN}")
        bound = value if status is Status.OPTIMAL else -INFINITE
        reduced, prices = np.array(solution.col_dual), np.array(solution.row_dual)
        return Outcome(status, values, bound, reduced, prices)

    def solve(
        self, seconds: float, step: float, start: Array | None = None, enough: float = -INFINITE
    ) -> Outcome:
        """Least cost in whole numbers, or one of ``enough``; values lie ``step`` or more apart."""
        self._highs.setOptionValue("mip_abs_gap", 0.9 * step)
        self._highs.setOptionValue("objective_target", enough)
        if start is not None:
            solution = highspy.HighsSolution()
            solution.col_value = [float(value) for value in start]
            self._highs.setSolution(solution)
        status = self._run(seconds)
        info = self._highs.getInfo()
        found = info.primal_solution_status == highspy.kSolutionStatusFeasible
        values = np.array(self._highs.getSolution().col_value) if found else None
        bound = float(info.mip_dual_bound)
        if values is not None and (wrong := flaw(self._highs.getLp(), values, bound)):
            raise SolverFailed(f"The solver cannot be trusted: {wrong}. {PLAN_AGAIN}")
        none = np.zeros(0)
        return Outcome(status, values, bound, none, none)

    def _pass(self, matrix: Matrix) -> None:
        model = highspy.HighsLp()
        columns = len(matrix.lower)
        model.num_col_, model.num_row_ = columns, len(matrix.row_lower)
        model.col_cost_ = np.zeros(columns)
        model.col_lower_, model.col_upper_ = matrix.lower, matrix.upper
        model.row_lower_, model.row_upper_ = matrix.row_lower, matrix.row_upper
        formats = highspy.MatrixFormat
        model.a_matrix_.format_ = formats.kColwise if matrix.by_column else formats.kRowwise
        model.a_matrix_.start_ = matrix.starts
        model.a_matrix_.index_ = matrix.places
        model.a_matrix_.value_ = matrix.coefficients
        if matrix.whole.any():
            model.integrality_ = [_KINDS[int(whole)] for whole in matrix.whole]
        if self._highs.passModel(model) == highspy.HighsStatus.kError:
            raise SolverFailed(f"The solver did not take the program. {PLAN_AGAIN}")

    def _run(self, seconds: float) -> Status:
        try:
            return run(self._highs, seconds)
        except BaseException:
            # The run may go on in the model; what is undone on the way out must not touch it.
            self._highs = highspy.Highs()
            self._highs.setOptionValue("output_flag", False)
            raise

    def _callback(self, kind: Any, message: str, out: Any, into: Any, user: Any) -> None:
        if self._report is not None:
            self._report(float(out.mip_primal_bound), float(out.mip_dual_bound))
