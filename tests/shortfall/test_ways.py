"""Which loads the ways out of a held load are looked for among."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.outcome.held import Conflict
from loadplan.plan.clock import Clock
from loadplan.shortfall.planned import Planner
from loadplan.shortfall.ways import Ways
from tests.shortfall.test_explain import two_loads


class Recording(Planner):
    """Notes which loads are asked about."""

    asked: list[set[str]]

    def goes(self, day: Day, loads: Collection[str], *first: Collection[str]) -> bool | None:
        self.asked.append(set(loads))
        return False


def test_only_a_load_of_every_conflict_is_swapped_or_delayed() -> None:
    def conflict(*loads: str) -> Conflict:
        return Conflict(
            loads=loads,
            gear=("B38",),
            first=0,
            last=1,
            usable=6,
            lacking=(("B38", 2),),
            irreducible=True,
            least=True,
        )

    loads = [Load(id=name, out=at * 3600, back=(at + 5) * 3600) for at, name in enumerate("abcd")]
    day = replace(two_loads(), loads=tuple(loads), articles=())
    conflicts = [conflict("a", "b", "d"), conflict("b", "c", "d")]
    planner = Recording(Clock(60))
    planner.asked = []
    assert Ways(day, "d", "abc", ["d"], conflicts, planner).find() == ()
    assert {"a", "c", "d"} in planner.asked  # without b, who stands in every conflict
    assert {"b", "c", "d"} not in planner.asked
    assert {"a", "b", "d"} not in planner.asked
    alone = Recording(Clock(60))
    alone.asked = []
    assert Ways(day, "d", "abc", ["d"], [conflict("d")], alone).find() == ()
    assert alone.asked == []
