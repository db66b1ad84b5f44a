"""The page ``What to buy`` and the words of a purchase."""

from __future__ import annotations

import io
from dataclasses import replace
from fractions import Fraction

import openpyxl
import pytest

from loadplan.buy import NO_TIME, buy
from loadplan.day.day import Day
from loadplan.day.gear import Price
from loadplan.purchase.bought import Bought
from loadplan.purchase.purchase import purchase_of
from loadplan.purchase.words import headline, proved_words
from loadplan.results.workbook import results_bytes
from loadplan.tables.purchase import specification_words
from tests.plan.build import binder, chain
from tests.purchase.test_buy import BINDER, price, two_machines

# Formats of the results that openpyxl does not carry over.
pytestmark = pytest.mark.filterwarnings("ignore::UserWarning:openpyxl")


def page_of(bought: Bought) -> list[str]:
    book = openpyxl.load_workbook(io.BytesIO(results_bytes(bought.plan, bought=bought)))
    assert book.active is not None
    assert book.active.title == "What to buy"
    rows = book["What to buy"].iter_rows(values_only=True)
    return [str(cell) for row in rows for cell in row if cell is not None]


@pytest.fixture(scope="module")
def day() -> Day:
    # The chains are worth more than the binders, so that a strong binder makes up for two.
    new = Price(specification=binder("", 9200, 1), price=Fraction("30.5"), currency="$", most=1)
    return two_machines(price(BINDER, 25, most=1, currency="$"), new)


def test_a_new_kind_and_the_sum(day: Day) -> None:
    page = page_of(buy(day))
    at = page.index("new lever binder")
    assert page[at : at + 5] == [
        "new lever binder",
        "lever binder, WLL 9,200 lb, for chain of 3/8 in (new in the cage)",
        "1",
        "$30.50",
        "$30.50",
    ]
    assert page[-3:] == ["In all", "2", "$55.50"]
    assert "Buy 2 pieces for $55.50: 2 of 2 loads ready, 1 without buying" in page


def test_nothing_bought(day: Day) -> None:
    found = buy(replace(day, gear=(day.gear[0], binder("B", 5400, 8))))
    page = page_of(found)
    assert headline(found) == "Buy nothing: 2 of 2 loads ready"
    assert page[-2:] == ["The list", "Nothing."]
    assert [*proved_words(found)] == []


def test_what_is_not_proved_is_said(day: Day) -> None:
    found = buy(day, budget=Fraction(60))
    assert found.curve is not None
    open_ = purchase_of(found.purchase.lines, bound=Fraction(12), proved=False)
    point = replace(found.point, purchase=open_, proved=False)
    curve = replace(found.curve, points=(*found.curve.points[:-1], point), complete=False)
    found = replace(found, point=point, curve=curve, before=None, remarks=(NO_TIME,))
    assert not found.proved
    assert [*proved_words(found)] == [
        "No purchase below $12 does as much.",
        "Not proved: a cheaper purchase, one of fewer pieces or one with more loads ready is not "
        "ruled out.",
        "The budget is $60.",
        "The curve ends where the time limit came; more money may get more loads ready.",
    ]
    page = page_of(found)
    assert NO_TIME in page
    assert "NO" in page


def test_what_to_ask_for_in_the_shop(day: Day) -> None:
    one = replace(chain("C", 6600, 1), size_text="3/8", grade="70", length=Fraction(20))
    assert specification_words(one, day.units) == "chain 3/8, grade 70, 20 ft, WLL 6,600 lb"
    unmarked = replace(one, grade="", wll=None, breaking_strength=Fraction(9000), length=None)
    assert specification_words(unmarked, day.units) == "chain 3/8, breaking strength 9,000 lb"
