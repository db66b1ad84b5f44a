"""Ids: duplicate, unknown, and kept as they are typed."""

import datetime

import pytest

from tests.workbook.build import CARGO, GEAR, SMALLEST, cargo_with, gear_with, read, rejected

LOADS = [("Load", "Trailer"), ("L-1", "T-1")]
TRAILERS = [("Trailer", "Winches"), ("T-1", 2)]


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("007", "007"), (7, "7"), (7.0, "7"), (" EX-1 ", "EX-1"), ("1E5", "1E5"), ("NA", "NA")],
)
def test_ids_are_text_as_typed(tmp_path, typed, shown):
    assert read(tmp_path, cargo_with("Article", typed)).articles[0].id == shown


def test_references_compare_trimmed_and_case_folded_and_become_the_id_as_defined(tmp_path):
    sheets = {
        "Loads": [("Load", "Trailer"), ("Straße 1", "t-1 ")],
        "Cargo": [CARGO[0], ("EX-1", " STRASSE 1", *CARGO[1][2:])],
        "Trailers": TRAILERS,
        "Gear": [
            [*GEAR[0], "Kept on"],
            [*GEAR[1], "T-1"],
            [*GEAR[2], "t-1"],
        ],
    }
    day = read(tmp_path, sheets)
    assert day.articles[0].load == "Straße 1"
    assert day.loads[0].trailer == "T-1"
    assert [gear.kept_on for gear in day.gear] == ["T-1", "T-1"]


def test_without_a_sheet_of_loads_each_load_is_named_as_typed_first(tmp_path):
    cargo = [CARGO[0], ("A", "Load x", *CARGO[1][2:]), ("B", "LOAD X", *CARGO[1][2:])]
    day = read(tmp_path, {"Cargo": cargo, "Gear": GEAR})
    assert [load.id for load in day.loads] == ["Load x"]
    assert [article.load for article in day.articles] == ["Load x", "Load x"]


@pytest.mark.parametrize(
    ("sheets", "line"),
    [
        (
            {**SMALLEST, "Cargo": [*CARGO, ("ex-1 ", *CARGO[1][1:])]},
            "'Cargo'!A3  R01  Article ex-1 stands in A2 already. Give each row an id of its own.",
        ),
        (
            {**SMALLEST, "Gear": [*GEAR, GEAR[1]]},
            "'Gear'!A4  R01  Gear CH-1 stands in A2 already. Give each row an id of its own.",
        ),
        (
            {**SMALLEST, "Loads": [("Load",), ("L-1",), ("l-1",)]},
            "'Loads'!A3  R01  Load l-1 stands in A2 already. Give each row an id of its own.",
        ),
        (
            {**SMALLEST, "Trailers": [("Trailer",), ("T",), ("T",)]},
            "'Trailers'!A3  R01  Trailer T stands in A2 already. Give each row an id of its own.",
        ),
    ],
    ids=["Cargo", "Gear", "Loads", "Trailers"],
)
def test_duplicate_ids(tmp_path, sheets, line):
    assert rejected(tmp_path, sheets) == [line]


@pytest.mark.parametrize(
    ("sheets", "line"),
    [
        (
            {**SMALLEST, "Loads": [("Load",), ("L-2",)]},
            "'Cargo'!B2  R02  Load L-1 is not on Loads. Correct it here, or add it there.",
        ),
        (
            {**SMALLEST, "Loads": LOADS, "Trailers": [("Trailer",), ("Lowboy",)]},
            "'Loads'!B2  R02  Trailer T-1 is not on Trailers. Correct it here, or add it there.",
        ),
        (
            {**SMALLEST, "Added weight": [("Article", "Weight [lb]"), ("EX-9", 5)]},
            "'Added weight'!A2  R02  Article EX-9 is not on Cargo. Did you mean EX-1? "
            "Correct it here, or add it there.",
        ),
        (
            {**gear_with("Kept on", "T-9"), "Trailers": TRAILERS},
            "'Gear'!I2  R02  Kept on T-9 is not on Trailers. Correct it here, or add it there.",
        ),
    ],
    ids=["Load", "Trailer", "Added weight", "Kept on"],
)
def test_unknown_references(tmp_path, sheets, line):
    assert rejected(tmp_path, sheets) == [line]


