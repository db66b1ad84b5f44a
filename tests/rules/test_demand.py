"""The whole demand of an article and of a load."""

from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing
from loadplan.day.gear import TENSION_MEMBERS, Kind
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.trailer import Trailer
from loadplan.rules.requirement import (
    EachWLLRequirement,
    MemberRequirement,
    ProtectorRequirement,
    ReachRequirement,
    ShackleRequirement,
)
from tests.rules.build import article, asked, asked_of_load, working

SIX = ("front left", "front right", "rear left", "rear right", "mid left", "mid right")


@pytest.mark.parametrize("run", [Routing.DIRECT, Routing.SAME_SIDE])
def test_positions_at_the_ends_and_sides(run):
    found = asked(article(CargoClass.GENERAL, routing=run), house=HouseRules(most_per_position=3))
    assert (found.routing, found.positions, found.most_per_position) == (run, SIX, 3)


def test_positions_over():
    found = asked(article(CargoClass.GENERAL))
    assert found.positions == tuple(f"over {number}" for number in range(1, 21))
    assert (found.routing, found.most_per_position) == (Routing.OVER, 1)


def test_a_plain_article_asks_no_properties():
    found = asked(article())
    assert (found.properties, found.accessories, found.obstacles) == ((), (), ())


def test_everything_a_row_and_a_house_can_ask_of_each_tie_down():
    cargo = article(reach="12.5", shackles=2, sharp_edges=True, chain_only=True)
    house = HouseRules(least_wll_each=Fraction(5000), straps_on_machines=False)
    found = asked(cargo, house=house).properties
    each, straps, chain, reach, shackles, protectors = found
    assert isinstance(each, EachWLLRequirement)
    assert each.at_least == 5000
    assert isinstance(straps, MemberRequirement)
    assert straps.kinds == TENSION_MEMBERS - {
        Kind.WINCH_STRAP,
        Kind.RATCHET_STRAP,
        Kind.RETRACTABLE_STRAP,
    }
    assert isinstance(chain, MemberRequirement)
    assert chain.kinds == {Kind.CHAIN}
    assert isinstance(reach, ReachRequirement)
    assert reach.at_least == Fraction("12.5")
    assert isinstance(shackles, ShackleRequirement)
    assert shackles.number == 2
    assert isinstance(protectors, ProtectorRequirement)
    assert protectors.number == 1
    assert [step for requirement in found for step in working(requirement)] == [
        ("Each tie-down has at least", "5,000 lb", "5,000 lb", "house rule Least WLL each"),
        (
            "Straps on machines: no",
            "chain, wire rope, rope or steel strapping",
            "no webbing",
            "house rule Straps on machines",
        ),
        ("Chain only: yes", "chain", "no strap or rope", "day workbook 'Cargo'"),
        ("Each tension member is at least", "12.5 ft", "12.5 ft", "day workbook 'Cargo'"),
        ("Each tie-down has", "2 shackles", "2 shackles each", "day workbook 'Cargo'"),
        (
            "Sharp edges: each strap (direct) has at least",
            "1 edge protector",
            "1 edge protector each",
            "49 CFR 393.104(f)",
        ),
    ]


def test_straps_are_barred_from_machines_only():
    house = HouseRules(straps_on_machines=False)
    for kind in CargoClass:
        if not kind.is_commodity:
            found = asked(article(kind, weight=4000), house=house)
            assert bool(found.properties) is kind.is_machine


@pytest.mark.parametrize("run", [Routing.SAME_SIDE, Routing.OVER])
def test_two_edge_protectors_where_a_strap_bends_twice(run):
    (found,) = asked(article(CargoClass.GENERAL, routing=run, sharp_edges=True)).properties
    assert found.number == 2


