"""Planning from Python: a day in, a judged plan out, a results workbook on disk."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

from loadplan.day.day import Day
from loadplan.judge.judge import judge
from loadplan.outcome.day_plan import DayPlan
from loadplan.outcome.progress import Progress
from loadplan.outcome.tie_down import Shown
from loadplan.problems import JudgementDisagrees

_EXPLAINING = 25.0  # seconds at the most for the reasons and the ways out of all held loads


def plan_day(
    day: Day,
    *,
    time_limit: Fraction | float | None = None,
    progress: Callable[[Progress], None] | None = None,
    known: Shown | None = None,
    explained: bool = True,
) -> DayPlan:
    """Plan ``day`` and judge the plan with code that never saw the solver.

    ``time_limit`` is in seconds and overrides the day's own. ``progress`` is called now and then
    during long stages. ``known`` is a plan that is there already, as ids of ready loads and their
    tie-downs, taken where the time comes before a better one. ``explained``: say of every held
    load why it stays and what the ways out are, in up to 25 s more. Raises ``SolverFailed`` where
    the solver breaks, ``JudgementDisagrees`` where the judgement finds a rule or a pool limit
    broken; a short cage is a result, not an error.
    """
    from loadplan.plan.solve_day import solve_day

    plan = solve_day(day, time_limit=time_limit, progress=progress, known=known)
    judgement = judge(day, plan.ready, plan.tie_downs)
    if judgement.disagreements:
        raise JudgementDisagrees(judgement.disagreements)
    plan = dataclasses.replace(plan, judgement=judgement)
    if not explained or not plan.held:
        return plan
    from loadplan.shortfall.explain import explain

    limit = float(day.time_limit if time_limit is None else time_limit)
    return explain(plan, min(limit, _EXPLAINING))


def write_results(plan: DayPlan, path: Path | str, *, force: bool = False) -> None:
    """Write the results workbook of ``plan`` to ``path``, whole or not at all.

    Raises ``SaveFailed`` where the file exists and ``force`` is not given, or cannot be written.
    """
    from loadplan.results.save import save_results

    save_results(plan, Path(path), force=force)
