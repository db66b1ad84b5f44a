"""What an article asks of its tie-downs, as checks and as disagreements."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, AddedWeight, CargoClass, Routing
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from tests.judge.build import (
    CAGE,
    CORNERS,
    broken,
    checks,
    crate,
    day,
    exact,
    four,
    gear,
    machine,
    over,
    row,
    tied,
    trailer,
    with_gear,
)

ARTICLE = "Load L-1, article M-1"


def test_the_checks_of_a_machine():
    found = checks(day(), four())
    named = {name: row(check) for (article, name), check in found.items() if article == "M-1"}
    assert named == {
        "four tie-downs": ("4", "4", "tie-downs", "met"),
        "tie-down at front left": ("1", "1", "tie-downs", "met"),
        "tie-down at front right": ("1", "1", "tie-downs", "met"),
        "tie-down at rear left": ("1", "1", "tie-downs", "met"),
        "tie-down at rear right": ("1", "1", "tie-downs", "met"),
        "tie-downs by length": ("3", "4", "tie-downs", "met"),
        "aggregate WLL": ("10,000", "10,800", "lb", "met"),
        "tie point rating": ("rated", "unrated", "", "advice"),
        "margin on estimated weight": ("10", "8", "%", "advice"),
    }
    strength = found["M-1", "aggregate WLL"]
    assert strength.load == "L-1"
    assert strength.source == "49 CFR 393.106(d)"
    assert strength.working == (
        "One half of the weight: 1/2 x 20,000 lb = 10,000 lb. "
        "Each tie-down from the vehicle to the article counts with: 1/2 of its WLL = 1/2 x WLL. "
        "Planned: 4 x 1/2 x 5,400 = 10,800 lb."
    )
    assert found["M-1", "four tie-downs"].working == (
        "On tracks or wheels: at least four: 4 tie-downs."
    )
    assert found["M-1", "tie-downs by length"].working == (
        "Not blocked forward, over 10 ft: two, and one for each further 10 ft or part of it: "
        "2 + (18 - 10) / 10, rounded up = 3 tie-downs."
    )
    assert found["M-1", "tie-down at front left"].working == (
        "At least one at: front left; 1 tie-down."
    )


@pytest.mark.parametrize("missing", range(4))
def test_every_corner_is_needed(missing):
    plan = four()
    gone = plan.pop(missing).position
    plan.append(tied(CORNERS[(missing + 1) % 4], 2))
    found = broken(day(), plan)
    assert (
        f"{ARTICLE}: tie-down at {gone} needs 1 tie-down, and the plan has 0 "
        "(49 CFR 393.130(c)(2))." in found
    )


def test_length_asks_for_more_than_the_corners():
    long = machine(length=35)  # 2 + 25/10 rounded up = 5
    assert broken(day(long), four()) == [
        f"{ARTICLE}: tie-downs by length needs 5 tie-downs, and the plan has 4 (49 CFR 393.110(b))."
    ]
    assert broken(day(long), [*four(), tied("front left", 2)]) == []
    house = HouseRules(length_count_on_machines=False)
    assert broken(day(long, house=house), four()) == []


def test_the_ends_of_general_cargo():
    # 8 ft: two; direct, so one front and one rear
    cargo = crate(routing=Routing.DIRECT)
    plan = [tied("front left", article="G-1"), tied("front right", article="G-1")]
    assert broken(day(cargo), plan) == [
        "Load L-1, article G-1: tie-down at the rear needs 1 tie-down, and the plan has "
        "0 (one tie-down at the front and one at the rear "
        "(common practice, no source))."
    ]


def test_a_light_vehicle_is_held_at_both_ends():
    vehicle = machine(cargo_class=CargoClass.LIGHT_VEHICLE, weight=4000, length=9)
    assert broken(day(vehicle), [tied("front left"), tied("rear right")]) == []
    assert broken(day(vehicle), [tied("front left")]) == [
        f"{ARTICLE}: two tie-downs needs 2 tie-downs, and the plan has 1 (49 CFR 393.128).",
        f"{ARTICLE}: tie-down at the rear needs 1 tie-down, and the plan has 0 (49 CFR 393.128).",
        f"{ARTICLE}: tie-downs by length needs 2 tie-downs, and the plan has 1 "
        "(49 CFR 393.110(b)).",
    ]


@pytest.mark.parametrize(
    ("weight", "holds"), [("21600", True), ("21600.01", False), ("21599.99", True)]
)
def test_the_aggregate_is_exact(weight, holds):
    # 4 x 1/2 x 5,400 = 10,800 = 1/2 x 21,600
    assert (broken(day(machine(weight=weight)), four()) == []) is holds


def test_added_weight_counts():
    cargo = machine(weight=21000)
    cargo = replace(cargo, added=(AddedWeight(what="bucket", weight=Fraction(601)),))
    assert broken(day(cargo), four()) == [
        f"{ARTICLE}: aggregate WLL needs 10,801 lb, and the plan has 10,800 lb (49 CFR 393.106(d))."
    ]


def test_a_need_met_never_looks_unmet():
    # 1/2 x 21,599.5 = 10,799.75; 4 x 1/2 x 5,399.9 = 10,799.8
    cage = with_gear(CAGE, "B-38", wll="5399.9")
    found = checks(day(machine(weight="21599.5"), cage=cage), four())
    assert row(found["M-1", "aggregate WLL"]) == ("10,799.8", "10,799.8", "lb", "met")
    cage = with_gear(CAGE, "B-38", wll=Fraction(16199, 3))
    # 2 x 16,199/3 = 10,799 1/3 = 1/2 x 21,598 2/3
    cargo = machine(weight=Fraction(64796, 3))
    found = checks(day(cargo, cage=cage), four())
    assert row(found["M-1", "aggregate WLL"]) == ("10,799.333333", "10,799.333333", "lb", "met")


def test_the_weakest_part_counts():
    # chain 6,600, binder 5,400, shackle 9,500: 5,400
    cargo = machine(shackles=1)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    assert row(checks(day(cargo), plan)["M-1", "aggregate WLL"])[1] == "10,800"
    weak = with_gear(CAGE, "SH-1", wll=5000)
    assert row(checks(day(cargo, cage=weak), plan)["M-1", "aggregate WLL"])[1] == "10,000"
    # unmarked 3/8 in chain: 2,650
    plain = four(member="C-PLAIN")
    assert row(checks(day(), plain)["M-1", "aggregate WLL"]) == (
        *("10,000", "5,300", "lb"),
        "not met",
    )


def test_points_cap():
    anchors = trailer(anchor_wll=5000)
    assert row(checks(day(on=anchors), four())["M-1", "aggregate WLL"])[1] == "10,000"
    tie_points = machine(tie_point_wll=4900)
    assert row(checks(day(tie_points), four())["M-1", "aggregate WLL"])[1] == "9,800"
    around = machine(tie_point_wll=4900, routing=Routing.SAME_SIDE)
    plan = four(routing=Routing.SAME_SIDE)
    assert row(checks(day(around), plan)["M-1", "aggregate WLL"])[1] == "10,800"


def test_over_counts_whole():
    found = checks(day(crate()), [over(1), over(2, member="ST-1")])["G-1", "aggregate WLL"]
    # strap 2,000 + strapping 1,190
    assert row(found) == ("1,500", "3,190", "lb", "met")
    assert found.working.endswith("Planned: 1 x 2,000 + 1 x 1,190 = 3,190 lb.")


def test_accessories_count_only_where_the_house_says_so():
    cargo = machine(weight=24000, accessories=(Accessory(name="boom"),))
    plan = [*four(), tied("boom", accessory=True, member="C-516")]
    # 10,800 < 12,000; with 1/2 x 4,700 it is 13,150
    assert row(checks(day(cargo), plan)["M-1", "aggregate WLL"]) == (
        *("12,000", "10,800", "lb"),
        "not met",
    )
    house = HouseRules(accessory_counts=True)
    found = checks(day(cargo, house=house), plan)["M-1", "aggregate WLL"]
    assert row(found) == ("12,000", "13,150", "lb", "met")
    assert found.working.endswith("Planned: 4 x 1/2 x 5,400 + 1 x 1/2 x 4,700 = 13,150 lb.")


def test_the_tie_point_does_not_cap_an_accessory():
    cargo = machine(weight=20000, tie_point_wll=4000, accessories=(Accessory(name="boom"),))
    plan = [*four(), tied("boom", accessory=True)]
    found = checks(day(cargo, house=HouseRules(accessory_counts=True)), plan)
    # 4 x 1/2 x 4,000 + 1/2 x 5,400 = 10,700
    assert row(found["M-1", "aggregate WLL"]) == ("10,000", "10,700", "lb", "met")


def test_least_wll_each():
    house = HouseRules(least_wll_each=Fraction(5000))
    assert broken(day(house=house), four()) == []
    plan = [*four()[:3], tied("rear right", member="C-516")]
    assert broken(day(house=house), plan) == [
        f"{ARTICLE}: least WLL each needs 5,000 lb, and the plan has 4,700 lb "
        "(house rule Least WLL each)."
    ]
    found = checks(day(house=house), plan)["M-1", "least WLL each"]
    assert row(found) == ("5,000", "4,700", "lb", "not met")
    assert row(checks(day(house=house), [])["M-1", "least WLL each"]) == (
        *("5,000", "-", "lb"),
        "met",
    )


def test_the_least_wll_is_printed_in_whole_pounds():
    house = HouseRules(least_wll_each=Fraction("5000.5"))
    plan = [*four()[:3], tied("rear right", member="X")]
    cage = (*CAGE, gear("X", "chain", size="3/8", wll="4700.5"))
    found = checks(day(house=house, cage=cage), plan)["M-1", "least WLL each"]
    assert row(found) == ("5,001", "4,700", "lb", "not met")


def test_gear_without_a_rating_is_of_no_wll():
    house = HouseRules(least_wll_each=Fraction(5000))
    plan = [*four()[:3], tied("rear right", member="NO-1")]
    found = checks(day(house=house), plan)["M-1", "least WLL each"]
    assert row(found) == ("5,000", "0", "lb", "not met")


def test_chain_only():
    cargo = machine(chain_only=True, weight=16000)
    assert broken(day(cargo), four()) == []
    strapped = [*four()[:3], tied("rear right", member="S-2", tensioner=None)]
    assert broken(day(cargo), strapped) == [
        f"{ARTICLE}: chain only needs chain, and the plan has chain and ratchet strap "
        "(day workbook 'Cargo')."
    ]
    assert row(checks(day(cargo), [])["M-1", "chain only"]) == ("chain", "-", "", "met")


def test_no_straps_on_machines():
    house = HouseRules(straps_on_machines=False)
    cargo = machine(weight=16000)
    roped = [*four()[:3], tied("rear right", member="W-38", tensioner="T-58")]
    assert broken(day(cargo, house=house), roped) == []
    strapped = [*four()[:3], tied("rear right", member="S-2", tensioner=None)]
    assert broken(day(cargo, house=house), strapped) == [
        f"{ARTICLE}: no straps on machines needs chain, rope, steel strapping or wire rope, "
        "and the plan has chain and ratchet strap (house rule Straps on machines)."
    ]
    assert broken(day(cargo), strapped) == []


@pytest.mark.parametrize(("reach", "holds"), [(20, True), ("20.01", False), (5, True)])
def test_reach(reach, holds):
    found = broken(day(machine(reach=reach)), four())
    assert found == (
        []
        if holds
        else [f"{ARTICLE}: reach needs 20.01 ft, and the plan has 20 ft (day workbook 'Cargo')."]
    )


def test_reach_is_printed_to_two_decimals():
    cage = with_gear(CAGE, "C-38", length="19.999")
    found = checks(day(machine(reach="20.004"), cage=cage), four())["M-1", "reach"]
    assert row(found) == ("20.01", "19.99", "ft", "not met")


def test_a_piece_of_unknown_length_does_not_reach():
    cage = with_gear(CAGE, "C-38", length=None)
    assert broken(day(machine(reach=1), cage=cage), four()) == [
        f"{ARTICLE}: reach needs 1 ft, and the plan has 0 ft (day workbook 'Cargo')."
    ]
    assert broken(day(cage=cage), four()) == []


def test_an_unknown_tension_member_has_no_property():
    cargo = machine(reach=1, chain_only=True, sharp_edges=True, weight=16000)
    plan = [*four()[:3], tied("rear right", member="NO-1", tensioner=None)]
    assert broken(day(cargo), plan) == [
        f"{ARTICLE}, rear right, number 1: NO-1 is not gear of this day.",
        f"{ARTICLE}: chain only needs chain, and the plan has chain and unknown gear "
        "(day workbook 'Cargo').",
        f"{ARTICLE}: reach needs 1 ft, and the plan has 0 ft (day workbook 'Cargo').",
        f"{ARTICLE}: edge protectors needs 1 edge protectors each, and the plan has "
        "0 edge protectors each (49 CFR 393.104(f)).",
    ]


def test_protectors_direct():
    cargo = machine(sharp_edges=True, weight=8000)
    strapped = four(member="S-2", tensioner=None)
    protected = [replace(one, protectors=(("EP-1", 1),)) for one in strapped]
    assert broken(day(cargo), protected) == []
    assert broken(day(cargo), [*protected[:3], strapped[3]]) == [
        f"{ARTICLE}: edge protectors needs 1 edge protectors each, and the plan has "
        "0 to 1 edge protectors each (49 CFR 393.104(f))."
    ]
    found = checks(day(cargo), [])["M-1", "edge protectors"]
    assert row(found) == ("1", "-", "edge protectors each", "met")
    # chain takes none
    found = checks(day(cargo), four())["M-1", "edge protectors"]
    assert row(found) == ("1", "no straps", "edge protectors each", "met")


def test_protectors_over_may_be_of_mixed_kinds():
    cage = (*CAGE, gear("EP-2", "edge protector"))
    cargo = crate(sharp_edges=True)
    plan = [
        over(1, protectors=(("EP-1", 2),)),
        over(2, protectors=(("EP-1", 1), ("EP-2", 1))),
    ]
    assert broken(day(cargo, cage=cage), plan) == []
    plan[1] = replace(plan[1], protectors=(("EP-2", 1),))
    assert broken(day(cargo, cage=cage), plan) == [
        "Load L-1, article G-1: edge protectors needs 2 edge protectors each, and the plan has "
        "1 to 2 edge protectors each (49 CFR 393.104(f))."
    ]


def test_accessories_are_free_of_what_the_row_asks():
    cargo = machine(
        weight=16000,
        chain_only=True,
        reach=18,
        sharp_edges=True,
        shackles=1,
        accessories=(Accessory(name="boom"),),
    )
    house = HouseRules(least_wll_each=Fraction(5000), straps_on_machines=False)
    plan = [replace(one, shackle="SH-1", shackles=1) for one in four()]
    boom = tied("boom", accessory=True, member="S-2", tensioner=None)
    cage = with_gear(CAGE, "S-2", length=None)
    assert broken(day(cargo, cage=cage, house=house), [*plan, boom]) == []


def test_each_direction():
    house = HouseRules(each_direction=True)
    assert broken(day(machine(weight=10800), house=house), four()) == []
    # 1/2 x 10,802 = 5,401; at each end 2 x 1/2 x 5,400
    assert broken(day(machine(weight=10802), house=house), four()) == [
        f"{ARTICLE}: aggregate WLL at the {end} needs 5,401 lb, and the plan has 5,400 lb "
        "(house rule Aggregate in each direction)."
        for end in ("front", "rear", "left", "right")
    ]


def test_a_metric_day():
    cargo = machine(weight=9000, length=5)
    # table 3/8 in grade 70: 2,990 kg; binder 2,450 kg; 4 x 1/2 x 2,450 = 4,900
    cage = with_gear(CAGE, "B-38", wll=2450)
    found = checks(day(cargo, cage=cage, units=Units.METRIC), four())["M-1", "aggregate WLL"]
    assert row(found) == ("4,500", "4,900", "kg", "met")
    bare = with_gear(CAGE, "B-38", wll=9000)
    found = checks(day(cargo, cage=bare, units=Units.METRIC), four())["M-1", "aggregate WLL"]
    assert row(found) == ("4,500", "5,980", "kg", "met")
    assert exact({"length": "1.5"}) == {"length": Fraction(3, 2)}