def test_every_reference_of_fixed(tmp_path):
    sheets = {
        **SMALLEST,
        "Fixed": [("Load", "Article", "Position", "Gear"), ("Q", "Q", "front left", "Q")],
    }
    assert rejected(tmp_path, sheets) == [
        "'Fixed'!A2  R02  Load Q is not on Cargo. Correct it here, or add it there.",
        "'Fixed'!B2  R02  Article Q is not on Cargo. Correct it here, or add it there.",
        "'Fixed'!D2  R02  Gear Q is not on Gear. Correct it here, or add it there.",
    ]


def test_the_id_of_a_row_in_error_still_counts_as_known(tmp_path):
    sheets = {
        "Loads": [("Load", "Trailer", "Priority"), ("L-1", "T-1", 0)],
        "Cargo": [CARGO[0], ("EX-1", "L-1", "tracked machine", -5, None)],
        "Added weight": [("Article", "Weight [lb]"), ("EX-1", 100)],
        "Trailers": [("Trailer", "Winches"), ("T-1", -1)],
        "Gear": [GEAR[0], ("CH-1", "chain", "x", *GEAR[1][3:])],
        "Fixed": [("Load", "Article", "Position", "Gear"), ("L-1", "EX-1", "nowhere", "CH-1")],
    }
    # One typo, one message: nothing is said of the rows that refer to these.
    assert rejected(tmp_path, sheets) == [
        "'Loads'!C2  V01  Priority is 0. It must be a whole number, 1 or more.",
        "'Cargo'!D2  V01  Weight is -5. It must be more than 0.",
        "'Trailers'!B2  V01  Winches is -1. It must be a whole number, 0 or more.",
        "'Gear'!C2  V11  Size is \"x\". Write the size of the chain, such as 3/8 or 10 mm.",
    ]


def test_an_article_with_added_weight_in_error_is_left_out_of_later_checks(tmp_path):
    sheets = {
        "Cargo": [CARGO[0], ("EX-1", "L-1", "light vehicle", 10000, 16)],
        "Added weight": [("Article", "Weight [lb]"), ("EX-1", 500), ("ex-1", "x"), (None, 5)],
        "Gear": GEAR,
    }
    assert rejected(tmp_path, sheets) == [
        "'Added weight'!B3  V03  Weight is \"x\". Write a number.",
        "'Added weight'!A4  V02  Article is blank. Every row needs one.",
    ]


def test_no_suggestion_is_looked_for_among_very_many_names(tmp_path):
    loads = [("Load",), *((f"Load {number}",) for number in range(600))]
    cargo = [CARGO[0], ("EX-1", "Load 60O", *CARGO[1][2:])]
    assert rejected(tmp_path, {"Loads": loads, "Cargo": cargo, "Gear": GEAR}) == [
        "'Cargo'!B2  R02  Load Load 60O is not on Loads. Correct it here, or add it there."
    ]


def test_notes_may_hold_anything(tmp_path):
    for typed, text in (
        (datetime.date(2026, 7, 14), "2026-07-14"),
        (datetime.time(6, 30), "06:30:00"),
        (True, "yes"),
        (5.0, "5"),
    ):
        assert read(tmp_path, cargo_with("Description", typed)).articles[0].description == text


@pytest.mark.parametrize("typed", ["built in", "Trailer  Winch"])
@pytest.mark.parametrize("sheet", ["Gear", "Prices"])
def test_no_gear_is_named_like_what_results_call_no_piece_at_all(tmp_path, sheet, typed):
    sheets = {**SMALLEST, "Prices": [("Gear", "Kind", "Price"), ("B-9", "lever binder", "$40")]}
    heading, first, *rest = sheets[sheet]
    sheets[sheet] = [heading, (typed, *first[1:]), *rest]
    assert rejected(tmp_path, sheets) == [
        f"'{sheet}'!A2  R04  Gear is \"{typed}\", which the results write for something else. "
        "Give it another id."
    ]
