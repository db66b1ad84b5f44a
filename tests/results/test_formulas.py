"""The live arithmetic of the load sheets, worked out anew by LibreOffice."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.house import HouseRules
from loadplan.results.words import CHANGED, READY
from loadplan.results.workbook import results_bytes
from tests.results.build import DAY, EXCAVATOR, LUMBER, plan_of
from tests.results.dump import opened
from tests.results.office import needs_office, recalculated

ERRORS = ("#VALUE!", "#REF!", "#NAME?", "#DIV/0!", "#N/A", "#NUM!", "#NULL!", "Err:")
ODD = replace(
    DAY,
    articles=(
        replace(EXCAVATOR, weight=Fraction("20999.7"), tie_point_wll=Fraction("5399.95")),
        replace(LUMBER, weight=Fraction(2130) / Fraction("0.45359237")),
        DAY.articles[2],
    ),
    house=HouseRules(
        accessory_counts=True, aggregate_share=Fraction("0.6"), least_wll_each=Fraction(5000)
    ),
)
PLANS = {"small": DAY, "odd figures": ODD}


def _formulas(book):
    return [
        (sheet.title, cell.coordinate)
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    ]


@needs_office
@pytest.mark.parametrize("name", PLANS)
def test_every_formula_gives_the_stored_value(name, tmp_path):
    content = results_bytes(plan_of(PLANS[name]))
    stored = opened(content, values=True)
    again = recalculated(opened(content), tmp_path)
    places = _formulas(opened(content))
    assert len(places) > 40
    for sheet, cell in places:
        found, kept = again[sheet][cell].value, stored[sheet][cell].value
        if isinstance(kept, str):
            assert found == kept, (sheet, cell)
        else:
            assert found == pytest.approx(kept, rel=1e-12, abs=1e-9), (sheet, cell)


@needs_office
def test_no_cell_holds_an_error(tmp_path):
    again = recalculated(opened(results_bytes(plan_of(ODD))), tmp_path)
    for sheet in again:
        for row in sheet.iter_rows(values_only=True):
            assert not any(isinstance(cell, str) and cell.startswith(ERRORS) for cell in row)


def _row_of(sheet, text, column="C"):
    return next(cell.row for cell in sheet[column] if cell.value == text)


@needs_office
def test_another_binder_changes_the_weakest_part_and_the_verdict(tmp_path):
    # With 4,000 lb binders on all five: 5 x 1/2 x 4,000 = 10,000 lb against 10,950 lb.
    book = opened(results_bytes(plan_of()))
    sheet = book["Load 1"]
    first = _row_of(sheet, "front left")
    for row in range(first, first + 5):
        sheet[f"F{row}"] = 4000
    found = recalculated(book, tmp_path)["Load 1"]
    assert found[f"J{first}"].value == 4000
    assert found[f"K{first}"].value == "tensioner"
    assert found[f"M{first}"].value == 2000
    assert found["A1"].value == CHANGED
    verdicts = [cell.value for cell in found["M"]]
    assert "not met" in verdicts
    assert 10000 in verdicts


@needs_office
def test_a_stronger_binder_leaves_the_anchor_weakest(tmp_path):
    book = opened(results_bytes(plan_of()))
    sheet = book["Load 1"]
    first = _row_of(sheet, "front left")
    sheet[f"F{first}"] = 9200
    found = recalculated(book, tmp_path)["Load 1"]
    assert (found[f"J{first}"].value, found[f"K{first}"].value) == (6000, "anchor point")
    assert found["A1"].value == READY


def test_every_formula_stands_on_a_load_sheet_and_has_its_value():
    content = results_bytes(plan_of())
    stored = opened(content, values=True)
    for sheet, cell in _formulas(opened(content)):
        assert sheet.startswith("Load ")
        assert stored[sheet][cell].value not in (None, "")


def test_the_first_line_tells_the_status():
    book = opened(results_bytes(plan_of()), values=True)
    assert book["Load 1"]["A1"].value == READY
    assert book["Load 2"]["A1"].value == READY
    assert book["Load 3"]["A1"].value == (
        "HELD - does not go: short of 2 x binder for 3/8 in chain, 3,000 lb or more"
    )
