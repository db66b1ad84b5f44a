"""The disputed points: every switch, its default, and what its readings do to a demand."""

from dataclasses import fields
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.house import (
    AccessoryWLL,
    HeavyEnds,
    HouseRules,
    StateRules,
)
from loadplan.day.units import Units
from loadplan.rules.effects import wll_needed
from loadplan.rules.switches import SWITCHES, switch_named
from loadplan.text import mass_up, names
from tests.rules.build import article, asked, look_names, needs, problems, strengths, working

DEFAULTS = [
    # rule, US, Canada where it differs, all words
    ("Heavy from", "0", "", ["0", "10,000 lb (4,536 kg; in Canada 4,500 kg)"]),
    ("Machine of exactly 10,000 lb", "heavy", "", ["heavy", "light"]),
    ("Ends of heavy machines", "each corner", "", ["each corner", "two front and two rear"]),
    ("Floor on heavy machines", "no", "yes", ["no", "yes"]),
    ("Straps on machines", "yes", "", ["yes", "no"]),
    ("Light vehicle tie-downs", "2", "", ["2", "4"]),
    ("State rules", "none", "", ["none", "California vehicles on trailers"]),
    ("Direct credit", "1/2", "", ["1/2", "1"]),
    ("Same side credit", "1/2", "1", ["1/2", "1"]),
    ("Aggregate in each direction", "no", "", ["no", "yes"]),
    ("Aggregate on roll-off containers", "yes", "", ["yes", "no"]),
    ("Floor on logs", "yes", "", ["yes", "no"]),
    ("Length count on machines", "yes", "", ["yes", "no"]),
    ("Length count on commodities", "no", "", ["no", "yes"]),
    ("Direct tie-down blocks forward", "no", "", ["no", "yes"]),
    ("Belly tie-down on lumber under 6 ft", "yes", "", ["yes", "no"]),
    ("Accessory tie-downs", "1", "", ["1", "2"]),
    ("Accessory counts in number", "no", "", ["no", "yes"]),
    ("Accessory counts in aggregate", "no", "", ["no", "yes"]),
    ("Accessory WLL", "any", "", ["any", "half its weight"]),
    ("Unrated points", "warn", "", ["warn", "hold"]),
    ("Unmarked hardware", "unknown", "", ["unknown", "lowest grade"]),
    ("Table figures", "federal", "", ["federal", "state manual"]),
    ("Wire rope of 3/4 in", "table", "", ["table", "quarter of strength"]),
]


def test_every_switch_with_its_defaults_and_words():
    assert [
        (one.name, one.us, one.canada, [reading.word for reading in one.readings])
        for one in SWITCHES
    ] == DEFAULTS


@pytest.mark.parametrize("switch", SWITCHES, ids=lambda switch: switch.name)
def test_each_stands_for_a_field_and_its_default_is_what_no_line_means(switch):
    assert switch.field in {field.name for field in fields(HouseRules)}
    assert switch_named(switch.name) is switch
    assert switch.asks.endswith("?")
    assert all(reading.rests_on for reading in switch.readings)
    for rules in RuleSet:
        assert switch.taken(HouseRules(), rules) is switch.default(rules)
        assert len(switch.others(HouseRules(), rules)) == len(switch.readings) - 1
    for word, value in switch.words.items():
        reading = next(one for one in switch.readings if one.word == word)
        house = switch.read_as(HouseRules(), reading)
        assert getattr(house, switch.field) == value
        assert switch.taken(house, RuleSet.US) is reading


def test_a_figure_of_the_house_is_none_of_the_readings():
    switch = switch_named("Heavy from")
    house = HouseRules(heavy_from=Fraction(6000))
    assert switch.taken(house, RuleSet.US) is None
    assert len(switch.others(house, RuleSet.US)) == 2
    assert switch_named("Heavy fron") is None


CAR = article(CargoClass.LIGHT_VEHICLE, weight=4000, length=15)
OVER_CAR = article(
    CargoClass.LIGHT_VEHICLE,
    weight=4000,
    length=15,
    secured_under=SecuredUnder.GENERAL,
    routing=Routing.OVER,
)


