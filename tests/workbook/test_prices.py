"""Prices: of what there is and of what is new."""

from fractions import Fraction

import pytest

from tests.workbook.build import SMALLEST, read, rejected

HEADINGS = ("Gear", "Kind", "Size", "WLL [lb]", "Price", "Most")


def prices(*rows, headings=HEADINGS):
    return {**SMALLEST, "Prices": [headings, *rows]}


@pytest.mark.parametrize(
    ("typed", "price", "currency"),
    [
        (45, 45, ""),
        (45.5, Fraction(91, 2), ""),
        ("1,250.00", 1250, ""),
        ("$45", 45, "$"),
        ("45 usd", 45, "USD"),
        ("EUR 45.20 EUR", Fraction(226, 5), "EUR"),
        ("45 €", 45, "€"),
    ],
)
def test_ways_to_write_a_price(tmp_path, typed, price, currency):
    (found,) = read(tmp_path, prices((None, "shackle", None, None, typed, None))).prices
    assert (found.price, found.currency, found.most) == (price, currency, None)


def test_a_currency_in_the_heading(tmp_path):
    headings = ("Kind", "Price [CAD]")
    (found,) = read(tmp_path, prices(("shackle", 12), headings=headings)).prices
    assert (found.price, found.currency) == (12, "CAD")


@pytest.mark.parametrize(
    ("row", "line"),
    [
        ((None, "chain", "3/8", None, None, 1), "E2  V02  Price is blank. Every row needs one."),
        ((None, "chain", "3/8", None, -5, 1), "E2  V01  Price is -5. It must be more than 0."),
        (
            (None, "chain", "3/8", None, "$ 0", 1),
            'E2  V01  Price is "$ 0". It must be more than 0.',
        ),
        (
            (None, "chain", "3/8", None, "cheap", 1),
            'E2  V03  Price is "cheap". Write a price such as 45.00 or 45.00 USD.',
        ),
        (
            (None, "chain", "3/8", None, "$45 EUR", 1),
            'E2  P01  Price is "$45 EUR", in two currencies. Write one currency.',
        ),
        (
            (None, "chain", "3/8", None, "45,50 EUR", 1),
            'E2  V04  Price is "45,50 EUR": its comma can be read in two ways. Write a decimal '
            "point (5.4), and commas only between groups of three digits (5,400).",
        ),
        (
            (None, "chain", "3/8", None, 5, 1.5),
            "F2  V01  Most is 1.5. It must be a whole number, 0 or more.",
        ),
        (
            (None, "chain", "small", None, 5, 1),
            'C2  V11  Size is "small". Write the size of the chain, such as 3/8 or 10 mm.',
        ),
        (
            (None, None, "3/8", None, 5, 1),
            "B2  V02  Kind is blank. Write it, or in Gear the id of a piece on Gear.",
        ),
        (
            ("CH-11", None, None, None, 5, 1),
            "A2  R02  Gear CH-11 is not on Gear, and Kind is blank. Did you mean CH-1? "
            "Correct it here, or write Kind to price something new.",
        ),
        (
            (None, "chain", "3/8", None, 5, 1),
            "B2  P01  The row could mean CH-1 in row 2 of Gear, or something new that is like it. "
            "Write CH-1 in Gear to price more of it, or a new id to price something new.",
        ),
        (
            (None, "retractable strap", "2", None, 5, 1),
            "B2  R03  A retractable strap is fixed to one trailer, and a price of a new one names "
            "none. Write in Gear the id of one on Gear to price more of it.",
        ),
        (
            ("CH-1", None, None, 7000, 5, 1),
            "D2  P01  WLL is not the same as that of CH-1 in row 2 of Gear. "
            "Leave the cell blank, or leave Gear blank to price something new.",
        ),
    ],
)
def test_a_price_that_cannot_be_used(tmp_path, row, line):
    assert rejected(tmp_path, prices(row)) == [f"'Prices'!{line}"]


def test_two_currencies(tmp_path):
    rows = [(None, "shackle", None, None, price, None) for price in ("$5", 6, "7 EUR")]
    assert rejected(tmp_path, prices(*rows)) == [
        "'Prices'!E4  P01  Price is in EUR, and the one in E2 in $. "
        "Write all prices in one currency, with one mark or code for it."
    ]


