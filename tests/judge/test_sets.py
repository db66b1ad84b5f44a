"""Demands whose tie-downs run in several ways, and groups of articles secured together."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, WeightFrom
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.size import read_size
from loadplan.judge import judge as entry
from loadplan.rules.demand import load_demand
from loadplan.rules.requirement import (
    AccessoryRequirement,
    CountRequirement,
    EachWLLRequirement,
    MemberRequirement,
    PositionSet,
    StrengthRequirement,
)
from loadplan.rules.sources import CARGO
from tests.judge.build import CAGE, broken, checks, crate, day, gear, machine, row, tied, trailer

HALF = Fraction(1, 2)
# One chain round the article, two legs from it to the vehicle, and two chains over it.
RING = PositionSet(positions=("ring",), routing=Routing.ROUND)
LEGS = PositionSet(
    positions=("leg 1", "leg 2"), routing=Routing.DIRECT, tie_point_wll=Fraction(5000)
)
ACROSS = PositionSet(positions=("over 1", "over 2"), routing=Routing.OVER, most_at_each=2)
ASKED = {
    "sets": (RING, LEGS, ACROSS),
    "positions": ("ring", "leg 1", "leg 2", "over 1", "over 2"),
    "routing": Routing.ROUND,
    "most_per_position": 1,
    "counts": (
        CountRequirement(
            name="chains", source=CARGO, at_least=4, positions=("ring", "over 1"), twice=("ring",)
        ),
    ),
    "strengths": (
        StrengthRequirement(
            name="strength",
            source=CARGO,
            need=Fraction(20000),
            credit=HALF,
            credits=((Routing.OVER, Fraction(1)), (Routing.ROUND, Fraction(0))),
        ),
    ),
    "properties": (
        EachWLLRequirement(
            name="ring WLL", source=CARGO, at_least=Fraction(5400), positions=("ring",)
        ),
        MemberRequirement(
            name="ring chain",
            source=CARGO,
            kinds=frozenset({Kind.CHAIN}),
            positions=("ring",),
            least_size=read_size("3/8"),
        ),
    ),
}
PLAN = [
    tied("ring", routing=Routing.ROUND),
    tied("leg 1"),
    tied("leg 2"),
    tied("over 1", routing=Routing.OVER),
    tied("over 1", 2, routing=Routing.OVER),
    tied("over 2", routing=Routing.OVER),
]
ARTICLE = "Load L-1, article M-1"


@pytest.fixture
def demanded(monkeypatch):
    """Has the judgement ask what the test says of ``M-1`` instead of what the rules do."""

    def put(**changed):
        def asked(whole, load):
            found = load_demand(whole, load)
            articles = tuple(replace(one, **{**ASKED, **changed}) for one in found.articles)
            return replace(found, articles=articles)

        monkeypatch.setattr(entry, "load_demand", asked)

    return put


def test_tie_downs_that_run_in_several_ways(demanded):
    demanded()
    whole = day(on=trailer(anchors=8))
    assert broken(whole, PLAN) == []
    found = checks(whole, PLAN)
    # the ring counts twice: 2 + 2
    assert row(found["M-1", "chains"]) == ("4", "4", "tie-downs", "met")
    # legs 2 x 1/2 x 5,000 (tie point), over 3 x 5,400, ring nothing
    strength = found["M-1", "strength"]
    assert row(strength) == ("20,000", "21,200", "lb", "met")
    assert strength.working == "Planned: 2 x 1/2 x 5,000 + 3 x 5,400 = 21,200 lb."
    # legs 1 each, over 2 each, the ring none
    assert row(found["", "anchor points"]) == ("8", "8", "anchor points", "met")
    assert row(found["M-1", "ring chain"]) == ("chain, 3/8 in or more", "chain 3/8 in", "", "met")


def test_the_ring_hooks_to_no_anchor_point(demanded):
    demanded()
    found = checks(day(on=trailer(anchor_wll=1000)), PLAN)
    assert row(found["M-1", "ring WLL"]) == ("5,400", "5,400", "lb", "met")
    # legs 2 x 1/2 x 1,000, over 3 x 1,000
    assert row(found["M-1", "strength"])[1] == "4,000"


def test_routing_is_that_of_the_set(demanded):
    demanded()
    plan = [*PLAN[:3], replace(PLAN[3], routing=Routing.DIRECT), *PLAN[4:]]
    assert f"{ARTICLE}, over 1, number 1: it runs direct, and over is asked for." in broken(
        day(), plan
    )


def test_each_set_has_its_own_most(demanded):
    demanded()
    plan = [*PLAN, tied("leg 1", 2)]
    assert broken(day(), plan) == [f"{ARTICLE}, leg 1: 2 tie-downs stand there, and 1 may."]


def test_only_the_places_over_are_filled_in_order(demanded):
    demanded(counts=(), strengths=())
    assert broken(day(), [PLAN[2]]) == []
    assert broken(day(), [PLAN[5]]) == [
        f"{ARTICLE}: over 2 is used while over 1 is not; they are filled in order."
    ]


def test_only_direct_tie_downs_hold_tie_points(demanded):
    demanded(sets=(RING, LEGS, replace(ACROSS, tie_point_wll=Fraction(100))))
    assert row(checks(day(), PLAN)["M-1", "strength"])[1] == "21,200"


def test_a_property_of_some_positions(demanded):
    demanded()
    cage = (*CAGE, gear("C-ANY", "chain", wll=6000), gear("B-ANY", "lever binder", wll=9000))
    plan = [replace(PLAN[0], member="C-516"), *PLAN[1:]]
    assert broken(day(cage=cage), plan) == [
        f"{ARTICLE}: ring WLL needs 5,400 lb, and the plan has 4,700 lb (day workbook 'Cargo').",
        f"{ARTICLE}: ring chain needs chain, 3/8 in or more, and the plan has chain 5/16 in "
        "(day workbook 'Cargo').",
    ]
    plan = [replace(PLAN[0], member="C-ANY"), *PLAN[1:]]
    assert (
        f"{ARTICLE}: ring chain needs chain, 3/8 in or more, and the plan has "
        "chain of unknown size (day workbook 'Cargo')." in broken(day(cage=cage), plan)
    )
    plan = [PLAN[0], replace(PLAN[1], member="C-516"), *PLAN[2:]]
    assert broken(day(cage=cage), plan) == []


def test_held_unrated_points_are_those_a_tie_down_hooks_to(demanded):
    house = HouseRules(unrated_points=UnratedPoints.HOLD)
    cargo = machine(cargo_class=CargoClass.BOULDER)
    legs = replace(LEGS, tie_point_wll=None)
    demanded(obstacles=(), sets=(RING, legs, ACROSS))
    assert broken(day(cargo, on=trailer(anchor_wll=9000), house=house), PLAN) == []
    # all but the ring hook to the trailer
    assert broken(day(cargo, house=house), PLAN) == [
        f"{ARTICLE}, {tied.position}, number {tied.number}: "
        "its anchor point is unrated, and the house holds unrated points."
        for tied in PLAN[1:]
    ]


def test_a_demand_for_no_tie_down_at_all(demanded):
    demanded(counts=(), strengths=(), properties=())
    assert broken(day(), []) == []
    assert ("M-1", "margin on estimated weight") not in checks(day(), PLAN)


def test_a_strength_of_nothing_has_no_margin(demanded):
    nothing = StrengthRequirement(name="strength", source=CARGO, need=Fraction(0), credit=HALF)
    demanded(strengths=(nothing,))
    found = checks(day(), PLAN)
    assert row(found["M-1", "strength"])[3] == "met"
    assert ("M-1", "margin on estimated weight") not in found


def test_an_accessory_of_several_strong_tie_downs(demanded):
    asked = AccessoryRequirement(
        name="tie-down of boom", source=CARGO, accessory="boom", number=2, at_least=Fraction(5400)
    )
    demanded(accessories=(asked,))
    cargo = machine(accessories=(Accessory(name="boom"),))
    boom = [tied("boom", 1, accessory=True), tied("boom", 2, accessory=True)]
    assert broken(day(cargo), [*PLAN, *boom]) == []
    assert broken(day(cargo), [*PLAN, boom[0]]) == [
        f"{ARTICLE}: tie-down of boom needs 2 tie-downs, and the plan has 1 (day workbook 'Cargo')."
    ]
    weak = [boom[0], replace(boom[1], member="C-516")]
    assert broken(day(cargo), [*PLAN, *weak]) == [
        f"{ARTICLE}: tie-down of boom is weaker than 5,400 lb (day workbook 'Cargo')."
    ]
    found = checks(day(cargo), [*PLAN, *weak])["M-1", "tie-down of boom"]
    assert row(found) == ("2", "1", "tie-downs", "not met")


@pytest.fixture
def grouped(monkeypatch):
    """Has the judgement secure all articles of the load together as the group ``PIPES``."""

    def asked(whole, load):
        found = load_demand(whole, load)
        members = tuple(one.article for one in found.articles)
        group = replace(
            members[0],
            id="PIPES",
            weight=sum((one.carried_weight for one in members), Fraction(0)),
            weight_from=WeightFrom.ESTIMATE,
            length=Fraction(14),
            width=Fraction(5),
        )
        one = replace(
            found.articles[0],
            article=group,
            members=members,
            strengths=(
                StrengthRequirement(
                    name="strength", source=CARGO, need=group.weight / 2, credit=Fraction(1)
                ),
            ),
        )
        return replace(found, articles=(one,))

    monkeypatch.setattr(entry, "load_demand", asked)


CARGO_OF_TWO = (
    crate(id="P-1", weight_from=WeightFrom.SCALE, width=4),
    crate(id="P-2", weight=1000, length=6, width=5),
)


def over(number, article):
    """One ratchet strap, 2,000 lb."""
    return tied(
        f"over {number}", article=article, routing=Routing.OVER, member="S-2", tensioner=None
    )


def test_a_group_is_tied_down_as_one(grouped):
    plan = [over(1, "PIPES"), over(2, "PIPES")]
    on = trailer(deck_length=13, deck_width=8, payload=4000)
    assert broken(day(*CARGO_OF_TWO, on=on), plan) == []
    found = checks(day(*CARGO_OF_TWO, on=on), plan)
    assert row(found["PIPES", "strength"]) == ("2,000", "4,000", "lb", "met")
    # 4,000 / 2,000 - 1
    assert row(found["PIPES", "margin on estimated weight"]) == ("10", "100", "%", "met")
    # sizes are those of the whole group
    assert row(found["", "deck length"]) == ("14", "13", "ft", "advice")
    assert row(found["", "width on the deck"]) == ("5", "8", "ft", "met")
    assert row(found["", "payload"]) == ("4,000", "4,000", "lb", "met")


def test_a_member_of_a_group_is_not_tied_down_by_itself(grouped):
    plan = [over(1, "PIPES"), over(2, "PIPES"), over(1, "P-2")]
    assert broken(day(*CARGO_OF_TWO), plan) == [
        "Load L-1, article P-2, over 1, number 1: "
        "the article is secured with its group, not by itself."
    ]
