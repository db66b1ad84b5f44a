"""All problems at once: by sheet, then row, then column, the count last."""

import pytest

from loadplan.problems import WorkbookRejected
from loadplan.workbook.read import read_day
from tests.workbook.build import save


def test_the_whole_text(tmp_path):
    sheets = {
        "Gear": [("Gear", "Kind", "Quantity"), ("G", "chain", -2), (None, "chainn", 1)],
        "Odd": [("x",)],
        "Cargo": [("Article", "Load", "Class", "Weight [lb]"), ("A", None, None, "x")],
        "Day": [("Setting", "Value"), ("Date", "x"), ("Units", "x")],
    }
    with pytest.raises(WorkbookRejected) as caught:
        read_day(save(tmp_path / "day.xlsx", sheets))
    lines = str(caught.value).splitlines()
    assert [line.split("  ")[:2] for line in lines[:-1]] == [
        ["'Day'!B2", "T04"],
        ["'Day'!B3", "V07"],
        ["'Cargo'!B2", "V02"],
        ["'Cargo'!C2", "V02"],
        ["'Cargo'!D2", "V03"],
        ["'Gear'!C2", "V01"],
        ["'Gear'!A3", "V02"],
        ["'Gear'!B3", "V07"],
    ]
    assert lines[-1] == "8 problems. Nothing was planned or written."


def test_one_problem(tmp_path):
    sheets = {"Gear": [("Gear", "Kind", "Quantity"), ("G", "chain", -2)]}
    sheets["Cargo"] = [("Article", "Load", "Class", "Weight [lb]"), ("A", "L", "general", 5)]
    sheets["Cargo"] = [(*sheets["Cargo"][0], "Length [ft]"), (*sheets["Cargo"][1], 5)]
    with pytest.raises(WorkbookRejected) as caught:
        read_day(save(tmp_path / "day.xlsx", sheets))
    assert str(caught.value) == (
        "'Gear'!C2  V01  Quantity is -2. It must be a whole number, 0 or more.\n"
        "1 problem. Nothing was planned or written."
    )
