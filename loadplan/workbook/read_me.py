"""The first sheet of the empty day workbook: how to fill it in, with an example."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from loadplan.day.units import Units
from loadplan.workbook.column import Column
from loadplan.workbook.columns import README_SHEET, SHEETS
from loadplan.workbook.describe import blank_means, holds, lines_or_columns
from loadplan.workbook.example import example_tables
from loadplan.workbook.stored import column_letter
from loadplan.workbook.style import print_page

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

Words = Mapping[str, str]

_LINES = (
    "Fill in Cargo (what goes) and Gear (what holds it). The other sheets are there when a day "
    "needs them; a sheet left empty counts as absent.",
    "Dark headings must be filled in every row, light ones may stay blank. Each heading has a "
    "note; cells with a few possible words have a drop-down.",
    "A number counts in the unit of its heading. A cell may carry another one: 3.2 t, "
    "12' 6\", 2,130 kg.",
    "Write ids and sizes as text, so that 007 and 3/8 stay what they are; their columns are "
    "formatted so.",
    "Give every weight with fuel and what is fitted. List buckets, ballast and loose tools on "
    "Added weight.",
    "A plan is only as good as these figures. Check current federal, state and local rules; the "
    "driver and the carrier remain responsible.",
)
_WIDTHS = (24, 32, 40, 24, 50)
_LINE_HEIGHT = 15.5


def write_read_me(book: Workbook, units: Units) -> Words:
    """Write the sheet; the answer is where it lists the words of each drop-down."""
    sheet = book.create_sheet(README_SHEET)
    for index, width in enumerate(_WIDTHS, start=1):
        sheet.column_dimensions[column_letter(index)].width = width
    _put(sheet, 1, ["Day workbook"], "Page title")
    row = 3
    for line in _LINES:
        _put(sheet, row, [line], "Line")
        row += 1
    row = _new_page(sheet, _example(sheet, row + 1, units))
    row = _new_page(sheet, _glossary(sheet, row, units))
    words = _word_lists(sheet, row)
    print_page(sheet, units, landscape=True)
    return words


def _new_page(sheet: Worksheet, row: int) -> int:
    """Start a page; the answer is its first row."""
    from openpyxl.worksheet.pagebreak import Break

    sheet.row_breaks.append(Break(id=row))
    return row + 1


def _put(sheet: Worksheet, row: int, values: Sequence[Any], style: str) -> None:
    for index, value in enumerate(values, start=1):
        sheet.cell(row=row, column=index, value=value).style = style
    if style == "Words":
        # Not every program grows a row to fit text that wraps.
        lines = (
            -(-len(str(value)) // width) for value, width in zip(values, _WIDTHS, strict=False)
        )
        sheet.row_dimensions[row].height = _LINE_HEIGHT * max(1, *lines)


def _glossary(sheet: Worksheet, row: int, units: Units) -> int:
    _put(sheet, row, ["What each column holds"], "Section title")
    _put(
        sheet,
        row + 1,
        ["Sheet", "Heading or line", "Holds", "Blank means", "What it is"],
        "Heading",
    )
    row += 2
    for one in SHEETS:
        for column in lines_or_columns(one):
            cells = (
                one.name,
                column.heading(units),
                holds(column),
                blank_means(column),
                column.help,
            )
            _put(sheet, row, cells, "Words")
            row += 1
    return row


def _example(sheet: Worksheet, row: int, units: Units) -> int:
    """Rows of a small day, each written downwards so that the page stays narrow."""
    _put(sheet, row, ["Example: rows of a small day, each written downwards"], "Section title")
    row += 1
    for name, rows in example_tables(units):
        _put(sheet, row, [f"On {name}", *(f"row {at}" for at in range(1, len(rows)))], "Heading")
        row += 1
        for cells in zip(*rows, strict=True):
            _put(sheet, row, cells, "Words")
            row += 1
        row += 1
    return row


def _word_lists(sheet: Worksheet, row: int) -> dict[str, str]:
    """One row per word, and for each drop-down the range of its words."""
    _put(sheet, row, ["Words of the drop-downs"], "Section title")
    row += 1
    found: dict[str, str] = {}
    for name, words in _lists().items():
        found[name] = f"'{README_SHEET}'!$B${row}:$B${row + len(words) - 1}"
        for word in words:
            _put(sheet, row, [name, str(word)], "Words")
            row += 1
    return found


def _lists() -> dict[str, Sequence[str]]:
    return {list_name(column): column.choices for column in _all_columns() if column.choices}


def list_name(column: Column) -> str:
    """What the words of a column's drop-down are listed under; yes and no are listed once."""
    return "yes or no" if column.choices == ("yes", "no") else column.name


def _all_columns() -> Iterable[Column]:
    for sheet in SHEETS:
        yield from lines_or_columns(sheet)
