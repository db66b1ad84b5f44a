"""Warnings: finished sentences with their place, and nothing is stopped."""

from tests.workbook.build import CARGO, SMALLEST, read

GEAR = [
    ("Gear", "Kind", "Size", "Grade", "WLL [lb]", "Fits", "Condition", "Kept on", "Quantity"),
    ("OK", "chain", "3/8", "70", None, None, None, None, 4),
    ("B-?", "lever binder", None, None, None, "3/8", None, None, 4),
    ("B-0", "lever binder", None, None, 5400, None, None, None, 4),
    ("C-0", "chain", None, None, 6600, None, None, None, 4),
    ("G-40", "chain", "3/8", "40", None, None, None, None, 4),
    ("KIT", "ratchet strap", "2", None, 3333, None, None, "T-9", 4),
    ("BAD", "lever binder", None, None, None, None, "scrap", None, 4),
    ("NONE", "lever binder", None, None, None, None, None, None, 0),
    ("EP", "edge protector", None, None, None, None, None, None, 4),
]


def test_gear_that_will_never_be_planned(tmp_path):
    assert read(tmp_path, {**SMALLEST, "Gear": GEAR}).warnings == (
        "'Gear'!E3  B-? is not planned: its WLL is unknown (no table covers a lever binder, "
        "and no WLL or breaking strength is given).",
        "'Gear'!F4  B-0 is not planned: without Fits no chain is known to fit it.",
        "'Gear'!C5  C-0 is not planned: without Size no binder is known to fit it.",
        "'Gear'!E6  G-40 is not planned: its WLL is unknown (chain with the mark 40, which is no "
        "grade of the table, and no WLL or breaking strength is given).",
        "'Gear'!H7  KIT is not planned: trailer T-9, on which it is kept, is on no load.",
    )


def test_a_load_without_cargo(tmp_path):
    sheets = {"Loads": [("Load",), ("L-1",), ("L-2",)], **SMALLEST}
    day = read(tmp_path, sheets)
    assert [load.id for load in day.loads] == ["L-1", "L-2"]
    assert day.warnings == ("'Loads'!A3  Load L-2 has no cargo; it is ready with no tie-downs.",)


def test_the_kit_of_a_trailer_that_is_out(tmp_path):
    loads = [("Load", "Trailer"), ("L-1", "t-9")]
    gear = [GEAR[0], GEAR[1], GEAR[6]]
    day = read(tmp_path, {"Loads": loads, "Cargo": CARGO, "Gear": gear})
    assert day.warnings == ()
    assert day.gear[1].kept_on == day.loads[0].trailer == "t-9"
