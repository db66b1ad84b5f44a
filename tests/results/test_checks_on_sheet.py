"""Checks and check-list lines as the load sheet prints them."""

from __future__ import annotations

from loadplan.day.article import CargoClass
from loadplan.outcome.check import Check, Verdict
from loadplan.results.check_rows import check_line, check_lines
from loadplan.results.look_rows import look_lines
from loadplan.tables.facts import DayFacts
from tests.results.build import DAY, EXCAVATOR, chain, plan_of


def _check(**known):
    values = {
        "load": "1",
        "article": "EX-1",
        "name": "four tie-downs",
        "need": "4",
        "have": "5",
        "unit": "tie-downs",
        "verdict": Verdict.MET,
        "working": "On tracks or wheels: at least four: 4 tie-downs.",
        "source": "49 CFR 393.130(c)(1)",
    }
    return Check(**{**values, **known})


def test_a_check_that_is_met():
    assert check_line(_check()) == (
        "met - EX-1: four tie-downs: need 4, have 5 tie-downs (393.130(c)(1))"
    )


def test_a_held_load_shows_what_is_needed():
    assert check_line(_check(have="-", verdict=Verdict.NOT_MET)) == (
        "not met - EX-1: four tie-downs: need 4 tie-downs (393.130(c)(1))"
    )


def test_advice_shows_its_working_and_practice_is_marked():
    line = check_line(
        _check(
            article="",
            name="overall height",
            need="-",
            have="13.5",
            unit="ft",
            verdict=Verdict.ADVICE,
            working="Deck height and highest article: 5. The height of LU-2 is not given.",
            source="overall height (common practice, no source)",
        )
    )
    assert line == (
        "advice - overall height. Deck height and highest article: 5. The height of LU-2 is not "
        "given (common practice, no source)"
    )


def test_what_is_from_memory_says_so():
    line = check_line(_check(name="overall width", source="23 CFR 658.15 (memory)"))
    assert line.endswith("(23 CFR 658.15, from memory)")
    handbook = "NSC Standard 10 s. 89 (from the official handbook, not the regulation text read)"
    assert check_line(_check(source=handbook)).endswith("(NSC 10 s. 89, handbook)")


def test_one_tie_down_is_not_tie_downs():
    assert check_line(_check(need="1", have="1")) == (
        "met - EX-1: four tie-downs: need 1, have 1 tie-down (393.130(c)(1))"
    )
    assert check_line(_check(need="1", have="-", verdict=Verdict.NOT_MET)) == (
        "not met - EX-1: four tie-downs: need 1 tie-down (393.130(c)(1))"
    )


def test_counts_met_alike_share_a_line():
    corners = ("front left", "front right", "rear left", "rear right")
    found = [_check(name=f"tie-down at {one}", need="1", have="1") for one in corners]
    assert check_lines(found) == [
        "met - EX-1: tie-down at front left, front right, rear left, rear right: "
        "need 1 each, have 1 each (393.130(c)(1))"
    ]
    more = [*found[:3], _check(name="tie-down at rear right", need="1", have="2")]
    assert check_lines(more) == [
        "met - EX-1: tie-down at front left, front right, rear left, rear right: "
        "need 1 each, have 1, 1, 1, 2 (393.130(c)(1))"
    ]
    other = _check(article="EX-2", name="tie-down at front left", need="1", have="1")
    short = _check(name="tie-down at rear left", need="1", have="0", verdict=Verdict.NOT_MET)
    assert check_lines([found[0], other, short]) == [
        "met - EX-1, EX-2: tie-down at front left: need 1, have 1 tie-down (393.130(c)(1))",
        "not met - EX-1: tie-down at rear left: need 1, have 0 tie-downs (393.130(c)(1))",
    ]


def test_lines_alike_are_written_once_with_every_article():
    from dataclasses import replace

    other = replace(EXCAVATOR, id="EX-2", cargo_class=CargoClass.TRACKED_MACHINE, accessories=())
    day = replace(DAY, loads=DAY.loads[:1], articles=(EXCAVATOR, other), fixed=())
    corners = ("front left", "front right", "rear left", "rear right")
    tie_downs = (
        *plan_of().tie_downs[:6],
        *(chain(corner, article="EX-2") for corner in corners),
        chain("front left", 2, article="EX-2"),
    )
    gear = tuple(replace(one, quantity=30) if one.quantity > 1 else one for one in day.gear)
    plan = plan_of(replace(day, gear=gear), ready=("1",), tie_downs=tie_downs, shortages=())
    lines = look_lines(DayFacts(plan).loads[0])
    brakes = [line for line in lines if "arking brake" in line]
    assert brakes == ["□ EX-1, EX-2: Parking brake set. (393.130, handbook)"]
    assert len(set(lines)) == len(lines)