def test_four_for_a_light_vehicle():
    four = HouseRules(light_vehicle_tie_downs=4)
    assert needs(asked(CAR, house=four))[3:5] == [
        ("two tie-downs at the front", 2, "front left"),
        ("two tie-downs at the rear", 2, "rear left"),
    ]
    assert needs(asked(OVER_CAR, house=four)) == [
        ("two tie-downs", 2, None),
        ("four tie-downs", 4, None),
        ("tie-downs by length", 3, None),
    ]


def test_california():
    state = HouseRules(state_rules=StateRules.CALIFORNIA_VEHICLES)
    found = asked(CAR, house=state)
    assert needs(found)[3] == ("four tie-downs on a trailer", 4, None)
    assert found.counts[3].source.cite() == "California Vehicle Code 29004(a)(3)"
    small = article(weight=4000, secured_under=SecuredUnder.LIGHT_VEHICLE)
    assert ("four tie-downs on a trailer", 4, None) in needs(asked(small, house=state))
    assert ("four tie-downs on a trailer", 4, None) in needs(asked(OVER_CAR, house=state))
    assert "four tie-downs on a trailer" not in str(needs(asked(article(), house=state)))


def test_two_front_and_two_rear():
    ends = HouseRules(heavy_ends=HeavyEnds.TWO_AND_TWO)
    assert needs(asked(article(), house=ends))[:3] == [
        ("four tie-downs", 4, None),
        ("two tie-downs at the front", 2, "front left"),
        ("two tie-downs at the rear", 2, "rear left"),
    ]


@pytest.mark.parametrize(
    ("cargo", "middles"),
    [
        (article(), True),
        (CAR, True),
        (article(CargoClass.GENERAL, routing=Routing.SAME_SIDE), True),
        (article(CargoClass.INTERMODAL_CONTAINER, details="deck loaded"), False),
    ],
)
def test_the_aggregate_in_each_direction(cargo, middles):
    """Four equal corner tie-downs give half of the whole each way, so twice the WLL is needed."""
    each = HouseRules(each_direction=True)
    found = asked(cargo, house=each)
    half = cargo.weight / 2
    left = ("front left", "rear left", *(("mid left",) if middles else ()))
    right = ("front right", "rear right", *(("mid right",) if middles else ()))
    assert [(one.name, one.need, one.positions) for one in found.strengths] == [
        ("aggregate WLL", half, None),
        ("aggregate WLL at the front", half, ("front left", "front right")),
        ("aggregate WLL at the rear", half, ("rear left", "rear right")),
        ("aggregate WLL at the left", half, left),
        ("aggregate WLL at the right", half, right),
    ]
    assert wll_needed(found) == 2 * wll_needed(asked(cargo)) == 4 * half
    assert working(found.strengths[3]) == [
        (
            "The same again from the tie-downs at the left alone",
            names(left, "or"),
            mass_up(half, Units.US),
            "house rule Aggregate in each direction",
        )
    ]


@pytest.mark.parametrize("cargo", [article(CargoClass.GENERAL), OVER_CAR])
def test_tie_downs_over_the_cargo_have_no_direction(cargo):
    assert len(asked(cargo, house=HouseRules(each_direction=True)).strengths) == 1


@pytest.mark.parametrize(
    ("cargo", "number", "source"),
    [
        (article(CargoClass.GENERAL, length=25, routing=Routing.DIRECT), 3, "house rule"),
        (article(CargoClass.GENERAL, length=25, routing=Routing.SAME_SIDE), 4, "49 CFR"),
        (article(CargoClass.GENERAL, length=25, blocked_forward=True), 3, "49 CFR"),
    ],
)
def test_a_direct_tie_down_read_as_blocking_forward(cargo, number, source):
    """25 ft: 2 + 15 / 10 rounded up = 4; blocked 25 / 10 rounded up = 3."""
    found = asked(cargo, house=HouseRules(direct_blocks_forward=True)).counts[0]
    assert (found.at_least, found.source.document) == (number, source)


BOOM = (Accessory(name="boom", weight=Fraction(1201)), Accessory(name="blade", pinned=True))