def test_new_pieces_are_named_apart_by_what_they_are(tmp_path):
    rows = [
        (None, "chain", "1/2", 11300, 5, None),
        (None, "chain", "1/2", 12000, 6, None),
        ("X-9", "shackle", None, 9500, 7, None),
        ("ch-1", None, "3/8", None, 8, None),
    ]
    names = [price.specification.id for price in read(tmp_path, prices(*rows)).prices]
    assert names == ["new 1/2 chain", "new 1/2 chain 2", "X-9", "CH-1"]


FULL = ("Gear", "Kind", "Size", "Grade", "Length [ft]", "WLL [lb]", "Fits", "Price")


def test_a_row_that_describes_an_owned_kind_in_full_is_more_of_it(tmp_path):
    rows = [
        (None, "chain", "10 mm", "G70", 20, 6600, None, 60),
        (None, "lever binder", None, None, None, 5400, "5/16, 3/8", 30),
        (None, "chain", "3/8", "70", 25, 6600, None, 70),
    ]
    found = read(tmp_path, prices(*rows, headings=FULL)).prices
    names = [price.specification.id for price in found]
    assert names == ["CH-1", "LB-1", "new 3/8 grade 70 chain"]


def test_a_row_that_could_mean_two_kinds(tmp_path):
    headings, chain, binder = SMALLEST["Gear"]
    gear = [headings, chain, binder, ("CH-2", *chain[1:]), ("CH-3", *chain[1:4], 25, *chain[5:])]
    full = (None, "chain", "3/8", "70", 20, 6600, None, 60)
    part = (None, "chain", "3/8", "70", None, None, None, 60)
    sheets = {**SMALLEST, "Gear": gear, "Prices": [FULL, full, part]}
    end = "Write in Gear the id of the one that is meant, or a new id to price something new."
    assert rejected(tmp_path, sheets) == [
        f"'Prices'!B2  P01  The row could mean CH-1 in row 2 or CH-2 in row 4 of Gear. {end}",
        "'Prices'!B3  P01  The row could mean CH-1 in row 2, CH-2 in row 4 or CH-3 in row 5 of "
        f"Gear. {end}",
    ]


def test_held_gear_and_kits_are_not_what_a_row_means(tmp_path):
    headings, chain, binder = SMALLEST["Gear"]
    gear = [
        (*headings, "Condition", "Kept on"),
        (*chain, "hold", None),
        (*binder, None, "T-1"),
    ]
    loads = [("Load", "Trailer"), ("L-1", "T-1")]
    rows = [
        (None, "chain", "3/8", "70", 20, 6600, None, 60),
        (None, "lever binder", None, None, None, 5400, "5/16-3/8", 30),
    ]
    sheets = {"Loads": loads, **SMALLEST, "Gear": gear, "Prices": [FULL, *rows]}
    names = [price.specification.id for price in read(tmp_path, sheets).prices]
    assert names == ["new 3/8 grade 70 chain", "new lever binder"]


def test_one_new_id_for_two_specifications(tmp_path):
    rows = [
        ("X-9", "shackle", None, 9500, 7, None),
        ("x-9", "shackle", None, 9500, 8, 4),
        ("X-9", "shackle", None, 9600, 7, None),
    ]
    assert rejected(tmp_path, prices(*rows)) == [
        "'Prices'!A4  P01  X-9 is something else in row 2. "
        "Describe it alike in both rows, or give each kind an id of its own."
    ]


def test_every_problem_of_the_prices_at_once(tmp_path):
    rows = [
        ("CH-1", None, None, None, -5, 1),
        ("CH-1", None, None, None, "$5", 1.5),
        ("CH-7", None, None, None, 5, None),
        (None, "shackle", None, None, "6 EUR", None),
    ]
    assert [line.split("  ")[:2] for line in rejected(tmp_path, prices(*rows))] == [
        ["'Prices'!E2", "V01"],
        ["'Prices'!F3", "V01"],
        ["'Prices'!A4", "R02"],
        ["'Prices'!E5", "P01"],
    ]


def test_a_new_piece_that_could_never_be_planned_is_told(tmp_path):
    rows = [(None, "turnbuckle", None, None, 5, None), ("CH-1", None, None, None, 5, None)]
    assert read(tmp_path, prices(*rows)).warnings == (
        "'Prices'!D2  new turnbuckle is not planned: its WLL is unknown (no table covers a "
        "turnbuckle, and no WLL or breaking strength is given).",
    )
