"""One sheet as records: its rows read by its columns, with every problem on the way."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from loadplan.day.row import Row
from loadplan.day.units import Units
from loadplan.problems import Code, Place, Problem
from loadplan.units import Misread
from loadplan.workbook.column import Column, Sheet
from loadplan.workbook.grid import Grid
from loadplan.workbook.headings import Found, Headings, read_headings
from loadplan.workbook.names import fold, shown
from loadplan.workbook.stored import column_letter
from loadplan.workbook.values import BLANK, LOST, reader


@dataclass(slots=True, kw_only=True)
class Record:
    """One row: what its cells hold, by the field each goes to; blank ones are left out.

    ``sound`` is false where a cell of the row has a problem.
    """

    fields: dict[str, Any]
    row: Row
    sound: bool = True


@dataclass(slots=True, kw_only=True)
class Table:
    """One sheet read: its records in order, and what is wrong or unknown on it."""

    sheet: Sheet
    name: str
    records: list[Record] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)

    def sound(self) -> Iterator[Record]:
        """The records without a problem so far."""
        return (record for record in self.records if record.sound)

    def ids(self, field_name: str = "id") -> dict[str, str]:
        """Every id the sheet defines, in rows with problems too: as typed, by its folded form."""
        found: dict[str, str] = {}
        for record in self.records:
            if field_name in record.fields:
                found.setdefault(fold(record.fields[field_name]), record.fields[field_name])
        return found

    def reject(self, record: Record, code: Code, column: str, found: str, remedy: str) -> None:
        """Add a problem at a cell of ``record``, which is no longer sound."""
        record.sound = False
        self.problems.append(row_problem(record.row, code, column, found, remedy))


def row_problem(row: Row | None, code: Code, column: str, found: str, remedy: str) -> Problem:
    """A problem at the cell of ``row`` under the heading ``column``."""
    return Problem(code=code, place=place_of(row, column), found=found, remedy=remedy)


def place_of(row: Row | None, column: str) -> Place:
    """The cell of ``row`` under the heading ``column``; where there is none, the row's first."""
    if row is None:
        return Place()
    letter = row.cell(column).rstrip("0123456789")
    return Place(sheet=row.sheet, row=row.number, column=letter)


def read_table(sheet: Sheet, grid: Grid, units: Units) -> Table:
    """The records of ``grid``, read by the columns of ``sheet`` in a day of ``units``."""
    table = Table(sheet=sheet, name=grid.name)
    if not grid.rows:
        return table
    heading_row, cells = grid.rows[0]
    headings = read_headings(sheet, grid.name, heading_row, cells)
    table.problems += headings.problems
    table.warnings += headings.warnings
    _read_rows(table, grid, headings, units)
    _unheaded(table, grid, heading_row, cells)
    if any(column.field == "id" and column.required for column in sheet.columns):
        _unique_ids(table)
    return table


def _read_rows(table: Table, grid: Grid, headings: Headings, units: Units) -> None:
    readers = [
        (found.index, found.column.field, reader(found.column, found.unit, units), found)
        for found in headings.found
    ]
    required = [found for found in headings.found if found.column.required]
    lost = _lost_by_row(grid)
    for number, values in grid.rows[1:]:
        if number in lost:
            values = _mark_lost(values, lost[number])
        fields: dict[str, Any] = {}
        problems: list[Problem] = []
        width = len(values)
        for index, name, read, found in readers:
            if index >= width or values[index] is None:
                continue
            try:
                value = read(values[index])
            except Misread as misread:
                problems.append(_misread(grid.name, number, found, values[index], misread))
                continue
            if value is not BLANK:
                fields[name] = value
        if not fields and not problems:
            continue
        bad = {problem.place.column for problem in problems}
        problems += _missing(grid.name, number, required, fields, bad)
        table.problems += problems
        row = Row(sheet=grid.name, number=number, letters=headings.letters)
        sound = headings.usable and not problems
        table.records.append(Record(fields=fields, row=row, sound=sound))


def _lost_by_row(grid: Grid) -> dict[int, set[int]]:
    found: dict[int, set[int]] = {}
    for row, column in grid.lost:
        found.setdefault(row, set()).add(column)
    return found


def _mark_lost(values: tuple[Any, ...], columns: set[int]) -> tuple[Any, ...]:
    width = max(len(values), *columns)
    marked = list(values) + [None] * (width - len(values))
    for column in columns:
        marked[column - 1] = LOST
    return tuple(marked)


def _misread(sheet: str, row: int, found: Found, value: Any, misread: Misread) -> Problem:
    column = found.column.name
    what = "" if value is LOST else f" {shown(value)}"
    sentence = f"{column} is{what}{misread.why}."
    place = Place(sheet=sheet, row=row, column=column_letter(found.index + 1))
    return Problem(code=misread.code, place=place, found=sentence, remedy=misread.remedy)


def _missing(
    sheet: str, row: int, required: list[Found], fields: dict[str, Any], bad: set[str]
) -> Iterator[Problem]:
    for found in required:
        letter = column_letter(found.index + 1)
        if found.column.field not in fields and letter not in bad:
            yield Problem(
                code=Code.MISSING_VALUE,
                place=Place(sheet=sheet, row=row, column=letter),
                found=f"{found.column.name} is blank.",
                remedy=_needed(found.column),
            )


def _needed(column: Column) -> str:
    if column.words:
        return f"Write one of: {', '.join(column.words)}."
    return "Every row needs one."


def _unheaded(table: Table, grid: Grid, heading_row: int, cells: tuple[Any, ...]) -> None:
    """Warn of the first cell under no heading at all."""
    blank = [index for index, cell in enumerate(cells) if cell is None or not str(cell).strip()]
    width = len(cells)
    for number, values in grid.rows[1:]:
        if len(values) <= width and not blank:
            continue
        places = [*(index for index in blank if index < len(values)), *range(width, len(values))]
        for index in places:
            if values[index] is not None and str(values[index]).strip():
                place = Place(sheet=grid.name, row=number, column=column_letter(index + 1))
                table.warnings.append(
                    f"{place}  The cell stands under no heading of row {heading_row} "
                    "and was left out, as is all else there."
                )
                return


def _unique_ids(table: Table) -> None:
    column = next(column for column in table.sheet.columns if column.field == "id")
    first: dict[str, Record] = {}
    for record in table.records:
        name = record.fields.get("id")
        if name is None:
            continue
        earlier = first.setdefault(fold(name), record)
        if earlier is not record:
            table.reject(
                record,
                Code.DUPLICATE_ID,
                column.name,
                f"{column.name} {name} stands in {earlier.row.cell(column.name)} already.",
                "Give each row an id of its own.",
            )
