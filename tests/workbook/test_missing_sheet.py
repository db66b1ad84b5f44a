"""A required sheet is missing, empty, or there twice."""

from tests.workbook.build import CARGO, GEAR, SMALLEST, read, rejected


def test_missing_sheets(tmp_path):
    assert rejected(tmp_path, {"Loads": [("Load",), ("L-1",)]}) == [
        "'Cargo'  S01  The sheet is missing. "
        "Add it: one row per article: a machine or a piece of cargo.",
        "'Gear'  S01  The sheet is missing. "
        "Add it: one row per kind of piece, in the cage or kept on a trailer.",
    ]


def test_a_missing_sheet_that_another_looks_like(tmp_path):
    assert rejected(tmp_path, {"Cargos": CARGO, "Gear": GEAR}) == [
        "'Cargo'  S01  The sheet is missing. Is it meant by \"Cargos\"? "
        "Add it: one row per article: a machine or a piece of cargo."
    ]


def test_a_required_sheet_without_rows(tmp_path):
    assert rejected(tmp_path, {"Cargo": CARGO[:1], "Gear": []}) == [
        "'Cargo'  S06  The sheet has no rows. "
        "Fill it in: one row per article: a machine or a piece of cargo.",
        "'Gear'  S06  The sheet has no rows. "
        "Fill it in: one row per kind of piece, in the cage or kept on a trailer.",
    ]


def test_two_sheets_of_one_name(tmp_path):
    assert rejected(tmp_path, {**SMALLEST, " GEAR ": GEAR}) == [
        '\' GEAR \'  S03  The sheets "Gear" and " GEAR " have the same name. '
        "Keep one of the two, or rename one."
    ]


def test_an_unknown_sheet_is_a_warning(tmp_path):
    day = read(tmp_path, {**SMALLEST, "House rule": [("x",)], "Scratch": [("y",)], "read me": []})
    assert day.warnings == (
        "'House rule'  The sheet is not known and was left out. Did you mean House rules?",
        "'Scratch'  The sheet is not known and was left out.",
    )
