"""What a held load lacks beside the plan as it stands: what the ready loads leave, and no more.

Where the reason is not found in the time this can still be told. Another plan may do without the
pieces, so it is no proof that the load must stay.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from loadplan.day.day import Day
from loadplan.day.gear import Gear
from loadplan.judge.pool import pieces_out
from loadplan.outcome.day_plan import DayPlan
from loadplan.plan.clock import Clock
from loadplan.plan.sets import Sets
from loadplan.shortfall.servable import Servable


def lacking_beside(plan: DayPlan, sets: Sets, clock: Clock) -> dict[str, dict[str, int]]:
    """The fewest pieces by kind with which each held load could go beside the plan.

    Loads of which that is not told in the time are left out. ``sets`` are the day's own: kinds of
    which nothing is left are asked for too.
    """
    taken = pieces_out(plan.day, plan.tie_downs, plan.ready)
    found: dict[str, dict[str, int]] = {}
    for load in plan.held:
        if clock.over():
            break
        ask = Servable.of(left_beside(plan.day, taken, load), sets, clock, [load])
        answer = ask.extra([load], (), ask.kinds)
        if answer.least and answer.extra:
            found[load] = answer.extra
    return found


def left_beside(day: Day, taken: Mapping[str, Mapping[str, int]], load: str) -> Day:
    """The day with ``load`` alone, and of each kind the pieces that are in all the time it is out.

    ``taken`` are the pieces of each kind out on each load.
    """

    def left(gear: Gear) -> Gear:
        by_load = {other: n for other, n in taken.get(gear.id, {}).items() if other != load}
        return replace(gear, quantity=max(0, gear.quantity - _most_out(day, gear, by_load, load)))

    return replace(
        day,
        loads=(day.load_by_id[load],),
        articles=tuple(article for article in day.articles if article.load == load),
        gear=tuple(left(gear) for gear in day.gear),
        fixed=tuple(piece for piece in day.fixed if piece.load == load),
    )


def _most_out(day: Day, gear: Gear, by_load: dict[str, int], load: str) -> int:
    """The most pieces of ``gear`` that other loads have out at a moment while ``load`` has it."""
    mine = day.load_by_id[load]
    end = day.free_again(mine, gear)
    spans = [
        (other.out, day.free_again(other, gear), pieces)
        for other, pieces in ((day.load_by_id[one], n) for one, n in by_load.items())
    ]
    moments = [mine.out, *(out for out, _, _ in spans if mine.out < out < end)]
    return max(sum(n for out, back, n in spans if out <= at < back) for at in moments)
