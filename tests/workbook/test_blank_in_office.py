"""The empty day workbook, filled with the small day and saved by LibreOffice, is the small day."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from loadplan.api import plan_day
from loadplan.day.units import Units
from loadplan.tables.facts import DayFacts
from loadplan.tables.flat import tables_of
from loadplan.workbook.blank import blank_book
from loadplan.workbook.read import read_day
from tests.results.office import needs_office, saved_again

SMALL = Path(__file__).parents[2] / "sample_jobs" / "small_day.xlsx"


def fill(book, day) -> None:
    """Every cell of ``day`` under the same heading, or on the same line, of the empty ``book``."""
    for sheet in day:
        made = book[sheet.title]
        headings = {cell.value: cell.column for cell in made[1]}
        lines = {row[0].value: row[0].row for row in made.iter_rows(min_row=2)}
        for row in sheet.iter_rows(min_row=2):
            for heading, cell in zip(sheet[1], row, strict=True):
                by_line = sheet.title in ("Day", "House rules")
                at = lines[row[0].value] if by_line else cell.row
                if cell.value is not None:
                    made.cell(at, headings[heading.value]).value = cell.value


@pytest.fixture(scope="module")
def filled(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("blank")
    book = blank_book(Units.US)
    fill(book, openpyxl.load_workbook(SMALL))
    book.save(folder / "small_day.xlsx")
    return saved_again(folder / "small_day.xlsx", folder)


@needs_office
def test_the_plan_is_that_of_the_sample(filled):
    ours, theirs = (plan_day(read_day(path), time_limit=60) for path in (filled, SMALL))
    assert ours.day.warnings == theirs.day.warnings
    tables = [tables_of(DayFacts(plan)) for plan in (ours, theirs)]
    assert {name: table.rows for name, table in tables[0].items()} == {
        name: table.rows for name, table in tables[1].items()
    }


@needs_office
def test_drop_downs_still_block(filled):
    book = openpyxl.load_workbook(filled)
    rules = [rule for sheet in book for rule in sheet.data_validations.dataValidation]
    lists = [rule for rule in rules if rule.type == "list"]
    assert len(lists) > 20
    assert all(rule.showErrorMessage for rule in rules)
    assert {rule.errorStyle for rule in rules} <= {None, "stop"}
