"""Positions, numbers and the order in which places are filled."""

from dataclasses import replace

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing
from loadplan.day.gear import FixedPiece
from loadplan.day.house import HouseRules
from tests.judge.build import (
    CAGE,
    CORNERS,
    broken,
    crate,
    day,
    four,
    machine,
    over,
    tied,
    with_gear,
)

ARTICLE = "Load L-1, article M-1"


def fixed(position, number=1, gear="C-38", article="M-1"):
    """One piece already on."""
    return FixedPiece(load="L-1", article=article, position=position, number=number, gear=gear)


def test_a_place_the_article_does_not_have():
    assert broken(day(), [*four(), tied("over 1")]) == [
        f"{ARTICLE}, over 1, number 1: that is not a position of the article."
    ]


def test_a_tie_down_at_no_place_does_not_count():
    plan = [*four()[:3], tied("tail")]
    assert broken(day(), plan) == [
        f"{ARTICLE}, tail, number 1: that is not a position of the article.",
        f"{ARTICLE}: four tie-downs needs 4 tie-downs, and the plan has 3 (49 CFR 393.130(c)(1)).",
        f"{ARTICLE}: tie-down at rear right needs 1 tie-down, and the plan has 0 "
        "(49 CFR 393.130(c)(2)).",
        f"{ARTICLE}: aggregate WLL needs 10,000 lb, and the plan has 8,100 lb (49 CFR 393.106(d)).",
    ]


def test_an_accessory_the_article_does_not_have():
    assert broken(day(), [*four(), tied("boom", accessory=True)]) == [
        f"{ARTICLE}, boom, number 1: that is not an unpinned accessory of the article."
    ]


def test_a_position_is_no_accessory_and_an_accessory_no_position():
    cargo = machine(accessories=(Accessory(name="boom"),))
    plan = [*four(), tied("boom"), tied("mid left", accessory=True)]
    assert broken(day(cargo), plan) == [
        f"{ARTICLE}, boom, number 1: that is not a position of the article.",
        f"{ARTICLE}, mid left, number 1: that is not an unpinned accessory of the article.",
        f"{ARTICLE}: tie-down of boom needs 1 tie-down, and the plan has 0 (49 CFR 393.130(b)(1)).",
    ]


def test_a_pinned_accessory_takes_no_tie_down():
    cargo = machine(accessories=(Accessory(name="blade", pinned=True),))
    assert broken(day(cargo), four()) == []
    assert broken(day(cargo), [*four(), tied("blade", accessory=True)]) == [
        f"{ARTICLE}, blade, number 1: the accessory is pinned and takes no tie-down."
    ]


def test_a_pinned_accessory_is_no_position():
    cargo = machine(accessories=(Accessory(name="blade", pinned=True),))
    assert broken(day(cargo), [*four(), tied("blade")]) == [
        f"{ARTICLE}, blade, number 1: that is not a position of the article."
    ]


def test_an_accessory_takes_exactly_one():
    cargo = machine(accessories=(Accessory(name="boom"),))
    boom = tied("boom", accessory=True)
    assert broken(day(cargo), [*four(), boom]) == []
    assert broken(day(cargo), [*four(), boom, replace(boom, number=2)]) == [
        f"{ARTICLE}: tie-down of boom needs 1 tie-down, and the plan has 2 (49 CFR 393.130(b)(1))."
    ]


def test_numbers_are_different():
    assert broken(day(), [*four(), tied("front left")]) == [
        f"{ARTICLE}, front left: number 1 is given twice."
    ]


@pytest.mark.parametrize("number", [0, 2, -1])
def test_numbers_run_from_one(number):
    plan = [replace(four()[0], number=number), *four()[1:]]
    assert broken(day(), plan) == [
        f"{ARTICLE}, front left: tie-downs are numbered {number}, and must be numbered from 1 up."
    ]


def test_only_what_is_given_twice_is_named():
    plan = [*four(), tied("front left"), tied("front left", 2)]
    found = broken(day(house=HouseRules(most_per_position=3)), plan)
    assert f"{ARTICLE}, front left: number 1 is given twice." in found


def test_numbers_do_not_skip():
    plan = [*four(), tied("front left", 3)]
    assert broken(day(), plan) == [
        f"{ARTICLE}, front left: tie-downs are numbered 1 and 3, and must be numbered from 1 up."
    ]


def test_a_fixed_number_stays_and_the_others_take_the_lowest():
    whole = day(fixed=(fixed("front left", 2),))
    assert broken(whole, [tied("front left", 2), *four()[1:]]) == []
    assert broken(whole, [*four(), tied("front left", 2)]) == []