def test_one_tie_down_for_each_accessory_that_no_pin_holds():
    cargo = article(
        accessories=(
            Accessory(name="boom"),
            Accessory(name="blade", pinned=True),
            Accessory(name="bucket"),
        )
    )
    found = asked(cargo)
    assert [one.accessory for one in found.accessories] == ["boom", "bucket"]
    assert found.accessories[0].name == "tie-down of boom"
    assert found.accessories[0].source.section == "393.130(b)(1)"
    assert working(found.accessories[0]) == [
        (
            "Not pinned: one tie-down of its own, of any WLL",
            "1",
            "1 tie-down",
            "one tie-down for each accessory that no pin holds (common practice, no source)",
        )
    ]
    assert [(look.name, look.text) for look in found.looks[:3]] == [
        ("accessory lowered", "boom: completely lowered, and its own tie-down is tight."),
        ("accessory pinned", "blade: lowered, and its pin or lock stops every movement."),
        ("accessory lowered", "bucket: completely lowered, and its own tie-down is tight."),
    ]


def test_the_tie_point_caps_direct_tie_downs_only():
    for run in (Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER):
        cargo = article(CargoClass.GENERAL, routing=run, tie_point_wll=4000)
        assert asked(cargo).tie_point_wll == (4000 if run is Routing.DIRECT else None)


RATED = Trailer(id="T-1", anchor_wll=Fraction(6600))
UNRATED = Trailer(id="T-1")
NO_ANCHOR = "The anchor points of trailer T-1 have no rating (Anchor WLL is blank)."
NO_TRAILER = "The load names no trailer, so its anchor points have no rating."
NO_TIE_POINT = "The tie points of M-1 have no rating (Tie point WLL is blank)."


@pytest.mark.parametrize(
    ("trailer", "run", "tie_point", "why"),
    [
        (RATED, Routing.DIRECT, 5000, []),
        (RATED, Routing.DIRECT, None, [NO_TIE_POINT]),
        (RATED, Routing.SAME_SIDE, None, []),
        (RATED, Routing.OVER, None, []),
        (UNRATED, Routing.OVER, None, [NO_ANCHOR]),
        (UNRATED, Routing.DIRECT, None, [NO_ANCHOR, NO_TIE_POINT]),
        (None, Routing.DIRECT, 5000, [NO_TRAILER]),
    ],
)
def test_unrated_points_hold_where_the_house_says_so(trailer, run, tie_point, why):
    cargo = article(CargoClass.GENERAL, routing=run, tie_point_wll=tie_point)
    hold = HouseRules(unrated_points=UnratedPoints.HOLD)
    found = asked(cargo, house=hold, trailer=trailer).obstacles
    assert [one.why for one in found] == why
    assert all(one.source.cite() == "house rule Unrated points" for one in found)
    assert asked(cargo, trailer=trailer).obstacles == ()


def test_what_a_load_shares():
    trailer = Trailer(id="T-1", anchors=12, anchor_wll=Fraction(5400), winches=3)
    found = asked_of_load(article(), trailer=trailer)
    assert [one.article.id for one in found.articles] == ["M-1"]
    assert found.anchor_wll == 5400
    assert (found.anchors.at_most, found.winches.at_most) == (12, 3)
    assert found.anchors.per_tie_down == {
        Routing.DIRECT: 1,
        Routing.SAME_SIDE: 2,
        Routing.OVER: 2,
        Routing.ROUND: 0,
    }
    assert working(found.anchors) == [
        (
            "A tie-down to the article or an accessory uses one, one around or over it two",
            "1 or 2 each",
            "anchor points used",
            "anchor points used (common practice, no source)",
        ),
        ("Trailer T-1 has", "12 anchor points", "12 anchor points", "day workbook 'Trailers'"),
    ]
    assert working(found.winches) == [
        (
            "Trailer T-1 has; each winch strap uses one",
            "3 winches",
            "3 winches",
            "day workbook 'Trailers'",
        )
    ]


def test_a_load_without_trailer_has_no_winches_and_uncounted_anchors():
    found = asked_of_load(article())
    assert (found.anchors, found.anchor_wll, found.winches.at_most) == (None, None, 0)
    assert working(found.winches) == [
        (
            "No trailer is named; each winch strap uses one",
            "0 winches",
            "0 winches",
            "day workbook 'Trailers'",
        )
    ]


def test_a_trailer_without_a_count_of_anchors_does_not_limit_them():
    assert asked_of_load(article(), trailer=Trailer(id="T-1", winches=1)).anchors is None


def test_a_load_without_cargo_asks_nothing_of_articles():
    assert asked_of_load().articles == ()