def test_two_tie_downs_for_an_accessory():
    (found,) = asked(article(accessories=BOOM), house=HouseRules(accessory_tie_downs=2)).accessories
    assert (found.number, found.at_least) == (2, None)
    assert working(found) == [
        (
            "Not pinned: 2 tie-downs of its own, of any WLL",
            "2",
            "2 tie-downs",
            "house rule Accessory tie-downs",
        )
    ]


def test_an_accessory_tie_down_of_half_its_weight():
    """1,201 / 2 = 600.5, printed rounded up."""
    half = HouseRules(accessory_wll=AccessoryWLL.HALF)
    (found,) = asked(article(accessories=BOOM), house=half).accessories
    assert found.at_least == Fraction("600.5")
    assert working(found)[1] == (
        "Of at least half its weight",
        "1/2 x 1,201 lb",
        "601 lb",
        "house rule Accessory WLL",
    )
    unknown = asked(article(accessories=(Accessory(name="hoe"),)), house=half)
    assert unknown.accessories[0].at_least is None
    assert look_names(unknown)[:2] == ["accessory lowered", "accessory weight"]
    assert unknown.looks[1].text == "hoe: its weight is not given, so no WLL is asked here."


def test_accessories_counted_in_the_number():
    """31 ft: 2 + 21 / 10 rounded up = 5; less one for the boom, and each corner keeps its own."""
    counted = HouseRules(accessory_in_number=True)
    found = asked(article(accessories=BOOM, length=31), house=counted)
    assert [one.at_least for one in found.counts] == [3, 1, 1, 1, 1, 4]
    assert working(found.counts[-1])[-1] == (
        "Less the tie-downs of accessories",
        "5 - 1",
        "4 tie-downs",
        "house rule Accessory counts in number",
    )
    without = asked(article(length=31), house=counted)
    assert [one.at_least for one in without.counts] == [4, 1, 1, 1, 1, 5]


def test_no_count_goes_below_nothing():
    many = tuple(Accessory(name=f"part {number}") for number in range(6))
    found = asked(article(accessories=many), house=HouseRules(accessory_in_number=True))
    assert [one.at_least for one in found.counts] == [0, 1, 1, 1, 1, 0]


COUNTED = HouseRules(length_count_on_commodities=True)


@pytest.mark.parametrize(
    ("cargo", "number", "places"),
    [
        # 40 ft: 2 + 30 / 10 = 5
        (
            article(CargoClass.LOGS, details="lengthwise; longwood; large logs on top", length=40),
            5,
            20,
        ),
        (article(CargoClass.BOULDER, details="unstable", length=8), 2, 4),
        (article(CargoClass.INTERMODAL_CONTAINER, details="deck loaded", length=40), 5, 4),
    ],
)
def test_the_length_counts_on_commodities_where_the_house_says_so(cargo, number, places):
    """Rings and wrappers, which do not reach the vehicle, are not among them."""
    by_length = asked(cargo, house=COUNTED).counts[-1]
    assert (by_length.name, by_length.at_least) == ("tie-downs by length", number)
    assert len(by_length.positions) == places
    assert "tie-downs by length" not in str(needs(asked(cargo)))


@pytest.mark.parametrize(
    "cargo",
    [
        article(CargoClass.PAPER_ROLLS),
        article(CargoClass.INTERMODAL_CONTAINER, details="chassis"),
        article(CargoClass.DRESSED_LUMBER, details="tiers 3; belly"),
    ],
)
def test_it_is_not_counted_twice_nor_where_nothing_is_tied(cargo):
    assert needs(asked(cargo, house=COUNTED)) == needs(asked(cargo))


def test_it_needs_the_length():
    coil = article(CargoClass.METAL_COIL, details="eye vertical", length=None)
    assert problems(coil) == []
    assert problems(coil, COUNTED) == [
        (
            "Length",
            "Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). "
            "Write the length.",
        )
    ]


def test_strength_of_a_direct_tie_down_read_as_whole():
    found = asked(article(weight=20000), house=HouseRules(direct_credit=Fraction(1)))
    assert strengths(found) == [(10000, {Routing.DIRECT: 1})]
