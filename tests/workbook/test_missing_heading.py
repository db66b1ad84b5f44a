"""A required heading is missing, there twice, or has a unit that does not suit."""

import pytest

from loadplan.day.article import CargoClass
from tests.workbook.build import CARGO, GEAR, SMALLEST, cargo_with, read, rejected

CLASSES = ", ".join(CargoClass)


def renamed(heading, name):
    first = [name if one == heading else one for one in CARGO[0]]
    return {"Cargo": [first, CARGO[1]], "Gear": GEAR}


def test_a_missing_heading(tmp_path):
    assert rejected(tmp_path, renamed("Class", "Sort")) == [
        "'Cargo'!A1  S02  The sheet Cargo has no column Class. Write Class in its heading row."
    ]


def test_a_missing_heading_that_another_looks_like(tmp_path):
    assert rejected(tmp_path, renamed("Weight [lb]", "Wieght [lb]")) == [
        "'Cargo'!A1  S02  The sheet Cargo has no column Weight. "
        'Is it meant by "Wieght" in D1? Write Weight in its heading row.'
    ]


def test_a_duplicate_heading(tmp_path):
    assert rejected(tmp_path, cargo_with("WEIGHT [kg]", 5)) == [
        "'Cargo'!F1  S04  The heading Weight stands in D1 already. Keep one of the two columns."
    ]


@pytest.mark.parametrize(
    ("heading", "found"),
    [
        ("Weight [ft]", 'Weight has the unit "ft". Use lb, kg or t.'),
        ("Weight [kN]", 'Weight has the unit "kN". Use lb, kg or t.'),
        (
            "Weight [tons]",
            'Weight has the unit "tons". '
            "A ton can be 2,000 lb, 2,240 lb or 1,000 kg; write lb, kg or t.",
        ),
    ],
)
def test_a_heading_with_a_unit_that_does_not_suit(tmp_path, heading, found):
    assert rejected(tmp_path, renamed("Weight [lb]", heading)) == [
        f"'Cargo'!D1  S05  The heading {found}"
    ]


def test_a_unit_where_none_belongs(tmp_path):
    assert rejected(tmp_path, cargo_with("Shackles [pcs]", 1)) == [
        "'Cargo'!F1  S05  The heading Shackles has the unit \"pcs\". "
        "Shackles takes no unit; leave out the square brackets."
    ]


def test_the_cells_of_other_columns_are_still_judged(tmp_path):
    sheets = renamed("Weight [lb]", "Weight [ft]")
    sheets["Cargo"] = [sheets["Cargo"][0], ("EX-1", "L-1", "tractor", 36000, -1)]
    assert rejected(tmp_path, sheets) == [
        "'Cargo'!D1  S05  The heading Weight has the unit \"ft\". Use lb, kg or t.",
        "'Cargo'!C2  V07  Class is \"tractor\". It must be one of: " + CLASSES + ".",
        "'Cargo'!E2  V01  Length is -1. It must be more than 0.",
    ]


def test_an_unknown_column_is_a_warning_with_a_suggestion(tmp_path):
    sheets = cargo_with("Sharp edge", "yes")
    sheets = {**sheets, "Cargo": [[*sheets["Cargo"][0], "Colour"], [*sheets["Cargo"][1], "red"]]}
    assert read(tmp_path, sheets).warnings == (
        "'Cargo'!F1  The column \"Sharp edge\" is not known and was left out. "
        "Did you mean Sharp edges?",
        "'Cargo'!G1  The column \"Colour\" is not known and was left out.",
    )


def test_a_cell_without_any_heading_is_a_warning(tmp_path):
    gear = [*GEAR[:2], [*GEAR[2], None, "count again"]]
    assert read(tmp_path, {**SMALLEST, "Gear": gear}).warnings == (
        "'Gear'!J3  The cell stands under no heading of row 1 and was left out, "
        "as is all else there.",
    )
