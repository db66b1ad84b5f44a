"""The weakest part decides, and is named."""

from fractions import Fraction
from itertools import product

import pytest

from loadplan.wll.tie_down import Part, rate_tie_down

PARTS = ("member", "tensioner", "connector", "anchor", "tie_point")


def test_the_parts_are_the_words_of_the_results():
    assert [part.value for part in Part] == [
        "tension member",
        "tensioner",
        "connector",
        "anchor point",
        "tie point",
    ]


@pytest.mark.parametrize(("name", "part"), list(zip(PARTS, Part, strict=True)))
def test_each_part_can_be_the_weakest(name, part):
    values = {other: Fraction(6600) for other in PARTS} | {name: Fraction(5400)}
    rating = rate_tie_down(**values)
    assert (rating.wll, rating.weakest) == (5400, part)
    assert {other: getattr(rating, other) for other in PARTS} == values


@pytest.mark.parametrize("levels", list(product((None, 1, 2), repeat=4)))
def test_the_lowest_of_all_with_ties_named_in_order(levels):
    values = dict(zip(PARTS[1:], levels, strict=True))
    rating = rate_tie_down(
        member=Fraction(2), **{name: value and Fraction(value) for name, value in values.items()}
    )
    known = [(2, Part.TENSION_MEMBER)]
    known += [(v, p) for v, p in zip(levels, list(Part)[1:], strict=True) if v is not None]
    lowest = min(value for value, _ in known)
    first = next(part for value, part in known if value == lowest)
    assert (rating.wll, rating.weakest) == (lowest, first)


def test_a_lone_member_is_its_own_weakest_part():
    rating = rate_tie_down(member=Fraction(4000))
    assert (rating.wll, rating.weakest) == (4000, Part.TENSION_MEMBER)
    assert (rating.tensioner, rating.connector, rating.anchor, rating.tie_point) == (None,) * 4
