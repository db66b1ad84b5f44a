"""What the pages say: pieces to hook up, sums, outcome; never a verdict the rules do not give."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.outcome.stage import Stage
from loadplan.results.fit import breaks
from loadplan.results.gear_words import never_planned
from loadplan.results.outcome_words import ALL_PROVED, banner_style, headline, proof
from loadplan.results.words import credited_sum, hook_up, needed_sum, place_of, short_of
from loadplan.tables.facts import DayFacts
from tests.results.build import DAY, SHORT, STAGES, chain, plan_of
from tests.results.golden import dumps


@pytest.fixture(scope="module")
def facts():
    return DayFacts(plan_of())


def test_what_to_hook_up(facts):
    excavator, lumber = facts.loads[0].articles[0], facts.loads[1].articles[0]
    assert hook_up(excavator.tie_downs[0]) == "chain CH-1 + ratchet binder B-1"
    assert hook_up(lumber.tie_downs[0]) == (
        "winch strap WS-1 + trailer winch + 2 edge protectors EP-1"
    )
    shackled = replace(
        excavator.tie_downs[0], tie_down=chain("front left", shackle="SH-1", shackles=2)
    )
    assert hook_up(shackled) == "chain CH-1 + ratchet binder B-1 + 2 shackles SH-1"


def test_positions():
    assert place_of(chain("front left")) == "front left"
    assert place_of(chain("front left", 2)) == "front left (2)"


def test_sums_in_the_head(facts):
    # 1/2 x 21,900 = 10,950; 5 x 1/2 x 5,400 = 13,500.
    digger = facts.loads[0].articles[0]
    asked = digger.aggregate
    assert needed_sum(asked, Fraction(21900), DAY.units) == "1/2 x 21,900 lb = 10,950 lb needed"
    assert credited_sum(digger, DAY.units) == "5 x 1/2 x 5,400 = 13,500 lb credited"
    over = facts.loads[1].articles[0]
    assert credited_sum(over, DAY.units) == "3 x 5,400 = 16,200 lb credited"


def test_a_need_prints_up_and_a_strength_down(facts):
    asked = replace(facts.loads[0].articles[0].aggregate, need=Fraction("10950.2"))
    assert needed_sum(asked, Fraction("21900.4"), DAY.units) == (
        "1/2 x 21,900.4 lb = 10,951 lb needed"
    )


def test_short_of_names_each_thing_once():
    other = replace(SHORT, short_of="anchor points", pieces=None)
    assert short_of([SHORT, SHORT, other]) == (
        "2 x binder for 3/8 in chain, 3,000 lb or more; anchor points"
    )
    assert short_of([]) == "gear"


def test_a_proved_day():
    plan = plan_of()
    assert headline(plan) == "2 of 3 loads ready, 1 held; every stage is proved"
    assert banner_style(plan) == "held banner"
    assert proof(plan) == [ALL_PROVED]


def test_least_is_said_only_when_proved():
    late = Stage(
        name="strength issued",
        value=Fraction(84250),
        bound=Fraction("84000.5"),
        proved=False,
        unit="lb",
    )
    plan = plan_of(stages=(*STAGES[:3], late), remarks=("The time limit was reached.",))
    assert proof(plan) == [
        "Proved: loads ready at priority 1, tie-downs and mixed sets.",
        "Not proved: strength issued: 84,250 lb planned, and 84,000.5 lb is not ruled out.",
        "The time limit was reached.",
    ]
    assert "least" not in " ".join([headline(plan), *proof(plan)]).casefold()


def test_a_stage_that_no_plan_betters_but_rests_on_an_unproved_one():
    late = replace(STAGES[3], proved=False)
    plan = plan_of(stages=(*STAGES[:3], late))
    assert proof(plan)[1] == (
        "Not proved: strength issued: 84,250 lb planned, "
        "which no plan with the same figures before can better."
    )


def test_banners_of_a_day_without_held_loads():
    day = replace(DAY, loads=DAY.loads[:2], articles=DAY.articles[:2], fixed=())
    plan = plan_of(day, shortages=())
    assert banner_style(plan) == "ready banner"
    late = replace(STAGES[3], proved=False)
    assert banner_style(replace(plan, stages=(late,))) == "care banner"


def test_gear_that_is_never_planned_has_its_reason(facts):
    assert never_planned(facts) == [
        ("B-OLD", "lever binder", 1, "its condition is scrap"),
        (
            *("CH-?", "chain", 2),
            "its WLL is not known: chain with the mark G75, which is no grade of the table, and "
            "no WLL or breaking strength is given",
        ),
    ]


@pytest.mark.parametrize("word", ["legal", "safe", "compliant", "approved"])
def test_no_page_gives_a_verdict_of_law_or_safety(word):
    for text in dumps().values():
        assert not re.search(rf"\b{word}\b", text, re.IGNORECASE)


class _Flow:
    """Rows of 100 points; parts begin at rows 0, 3, 5 and 9; 12 rows in all."""

    sections: frozenset[int] = frozenset()

    starts = ((0, 0.0), (3, 300.0), (5, 500.0), (9, 900.0))
    points = 1200.0


def test_pages_begin_where_a_part_begins():
    # 0-5 is 500 points; with the next part it would be 900: break at row 5; then 5-12 is 700.
    assert breaks(_Flow(), 700) == [5]
    assert breaks(_Flow(), 450) == [3, 5, 9]
    assert breaks(_Flow(), 1200) == []


class _Sections(_Flow):
    """The same, where a section begins with row 3, and with row 9 the next."""

    sections = frozenset({0, 3, 9})


def test_a_page_ends_with_a_section_where_that_leaves_it_well_filled():
    # To row 5 it would be 500 of 550 points; the section from row 3 on would be 900 - 300 = 600.
    assert breaks(_Sections(), 550) == [5, 9]
    # Of 600 points 300 is half; 3-9 is 600 and goes on one page, as does 9-12.
    assert breaks(_Sections(), 600) == [3, 9]
    assert breaks(_Sections(), 650) == [5, 9]
