"""The results workbook of the small plan, sheet by sheet, against its golden dump."""

from __future__ import annotations

import pytest

from tests.results.golden import FOLDER, dumps, path_of

SHEETS = (
    *("Board", "Summary", "Shortfall", "Pick list", "Tie-downs", "Checks", "Gear use", "Sources"),
    *("Notes", "Load 1", "Load 2", "Load 3"),
)


@pytest.fixture(scope="module")
def dumped():
    return dumps()


def test_the_sheets_stand_in_order(dumped):
    assert tuple(dumped) == SHEETS


@pytest.mark.parametrize("sheet", SHEETS)
def test_sheet_is_as_kept(dumped, sheet):
    assert dumped[sheet] == path_of(sheet).read_text(encoding="utf-8")


def test_no_dump_is_left_over():
    assert {path.name for path in FOLDER.iterdir()} == {path_of(sheet).name for sheet in SHEETS}


@pytest.mark.parametrize("sheet", SHEETS)
def test_every_cell_has_a_named_style(dumped, sheet):
    nameless = [line for line in dumped[sheet].splitlines() if line.endswith(")") and "| (" in line]
    assert nameless == []
