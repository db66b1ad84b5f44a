"""Planning a day: sets, program, staged solve, and the plan that comes of it."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import numpy as np

from loadplan.day.day import Day
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.progress import Progress
from loadplan.outcome.tie_down import Shown
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.decode import decode
from loadplan.plan.greedy import greedy
from loadplan.plan.large import MANY_LOADS, LargeSolve
from loadplan.plan.outcomes import stages_of
from loadplan.plan.program import build
from loadplan.plan.sets import Sets, sets_of
from loadplan.plan.small import SmallSolve
from loadplan.plan.stage_cost import every_stage
from loadplan.plan.stages import StagedSolve
from loadplan.plan.start import begun

Array = np.ndarray[Any, np.dtype[Any]]


def solve_day(
    day: Day,
    *,
    time_limit: Fraction | float | None = None,
    progress: Callable[[Progress], None] | None = None,
    known: Shown | None = None,
) -> DayPlan:
    """The plan of ``day``, not judged yet; see :func:`loadplan.api.plan_day`.

    ``known`` is a plan that is there already, taken where the time comes before a better one.
    """
    clock = Clock(float(day.time_limit if time_limit is None else time_limit), progress)
    sets = sets_of(day)
    solve = _solve(sets, clock)
    master = solve.bounder.master
    if solve.values is None and known is not None:
        ready, tie_downs = known
    else:
        ready, tie_downs = decode(master, _values(solve))
    stages = stages_of(sets, solve, ready, tie_downs)
    remarks = () if all(stage.proved for stage in stages) else (_unproved(clock),)
    return DayPlan(
        day=day,
        ready=ready,
        tie_downs=tie_downs,
        stages=stages,
        remarks=remarks,
    )


def _solve(sets: Sets, clock: Clock) -> StagedSolve:
    arrays = Arrays(sets)
    large = len(sets.loads) > MANY_LOADS
    bounder = begun(arrays, build(sets, complete=False), clock, large=large)
    solve = LargeSolve(bounder) if large else SmallSolve(bounder)
    solve.run()
    return solve


def _values(solve: StagedSolve) -> Array:
    """The plan found, or one by hand rules where none was found or that is better."""
    values, master = solve.values, solve.bounder.master
    if values is not None and (solve.bounder.large or solve.settled()):
        return values  # a large day starts from the hand rules
    rough = greedy(master)
    if values is None:
        return rough
    stages = every_stage(solve.bounder.selection.priority)
    return min(values, rough, key=lambda one: [master.value(stage, one) for stage in stages])


def _unproved(clock: Clock) -> str:
    limit = f"time limit of {clock.seconds:g} s"
    why = f"Not everything could be proved; the search ended before the {limit}."
    if clock.over():
        why = f"The {limit} came before everything was proved."
    return f"{why} This is the best plan found; a better one may exist."
