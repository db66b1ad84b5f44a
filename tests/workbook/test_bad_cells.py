"""Cells that cannot be read: each defect with its own message, cell and remedy."""

import datetime
from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass
from loadplan.workbook.read import read_day
from tests.workbook.build import (
    FIRST_SHEET,
    cargo_with,
    gear_with,
    read,
    rejected,
    rejected_file,
    save,
    with_parts,
)

CLASSES = ", ".join(CargoClass)
TAKEN_FOR_A_DATE = (
    "a date: the spreadsheet took the size for one. Format the column as text and type it again, "
    "such as 3/8."
)
WEIGHT = "'Cargo'!D2"


@pytest.mark.parametrize(
    ("value", "line"),
    [
        # text for a number
        ("heavy", 'V03  Weight is "heavy". Write a number.'),
        ("1 234", 'V03  Weight is "1 234". Write a number.'),
        (
            "36000 lb approx",
            'V05  Weight is "36000 lb approx": lb approx is not a unit of weight. Use lb, kg or t.',
        ),
        # negative and zero
        (-36000, "V01  Weight is -36000. It must be more than 0."),
        ("-5 t", 'V01  Weight is "-5 t". It must be more than 0.'),
        (0, "V01  Weight is 0. It must be more than 0."),
        (10_000_001, "V01  Weight is 10000001. It must be 10,000,000 lb or less."),
        # not a number
        ("NaN", 'V03  Weight is "NaN", which is no number. Write a finite number.'),
        ("-inf", 'V03  Weight is "-inf", which is no number. Write a finite number.'),
        # ambiguous
        (
            "5,4 t",
            'V04  Weight is "5,4 t": its comma can be read in two ways. Write a decimal point '
            "(5.4), and commas only between groups of three digits (5,400).",
        ),
        (
            "3 tons",
            'V04  Weight is "3 tons": a ton can be 2,000 lb, 2,240 lb or 1,000 kg. '
            "Write lb, kg or t (1,000 kg).",
        ),
        # wrong unit
        (
            "12 ft",
            'V05  Weight is "12 ft": ft is not a unit of weight. Use lb, kg or t.',
        ),
        ("20 kN", 'V05  Weight is "20 kN": kN is not a unit of weight. Use lb, kg or t.'),
        # error cells
        (
            "#REF!",
            'V09  Weight is "#REF!", a spreadsheet error. '
            "Correct its formula, or type the value itself.",
        ),
        (
            "#N/A",
            'V09  Weight is "#N/A", a spreadsheet error. '
            "Correct its formula, or type the value itself.",
        ),
        # formula without stored value
        (
            "=30000+6000",
            "V08  Weight is a formula without a stored value. Open the workbook in a spreadsheet "
            "program, let it calculate and save it, or type the value itself.",
        ),
        # wrong type
        (True, "V10  Weight is TRUE. Write a number."),
        (
            datetime.date(2026, 7, 14),
            "V10  Weight is 2026-07-14, a date or time. "
            "Format the cell as a number and type it again.",
        ),
        (
            datetime.time(6, 30),
            "V10  Weight is 06:30:00, a date or time. "
            "Format the cell as a number and type it again.",
        ),
        # missing
        (None, "V02  Weight is blank. Every row needs one."),
        ("  ", "V02  Weight is blank. Every row needs one."),
    ],
)
def test_a_weight_that_cannot_be_read(tmp_path, value, line):
    assert rejected(tmp_path, cargo_with("Weight [lb]", value)) == [f"{WEIGHT}  {line}"]


