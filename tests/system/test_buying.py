"""Small days bought for through the command line, against every purchase there is."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from loadplan.cli import run
from tests.bench.sheet import Rows, write_workbook
from tests.oracle.day import read_day
from tests.oracle.optimum import optimum
from tests.oracle.purchases import curve
from tests.oracle.recheck import recheck, vector
from tests.oracle.results import read_results
from tests.purchase.days import priced_rows

# Formats of the results that openpyxl does not carry over.
pytestmark = pytest.mark.filterwarnings("ignore::UserWarning:openpyxl")


def sheet(path: Path, name: str) -> list[dict[str, object]]:
    headings, *rows = openpyxl.load_workbook(path)[name].iter_rows(values_only=True)
    return [dict(zip(headings, row, strict=True)) for row in rows]


def bought_day(seen: Rows, bought: list[dict[str, object]], path: Path) -> Path:
    """The day with what was bought on its sheet ``Gear``, and no kind of which there is none."""
    more = {str(row["Gear"]).casefold(): int(str(row["Pieces"])) for row in bought}
    gear = [
        row | {"Quantity": int(str(row["Quantity"])) + more.get(str(row["Gear"]).casefold(), 0)}
        for row in seen["Gear"]
    ]
    kept = [row for row in gear if row["Gear"] != "New" or row["Quantity"]]
    write_workbook({**seen, "Gear": kept}, path)
    return path


@pytest.mark.parametrize("seed", [103, 146])
def test_a_budget_on_a_small_day(seed: int, tmp_path: Path) -> None:
    rows, seen, prices = priced_rows(seed)
    write_workbook(rows, tmp_path / "day.xlsx")
    write_workbook(seen, tmp_path / "seen.xlsx")
    steps = curve(read_day(tmp_path / "seen.xlsx"), prices)
    budget = steps[-1].cost
    out = tmp_path / "out.xlsx"
    code = run(["buy", str(tmp_path / "day.xlsx"), "-o", str(out), "--budget", f"{float(budget)}"])
    points = sheet(out, "Curve")
    assert [(row["Cost"], row["Pieces"]) for row in points] == [
        (step.cost, sum(step.pieces)) for step in steps
    ]
    assert [row["Loads ready"] for row in points] == [sum(step.ready) for step in steps]
    assert {row["Proved"] for row in points} == {"yes"}
    path = bought_day(seen, sheet(out, "Purchase"), tmp_path / "bought.xlsx")
    day = read_day(path)
    results = read_results(out, day)
    assert code == (0 if len(results.ready) == len(day.loads) else 4)
    assert recheck(path, out) == []
    best = optimum(day, 60)
    assert best.proved
    assert vector(day, results) == best.values
