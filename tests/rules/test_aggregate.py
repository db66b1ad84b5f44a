"""Half the weight, credited by routing, with its working."""

from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.aggregate import aggregate
from loadplan.rules.choice import routing
from tests.rules.build import article, subject, working


def aggregated(cargo, house=None, units=Units.US):
    return aggregate(subject(cargo, house, units), routing(cargo))


def test_half_the_weight_with_everything_on_it():
    """18,400 + 900 + 350.5 = 19,650.5; half of it 9,825.25, printed rounded up."""
    cargo = article(weight=18400, added=[("bucket", 900), ("", "350.5")])
    found = aggregated(cargo)
    assert found.need == Fraction("9825.25")
    assert (found.credit, found.accessory_credit) == (Fraction(1, 2), 0)
    assert (found.name, found.source.section) == ("aggregate WLL", "393.106(d)")
    assert working(found) == [
        (
            "Weight with everything on it: bucket, added weight",
            "18,400 + 900 + 350.5",
            "19,650.5 lb",
            "day workbook 'Added weight'",
        ),
        ("One half of the weight", "1/2 x 19,650.5 lb", "9,826 lb", "49 CFR 393.106(d)"),
        (
            "Each tie-down from the vehicle to the article counts with",
            "1/2 of its WLL",
            "1/2 x WLL",
            "49 CFR 393.106(d)(1)",
        ),
    ]


@pytest.mark.parametrize(
    ("run", "credit", "step"),
    [
        (
            Routing.DIRECT,
            Fraction(1, 2),
            (
                "Each tie-down from the vehicle to the article counts with",
                "1/2 of its WLL",
                "1/2 x WLL",
                "49 CFR 393.106(d)(1)",
            ),
        ),
        (
            Routing.SAME_SIDE,
            Fraction(1, 2),
            (
                "Each tie-down around the article and back to the same side counts with",
                "1/2 of its WLL",
                "1/2 x WLL",
                "49 CFR 393.106(d)(2)",
            ),
        ),
        (
            Routing.OVER,
            Fraction(1),
            (
                "Each tie-down over the article to the other side counts with",
                "the whole of its WLL",
                "1 x WLL",
                "49 CFR 393.106(d)(3)",
            ),
        ),
    ],
)
def test_each_routing_has_its_credit(run, credit, step):
    found = aggregated(article(CargoClass.GENERAL, routing=run), units=Units.METRIC)
    assert found.credit == credit
    assert working(found) == [
        ("One half of the weight", "1/2 x 20,000 kg", "10,000 kg", "49 CFR 393.106(d)"),
        step,
    ]


def test_a_house_that_asks_more_is_named():
    house = HouseRules(aggregate_share=Fraction("0.6"))
    found = aggregated(article(weight=20001), house)
    assert found.need == Fraction("12000.6")
    assert found.source.cite() == "house rule Aggregate share"
    assert working(found)[0] == (
        "0.6 of the weight",
        "0.6 x 20,001 lb",
        "12,001 lb",
        "house rule Aggregate share",
    )


@pytest.mark.parametrize(
    ("counts", "credit", "step"),
    [
        (
            False,
            Fraction(0),
            (
                "Each tie-down of an accessory counts with",
                "nothing",
                "0",
                "house rule Accessory counts in aggregate",
            ),
        ),
        (
            True,
            Fraction(1, 2),
            (
                "Each tie-down of an accessory counts with",
                "1/2 of its WLL",
                "1/2 x WLL",
                "house rule Accessory counts in aggregate",
            ),
        ),
    ],
)
def test_what_an_accessory_tie_down_counts_is_said_where_there_is_one(counts, credit, step):
    house = HouseRules(accessory_counts=counts)
    free = (Accessory(name="boom"),)
    pinned = (Accessory(name="blade", pinned=True),)
    found = aggregated(article(accessories=free), house)
    assert found.accessory_credit == credit
    assert working(found)[-1] == step
    assert len(aggregated(article(accessories=pinned), house).steps) == 2
