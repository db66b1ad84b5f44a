"""The sample days come out as ``sample_jobs/README.md`` tells."""

import runpy
from pathlib import Path

import openpyxl
import pytest

from loadplan.cli import run
from tests.oracle.day import read_day
from tests.oracle.recheck import recheck, vector
from tests.oracle.results import read_results
from tests.workbook.dump import dump

SAMPLES = Path(__file__).parents[1] / "sample_jobs"
# Exit code, loads held, and ready by priority, tie-downs, mixed sets, strength issued.
OUTCOMES = {
    "small_day": (0, [], [3, 15, 0, 104131]),
    "fourteen_trailers": (0, [], [6, 5, 3, 114, 0, 1111800]),
    "short_cage": (4, ["d", "e", "f"], [3, 0, 0, 15, 0, 214000]),
    "two_trips": (0, [], [4, 20, 0, 240000]),
    "buy_or_wait": (4, ["n4", "n5"], [2, 2, 0, 22, 0, 246666]),
}


@pytest.fixture(scope="module", params=list(OUTCOMES))
def planned(request, tmp_path_factory):
    name = request.param
    day, results = SAMPLES / f"{name}.xlsx", tmp_path_factory.mktemp(name) / "day.results.xlsx"
    return name, run(["plan", str(day), "-o", str(results)]), day, results


def test_outcome(planned):
    name, code, day_path, results_path = planned
    day = read_day(day_path)
    results = read_results(results_path, day)
    held = [load for load in day.loads if load not in results.ready]
    assert (code, held, vector(day, results)) == OUTCOMES[name]


def test_a_second_reading_agrees(planned):
    _, _, day_path, results_path = planned
    assert recheck(day_path, results_path) == []


@pytest.mark.parametrize(
    ("out", "bought"),
    [
        ("11:00", "Buy 5 pieces for 128 USD: 6 of 6 loads ready, 5 without buying."),
        ("10:59", "Buy 10 pieces for 298 USD: 6 of 6 loads ready, 4 without buying."),
    ],
)
def test_a_load_that_waits_saves_what_it_would_cost(tmp_path, capsys, out, bought):
    """N1 is back at 10:30, its gear free at 11:00: N5 then takes its five sets."""
    book = openpyxl.load_workbook(SAMPLES / "buy_or_wait.xlsx")
    (row,) = [row for row in book["Loads"].iter_rows() if row[0].value == "N5"]
    row[2].value, row[3].value = out, "16:30"
    book.save(tmp_path / "late.xlsx")
    assert run(["buy", str(tmp_path / "late.xlsx")]) == 0
    assert capsys.readouterr().out.splitlines()[0] == bought


def test_the_readme_tells_the_outcome():
    text = (SAMPLES / "README.md").read_text(encoding="utf-8")
    for name, (code, held, values) in OUTCOMES.items():
        *_, tie_downs, mixed, strength = values
        ready = sum(values[:-3])
        row = (
            f"| `{name}.xlsx` | {ready} | {len(held)} | {tie_downs} | {mixed} "
            f"| {strength:,} lb | {code} |"
        )
        assert row in text.splitlines()


@pytest.mark.parametrize("name", OUTCOMES)
def test_the_kept_workbook_is_what_the_script_builds(name, tmp_path):
    runpy.run_path(str(SAMPLES / "build.py"))["build"](tmp_path)
    built = openpyxl.load_workbook(tmp_path / f"{name}.xlsx")
    assert dump(openpyxl.load_workbook(SAMPLES / f"{name}.xlsx")) == dump(built)


def test_morning_gear_is_what_the_afternoon_goes_with(tmp_path):
    """10 sets are owned; two loads of 5 tie-downs are out at once. Without the return: 20."""
    book = openpyxl.load_workbook(SAMPLES / "two_trips.xlsx")
    settings = {row[0].value: row[1] for row in book["Day"].iter_rows()}
    settings["Turnaround [min]"].value = 600
    book.save(tmp_path / "late.xlsx")
    assert run(["plan", str(tmp_path / "late.xlsx")]) == 4
