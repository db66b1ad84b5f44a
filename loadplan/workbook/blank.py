"""The empty day workbook: every sheet and heading, drop-downs that block, notes, a Read me."""

from __future__ import annotations

import io
from pathlib import Path
from typing import TYPE_CHECKING, Any

from loadplan.day.units import Units
from loadplan.tables.place_file import place_file
from loadplan.workbook.column import Column, Sheet, Value
from loadplan.workbook.columns import SHEETS
from loadplan.workbook.describe import blank_means, holds
from loadplan.workbook.read_me import Words, list_name, write_read_me
from loadplan.workbook.stored import column_letter
from loadplan.workbook.style import add_styles, note, page

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

# Rows drawn as fields to fill in; drop-downs and text formats reach further down.
_DRAWN_ROWS = 28
_LAST_ROW = 5_000
_TEXT_VALUES = frozenset({Value.ID, Value.TEXT, Value.READING, Value.SIZE, Value.FITS, Value.GRADE})
_WIDTHS = {Value.TEXT: 20, Value.WORD: 17, Value.ACCESSORIES: 22, Value.ID: 11, Value.FITS: 14}
_TWO_LINES = 30
_LINE_WIDTHS = (34, 24)


def write_blank(path: Path, units: Units, *, force: bool = False) -> None:
    """Write the empty day workbook in ``units`` to ``path``, whole or not at all.

    A file that is there already is replaced only with ``force``. Raises
    :class:`~loadplan.problems.SaveFailed`.
    """
    made = io.BytesIO()
    blank_book(units).save(made)
    place_file(path, made.getvalue(), force=force)


def blank_book(units: Units) -> Workbook:
    """The empty day workbook in ``units``."""
    import openpyxl

    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    book.properties.title = f"Day workbook ({units.value})"
    book.properties.creator = "loadplan"
    add_styles(book)
    words = write_read_me(book, units)
    for sheet in SHEETS:
        made = book.create_sheet(sheet.name)
        if sheet.lines:
            _write_lines(made, sheet, units, words)
        else:
            _write_columns(made, sheet, units, words)
        page(made, units, landscape=not sheet.lines)
    return book


def _write_columns(made: Worksheet, sheet: Sheet, units: Units, words: Words) -> None:
    made.row_dimensions[1].height = _TWO_LINES
    for index, column in enumerate(sheet.columns, start=1):
        letter = column_letter(index)
        heading = made.cell(row=1, column=index, value=column.heading(units))
        heading.style = "Needed heading" if column.required else "Heading"
        heading.comment = note(_note(column))
        text = column.value in _TEXT_VALUES
        for row in range(2, _DRAWN_ROWS + 2):
            made.cell(row=row, column=index).style = "Text field" if text else "Field"
        dimension = made.column_dimensions[letter]
        dimension.width = max(_WIDTHS.get(column.value, 9), _in_two_lines(column.heading(units)))
        if text:
            dimension.number_format = "@"
        _validate(made, f"{letter}2:{letter}{_LAST_ROW}", column, words)


def _write_lines(made: Worksheet, sheet: Sheet, units: Units, words: Words) -> None:
    for index, column in enumerate(sheet.columns, start=1):
        heading = made.cell(row=1, column=index, value=column.name)
        heading.style = "Needed heading"
        heading.comment = note(f"{sheet.help} {column.help}")
        made.column_dimensions[column_letter(index)].width = _LINE_WIDTHS[index - 1]
    for row, line in enumerate(sheet.lines, start=2):
        name = made.cell(row=row, column=1, value=line.heading(units))
        name.style = "Name"
        name.comment = note(_note(line))
        cell = made.cell(row=row, column=2)
        cell.style = "Text field" if line.value in _TEXT_VALUES else "Field"
        if line.value is Value.DATE:
            cell.number_format = "yyyy-mm-dd"
        if line.field == "units":
            cell.value = units.value
        _validate(made, f"B{row}", line, words)


def _in_two_lines(heading: str) -> int:
    """Characters of width that hold ``heading`` in two lines."""
    words = heading.split()
    lines = ((" ".join(words[:at]), " ".join(words[at:])) for at in range(1, len(words) + 1))
    return min(max(len(line) for line in pair) for pair in lines) + 3


def _note(column: Column) -> str:
    return f"{column.help}\n\nHolds: {holds(column)}.\nBlank: {blank_means(column)}."


def _validate(made: Worksheet, cells: str, column: Column, words: Words) -> None:
    """A rule on ``cells`` that refuses what the reader would refuse.

    Weights, lengths, times and prices have none: their cells may carry a unit of their own.
    """
    from openpyxl.worksheet.datavalidation import DataValidation

    rule: dict[str, Any]
    if column.choices:
        rule = {"type": "list", "formula1": words[list_name(column)]}
    elif column.value is Value.WHOLE:
        least, most = column.least or 0, column.most
        rule = {
            "type": "whole",
            "operator": "between",
            "formula1": str(least),
            "formula2": str(most),
        }
    else:
        return
    validation = DataValidation(
        allow_blank=True,
        showErrorMessage=True,
        errorStyle="stop",
        errorTitle=column.name[:31],
        error=f"{column.name}: {holds(column)}."[:250],
        **rule,
    )
    validation.add(cells)
    made.add_data_validation(validation)