@pytest.mark.parametrize(
    ("heading", "value", "line"),
    [
        (
            "Length [ft]",
            "12' 14\"",
            "'Cargo'!E2  V04  Length is \"12' 14\"\". Write whole ft and "
            "less than 12 in, or one unit only.",
        ),
        (
            "Width",
            8,
            "'Cargo'!F2  V06  Width is 8, without a unit. Write its unit (ft, in, m, cm "
            "or mm) in the cell or, in square brackets, in the heading.",
        ),
        (
            "Width",
            "8",
            "'Cargo'!F2  V06  Width is \"8\", without a unit. Write its unit (ft, in, "
            "m, cm or mm) in the cell or, in square brackets, in the heading.",
        ),
        ("Shackles", 3, "'Cargo'!F2  V01  Shackles is 3. It must be a whole number from 0 to 2."),
        (
            "Shackles",
            1.5,
            "'Cargo'!F2  V01  Shackles is 1.5. It must be a whole number from 0 to 2.",
        ),
        ("Sharp edges", "maybe", "'Cargo'!F2  V07  Sharp edges is \"maybe\". Write yes or no."),
        (
            "Class",
            "tracked machin",
            "'Cargo'!C2  V07  Class is \"tracked machin\". Did you mean "
            "tracked machine? It must be one of: " + CLASSES + ".",
        ),
        (
            "Class",
            None,
            "'Cargo'!C2  V02  Class is blank. Write one of: " + CLASSES + ".",
        ),
        (
            "Routing",
            "around",
            "'Cargo'!F2  V07  Routing is \"around\". It must be one of: direct, same side, over.",
        ),
        ("Article", True, "'Cargo'!A2  V10  Article is TRUE. Write text."),
        (
            "Article",
            datetime.date(2026, 3, 8),
            "'Cargo'!A2  V10  Article is 2026-03-08, a date or "
            "time. Format the column as text and type it again.",
        ),
        (
            "Article",
            "x" * 101,
            "'Cargo'!A2  V12  Article is \"" + "x" * 57 + '...". Keep it within 100 characters.',
        ),
        (
            "Description",
            "x" * 2001,
            "'Cargo'!F2  V12  Description is \"" + "x" * 57 + '...". '
            "Keep it within 2,000 characters.",
        ),
        (
            "Accessories",
            "boom; Boom",
            "'Cargo'!F2  V13  Accessories is \"boom; Boom\". Name Boom "
            "once, or tell them apart, such as Boom 1; Boom 2.",
        ),
        (
            "Accessories",
            "Front Left",
            "'Cargo'!F2  V13  Accessories is \"Front Left\". Call the "
            "accessory something else than Front Left, which is a position.",
        ),
        (
            "Accessories",
            "over 25",
            "'Cargo'!F2  V13  Accessories is \"over 25\". Call the "
            "accessory something else than over 25, which is a position.",
        ),
        (
            "Accessories",
            "(pinned)",
            "'Cargo'!F2  V13  Accessories is \"(pinned)\". Write what is "
            "pinned, such as blade (pinned).",
        ),
    ],
)
def test_other_cells_of_cargo(tmp_path, heading, value, line):
    assert rejected(tmp_path, cargo_with(heading, value)) == [line]


@pytest.mark.parametrize(
    ("heading", "value", "line"),
    [
        ("Quantity", -2, "'Gear'!H2  V01  Quantity is -2. It must be a whole number, 0 or more."),
        ("Quantity", 2.5, "'Gear'!H2  V01  Quantity is 2.5. It must be a whole number, 0 or more."),
        (
            "Quantity",
            2_000_000,
            "'Gear'!H2  V01  Quantity is 2000000. It must be a whole number, 1,000,000 or less.",
        ),
        ("WLL [lb]", 0, "'Gear'!F2  V01  WLL is 0. It must be more than 0."),
        (
            "Size",
            "three eighths",
            "'Gear'!C2  V11  Size is \"three eighths\". Write the size of "
            "the chain, such as 3/8 or 10 mm.",
        ),
        (
            "Size",
            datetime.date(2026, 3, 8),
            "'Gear'!C2  V10  Size is 2026-03-08, " + TAKEN_FOR_A_DATE,
        ),
        (
            "Fits",
            datetime.date(2026, 5, 16),
            "'Gear'!G2  V10  Fits is 2026-05-16, " + TAKEN_FOR_A_DATE,
        ),
        (
            "Fits",
            "small ones",
            "'Gear'!G2  V11  Fits is \"small ones\". Write the chain sizes it "
            "takes, such as 5/16-3/8 or 3/8, 1/2.",
        ),
        (
            "Condition",
            "ok",
            "'Gear'!I2  V07  Condition is \"ok\". It must be one of: good, hold, scrap.",
        ),
        (
            "Kind",
            "chian",
            "'Gear'!B2  V07  Kind is \"chian\". Did you mean chain? It must be one "
            "of: chain, winch strap, ratchet strap, retractable strap, wire rope, rope, steel "
            "strapping, lever binder, ratchet binder, turnbuckle, shackle, edge protector.",
        ),
    ],
)
def test_cells_of_gear(tmp_path, heading, value, line):
    assert rejected(tmp_path, gear_with(heading, value)) == [line]


