"""The flat sheets as CSV files."""

from __future__ import annotations

import csv
import io
from pathlib import Path

from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SaveFailed
from loadplan.tables.clean import clean
from loadplan.tables.flat import flat_tables
from loadplan.tables.place_file import place_file, refuse_existing
from loadplan.tables.table import Cell, Table, number

# The wide forms are read as the plain ones by some spreadsheets.
_FORMULA_SIGNS = ("=", "+", "-", "@", "＝", "＋", "－", "＠")


def save_csv(plan: DayPlan, folder: Path, force: bool = False) -> tuple[Path, ...]:
    """Write each flat sheet of ``plan`` to ``<sheet>.csv`` in ``folder``; answers with the paths.

    The folder is made if it is not there. UTF-8 with a mark, so that spreadsheets read it right;
    text that a spreadsheet would take for a formula gets an apostrophe in front. Existing files
    are replaced only with ``force``, and none is written if one may not be. Raises ``SaveFailed``.
    """
    files = {folder / f"{name}.csv": table for name, table in flat_tables(plan).items()}
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or str(error)
        raise SaveFailed(f"The folder {folder} could not be made: {reason}.") from error
    for path in files:
        refuse_existing(path, force=force)
    for path, table in files.items():
        place_file(path, csv_text(table).encode("utf-8-sig"), force=force)
    return tuple(files)


def csv_text(table: Table) -> str:
    """``table`` as comma separated values, headings first."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(table.headings)
    writer.writerows([_field(cell) for cell in row] for row in table.rows)
    return out.getvalue()


def _field(cell: Cell) -> str | int | float:
    value = number(cell)
    if value is None:
        return ""
    if not isinstance(value, str):
        return value
    text = clean(value)
    # A dash alone, for what there is not, is no formula to any spreadsheet.
    formula = text.lstrip().startswith(_FORMULA_SIGNS) and text != "-"
    return f"'{text}" if formula else text
