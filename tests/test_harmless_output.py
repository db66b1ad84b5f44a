"""Text from a day workbook does no harm in a terminal, a CSV file or the results."""

from __future__ import annotations

import csv
import io
import unicodedata

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loadplan.tables.clean import clean
from loadplan.tables.csv import csv_text
from loadplan.tables.sheet_names import load_sheet_names
from loadplan.tables.table import Table
from loadplan.terminal import visible
from tests.cli_runs import Command
from tests.fuzz.small_book import packed, parts_of
from tests.workbook.build import CARGO, GEAR, with_cell

IDS = ("=cmd|'/c calc'!A1", "+1", "-2+3", "@SUM(A1)", " =1+1", "＝1+1", "\u202e70-L", "http://x.y/")
HARMFUL = {"Cc", "Cf", "Cs", "Zl", "Zp"}
ANY = settings(max_examples=150, deadline=None, derandomize=True)


@given(st.text(alphabet=st.characters(codec=None), max_size=30))
@ANY
def test_the_terminal_shows_control_and_direction_characters_as_escapes(text):
    shown = visible(text)
    for character in shown:
        assert unicodedata.category(character) not in HARMFUL or character in "\n\u200c\u200d"
    assert visible(shown) == shown


@given(st.text(alphabet=st.characters(codec=None), max_size=12))
@ANY
def test_no_field_of_a_csv_file_begins_like_a_formula(text):
    table = Table(headings=("A",), rows=((text,),))
    ((_,), *rows) = csv.reader(io.StringIO(csv_text(table), newline=""))
    field = rows[0][0] if rows and rows[0] else ""
    assert field == "-" or not field.strip().startswith(
        ("=", "+", "-", "@", "＝", "＋", "－", "＠")
    )
    assert field.lstrip("'").strip() == clean(text).lstrip("'").strip()


@given(st.lists(st.text(alphabet="aA'[]:*?/\\ .=\x00é中𝟙", max_size=40), max_size=8, unique=True))
@ANY
def test_every_load_has_a_sheet_name_that_spreadsheets_take(loads):
    names = list(load_sheet_names(loads).values())
    assert len({name.casefold() for name in names}) == len(loads)
    for name in names:
        assert 0 < len(name.encode("utf-16-le")) // 2 <= 31
        assert not set("[]:*?/\\\x00") & set(name)
        assert not name.endswith("'")


@pytest.fixture(scope="module")
def hostile(tmp_path_factory):
    """A planned day whose ids are hostile, with CSV files beside the results."""
    folder = tmp_path_factory.mktemp("hostile")
    row = list(CARGO[1])
    cargo = [CARGO[0], *([f"{one}x", one, *row[2:3], 9000, 9] for one in IDS)]
    gear = with_cell(with_cell(GEAR, 2, "Quantity", 99), 3, "Quantity", 99)
    gear = with_cell(gear, 2, "Gear", "=CHAIN()")
    sheets = {"Cargo": cargo, "Gear": gear, "Loads": [("Load", "Driver"), *((i, i) for i in IDS)]}
    path = folder / "day.xlsx"
    path.write_bytes(packed(parts_of(sheets)))
    return path


def test_a_day_of_hostile_ids(hostile, capsys):
    folder = hostile.parent
    ran = Command(capsys)("plan", hostile, "--csv", folder / "csv")
    assert ran.code == 0, ran.err
    for path in (folder / "csv").iterdir():
        for record in csv.reader(path.open(encoding="utf-8-sig", newline="")):
            for field in record:
                assert not field.strip().startswith(("=", "@", "＝")), (path.name, field)
                assert not field.startswith(("+", "-")) or field == "-" or float(field)
    book = openpyxl.load_workbook(folder / "day.results.xlsx")
    own = ("=MIN(", "=IF(", "=SUM(", "=J", "=E")
    for sheet in book:
        for cell in (cell for row in sheet.iter_rows() for cell in row):
            assert cell.data_type != "f" or cell.value.startswith(own), cell.value
            assert cell.hyperlink is None or cell.hyperlink.target is None
    assert {row[0].value for row in book["Summary"].iter_rows(min_row=2)} == {
        one.strip() for one in IDS
    }


def test_a_wrong_command_line_cannot_play_with_the_terminal(tmp_path, capsys):
    ran = Command(capsys)("plan", tmp_path / "day.xlsx", "-o", tmp_path / "\x07\u202er.xls")
    assert ran.code == 2
    assert "\\x07\\u202er.xls does not end in .xlsx" in ran.err[-1]