def test_the_size_of_other_gear_is_kept_as_text(tmp_path):
    day = read(tmp_path, gear_with("Size", "about so long", at=3))
    assert (day.gear[1].size, day.gear[1].size_text) == (None, "about so long")


def test_a_retractable_strap_that_is_on_no_trailer(tmp_path):
    assert rejected(tmp_path, gear_with("Kind", "retractable strap")) == [
        "'Gear'!A2  R03  Kept on is blank, and a retractable strap is fixed to one trailer. "
        "Write the trailer it is on."
    ]


def test_a_formula_that_gave_an_empty_text_is_a_blank_cell(tmp_path):
    path = save(tmp_path / "day.xlsx", cargo_with("Width [ft]", '=IF(1=1,"","x")'))

    def store_empty(parts):
        assert b'<c r="F2"><f>' in parts[FIRST_SHEET]
        parts[FIRST_SHEET] = parts[FIRST_SHEET].replace(b'<c r="F2">', b'<c r="F2" t="str">')

    assert read_day(with_parts(path, store_empty)).articles[0].width is None


def test_a_formula_with_its_value_is_read_as_that_value(tmp_path):
    path = save(tmp_path / "day.xlsx", cargo_with("Width [ft]", "=4*2"))

    def store_eight(parts):
        sheet = parts[FIRST_SHEET]
        assert b"<f>4*2</f><v />" in sheet
        parts[FIRST_SHEET] = sheet.replace(b"<f>4*2</f><v />", b"<f>4*2</f><v>8</v>")

    assert read_day(with_parts(path, store_eight)).articles[0].width == 8


def test_a_stored_number_that_is_none(tmp_path):
    path = save(tmp_path / "day.xlsx", cargo_with("Length [ft]", 24))

    def spoil(parts):
        parts[FIRST_SHEET] = parts[FIRST_SHEET].replace(b"<v>24</v>", b"<v>NaN</v>")

    assert rejected_file(with_parts(path, spoil)) == [
        "'Cargo'!E2  V03  The cell holds something stored as a number that is none. "
        "Type the value again."
    ]


def test_accessories_with_their_weight(tmp_path):
    typed = "boom (1,200 lb); blade (0.5 t) (Pinned), bucket (spare)\nhoe (pinned)"
    found = read(tmp_path, cargo_with("Accessories", typed)).articles[0].accessories
    assert [(one.name, one.pinned) for one in found] == [
        ("boom", False),
        ("blade", True),
        ("bucket (spare)", False),
        ("hoe", True),
    ]
    # 1 lb = 0.45359237 kg
    weights = [1200, 500 / Fraction("0.45359237"), None, None]
    assert [one.weight for one in found] == weights


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        (
            "boom (1200)",
            'V06  Accessories is "boom (1200)", without a unit. Write its unit (lb, kg or t) in '
            "the cell or, in square brackets, in the heading.",
        ),
        (
            "boom (4 ft)",
            'V05  Accessories is "boom (4 ft)": ft is not a unit of weight. Use lb, kg or t.',
        ),
        (
            "boom (0 lb)",
            'V01  Accessories is "boom (0 lb)". The weight of boom must be more than 0.',
        ),
    ],
)
def test_an_accessory_weight_that_cannot_be_read(tmp_path, typed, line):
    assert rejected(tmp_path, cargo_with("Accessories", typed)) == [f"'Cargo'!F2  {line}"]
