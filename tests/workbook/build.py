"""Day workbooks for tests: sheets as lists of rows, written with openpyxl."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from loadplan.day.day import Day
from loadplan.problems import WorkbookRejected
from loadplan.workbook.read import read_day

Rows = Sequence[Sequence[Any]]
Sheets = Mapping[str, Rows]

CARGO: Rows = (
    ("Article", "Load", "Class", "Weight [lb]", "Length [ft]"),
    ("EX-1", "L-1", "tracked machine", 36000, 24),
)
GEAR: Rows = (
    ("Gear", "Kind", "Size", "Grade", "Length [ft]", "WLL [lb]", "Fits", "Quantity"),
    ("CH-1", "chain", "3/8", "70", 20, 6600, None, 8),
    ("LB-1", "lever binder", None, None, None, 5400, "5/16-3/8", 8),
)
SMALLEST: Sheets = {"Cargo": CARGO, "Gear": GEAR}


def save(path: Path, sheets: Sheets) -> Path:
    """Write ``sheets`` to ``path`` in their order; None leaves a cell blank."""
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    book.save(path)
    return path


def read(tmp_path: Path, sheets: Sheets) -> Day:
    """The day in ``sheets``."""
    return read_day(save(tmp_path / "day.xlsx", sheets))


def rejected(tmp_path: Path, sheets: Sheets) -> list[str]:
    """The lines with which a workbook of ``sheets`` is rejected, without the count."""
    return rejected_file(save(tmp_path / "day.xlsx", sheets))


def rejected_file(path: Path) -> list[str]:
    """The lines with which the file is rejected, without the count."""
    with pytest.raises(WorkbookRejected) as caught:
        read_day(path)
    *lines, last = str(caught.value).splitlines()
    count = len(caught.value.problems)
    plural = "" if count == 1 else "s"
    assert last == f"{count} problem{plural}. Nothing was planned or written."
    return lines


def with_cell(rows: Rows, at: int, heading: str, value: Any) -> Rows:
    """``rows`` with ``value`` under ``heading`` in row ``at`` (the headings are row 1).

    A heading that is not there yet is added as the last column.
    """
    changed = [list(row) for row in rows]
    if heading not in changed[0]:
        changed = [[*row, None] for row in changed]
        changed[0][-1] = heading
    changed[at - 1][changed[0].index(heading)] = value
    return changed


def cargo_with(heading: str, value: Any) -> Sheets:
    """The smallest day with ``value`` under ``heading`` of its one article."""
    return {"Cargo": with_cell(CARGO, 2, heading, value), "Gear": GEAR}


def gear_with(heading: str, value: Any, at: int = 2) -> Sheets:
    """The smallest day with ``value`` under ``heading`` of its chain, or of row ``at``."""
    return {"Cargo": CARGO, "Gear": with_cell(GEAR, at, heading, value)}


def with_parts(path: Path, change: Callable[[dict[str, bytes]], None]) -> Path:
    """Rewrite the parts of the archive at ``path`` as ``change`` leaves them."""
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    change(parts)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return path


FIRST_SHEET = "xl/worksheets/sheet1.xml"
