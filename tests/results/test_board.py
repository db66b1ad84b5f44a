"""The board: strips over the clock, charts, the cage's list, and days with little on them."""

from __future__ import annotations

import io
import re
import zipfile
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from loadplan.day.load import Load
from loadplan.results.workbook import results_bytes
from tests.results.build import DAY, HOUR, plan_of
from tests.results.dump import opened

_DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}"


@pytest.fixture(scope="module")
def content():
    return results_bytes(plan_of())


@pytest.fixture(scope="module")
def board(content):
    return opened(content, values=True)["Board"]


def _rows_below(board, heading):
    """The rows from the one after the heading that begins so, as lists of values."""
    rows = [[cell.value for cell in row] for row in board.iter_rows()]
    start = next(place for place, row in enumerate(rows) if str(row[0] or "").startswith(heading))
    return rows[start + 1 :]


def test_what_does_not_go_stands_at_the_top(board):
    assert board["A3"].value == "2 of 3 loads ready, 1 held; every stage is proved"
    assert board["A4"].value == (
        "HELD: load 3 does not go, short of 2 x binder for 3/8 in chain, 3,000 lb or more"
    )


def test_each_load_has_its_status_in_words(board):
    rows = _rows_below(board, "Loads")
    assert [row[:6] for row in rows[1:4]] == [
        ["1", "T-1", "06:00", "10:00", 1, "ready"],
        ["2", "T-2", "07:00", "12:00", 2, "ready"],
        ["3", None, "08:00", "11:00", 3, "HELD"],
    ]


def test_the_strip_is_dark_from_departure_to_return(board):
    # Slots are half hours from 06:00: load 1 is out in the first eight, load 2 from the third on.
    rows = _rows_below(board, "Trailers over the clock")
    first = next(row for row in rows if row[0] == "T-1")
    assert first[1] == "1 06:00-10:00"
    assert first[10:13] == ["1", None, None]
    number = next(cell.row for cell in board["A"] if cell.value == "T-1" and cell.row > 20)
    fills = [board.cell(number, column).fill.fgColor.rgb[-6:] for column in range(11, 23)]
    assert fills == ["2F5D8C"] * 8 + ["F4F6F9"] * 4


def test_a_held_load_is_said_not_to_go_and_its_strip_stays_free(board):
    rows = _rows_below(board, "Trailers over the clock")
    held = next(row for row in rows if row[0] == "no trailer (3)")
    assert held[1] == "3 08:00-11:00 HELD, does not go"
    assert set(held[10:22]) == {None}


def test_gear_out_over_the_clock_includes_the_turnaround(board):
    # Six binders on load 1 from 06:00 to 10:00 and an hour more: ten half hours.
    rows = _rows_below(board, "Gear over the clock")
    binders = next(row for row in rows if row[0] == "B-1")
    assert binders[1:7] == ["ratchet binder", 8, 8, 6, "06:00", "6 on 1"]
    # Beside the strip stand the usable pieces for the charts.
    count = 14
    assert binders[10 : 10 + count] == [6] * 10 + [0] * 4
    assert binders[10 + count : 10 + 2 * count] == [8] * count


def test_the_cage_hands_out_by_departure_with_totals(board):
    rows = _rows_below(board, "At the cage")
    assert [row[:5] for row in rows[:4]] == [
        ["Out", "Load", "Trailer", "Pieces", "Hand out"],
        [
            *("06:00", "1", "T-1", 12),
            "□ 5 x CH-1 chain    □ 1 x CH-2 chain    □ 6 x B-1 ratchet binder",
        ],
        ["07:00", "2", "T-2", 9, "□ 3 x WS-1 winch strap    □ 6 x EP-1 edge protector"],
        [
            *("Whole day", None, None, 21),
            "6 chains, 6 ratchet binders, 3 winch straps, 6 edge protectors",
        ],
    ]


def test_loads_that_leave_together_have_a_total():
    loads = (DAY.loads[0], replace(DAY.loads[1], out=6 * HOUR), DAY.loads[2])
    sheet = opened(results_bytes(plan_of(replace(DAY, loads=loads))))["Board"]
    rows = _rows_below(sheet, "At the cage")
    assert rows[3][:5] == [
        *("06:00 together", None, None, 21),
        "6 chains, 6 ratchet binders, 3 winch straps, 6 edge protectors",
    ]


def test_every_drawing_has_its_words(content):
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        names = [name for name in archive.namelist() if re.match(r"xl/drawings/drawing", name)]
        found = [
            element.get("descr")
            for name in names
            for element in ElementTree.fromstring(archive.read(name)).iter(f"{_DRAWING}cNvPr")
        ]
    # One chart of all gear, one for each of the five kinds that are out, three deck pictures.
    assert len(found) == 9
    assert all(found)
    assert "Gear B-1" not in found
    assert "B-1: at most 6 of 8 usable pieces out at once." in found


def test_charts_read_the_rows_they_are_named_for(content):
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        charts = [
            archive.read(name).decode()
            for name in archive.namelist()
            if re.match(r"xl/charts/chart\d", name)
        ]
    sheet = opened(content, values=True)["Board"]
    named = 0
    for chart in charts:
        title = re.search(r"<a:t>Gear (.+?): (\d+) of (\d+) out</a:t>", chart)
        if title is None:
            continue
        named += 1
        out = re.search(r"<c:val><c:numRef><c:f>Board!\$K\$(\d+):", chart)
        assert out is not None
        row = int(out[1])
        assert sheet.cell(row, 1).value == title[1]
        assert str(sheet.cell(row, 5).value) == title[2]
        assert str(sheet.cell(row, 4).value) == title[3]
    assert named == 5


def test_a_day_that_takes_no_gear_has_no_charts():
    plan = plan_of(replace(DAY, fixed=()), ready=(), tie_downs=())
    content = results_bytes(plan)
    names = zipfile.ZipFile(io.BytesIO(content)).namelist()
    assert not [name for name in names if "chart" in name]
    assert opened(content)["Board"]["A3"].value.startswith("0 of 3 loads ready, 3 held")


def test_a_day_without_cargo():
    day = replace(DAY, loads=(Load(id="1"),), articles=(), fixed=())
    content = results_bytes(plan_of(day, ready=("1",), tie_downs=(), shortages=()))
    book = opened(content, values=True)
    assert book["Load 1"]["A1"].value == "READY - every rule checked below is met"
    assert book["Summary"]["N2"].value == "no cargo"


def test_more_kinds_of_gear_than_charts_is_said():
    from loadplan.results.board_charts import MOST_CHARTS

    extra = tuple(replace(DAY.gear[4], id=f"EP-{number}") for number in range(2, 14))
    plan = plan_of(replace(DAY, gear=(*DAY.gear, *extra)))
    straps = tuple(
        replace(one, protectors=tuple((f"EP-{4 * place + part + 1}", 1) for part in range(4)))
        for place, one in enumerate(plan.tie_downs[6:])
    )
    plan = plan_of(plan.day, tie_downs=(*plan.tie_downs[:6], *straps))
    sheet = opened(results_bytes(plan))["Board"]
    words = [cell.value for cell in sheet["A"] if str(cell.value).startswith("Gear out over")]
    # Two chains, a binder, a strap and twelve edge protectors are out: 16 kinds.
    assert words == [
        "Gear out over the clock against what is usable (dashed), scarcest first (the "
        f"{MOST_CHARTS} scarcest of 16; all are in the table above)"
    ]
