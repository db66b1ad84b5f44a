"""Sheets as lists of rows; a heading's unit in square brackets is kept apart from its name."""

from __future__ import annotations

import re
import warnings
from pathlib import Path

from openpyxl import load_workbook

from tests.oracle.cells import Cell, text


class Record(dict[str, Cell]):
    """One row by heading (case-folded, without its unit), with the unit of each heading."""

    units: dict[str, str]


def read_sheets(path: str | Path) -> dict[str, list[Record]]:
    """Every sheet of a workbook by its case-folded name; blank rows are left out."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # formats that openpyxl does not carry over
        book = load_workbook(path, data_only=True)
    return {
        " ".join(sheet.title.split()).casefold(): _records(list(sheet.iter_rows(values_only=True)))
        for sheet in book.worksheets
    }


def _records(rows: list[tuple[Cell, ...]]) -> list[Record]:
    rows = [row for row in rows if any(text(cell) for cell in row)]
    if not rows:
        return []
    names, units = [], {}
    for cell in rows[0]:
        match = re.fullmatch(r"([^\[]*)(?:\[(.*)\])?\s*", text(cell))
        name = " ".join((match[1] if match else text(cell)).split()).casefold()
        names.append(name)
        if match and match[2]:
            units[name] = match[2].strip().casefold()
    records = []
    for row in rows[1:]:
        record = Record(zip(names, row, strict=True))
        record.units = units
        records.append(record)
    return records
