"""The flat sheets as CSV files."""

from __future__ import annotations

import csv
from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.problems import SaveFailed
from loadplan.tables.csv import csv_text, save_csv
from loadplan.tables.table import Table
from tests.results.build import DAY, plan_of


def _read(path):
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file))


def test_every_flat_sheet_has_a_file(tmp_path):
    folder = tmp_path / "new" / "tables"
    paths = save_csv(plan_of(), folder)
    assert [path.name for path in paths] == [
        *("Summary.csv", "Shortfall.csv", "Pick list.csv", "Tie-downs.csv", "Checks.csv"),
        *("Gear use.csv", "Sources.csv"),
    ]
    assert sorted(folder.iterdir()) == sorted(paths)
    rows = _read(folder / "Pick list.csv")
    assert rows[0] == ["Load", "Gear", "Pieces", "From", "Out", "Back"]
    assert rows[1] == ["1", "CH-1", "5", "cage", "06:00", "10:00"]


def test_text_that_looks_like_a_formula_gets_an_apostrophe():
    table = Table(
        headings=("A", "B"),
        rows=(("=1+1", -5), ("@x", Fraction(1, 4)), ("+a", None), ("-b", "c\x07\nd")),
    )
    assert csv_text(table) == ("A,B\r\n'=1+1,-5\r\n'@x,0.25\r\n'+a,\r\n'-b,c\ufffd d\r\n")


def test_a_dash_alone_stays_one():
    assert csv_text(Table(headings=("Have",), rows=(("-",),))) == "Have\r\n-\r\n"


def test_existing_files_are_kept_without_force(tmp_path):
    old = tmp_path / "Gear use.csv"
    old.write_text("old")
    with pytest.raises(SaveFailed) as caught:
        save_csv(plan_of(), tmp_path)
    assert str(caught.value) == (
        f"{old} is there already and was left as it is. "
        "Choose another name, or add --force to replace it."
    )
    assert [path.name for path in tmp_path.iterdir()] == ["Gear use.csv"]
    save_csv(plan_of(), tmp_path, force=True)
    assert _read(old)[0][0] == "Gear"


def test_a_folder_that_cannot_be_made_is_told(tmp_path):
    (tmp_path / "file").write_text("x")
    folder = tmp_path / "file" / "folder"
    with pytest.raises(SaveFailed) as caught:
        save_csv(plan_of(replace(DAY, name="x")), folder)
    assert str(caught.value) == f"The folder {folder} could not be made: Not a directory."
