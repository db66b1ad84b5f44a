"""Plans of mixed cargo, of a group and of a Canadian day, spoiled in 1,000 ways.

Where the oracle for those days finds a rule broken the judgement disagrees, and nowhere else.
"""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from loadplan.api import plan_day
from loadplan.day.article import Routing
from loadplan.day.gear import Condition
from loadplan.judge.judge import judge
from loadplan.workbook.read import read_day
from tests.judge.section_oracle import CANADA, DIAGONALS, LEGS, MIXED, SIDES, broken

SAMPLES = Path(__file__).parents[2] / "sample_jobs"
SPOILED = 500
PLACES = [
    *SIDES,
    *DIAGONALS,
    *LEGS,
    "ring",
    "boom",
    "over 1",
    "over 2",
    "over 3",
    "over 4",
    "over 5",
]
WAYS = [Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER, Routing.ROUND]


def planned(name):
    """A sample day with its plan; without the pipe, whose rows hang on sizes."""
    day = read_day(SAMPLES / f"{name}.xlsx")
    day = replace(day, articles=tuple(one for one in day.articles if one.id != "PIPE"))
    return day, plan_day(day, time_limit=60)


@pytest.fixture(scope="module", params=["mixed_cargo", "canada_day"])
def sample(request):
    """The day, what its articles ask, the ready loads and the tie-downs of its plan."""
    day, plan = planned(request.param)
    return day, MIXED if request.param == "mixed_cargo" else CANADA, plan.ready, plan.tie_downs


def spoiled(pick, day, ready, tie_downs):
    """The day, the ready loads and the tie-downs with one or two things changed."""
    tie_downs = list(tie_downs)
    for _ in range(pick.choice((1, 1, 2))):
        at = pick.randrange(len(tie_downs))
        one, how = tie_downs[at], pick.randrange(13)
        if how == 0:
            del tie_downs[at]
        elif how == 1:
            tie_downs.append(replace(one, number=pick.choice((1, 2, 3))))
        elif how == 2:
            tie_downs[at] = replace(one, position=pick.choice(PLACES))
        elif how == 3:
            tie_downs[at] = replace(one, routing=pick.choice(WAYS))
        elif how == 4:
            other = pick.choice(tie_downs)
            tie_downs[at] = replace(one, member=other.member, tensioner=other.tensioner)
        elif how == 5:
            tie_downs[at] = replace(one, tensioner=pick.choice((None, "B38", "S4", "none")))
        elif how == 6:
            tie_downs[at] = replace(one, member=pick.choice(day.gear).id)
        elif how == 7:
            other = pick.choice(tie_downs)
            tie_downs[at] = replace(one, article=other.article)
        elif how == 8:
            tie_downs[at] = replace(one, accessory=not one.accessory)
        elif how == 9:
            tie_downs[at] = replace(one, number=pick.choice((0, 1, 2)))
        elif how == 10:
            day = with_gear(day, pick, one)
        elif how == 11:
            extra = pick.choice(("over 2", "over 3", "over 4", "mid left", *SIDES))
            tie_downs.append(replace(one, position=extra, number=pick.choice((1, 2))))
        else:
            left = pick.choice(day.loads).id
            ready = tuple(load for load in ready if load != left)
    return day, ready, tie_downs


def with_gear(day, pick, tied):
    """``day`` with the gear of ``tied`` weaker, fewer or out of use."""
    name = pick.choice([*tied.pieces()])
    gear = next((one for one in day.gear if one.id == name), day.gear[0])
    changed = pick.choice(
        (
            replace(gear, quantity=pick.randrange(gear.quantity + 1)),
            replace(gear, wll=gear.wll * pick.choice((1, 2, 5)) / 8) if gear.wll else gear,
            replace(gear, condition=Condition.HOLD),
        )
    )
    return replace(day, gear=tuple(changed if one.id == gear.id else one for one in day.gear))


def test_the_plan_itself_stands(sample):
    day, asks, ready, tie_downs = sample
    assert len(ready) == len(day.loads)
    assert broken(day, asks, ready, list(tie_downs)) == set()
    assert judge(day, ready, tie_downs).disagreements == ()


def test_the_judgement_disagrees_where_the_oracle_does(sample):
    day, asks, ready, tie_downs = sample
    told = Counter()
    for seed in range(SPOILED):
        wrong = spoiled(random.Random(seed), day, ready, tie_downs)
        oracles = broken(wrong[0], asks, wrong[1], wrong[2])
        judged = judge(*wrong).disagreements
        assert bool(judged) == bool(oracles), (seed, oracles, judged)
        told.update(oracles or {"nothing"})
    assert sum(told.values()) - told["nothing"] >= SPOILED / 2
    assert told["nothing"] >= 30
    assert set(told) >= {"where", "held", "pieces", "place", "strength", "count", "numbers", "pool"}
