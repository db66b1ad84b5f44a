"""A program's arrays by row and by column, against the entries one by one."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.matrix import Matrix, matrix_of_rows

ROWS, COLUMNS = 4, 5
entries = st.lists(st.integers(-2, 2), min_size=ROWS * COLUMNS, max_size=ROWS * COLUMNS)


def dense(matrix: Matrix) -> np.ndarray:
    found = np.zeros((ROWS, COLUMNS))
    for line in range(len(matrix.starts) - 1):
        for at in range(matrix.starts[line], matrix.starts[line + 1]):
            place = matrix.places[at]
            found[(place, line) if matrix.by_column else (line, place)] = matrix.coefficients[at]
    return found


@given(entries)
def test_by_column_is_the_same_as_by_row(numbers: list[int]) -> None:
    table = np.array(numbers, dtype=float).reshape(ROWS, COLUMNS)
    sides, upper = [0.0] * ROWS, np.ones(COLUMNS)
    by_row = matrix_of_rows(table, sides, sides, upper, np.zeros(COLUMNS, dtype=bool))
    by_column = by_row.columnwise()
    assert by_column.by_column
    assert len(by_column.starts) == COLUMNS + 1
    assert (dense(by_row) == table).all()
    assert (dense(by_column) == table).all()
    again = by_column.rowwise()
    assert not again.by_column
    assert len(again.starts) == ROWS + 1
    assert (dense(again) == table).all()
