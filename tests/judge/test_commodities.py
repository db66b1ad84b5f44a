"""Hand-made plans of commodities and groups, through the real demands."""

from dataclasses import replace

from loadplan.day.article import CargoClass, Routing, Stands, WeightFrom
from loadplan.day.house import HouseRules, UnratedPoints
from tests.judge.build import CAGE, broken, checks, crate, day, gear, machine, row, tied, trailer

BINDERS = gear("B-12", "ratchet binder", fits="3/8, 1/2", wll=13000, quantity=20)
C_12 = gear("C-12", "chain", size="1/2", grade="70", length=30)
CHAINS = (*CAGE, BINDERS, C_12)
CHAIN = {"member": "C-12", "tensioner": "B-12"}


def rock(**known):
    """A boulder with an unstable base of 14,002 lb: ring 7,001 lb, each leg 3,500.5 lb."""
    return machine(
        cargo_class=CargoClass.BOULDER,
        details="unstable base",
        **{"weight": 14002, "length": None, **known},
    )


def ring_and_legs(leg="C-PLAIN"):
    """A ring of 1/2 in grade 70, 11,300 lb, and four legs, in plain 3/8 in 2,650 lb each."""
    ring = tied("ring", routing=Routing.ROUND, **CHAIN)
    legs = (tied(f"leg {number}", member=leg, tensioner="B-12") for number in range(1, 5))
    return [ring, *legs]


def test_a_boulder_with_an_unstable_base():
    # 4 x 1/2 x 4,700 of 5/16 in would do, but B-12 does not take it; 3/8 in: 4 x 1/2 x 6,600
    whole = day(rock(), cage=CHAINS, on=trailer(anchors=4))
    assert broken(whole, ring_and_legs("C-38")) == []
    found = checks(whole, ring_and_legs("C-38"))
    assert row(found["M-1", "WLL of ring"]) == ("7,001", "11,300", "lb", "met")
    assert row(found["M-1", "WLL of each leg"]) == ("3,501", "6,600", "lb", "met")
    assert row(found["M-1", "aggregate WLL"]) == ("7,001", "13,200", "lb", "met")
    assert row(found["", "anchor points"]) == ("4", "4", "anchor points", "met")
    # the legs hold the ring, not a point of the article
    assert ("M-1", "tie point rating") not in found


def test_weak_legs():
    # 4 x 1/2 x 2,650 = 5,300
    where = "Load L-1, article M-1"
    found = broken(day(rock(), cage=CHAINS), ring_and_legs())
    assert [sentence.split(" (")[0] for sentence in found] == [
        f"{where}: aggregate WLL needs 7,001 lb, and the plan has 5,300 lb",
        f"{where}: WLL of each leg needs 3,501 lb, and the plan has 2,650 lb",
    ]


def test_a_ring_that_runs_to_the_vehicle():
    plan = ring_and_legs("C-38")
    plan[0] = replace(plan[0], routing=Routing.DIRECT)
    assert broken(day(rock(), cage=CHAINS), plan) == [
        "Load L-1, article M-1, ring, number 1: it runs direct, and round is asked for."
    ]


def test_legs_hold_no_tie_point_that_could_be_unrated():
    house = HouseRules(unrated_points=UnratedPoints.HOLD)
    on = trailer(anchor_wll=9000)
    assert broken(day(rock(), cage=CHAINS, on=on, house=house), ring_and_legs("C-38")) == []


def pipes(**known):
    """Pipe of 36 in, 40,000 lb, 28 ft: three across, one at each end, lengthwise two of 3/8 in."""
    return machine(
        cargo_class=CargoClass.CONCRETE_PIPE,
        details="diameter 36 in",
        **{"weight": 40000, "length": 28, **known},
    )


def across(*positions, **known):
    """Chains over the pipe at ``positions``."""
    return [tied(position, routing=Routing.OVER, **{**CHAIN, **known}) for position in positions]


HELD_DOWN = across("front pipe", "rear pipe", "over 1", "over 2", "over 3")


def test_one_strong_lengthwise_chain_counts_for_two():
    whole = day(pipes(), cage=CHAINS)
    plan = [*across("lengthwise 1"), *HELD_DOWN]
    assert broken(whole, plan) == []
    assert row(checks(whole, plan)["M-1", "lengthwise tie-downs"]) == (
        *("2", "2", "tie-downs"),
        "met",
    )
    two = across("lengthwise 2", "lengthwise 3", member="C-38")
    assert broken(whole, [*two, *HELD_DOWN]) == []


def test_a_light_chain_in_the_place_of_a_strong_one():
    light = across("lengthwise 1", member="C-38")
    (sentence,) = broken(day(pipes(), cage=CHAINS), [*light, *HELD_DOWN])
    assert "needs chain or wire rope, 1/2 in or more, and the plan has chain 3/8 in" in sentence
    (sentence,) = broken(
        day(pipes(), cage=CHAINS), [*across("lengthwise 2", member="C-38"), *HELD_DOWN]
    )
    assert "lengthwise tie-downs needs 2 tie-downs, and the plan has 1" in sentence


def bundles(stands, **known):
    """Two crates of 3,000 lb and 8 ft each in the group ``PAIR``: 3,000 lb and two each."""
    return [
        crate(id=name, group="PAIR", stands=stands, weight_from=WeightFrom.SCALE, **known)
        for name in ("P-1", "P-2")
    ]


def straps(*positions, article="PAIR"):
    """Ratchet straps of 2,000 lb."""
    return [
        tied(position, article=article, routing=Routing.OVER, member="S-2", tensioner=None)
        for position in positions
    ]


def test_articles_that_touch_share_their_tie_downs():
    whole = day(*bundles(Stands.SIDE_BY_SIDE))
    assert broken(whole, straps("over 1", "over 2")) == []
    found = checks(whole, straps("over 1", "over 2"))
    assert row(found["PAIR", "aggregate WLL"]) == ("3,000", "4,000", "lb", "met")
    assert row(found["PAIR", "tie-downs by length of P-2"]) == ("2", "2", "tie-downs", "met")
    assert {article for article, _ in found} == {"PAIR", ""}


def test_articles_in_line_have_their_own():
    whole = day(*bundles(Stands.IN_LINE))
    plan = straps("P-1 over 1", "P-1 over 2", "P-2 over 1", "P-2 over 2")
    assert broken(whole, plan) == []
    assert broken(whole, [*plan[:3], *straps("P-1 over 3")]) == [
        "Load L-1, article PAIR: tie-downs by length of P-2 needs 2 tie-downs, "
        "and the plan has 1 (49 CFR 393.110(b))."
    ]


def test_a_group_that_is_held():
    found = checks(day(*bundles(Stands.STACKED)), [], ready=())
    assert row(found["PAIR", "aggregate WLL"]) == ("3,000", "-", "lb", "not met")
