"""The stages as results: the plan's exact values beside the bounds that were proved."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from loadplan.outcome.stage import Stage
from loadplan.outcome.tie_down import TieDown
from loadplan.plan.sets import Sets
from loadplan.plan.stage_cost import STRENGTH, StageCost, every_stage
from loadplan.plan.stages import StagedSolve
from loadplan.problems import PLAN_AGAIN, SolverFailed

_TINY = 1e-4
_NEAR = Fraction(1, 10**5)
_WRONG = (
    "The solver cannot be trusted: the plan does better in {} than it had proved possible. "
    f"{PLAN_AGAIN}"
)


def stages_of(
    sets: Sets, solve: StagedSolve, ready: Sequence[str], tie_downs: Sequence[TieDown]
) -> tuple[Stage, ...]:
    """Every stage in order, with the value recomputed from the plan itself.

    A stage is proved where its value meets its bound and every stage before it is proved.
    """
    bounds = {result.stage.name: result for result in solve.results}
    found: list[Stage] = []
    before, seconds = True, 0.0
    for stage in every_stage(one.load.priority for one in sets.loads):
        value = _value(sets, stage, ready, tie_downs)
        result = bounds.get(stage.name)
        if result is not None and not math.isfinite(result.bound):
            result = None  # the time came before there was any bound
        bound = _trivial(sets, stage) if result is None else _bound(result.bound, value)
        if _contradicts(stage, bound, value):
            if before:
                raise SolverFailed(_WRONG.format(stage.name))
            # Proved for plans that do better in an earlier stage; it says nothing of this one.
            result, bound = None, _trivial(sets, stage)
        proved = before and result is not None and bound == value
        ended = solve.bounder.clock.spent() if result is None else result.seconds
        found.append(
            Stage(
                name=stage.name,
                value=value,
                bound=bound,
                proved=proved,
                greatest=stage.priority > 0,
                unit=sets.day.units.mass if stage is STRENGTH else "",
                seconds=max(0.0, ended - seconds),
                remark="" if before else "given the stages before, which are not proved",
            )
        )
        before, seconds = proved, max(seconds, ended)
    return tuple(found)


def _bound(bound: float, value: Fraction) -> Fraction:
    """The bound as a fraction, the value itself where they differ by rounding alone."""
    if abs(bound - float(value)) <= _TINY + 1e-9 * abs(bound):
        return value
    return Fraction(bound).limit_denominator(1000)


def _contradicts(stage: StageCost, bound: Fraction, value: Fraction) -> bool:
    """Whether the plan does better than any plan was said to be able to, beyond rounding."""
    better = value - bound if stage.priority else bound - value
    return better > _NEAR * max(Fraction(1), abs(value))


def _trivial(sets: Sets, stage: StageCost) -> Fraction:
    """A bound that needs no solving: every load ready, or nothing at all."""
    if not stage.priority:
        return Fraction(0)
    return Fraction(sum(1 for one in sets.loads if one.load.priority == stage.priority))


def _value(
    sets: Sets, stage: StageCost, ready: Sequence[str], tie_downs: Sequence[TieDown]
) -> Fraction:
    if stage.priority:
        going = set(ready)
        same = (one.load for one in sets.loads if one.load.priority == stage.priority)
        return Fraction(sum(1 for load in same if load.id in going))
    if stage.tie_downs:
        return Fraction(len(tie_downs))
    if stage.mixed:
        pairs: dict[str, set[tuple[str, str]]] = {}
        for tie_down in tie_downs:
            if not tie_down.accessory:
                pair = (tie_down.member, tie_down.tensioner or "")
                pairs.setdefault(tie_down.article, set()).add(pair)
        return Fraction(sum(len(found) - 1 for found in pairs.values()))
    return sum((_strength(sets, tie_down) for tie_down in tie_downs), Fraction(0))


def _strength(sets: Sets, tie_down: TieDown) -> Fraction:
    wll = sets.cage.wll
    own = wll[tie_down.member]
    if tie_down.tensioner is not None:
        own += wll[tie_down.tensioner]
    if tie_down.shackle is not None:
        own += wll[tie_down.shackle] * tie_down.shackles
    return own
