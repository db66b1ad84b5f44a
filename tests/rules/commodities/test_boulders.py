"""Large boulders: chains over the top, or a ring and four legs."""

import pytest

from loadplan.day.article import CargoClass, Routing, SecuredUnder, Stands
from loadplan.day.day import RuleSet
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.rules.demand import demand_of
from tests.rules.build import article, asked, day, look_names, needs, problems, sets, strengths

OVER, DIRECT, ROUND = Routing.OVER, Routing.DIRECT, Routing.ROUND
LEGS = ("leg 1", "leg 2", "leg 3", "leg 4")
HANDBOOK = "(from the official handbook, not the regulation text read)"


def rock(details, **known):
    return article(
        CargoClass.BOULDER, details=details, **{"weight": 14002, "length": None, **known}
    )


@pytest.mark.parametrize(
    ("details", "line"), [("cubic", "near the blocking"), ("stable base", "crossed")]
)
def test_two_chains_over_the_top_of_half_its_weight(details, line):
    """14,002 / 2 = 7,001."""
    found = asked(rock(details))
    assert sets(found) == [("over 1", 20, "over", 1, "")]
    assert needs(found) == [("chains over the top", 2, None)]
    assert strengths(found) == [(7001, {OVER: 1})]
    assert [one.kinds for one in found.properties] == [{Kind.CHAIN}]
    assert look_names(found)[:4] == ["how it lies", "hardwood", "chain on the rock", line]


def test_an_unstable_base_takes_a_ring_and_four_legs():
    """Ring 14,002 / 2 = 7,001, each leg 14,002 / 4 = 3,500.5."""
    found = asked(rock("unstable base"))
    assert sets(found) == [("ring", 1, "round", 1, ""), ("leg 1", 4, "direct", 1, "")]
    assert needs(found) == [("ring", 1, "ring"), *((leg, 1, leg) for leg in LEGS)]
    chain, ring, leg = found.properties
    assert (chain.kinds, chain.positions) == ({Kind.CHAIN}, None)
    assert (ring.name, ring.at_least, ring.positions) == ("WLL of ring", 7001, ("ring",))
    assert (leg.name, leg.at_least, leg.positions) == ("WLL of each leg", 3500.5, LEGS)
    assert leg.steps[0].result == "3,501 lb"
    assert look_names(found)[3:5] == ["ring", "legs"]


def test_four_legs_of_a_quarter_reach_the_half_exactly():
    """4 x 1/2 x 3,500.5 = 7,001; the ring counts with nothing."""
    found = asked(rock("unstable base"))
    assert strengths(found) == [(7001, {ROUND: 0, DIRECT: 0.5})]
    assert 4 * found.strengths[0].credit_of(DIRECT) * found.properties[2].at_least == 7001


def test_legs_hold_the_ring_and_no_tie_point():
    hold = HouseRules(unrated_points=UnratedPoints.HOLD)
    trailer = Trailer(id="T-1", anchor_wll=7000)
    assert asked(rock("unstable"), house=hold, trailer=trailer).obstacles == ()
    assert "unrated tie points" not in look_names(asked(rock("unstable")))


def boulders(stands):
    rocks = [
        rock("stable base", id=f"B-{n}", group="ROW", stands=stands, weight=weight)
        for n, weight in enumerate((12000, 15000), start=1)
    ]
    return demand_of(day(*rocks), "ROW")


def test_boulders_of_one_row():
    in_line, touching = boulders(Stands.IN_LINE), boulders(Stands.SIDE_BY_SIDE)
    assert needs(in_line) == [
        ("chains over B-1", 2, "B-1 over 1"),
        ("chains over B-2", 2, "B-2 over 1"),
    ]
    assert needs(touching) == [("chains over the top", 2, None)]
    assert strengths(in_line) == strengths(touching) == [(13500, {OVER: 1})]


def test_what_a_row_lacks_or_contradicts():
    assert problems(rock("")) == [
        (
            "Details",
            "Details lacks the shape of the boulder, needed by 49 CFR 393.136. "
            "Write cubic, stable base or unstable base.",
        )
    ]
    assert problems(rock("unstable", group="ROW")) == [
        (
            "Group",
            "A boulder with an unstable base has its own ring and legs, by 49 CFR 393.136 "
            f"{HANDBOOK}. Leave Group blank.",
        )
    ]
    assert problems(rock("unstable", routing=OVER)) == [
        (
            "Routing",
            "Routing is over, and here its section says how the tie-downs run, by 49 CFR 393.136. "
            "Write direct, or leave it blank.",
        )
    ]
    assert problems(rock("cubic", routing=OVER)) == []


@pytest.mark.parametrize(
    ("rules", "units", "weight", "limit"),
    [
        (RuleSet.US, Units.US, 11001, "11,000 lb"),
        (RuleSet.US, Units.METRIC, 5001, "5,000 kg"),
        (RuleSet.CANADA, Units.METRIC, 5001, "5,000 kg"),
        # 11,024 lb are 5,000.4 kg
        (RuleSet.CANADA, Units.US, 11024, "5,000 kg"),
    ],
)
def test_a_heavy_boulder_by_the_general_rules(rules, units, weight, limit):
    general = {"length": 5, "secured_under": SecuredUnder.GENERAL}
    ((column, text),) = problems(rock("", weight=weight, **general), units=units, rules=rules)
    assert column == "Secured under"
    assert f" {units.mass}, and over {limit} it has its own section" in text
    assert problems(rock("", weight=weight - 1, **general), units=units, rules=rules) == []
