"""The column reference and the blank workbooks kept beside it are up to date."""

from pathlib import Path

import openpyxl
import pytest

from loadplan.day.units import Units
from loadplan.problems import Code
from loadplan.workbook.blank import write_blank
from loadplan.workbook.columns import SHEETS
from loadplan.workbook.reference import columns_markdown, sheets_table
from tests.workbook.dump import dump

KEPT = Path(__file__).parents[2] / "workbooks"


def test_the_kept_reference_is_what_the_table_of_columns_gives():
    assert (KEPT / "columns.md").read_text(encoding="utf-8") == columns_markdown()


@pytest.mark.parametrize("units", Units)
def test_the_kept_blank_workbook_is_what_the_program_writes(tmp_path, units):
    write_blank(tmp_path / "new.xlsx", units)
    kept = openpyxl.load_workbook(KEPT / f"blank_{units.value}.xlsx")
    assert dump(kept) == dump(openpyxl.load_workbook(tmp_path / "new.xlsx"))


def test_the_reference_names_every_column_and_every_code():
    text = columns_markdown()
    for sheet in SHEETS:
        for column in sheet.lines or sheet.columns:
            assert f"| {column.name}" in text
    for code in Code:
        assert f"| {code.value} | {code.meaning} |" in text


def test_the_table_of_sheets():
    lines = sheets_table().splitlines()
    assert lines[:2] == ["| sheet | columns (bold: must be there) |", "|---|---|"]
    assert lines[4].startswith("| **Cargo** | **Article**, **Load**, **Class**, Description, ")
    assert len(lines) == 2 + len(SHEETS)
