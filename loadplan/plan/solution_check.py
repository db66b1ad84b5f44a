"""Whether what the solver calls a solution is one: never taken on trust."""

from __future__ import annotations

from typing import Any

import highspy
import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]
# Ten times what the solver itself may be off by, and again for rows of large numbers.
_OFF = 1e-5


def flaw(model: highspy.HighsLp, values: Array, bound: float) -> str:
    """What is wrong with ``values`` as a solution of ``model``, in words; "" where nothing is.

    Checks that every value is a number, whole where it must be and within its bounds, that every
    row holds, and that the solution is not better than the ``bound`` proved for all of them.
    """
    if len(values) != model.num_col_ or not np.isfinite(values).all():
        return "its solution is not made of numbers"
    whole = np.array([kind == highspy.HighsVarType.kInteger for kind in model.integrality_])
    if len(whole) and np.abs(values - np.round(values))[whole].max(initial=0.0) > _OFF:
        return "its solution is not in whole numbers"
    if _outside(values, np.array(model.col_lower_), np.array(model.col_upper_)):
        return "its solution is outside the bounds"
    if _outside(_rows(model, values), np.array(model.row_lower_), np.array(model.row_upper_)):
        return "its solution breaks a limit of the program"
    value = float(np.array(model.col_cost_) @ values)
    if bound > value + _OFF * max(1.0, abs(value)):
        return "its bound contradicts its own solution"
    return ""


def cost_flaw(cost: Array, values: Array, stated: float) -> str:
    """What is wrong with a linear solution whose cost is said to be ``stated``, in words.

    Linear solutions are many, and only guide the search: that they cost what is said is enough.
    Columns beyond ``cost`` cost nothing.
    """
    if len(values) < len(cost) or not np.isfinite(values).all():
        return "its solution is not made of numbers"
    value = float(cost @ values[: len(cost)])
    if abs(value - stated) > _OFF * max(1.0, abs(stated)):
        return "its solution does not cost what it says"
    return ""


def _outside(values: Array, lower: Array, upper: Array) -> bool:
    near = _OFF * np.maximum(1.0, np.abs(values))
    return bool((values < lower - near).any() or (values > upper + near).any())


def _rows(model: highspy.HighsLp, values: Array) -> Array:
    """The left side of every row."""
    matrix = model.a_matrix_
    starts, places = (
        np.array(matrix.start_, dtype=np.int64),
        np.array(matrix.index_, dtype=np.int64),
    )
    entries = np.array(matrix.value_, dtype=float)
    runs = np.repeat(np.arange(len(starts) - 1), np.diff(starts))
    by_column = matrix.format_ == highspy.MatrixFormat.kColwise
    rows, columns = (places, runs) if by_column else (runs, places)
    return np.bincount(rows, entries * values[columns], minlength=model.num_row_)
