"""The column reference and the table of sheets, written from the table of columns."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.problems import Code
from loadplan.workbook import limits
from loadplan.workbook.column import Sheet
from loadplan.workbook.columns import SHEETS
from loadplan.workbook.describe import blank_means, holds, lines_or_columns, units_of_heading


def sheets_table() -> str:
    """The sheets and their columns as one Markdown table, required ones in bold."""
    rows = ["| sheet | columns (bold: must be there) |", "|---|---|"]
    for sheet in SHEETS:
        name = f"**{sheet.name}**" if sheet.required else sheet.name
        columns = ", ".join(
            f"**{units_of_heading(column)}**" if column.required else units_of_heading(column)
            for column in lines_or_columns(sheet)
        )
        rows.append(f"| {name} | {columns} |")
    return "\n".join(rows) + "\n"


def columns_markdown() -> str:
    """The whole column reference as Markdown."""
    return "\n".join([*_introduction(), *_sheets(), *_limits(), *_problems()]) + "\n"


def _introduction() -> Iterator[str]:
    yield "# The day workbook, column by column"
    yield ""
    yield "This page is made from the program's own table of sheets and columns."
    yield ""
    yield "- Each sheet is one table with its headings in its first row that is not empty."
    yield "  Sheets and headings are found whatever their case and spacing. `Cargo` and `Gear`"
    yield "  are enough for a day."
    yield "- A unit stands in the heading in square brackets. A cell may carry its own: `3.2 t`,"
    yield "  `12' 6\"`, `2,130 kg`. Commas are thousands commas in groups of three; the decimal"
    yield "  sign is a point. A bare `ton` is refused, because it is three different weights."
    yield "- Ids are text. Capitals and outer spaces make no difference. Format id and size"
    yield "  columns as text, so that `007` and `3/8` stay what they are."
    yield "- Sheets and columns that are not known are left out with a warning."
    yield ""


def _sheets() -> Iterator[str]:
    for sheet in SHEETS:
        yield f"## {sheet.name}{' (must be there)' if sheet.required else ''}"
        yield ""
        yield sheet.help
        yield ""
        yield from _sheet_rows(sheet)
        yield ""


def _sheet_rows(sheet: Sheet) -> Iterator[str]:
    if sheet.lines:
        name, value = (column.name for column in sheet.columns)
        yield f"Two columns, `{name}` and `{value}`, with these lines in any order:"
        yield ""
    yield f"| {'line' if sheet.lines else 'heading'} | holds | blank means | what it is |"
    yield "|---|---|---|---|"
    for column in lines_or_columns(sheet):
        cells = (units_of_heading(column), holds(column), blank_means(column), column.help)
        yield f"| {' | '.join(cell.replace('|', ' ') for cell in cells)} |"


def _limits() -> Iterator[str]:
    mib = 2**20
    yield "## How large a workbook may be"
    yield ""
    yield "| what | most |"
    yield "|---|---|"
    yield f"| file | {limits.MOST_FILE_BYTES // mib} MiB |"
    yield f"| file, unpacked | {limits.MOST_UNPACKED_BYTES // mib} MiB |"
    yield f"| sheets | {limits.MOST_SHEETS:,} |"
    yield f"| rows, blank formatted ones too | {limits.MOST_ROWS:,} |"
    yield f"| columns of a sheet | {limits.MOST_COLUMNS:,} |"
    yield f"| cells, blank formatted ones too | {limits.MOST_CELLS:,} |"
    yield f"| styles, drop-downs and other elements | {limits.MOST_OTHER_ELEMENTS:,} |"
    yield f"| characters of an id | {limits.MOST_ID:,} |"
    yield f"| characters of any other text | {limits.MOST_TEXT:,} |"
    yield ""


def _problems() -> Iterator[str]:
    yield "## Problems by code"
    yield ""
    yield "Every problem names its cell, its code, what stands there and what to write instead."
    yield "All of them are told at once, and nothing is planned while there is one."
    yield ""
    yield "| code | meaning |"
    yield "|---|---|"
    for code in Code:
        yield f"| {code.value} | {code.meaning} |"
