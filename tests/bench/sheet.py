"""Writes a generated day as a day workbook."""

from __future__ import annotations

from pathlib import Path

from openpyxl import Workbook

Rows = dict[str, list[dict[str, object]]]


def write_workbook(rows: Rows, path: str | Path) -> None:
    """One sheet per entry of ``rows``, its headings the keys of its rows in first-seen order."""
    book = Workbook(write_only=True)
    for name, records in rows.items():
        sheet = book.create_sheet(name)
        headings = list(dict.fromkeys(key for record in records for key in record))
        sheet.append(headings)
        for record in records:
            sheet.append([record.get(heading) for heading in headings])
    book.save(path)
