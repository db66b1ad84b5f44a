"""Tables on the terminal, as CSV and as JSON."""

from __future__ import annotations

import csv
import json
from fractions import Fraction

import pytest

from loadplan.tables.printed import as_csv, as_json, as_text
from loadplan.tables.table import Table

ONE = Table(headings=("Name", "Says"), rows=(("a", "one two three four"), ("b", None)))
TWO = Table(headings=("Says", "More"), rows=(("x,y", Fraction(3, 2)), ("=1", -20000)))
NONE = Table(headings=("Name",), rows=())


def test_text_stands_under_its_headings():
    assert list(as_text({"First": ONE, "Second": TWO, "Third": NONE}, 80)) == [
        "First",
        "-----",
        "Name  Says",
        "----  ------------------",
        "a     one two three four",
        "b",
        "",
        "Second",
        "------",
        "Says  More",
        "----  -------",
        "x,y   1.5",
        "=1    -20,000",
        "",
        "Third",
        "-----",
        "none",
    ]


def test_long_cells_are_wrapped_between_words():
    assert list(as_text({"First": ONE}, 16))[4:] == [
        "a     one two",
        "      three four",
        "b",
    ]


@pytest.mark.parametrize("width", [80, 100, 160])
def test_lines_fit_where_the_words_do(width):
    table = Table(
        headings=("A", "B", "C"),
        rows=(("short", "word " * 60, "49 CFR 393.130(c)(1)"), ("word " * 30, "b", "c")),
    )
    lines = list(as_text({"T": table}, width))
    assert max(map(len, lines)) <= width
    assert sum(line.count("word") for line in lines) == 90
    assert any("393.130(c)(1)" in line for line in lines)


def test_csv_is_one_table_with_all_headings():
    assert list(csv.reader(as_csv({"First": ONE, "Second": TWO}))) == [
        ["Table", "Name", "Says", "More"],
        ["First", "a", "one two three four", ""],
        ["First", "b", "", ""],
        ["Second", "", "x,y", "1.5"],
        ["Second", "", "'=1", "-20000"],
    ]


def test_json_has_a_list_for_each_table():
    assert json.loads("\n".join(as_json({"First": ONE, "Second": TWO, "Third": NONE}))) == {
        "First": [{"Name": "a", "Says": "one two three four"}, {"Name": "b", "Says": None}],
        "Second": [{"Says": "x,y", "More": 1.5}, {"Says": "=1", "More": -20000}],
        "Third": [],
    }
