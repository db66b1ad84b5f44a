"""Advice: lines that never hold a load."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.article import Routing, WeightFrom
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.units import Units
from tests.judge.build import (
    CAGE,
    broken,
    checks,
    crate,
    day,
    four,
    gear,
    machine,
    over,
    row,
    tied,
    trailer,
    with_gear,
)

TRAILER = trailer(
    payload=48000, deck_length=28, deck_width="8.5", deck_height=3, anchors=20, anchor_wll=6600
)
CARGO = (machine(width=8, height=10), crate(width=6, height=4))
PLAN = [*four(), over(1), over(2)]


def lines(*cargo, on=TRAILER, **known):
    """The advice on size of one load."""
    names = ("payload", "deck length", "width on the deck", "overall width", "overall height")
    found = checks(day(*cargo, on=on, **known), PLAN)
    return {name: found["", name] for name in names}


def test_all_within():
    found = lines(*CARGO)
    assert {name: row(check) for name, check in found.items()} == {
        "payload": ("23,000", "48,000", "lb", "met"),
        "deck length": ("26", "28", "ft", "met"),
        "width on the deck": ("8", "8.5", "ft", "met"),
        "overall width": ("8.5", "8.5", "ft", "met"),
        "overall height": ("13", "13.5", "ft", "met"),
    }
    assert {name: check.working for name, check in found.items()} == {
        "payload": "Weights with everything on them: 20,000 + 3,000 = 23,000.",
        "deck length": "Lengths end to end without a gap: 18 + 8 = 26.",
        "width on the deck": "Widest article: 8.",
        "overall width": "Wider of deck and widest article: 8.5.",
        "overall height": "Deck height and highest article: 3 + 10 = 13.",
    }
    assert {name: check.source for name, check in found.items()} == {
        "payload": "day workbook 'Trailers'",
        "deck length": "day workbook 'Trailers'",
        "width on the deck": "day workbook 'Trailers'",
        "overall width": "23 CFR 658.15 (memory)",
        "overall height": "overall height (common practice, no source)",
    }


def test_all_exceeded():
    small = trailer(payload=22999, deck_length="25.9", deck_width=7, deck_height="3.6")
    found = lines(replace(CARGO[0], width=Fraction("8.51")), CARGO[1], on=small)
    assert {name: row(check) for name, check in found.items()} == {
        "payload": ("23,000", "22,999", "lb", "advice"),
        "deck length": ("26", "25.9", "ft", "advice"),
        "width on the deck": ("8.51", "7", "ft", "advice"),
        "overall width": ("8.51", "8.5", "ft", "advice"),
        "overall height": ("13.6", "13.5", "ft", "advice"),
    }
    assert broken(day(*CARGO, on=small), PLAN) == []


def test_nothing_known():
    whole = day(machine(), crate(), on=trailer())
    found = checks(whole, PLAN)
    trailer_t1 = "of trailer T-1 is not given."
    assert {name: (*row(check), check.working) for (_, name), check in found.items() if not _} == {
        "anchor point rating": (
            *("rated", "unrated", "", "advice"),
            "No tie-down is stronger than the points it holds to. "
            "It is unrated and does not limit the figures.",
        ),
        "anchor points": (
            *("8", "-", "anchor points", "advice"),
            "How many anchor points there are is not given.",
        ),
        "payload": (
            *("23,000", "-", "lb", "advice"),
            f"Weights with everything on them: 20,000 + 3,000 = 23,000. The payload {trailer_t1}",
        ),
        "deck length": (
            *("26", "-", "ft", "advice"),
            f"Lengths end to end without a gap: 18 + 8 = 26. The deck length {trailer_t1}",
        ),
        "width on the deck": (
            *("-", "-", "ft", "advice"),
            f"The width of M-1 and G-1 is not given. The deck width {trailer_t1}",
        ),
        "overall width": (
            *("-", "8.5", "ft", "advice"),
            f"The width of M-1 and G-1 is not given. The deck width {trailer_t1}",
        ),
        "overall height": (
            *("-", "13.5", "ft", "advice"),
            f"The height of M-1 and G-1 is not given. The deck height {trailer_t1}",
        ),
    }


def test_a_width_not_wholly_known_is_not_compared():
    found = lines(replace(CARGO[0], width=None), CARGO[1], on=trailer())
    assert row(found["width on the deck"]) == ("-", "-", "ft", "advice")


def test_sizes_are_printed_to_three_decimals_and_weights_whole():
    cargo = (machine(weight="20000.5", length="18.001"),)
    whole = day(*cargo, on=trailer(payload="48000.7", deck_length="28.009"))
    found = checks(whole, four())
    assert row(found["", "payload"]) == ("20,001", "48,000", "lb", "met")
    assert row(found["", "deck length"]) == ("18.001", "28.009", "ft", "met")


def test_a_canadian_day_cites_its_own_standard():
    whole = replace(day(*CARGO), rules=RuleSet.CANADA)
    found = checks(whole, PLAN)
    lowest = "NSC Standard 10 s. 21 (from the official handbook, not the regulation text read)"
    assert found["", "anchor point rating"].source == lowest
    memorandum = "interprovincial memorandum on vehicle weights and dimensions"
    assert found["", "overall width"].source == f"{memorandum} overall width (memory)"
    assert found["", "overall height"].source == f"{memorandum} overall height (memory)"
    assert not [one.source for one in found.values() if "CFR" in one.source]


def test_no_trailer():
    whole = day(*CARGO)
    whole = replace(whole, loads=(replace(whole.loads[0], trailer=None),))
    found = checks(whole, PLAN)
    assert row(found["", "payload"]) == ("23,000", "-", "lb", "advice")
    assert found["", "payload"].working == (
        "Weights with everything on them: 20,000 + 3,000 = 23,000. The load names no trailer."
    )
    assert row(found["", "overall height"]) == ("-", "13.5", "ft", "advice")
    assert row(found["", "anchor point rating"]) == ("rated", "unrated", "", "advice")


def test_what_is_known_may_exceed_already():
    found = lines(replace(CARGO[0], height=Fraction(11)), crate(width=9), on=TRAILER)
    assert row(found["overall height"]) == ("14", "13.5", "ft", "advice")
    assert found["overall height"].working == (
        "Deck height and highest article: 3 + 11 = 14. The height of G-1 is not given."
    )
    found = lines(replace(CARGO[0], width=None), crate(width=9), on=TRAILER)
    assert row(found["width on the deck"]) == ("9", "8.5", "ft", "advice")
    found = lines(replace(CARGO[0], width=None), crate(width=8), on=TRAILER)
    assert row(found["width on the deck"]) == ("-", "8.5", "ft", "advice")


def test_limits_of_the_day():
    found = lines(*CARGO, width_limit=Fraction(8), height_limit=Fraction(14))
    assert row(found["overall width"]) == ("8.5", "8", "ft", "advice")
    assert row(found["overall height"]) == ("13", "14", "ft", "met")
    assert found["overall width"].source == "day workbook 'Day'"
    assert found["overall height"].source == "day workbook 'Day'"
    found = lines(*CARGO, width_limit=Fraction("8.5"), height_limit=Fraction("13.5"))
    assert found["overall width"].source == "23 CFR 658.15 (memory)"


def test_metric_limits():
    cargo = (machine(width="2.61", height="3", length=5),)
    whole = day(*cargo, on=trailer(deck_height="1.12", deck_width=2), units=Units.METRIC)
    found = checks(whole, four())
    assert row(found["", "overall width"]) == ("2.61", "2.6", "m", "advice")
    assert row(found["", "overall height"]) == ("4.12", "4.11", "m", "advice")


def test_points_that_are_rated():
    found = checks(day(machine(tie_point_wll=7000), on=TRAILER), four())
    assert row(found["", "anchor point rating"]) == ("rated", "6,600 lb", "", "met")
    assert row(found["M-1", "tie point rating"]) == ("rated", "7,000 lb", "", "met")
    assert found["M-1", "tie point rating"].working == (
        "No tie-down is stronger than the points it holds to."
    )
    assert found["M-1", "tie point rating"].source == "49 CFR 393.108(a)"


def test_tie_points_matter_only_to_direct_tie_downs():
    cargo = machine(routing=Routing.SAME_SIDE)
    assert ("M-1", "tie point rating") not in checks(day(cargo), four(routing=Routing.SAME_SIDE))


def test_rated_points_are_named_where_the_house_holds_unrated_ones():
    house = HouseRules(unrated_points=UnratedPoints.HOLD)
    found = checks(day(machine(tie_point_wll=7000), on=TRAILER, house=house), four())
    assert row(found["M-1", "tie point rating"]) == ("rated", "7,000 lb", "", "met")
    assert row(found["", "anchor point rating"]) == ("rated", "6,600 lb", "", "met")


def test_unrated_points_are_a_demand_where_the_house_holds_them():
    house = HouseRules(unrated_points=UnratedPoints.HOLD)
    found = checks(day(house=house), four())
    assert ("M-1", "tie point rating") not in found
    assert ("", "anchor point rating") not in found
    assert row(found["M-1", "unrated anchor points"]) == ("-", "-", "", "not met")
    assert found["M-1", "unrated anchor points"].working == (
        "Unrated points: hold: no rating; held. "
        "The anchor points of trailer T-1 have no rating (Anchor WLL is blank)."
    )


@pytest.mark.parametrize(
    ("weight", "have", "verdict"),
    [
        (20000, "8", "advice"),  # 10,800 / 10,000 - 1
        (19638, "9.9", "advice"),  # 10,800 / 9,819 - 1 = 0.09991
        (19636, "10", "met"),  # 10,800 / 9,818 - 1 = 0.10002
        (19000, "13.6", "met"),  # 10,800 / 9,500 - 1 = 0.13684
        (22000, "-1.9", "advice"),  # 10,800 / 11,000 - 1 = -0.01818
    ],
)
def test_the_margin_on_an_estimated_weight(weight, have, verdict):
    found = checks(day(machine(weight=weight)), four())["M-1", "margin on estimated weight"]
    assert row(found) == ("10", have, "%", verdict)


def test_a_margin_of_exactly_what_the_house_asks():
    # 10,800 / 9,000 - 1 = 20 %
    house = HouseRules(estimate_margin=Fraction(1, 5))
    found = checks(day(machine(weight=18000), house=house), four())
    assert row(found["M-1", "margin on estimated weight"]) == ("20", "20", "%", "met")
    found = checks(day(machine(weight="18000.01"), house=house), four())
    line = found["M-1", "margin on estimated weight"]
    assert row(line) == ("20", "19.9", "%", "advice")
    assert line.working == "The weight is an estimate. Planned / needed - 1 = 19.9 %."
    assert line.source == "estimated weights (common practice, no source)"


def test_the_smallest_margin_counts():
    # in all 10,800 / 5,000 - 1 = 116 %, at each end 5,400 / 5,000 - 1 = 8 %
    house = HouseRules(each_direction=True)
    found = checks(day(machine(weight=10000), house=house), four())
    assert row(found["M-1", "margin on estimated weight"]) == ("10", "8", "%", "advice")


@pytest.mark.parametrize("known", [WeightFrom.SCALE, WeightFrom.PLATE])
def test_a_known_weight_needs_no_margin(known):
    found = checks(day(machine(weight_from=known)), four())
    assert ("M-1", "margin on estimated weight") not in found


def test_ratings_to_confirm():
    cage = (
        *CAGE,
        gear("N-1", "rope", size="1/2", grade="nylon"),
        gear("THIRD", "wire rope", size="3", breaking_strength=20000),
    )
    plan = [
        *four()[:2],
        tied("rear left", member="N-1", tensioner="T-58"),
        tied("rear right", member="THIRD", tensioner="T-58"),
    ]
    found = checks(day(machine(weight=8000), cage=cage), plan)
    memory = found["M-1", "rating of N-1"]
    assert row(memory) == ("a marking", "525 lb", "", "advice")
    assert memory.working.startswith("Rated from memory: unmarked nylon rope")
    third = found["M-1", "rating of THIRD"]
    assert row(third) == ("a marking", "6,667 lb", "", "advice")
    assert third.working == (
        "Rated by common practice, no source: "
        "one third of the stated breaking strength of 20,000 lb; "
        "393.108(e)(1) takes one quarter of it."
    )
    assert [name for _, name in found if name.startswith("rating of")] == [
        "rating of N-1",
        "rating of THIRD",
    ]


def test_unknown_gear_is_not_to_be_confirmed():
    plan = [replace(four()[0], member="NO-1"), *four()[1:]]
    found = checks(day(cage=with_gear(CAGE, "B-38", wll=None)), plan)
    assert [name for _, name in found if name.startswith("rating of")] == []
