"""What the plan of a purchase shows of it, and whether the two agree."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from loadplan.outcome.day_plan import DayPlan
from loadplan.problems import SolverFailed
from loadplan.purchase.point import Point


def counts(plan: DayPlan) -> tuple[int, ...]:
    """Loads ready at each priority of the day."""
    going = set(plan.ready)
    loads = plan.day.loads
    return tuple(
        sum(1 for load in loads if load.priority == priority and load.id in going)
        for priority in sorted({load.priority for load in loads})
    )


def order(plan: DayPlan) -> tuple[Fraction, ...]:
    """The stages after the ready loads, which come out the same."""
    return tuple(stage.value for stage in plan.stages if not stage.greatest)


def seen(point: Point, plan: DayPlan) -> Point:
    """``point`` with what its plan shows."""
    return replace(point, held=plan.held, proved=point.proved and agrees(point, plan))


def agrees(point: Point, plan: DayPlan) -> bool:
    """Whether the plan has the loads ready that the purchase is for.

    Raises ``SolverFailed`` where one proves what the other rules out.
    """
    ready = counts(plan)
    proved = all(stage.proved for stage in plan.stages if stage.greatest)
    if (ready > point.ready and point.proved) or (ready < point.ready and proved):
        raise SolverFailed(
            f"The plan with the purchase has {ready} loads ready by priority, and the purchase is "
            f"for {point.ready}. Nothing was written. Send the day workbook to whoever keeps this "
            "program for you."
        )
    return ready >= point.ready
