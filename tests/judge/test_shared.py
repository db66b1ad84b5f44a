"""Anchor points and winches, shared by the articles of a load."""

from dataclasses import replace

from loadplan.day.article import Accessory, Routing
from tests.judge.build import (
    broken,
    checks,
    crate,
    day,
    four,
    machine,
    over,
    row,
    tied,
    trailer,
)

# M-1: four direct and one accessory; G-1: two over
CARGO = (machine(accessories=(Accessory(name="boom"),)), crate())
PLAN = [*four(), tied("boom", accessory=True), over(1), over(2)]


def test_anchor_points_are_shared():
    # 4 + 1 + 2 x 2 = 9
    assert broken(day(*CARGO, on=trailer(anchors=9)), PLAN) == []
    assert broken(day(*CARGO, on=trailer(anchors=8)), PLAN) == [
        "Load L-1: the tie-downs use 9 anchor points, and the trailer has 8 "
        "(anchor points used (common practice, no source))."
    ]
    found = checks(day(*CARGO, on=trailer(anchors=10)), PLAN)["", "anchor points"]
    assert row(found) == ("9", "10", "anchor points", "met")
    assert found.working == (
        "A tie-down to the article or an accessory uses one, one around or over it two: "
        "1 or 2 each = anchor points used. Trailer T-1 has: 10 anchor points."
    )
    found = checks(day(*CARGO, on=trailer(anchors=8)), PLAN)["", "anchor points"]
    assert row(found) == ("9", "8", "anchor points", "not met")


def test_same_side_uses_two():
    cargo = machine(routing=Routing.SAME_SIDE)
    plan = four(routing=Routing.SAME_SIDE)
    assert broken(day(cargo, on=trailer(anchors=8)), plan) == []
    assert broken(day(cargo, on=trailer(anchors=7)), plan) == [
        "Load L-1: the tie-downs use 8 anchor points, and the trailer has 7 "
        "(anchor points used (common practice, no source))."
    ]


def test_a_count_that_is_not_given_does_not_limit():
    found = checks(day(*CARGO), PLAN)["", "anchor points"]
    assert row(found) == ("9", "-", "anchor points", "advice")
    assert found.working == "How many anchor points there are is not given."
    assert broken(day(*CARGO), PLAN) == []


def test_no_anchor_points_at_all():
    assert broken(day(on=trailer(anchors=0)), four()) == [
        "Load L-1: the tie-downs use 4 anchor points, and the trailer has 0 "
        "(anchor points used (common practice, no source))."
    ]


def strapped(number):
    """``number`` winch straps over the crate."""
    return [over(place, member="S-4") for place in range(1, number + 1)]


def test_winches_are_shared():
    cargo = (crate(), crate(id="G-2"))
    plan = [*strapped(2), *(replace(one, article="G-2") for one in strapped(2))]
    assert broken(day(*cargo, on=trailer(winches=4)), plan) == []
    assert broken(day(*cargo, on=trailer(winches=3)), plan) == [
        "Load L-1: the plan has 4 winch straps, and the trailer 3 winches "
        "(winches used (common practice, no source))."
    ]
    found = checks(day(*cargo, on=trailer(winches=5)), plan)
    assert row(found["", "winches"]) == ("4", "5", "winches", "met")
    assert row(found["", "winch rating"]) == ("rated", "unrated", "", "advice")
    assert found["", "winch rating"].working == (
        "Winches have no rating in the day workbook and do not limit the figures: "
        "read their marking."
    )


def test_a_winch_strap_without_trailer():
    whole = day(crate())
    whole = replace(whole, loads=(replace(whole.loads[0], trailer=None),))
    assert broken(whole, strapped(2)) == [
        "Load L-1: the plan has 2 winch straps, and the trailer 0 winches "
        "(winches used (common practice, no source))."
    ]


def test_winches_are_mentioned_only_where_there_are_any():
    assert ("", "winches") not in checks(day(), four())
    found = checks(day(on=trailer(winches=6)), four())
    assert row(found["", "winches"]) == ("0", "6", "winches", "met")
    assert ("", "winch rating") not in found
