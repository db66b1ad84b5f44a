"""Where tie-downs go when a count is met by two classes of positions together."""

from pathlib import Path

import openpyxl
import pytest

from loadplan.cli import run
from tests.oracle.workbook import read_sheets

SMALL_DAY = Path(__file__).parents[2] / "sample_jobs" / "small_day.xlsx"


@pytest.mark.parametrize("rules", ["US", "Canada"])
def test_pipe_is_laid_out_although_no_lengthwise_tie_down_is_of_half_an_inch(tmp_path, rules):
    """Two lengthwise ones of 3/8 in stand for one of 1/2 in, which the cage has not."""
    book = openpyxl.load_workbook(SMALL_DAY)
    book["Day"]["B5"] = rules
    cargo = book["Cargo"]
    cargo["C5"], cargo["E5"] = "concrete pipe", 6000
    cargo["J1"], cargo["J5"] = "Details", "diameter 36 in"
    for cell in ("H2", "H3", "H4", "H5"):
        book["Gear"][cell] = 40
    day, results = tmp_path / "day.xlsx", tmp_path / "results.xlsx"
    book.save(day)
    assert run(["plan", str(day), "-o", str(results)]) == 0
    rows = [row for row in read_sheets(results)["tie-downs"] if row["article"] == "CULVERT"]
    lengthwise = [row["tension member"] for row in rows if "length" in str(row["position"])]
    assert lengthwise == ["C38", "C38"]
