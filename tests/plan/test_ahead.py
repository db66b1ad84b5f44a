"""The bound on what lacks of a set: never above the least, and the least where parts divide."""

from __future__ import annotations

from itertools import product
from math import inf

from hypothesis import given
from hypothesis import strategies as st

from loadplan.plan.ahead import Ahead, Offer

OFFERS = st.lists(
    st.builds(
        lambda value, least, more: Offer(
            value=value, costs=tuple(least + n * more for n in range(1, 4))
        ),
        st.integers(1, 80),
        st.integers(0, 5),
        st.integers(0, 20),
    ),
    min_size=1,
    max_size=4,
)


def least(offers: list[Offer], number: int, value: int) -> float:
    """The least price by trying every way."""
    prices = [inf]
    for numbers in product(range(4), repeat=len(offers)):
        pairs = list(zip(numbers, offers, strict=True))
        if sum(numbers) >= number and sum(n * one.value for n, one in pairs) >= value:
            prices.append(sum(one.costs[n - 1] for n, one in pairs if n))
    return min(prices)


@given(offers=OFFERS, need=st.integers(1, 200), fewest=st.integers(0, 4), data=st.data())
def test_never_above_the_least(
    offers: list[Offer], need: int, fewest: int, data: st.DataObject
) -> None:
    ahead = Ahead(need, fewest, offers, 64)
    number = data.draw(st.integers(0, fewest))
    value = data.draw(st.integers(0, need))
    for at, said in enumerate(ahead.least(number, value)):
        assert said <= least(offers[at:], number, value)


@given(offers=OFFERS, fewest=st.integers(0, 4))
def test_the_least_where_the_need_has_as_many_parts(offers: list[Offer], fewest: int) -> None:
    ahead = Ahead(64, fewest, offers, 64)
    assert ahead.least(fewest, 64)[0] == least(offers, fewest, 64)


def test_nothing_lacking_costs_nothing() -> None:
    ahead = Ahead(20, 2, [Offer(value=10, costs=(3.0, 6.0))], 64)
    assert ahead.least(0, 0) == [0.0, 0.0]
    assert ahead.least(-1, -5) == [0.0, 0.0]
    assert ahead.least(2, 20) == [6.0, inf]
    assert ahead.least(3, 21) == [6.0, inf], "no more than the article asks can lack"
