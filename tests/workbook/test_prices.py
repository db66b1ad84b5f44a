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
    (found,) = read(tmp_path, prices((None, "chain", "3/8", None, typed, None))).prices
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
