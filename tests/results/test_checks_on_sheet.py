"""Checks and check-list lines as the load sheet prints them."""

from __future__ import annotations

from loadplan.day.article import CargoClass
from loadplan.outcome.check import Check, Verdict
from loadplan.results.check_rows import check_line
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
    assert line.endswith("(23 CFR 658.15 (memory))")


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
