"""The sheets of a workbook as rows of plain values."""

from __future__ import annotations

import warnings
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import ParseError

from loadplan.problems import Code, Place, Problem, WorkbookRejected
from loadplan.workbook import limits
from loadplan.workbook.archive import check_file, too_large, unreadable
from loadplan.workbook.stored import bad_numbers, column_letter, lost_formulas

_BROKEN = (
    ArithmeticError,
    AttributeError,
    EOFError,
    LookupError,
    NotImplementedError,
    OSError,
    ParseError,
    RecursionError,
    RuntimeError,
    TypeError,
    ValueError,
    zipfile.BadZipFile,
    zlib.error,
)


@dataclass(slots=True, kw_only=True)
class Grid:
    """One sheet: its name as typed and its rows that hold anything, by row number.

    ``lost`` are the cells, as (row, column) counted from 1, whose formula has no stored value.
    """

    name: str
    rows: list[tuple[int, tuple[Any, ...]]] = field(default_factory=list)
    lost: frozenset[tuple[int, int]] = frozenset()


def read_grids(path: Path) -> list[Grid]:
    """All sheets of the workbook at ``path`` in their order.

    Raises :class:`~loadplan.problems.NoSuchWorkbook` or
    :class:`~loadplan.problems.WorkbookRejected`.
    """
    check_file(path)
    with warnings.catch_warnings():
        # The library warns about parts it drops (pictures, extensions); none of them is input.
        warnings.simplefilter("ignore")
        try:
            return _grids(path)
        except _BROKEN as error:
            raise WorkbookRejected([unreadable("it is damaged")]) from error


def _grids(path: Path) -> list[Grid]:
    import openpyxl

    book = openpyxl.load_workbook(path, read_only=True, data_only=True, keep_links=False)
    try:
        sheets: list[Any] = list(book.worksheets)
        if len(sheets) > limits.MOST_SHEETS:
            found = f"The workbook has {len(sheets):,} sheets; {limits.MOST_SHEETS} is the most."
            raise WorkbookRejected([too_large(found)])
        grids = [Grid(name=sheet.title) for sheet in sheets]
        cells = 0
        for grid, sheet in zip(grids, sheets, strict=True):
            part: str = sheet._worksheet_path
            cells = _fill(grid, _rows(sheet, path, part), cells)
            grid.lost = lost_formulas(path, part)
    finally:
        book.close()
    return grids


def _rows(sheet: Any, path: Path, part: str) -> Iterator[tuple[Any, ...]]:
    sheet.reset_dimensions()
    try:
        yield from sheet.iter_rows(values_only=True)
    except _BROKEN as error:
        bad = bad_numbers(path, part)
        if not bad:
            raise
        raise WorkbookRejected(
            Problem(
                code=Code.NOT_A_NUMBER,
                place=Place(sheet=sheet.title, row=row, column=column_letter(column)),
                found="The cell holds something stored as a number that is none.",
                remedy="Type the value again.",
            )
            for row, column in bad
        ) from error


def _fill(grid: Grid, rows: Iterable[tuple[Any, ...]], cells: int) -> int:
    """Keep the rows of ``grid`` that hold anything; the number of cells seen so far."""
    for number, values in enumerate(rows, start=1):
        cells += len(values)
        if number > limits.MOST_ROWS or cells > limits.MOST_CELLS:
            raise WorkbookRejected([too_large(_too_many(grid.name, number))])
        if any(_holds(value) for value in values):
            if len(values) > limits.MOST_COLUMNS:
                values = _narrow(grid.name, values)
            grid.rows.append((number, values))
    return cells


def _holds(value: Any) -> bool:
    return value is not None and not (isinstance(value, str) and not value.strip())


def _narrow(name: str, values: tuple[Any, ...]) -> tuple[Any, ...]:
    if any(_holds(value) for value in values[limits.MOST_COLUMNS :]):
        most = limits.MOST_COLUMNS
        raise WorkbookRejected([too_large(f"Sheet {name} has cells beyond column {most:,}.")])
    return values[: limits.MOST_COLUMNS]


def _too_many(name: str, row: int) -> str:
    if row > limits.MOST_ROWS:
        return f"Sheet {name} reaches beyond row {limits.MOST_ROWS:,}."
    return (
        f"Sheet {name} reaches so far to the right that its rows have over "
        f"{limits.MOST_CELLS:,} cells."
    )
