"""Corners are filled evenly where strength is asked at each end and side."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from loadplan.api import plan_day
from loadplan.day.article import CargoClass, Routing
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.rules.positions import CORNERS
from tests.plan.build import binder, chain, day, machine

EACH_WAY = HouseRules(each_direction=True)


@pytest.mark.parametrize(("length", "least"), [(12, 3), (25, 4), (52, 7)])
def test_corners_are_even_for_cargo_tied_at_its_ends(length, least):
    """Not blocked: 2 + ceil((length - 10) / 10) tie-downs, so 3, 4 and 7."""
    cargo = replace(
        machine("G", "1", 2500, length), cargo_class=CargoClass.GENERAL, routing=Routing.DIRECT
    )
    gear = [chain("a", 3150, 12), binder("p", 4000, 12)]
    plan = plan_day(replace(day([Load(id="1")], [cargo], gear), house=EACH_WAY), time_limit=30)
    assert plan.judgement.disagreements == ()
    assert plan.ready == ("1",)
    assert len(plan.tie_downs) == least
    standing = Counter(tie_down.position for tie_down in plan.tie_downs)
    at_corners = [standing[corner] for corner in CORNERS]
    assert max(at_corners) - min(at_corners) <= 1


def test_the_middle_comes_behind_the_second_round():
    """A machine of 82 ft asks for 2 + 8 = 10: two at each corner and the two middles."""
    gear = [chain("a", 3150, 12), binder("p", 4000, 12)]
    whole = day([Load(id="1")], [machine("M", "1", 6000, 82)], gear)
    plan = plan_day(replace(whole, house=EACH_WAY), time_limit=30)
    assert plan.judgement.disagreements == ()
    standing = Counter(tie_down.position for tie_down in plan.tie_downs)
    assert [standing[corner] for corner in CORNERS] == [2, 2, 2, 2]
    assert len(plan.tie_downs) == 10