def test_most_per_position():
    plan = [tied(corner, number) for number in (1, 2) for corner in CORNERS]
    assert broken(day(), plan) == []
    assert broken(day(), [*plan, tied("rear left", 3)]) == [
        f"{ARTICLE}, rear left: 3 tie-downs stand there, and 2 may."
    ]
    assert broken(day(house=HouseRules(most_per_position=3)), [*plan, tied("rear left", 3)]) == []
    assert broken(day(house=HouseRules(most_per_position=1)), plan[:5]) == [
        f"{ARTICLE}, front left: 2 tie-downs stand there, and 1 may."
    ]


def test_each_corner_once_before_any_twice():
    vehicle = machine(cargo_class=CargoClass.LIGHT_VEHICLE, weight=4000, length=12)
    # 12 ft: 2 + 2/10 rounded up = 3
    plan = [tied("front left"), tied("rear left"), tied("rear left", 2)]
    assert broken(day(vehicle), plan) == [
        f"{ARTICLE}: rear left has 2 tie-downs while front right has 0; "
        "each corner is filled once before any is filled again."
    ]
    assert broken(day(vehicle), [*plan[:2], tied("rear right")]) == []


def test_a_third_place_waits_for_the_second():
    house = HouseRules(most_per_position=3)
    plan = [*four(), tied("front left", 2), tied("front left", 3)]
    assert broken(day(house=house), plan) == [
        f"{ARTICLE}: front left has 3 tie-downs while front right has 1; "
        "each corner is filled once before any is filled again."
    ]


def test_corners_before_the_middle():
    plan = [tied(corner, number) for number in (1, 2) for corner in CORNERS]
    assert broken(day(), [*plan, tied("mid left")]) == []
    assert broken(day(), [*plan[:7], tied("mid left")]) == [
        f"{ARTICLE}: mid left is used while rear right has 1 of 2 tie-downs; "
        "the corners are filled before the middle."
    ]
    one = HouseRules(most_per_position=1)
    assert broken(day(house=one), [*four(), tied("mid right")]) == []


def test_the_middle_waits_for_two_rounds_and_no_more():
    house = HouseRules(most_per_position=3)
    plan = [tied(corner, number) for number in (1, 2) for corner in CORNERS]
    assert broken(day(house=house), [*plan, tied("mid left")]) == []


def test_fixed_gear_forces_the_order():
    whole = day(fixed=(fixed("mid left"), fixed("front left"), fixed("front left", 2)))
    plan = [*four(), tied("front left", 2), tied("mid left")]
    assert broken(whole, plan) == []
    assert broken(whole, [*plan, tied("mid right")]) == [
        f"{ARTICLE}: mid right is used while front right has 1 of 2 tie-downs; "
        "the corners are filled before the middle."
    ]
    assert broken(whole, [*plan, tied("mid left", 2)]) == [
        f"{ARTICLE}: mid left is used while front right has 1 of 2 tie-downs; "
        "the corners are filled before the middle."
    ]


def test_same_side_tie_downs_stand_at_the_corners_too():
    cargo = machine(routing=Routing.SAME_SIDE)
    assert broken(day(cargo), four(routing=Routing.SAME_SIDE)) == []


def test_over_places_are_filled_in_order():
    where = "Load L-1, article G-1"
    assert broken(day(crate()), [over(1), over(2)]) == []
    assert broken(day(crate()), [over(1), over(3)]) == [
        f"{where}: over 3 is used while over 2 is not; they are filled in order."
    ]
    assert broken(day(crate()), [over(1), over(4)]) == [
        f"{where}: over 4 is used while over 2 is not; they are filled in order."
    ]
    twice = [over(1), replace(over(1), number=2)]
    assert broken(day(crate()), twice) == [f"{where}, over 1: 2 tie-downs stand there, and 1 may."]


def test_fixed_gear_over_the_article_stays_where_it_is():
    whole = day(crate(), fixed=(fixed("over 4", gear="S-2", article="G-1"),))
    assert broken(whole, [over(1), over(4)]) == []
    assert broken(whole, [over(1), over(3), over(4)]) == [
        "Load L-1, article G-1: over 3 is used while over 2 is not; they are filled in order."
    ]


def test_there_are_twenty_places_over():
    long = crate(length=200)  # 2 + 190/10 = 21
    plan = [over(number) for number in range(1, 22)]
    whole = day(long, cage=with_gear(CAGE, "S-2", quantity=30))
    assert broken(whole, plan) == [
        "Load L-1, article G-1, over 21, number 1: that is not a position of the article.",
        "Load L-1, article G-1: tie-downs by length needs 21 tie-downs, and the plan has "
        "20 (49 CFR 393.110(b)).",
    ]
