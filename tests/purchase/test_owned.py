"""What a purchase adds to the gear of a day, and the ids it has there."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.gear import Condition, Price
from loadplan.purchase.money import money
from loadplan.purchase.owned import gear_ids, with_pieces
from loadplan.purchase.purchase import purchase_of
from loadplan.purchase.search import whole_prices
from tests.plan.build import binder, chain, day

GEAR = [chain("C", 6600, 4), replace(binder("H", 5400, 3), condition=Condition.HOLD)]
DAY = day([], [], GEAR)


def offer(gear, price=1, most=None):
    return Price(specification=gear, price=Fraction(price), most=most)


def test_ids_of_owned_held_and_new_kinds():
    new, unnamed = binder("new", 9200, 1), binder("", 2600, 1)
    offers = [offer(one) for one in (GEAR[0], GEAR[1], new, new, unnamed)]
    assert gear_ids(DAY, offers) == ["C", "H (good)", "new", "new", "new lever binder"]


def test_ids_that_would_be_alike_are_told_apart():
    taken = day([], [], [*GEAR, chain("h (GOOD)", 6600, 1), chain("New", 6600, 1)])
    offers = [offer(one) for one in (GEAR[1], binder("new", 9200, 1), binder("NEW", 9300, 1))]
    assert gear_ids(taken, offers) == ["H (good) 2", "new 2", "NEW 3"]


def test_pieces_are_added_or_a_kind_is():
    new = binder("new", 9200, 7)
    bought = with_pieces(DAY, [(offer(GEAR[0]), 2), (offer(new), 3), (offer(GEAR[1]), 0)])
    assert bought.gear == (replace(GEAR[0], quantity=6), GEAR[1], replace(new, quantity=3))


def test_a_purchase_sums_its_lines():
    cheap, dear = offer(GEAR[0], "2.50"), offer(GEAR[1], 10)
    found = purchase_of(((cheap, 3), (dear, 0)), bound=Fraction(9), proved=False)
    assert (found.lines, found.cost, found.pieces) == (((cheap, 3),), Fraction(15, 2), 3)
    assert found.bound == Fraction(15, 2)


@pytest.mark.parametrize(
    ("prices", "step", "whole"),
    [
        (["2.50", "10"], "5/2", [1, 4]),
        (["0.45", "1.20"], "3/20", [3, 8]),
        (["7"], "7", [1]),
        (["0", "0"], "1", [0, 0]),
        ([], "1", []),
    ],
)
def test_prices_as_whole_steps(prices, step, whole):
    found, numbers = whole_prices([Fraction(price) for price in prices])
    assert (found, numbers.tolist()) == (Fraction(step), whole)


@pytest.mark.parametrize(
    ("amount", "currency", "text"),
    [
        ("1250", "$", "$1,250"),
        ("45.2", "EUR", "45.20 EUR"),
        ("45.2", "€", "45.20 €"),
        ("0.125", "", "0.125"),
        ("1000000.05", "USD", "1,000,000.05 USD"),
        ("0", "£", "£0"),
    ],
)
def test_money(amount, currency, text):
    assert money(Fraction(amount), currency) == text
