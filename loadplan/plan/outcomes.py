"""The stages as results: the plan's exact values beside the bounds that were proved."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction

from loadplan.outcome.stage import Stage
from loadplan.outcome.tie_down import TieDown
from loadplan.plan.alone import least_alone
from loadplan.plan.blocks import Arrays
from loadplan.plan.sets import Sets
from loadplan.plan.stage_cost import STRENGTH, StageCost, every_stage
from loadplan.plan.stages import StagedSolve, StageResult
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
    arrays, going = solve.bounder.master.arrays, _ready_of_each(sets, ready)
    found: list[Stage] = []
    values: dict[StageCost, Fraction] = {}
    before, seconds = True, 0.0
    for stage in every_stage(one.load.priority for one in sets.loads):
        value = _value(sets, stage, ready, tie_downs)
        result = bounds.get(stage.name)
        if result is not None and not (math.isfinite(result.bound) and _fits(result, values)):
            result = None  # the time came before there was any bound, or any of such plans
        alone = _unsolved(arrays, stage, going)
        if result is not None and _contradicts(stage, _bound(result.bound, value), value):
            if before:
                raise SolverFailed(_WRONG.format(stage.name))
            # Proved for plans that do better in an earlier stage; it says nothing of this one.
            result = None
        bound = _bound(alone if result is None else _nearer(stage, result.bound, alone), value)
        proved = before and bound == value
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
        values[stage] = value
        before, seconds = proved, max(seconds, ended)
    return tuple(found)


def _fits(result: StageResult, values: Mapping[StageCost, Fraction]) -> bool:
    """Whether a bound holds for plans whose earlier stages come to ``values``."""
    return all(
        stage in values
        and (values[stage] >= held if stage.priority else float(values[stage]) <= held + _TINY)
        for stage, held in result.held
    )


def _bound(bound: float, value: Fraction) -> Fraction:
    """The bound as a fraction, the value itself where they differ by rounding alone."""
    if abs(bound - float(value)) <= _TINY + 1e-9 * abs(bound):
        return value
    return Fraction(bound).limit_denominator(1000)


def _contradicts(stage: StageCost, bound: Fraction, value: Fraction) -> bool:
    """Whether the plan does better than any plan was said to be able to, beyond rounding."""
    better = value - bound if stage.priority else bound - value
    return better > _NEAR * max(Fraction(1), abs(value))


def _unsolved(arrays: Arrays, stage: StageCost, going: Mapping[int, int]) -> float:
    """A bound that needs no solving: every load that could go alone, or what loads alone take."""
    if not stage.priority:
        return least_alone(arrays, stage, going)
    loads = arrays.sets.loads
    return float(sum(1 for one in loads if one.possible and one.load.priority == stage.priority))


def _nearer(stage: StageCost, one: float, other: float) -> float:
    """The bound of two that says more."""
    return min(one, other) if stage.priority else max(one, other)


def _ready_of_each(sets: Sets, ready: Sequence[str]) -> dict[int, int]:
    """How many loads of each priority are ready."""
    found, going = dict.fromkeys((one.load.priority for one in sets.loads), 0), set(ready)
    for one in sets.loads:
        found[one.load.priority] += one.load.id in going
    return found


def _value(
    sets: Sets, stage: StageCost, ready: Sequence[str], tie_downs: Sequence[TieDown]
) -> Fraction:
    if stage.priority:
        return Fraction(_ready_of_each(sets, ready)[stage.priority])
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
