"""The flat tables as DataFrames."""

from __future__ import annotations

from dataclasses import replace

from tests.results.build import DAY, plan_of


def test_a_plan_has_its_tables_as_frames():
    frames = plan_of().tables()
    assert list(frames["Summary"].columns[:3]) == ["Load", "Trailer", "Out"]
    assert frames["Summary"]["AWLL planned [lb]"].tolist() == [13500, 16200, 0]
    # (13,500 - 10,950) / 10,950 = 255 / 1,095.
    assert frames["Summary"]["Margin"].tolist()[:2] == [255 / 1095, 3.05]
    assert frames["Pick list"]["Pieces"].sum() == 21


def test_ids_stay_text():
    loads = (replace(DAY.loads[0], id="007"), *DAY.loads[1:])
    articles = (replace(DAY.articles[0], load="007"), *DAY.articles[1:])
    tie_downs = tuple(
        replace(one, load="007") if one.load == "1" else one for one in plan_of().tie_downs
    )
    day = replace(DAY, loads=loads, articles=articles)
    frames = plan_of(day, ready=("007", "2"), tie_downs=tie_downs).tables()
    assert frames["Summary"]["Load"].tolist() == ["007", "2", "3"]


def test_an_empty_table_keeps_its_columns():
    frames = plan_of(replace(DAY, fixed=()), ready=(), tie_downs=()).tables()
    assert len(frames["Tie-downs"]) == 0
    assert "Tie-down WLL [lb]" in frames["Tie-downs"].columns
