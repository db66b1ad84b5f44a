"""Shortages: what each held load lacks, given what the others took."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
import pulp

from loadplan.day.gear import BINDERS, Gear
from loadplan.outcome.shortage import Shortage
from loadplan.outcome.tie_down import TieDown
from loadplan.plan.objectives import strength_issued
from loadplan.plan.program import build
from loadplan.plan.sets import LoadSets, Sets, obstacles_to
from loadplan.plan.solver import Solver, matrix_of
from loadplan.text import count, mass_down

# Said of a held load that the pieces left in the cage would do for.
TIME = "time to plan it"
_SECONDS = 5.0
_PIECE = 1e6


def shortages(sets: Sets, ready: Sequence[str], tie_downs: Sequence[TieDown]) -> Iterator[Shortage]:
    """What every held load is short of, in workbook order of the loads."""
    going = set(ready)
    out = _pieces_out(sets, tie_downs)
    by_id = {one.load.id: one for one in sets.loads}
    for load in sets.day.loads:
        if load.id in going:
            continue
        one = by_id[load.id]
        found = [*_impossible(one)] or [*_lacking(sets, one, out)]
        yield from found or [_not_proved(one)]


def _impossible(one: LoadSets) -> Iterator[Shortage]:
    for article in one.articles:
        for why in obstacles_to(article):
            yield Shortage(
                load=one.load.id,
                article=article.demand.article.id,
                short_of="no gear in the cage could do it",
                why=why,
            )


def _lacking(sets: Sets, one: LoadSets, out: dict[str, Counter[str]]) -> Iterator[Shortage]:
    """The fewest pieces that would make this load ready with what the others leave."""
    left = {gear.id: _left(sets, one, gear, out) for gear in sets.gear}
    missing = _fewest_missing(sets, one, {gear: number for gear, (number, _) in left.items()})
    if missing is None:
        limit = "" if one.anchors is None else f" ({one.anchors.at_most} anchor points)"
        yield Shortage(
            load=one.load.id,
            short_of="anchor points or winches on the trailer",
            why=f"No set of tie-downs fits the trailer{limit}, whatever the cage holds.",
        )
        return
    for gear in sets.gear:
        pieces = missing.get(gear.id, 0)
        if pieces:
            yield Shortage(
                load=one.load.id,
                short_of=_words(sets, gear),
                pieces=pieces,
                why=_why(sets, gear, *left[gear.id]),
            )


def _not_proved(one: LoadSets) -> Shortage:
    return Shortage(
        load=one.load.id,
        short_of=TIME,
        why="What the other loads leave in the cage is enough for this load alone; the time limit "
        "came before a plan with it was found. Plan again with a longer time limit.",
    )


def _pieces_out(sets: Sets, tie_downs: Sequence[TieDown]) -> dict[str, Counter[str]]:
    """Pieces of each kind of gear on each load: planned, or on by ``Fixed`` though it is held."""
    found: dict[str, Counter[str]] = {}
    planned = {tie_down.load for tie_down in tie_downs}
    for tie_down in tie_downs:
        for gear, pieces in tie_down.pieces().items():
            found.setdefault(gear, Counter())[tie_down.load] += pieces
    for piece in sets.day.fixed:
        if piece.load not in planned:
            found.setdefault(piece.gear, Counter())[piece.load] += 1
    return found


def _left(
    sets: Sets, one: LoadSets, gear: Gear, out: dict[str, Counter[str]]
) -> tuple[int, int | None]:
    """Pieces left for this load at the worst moment of its trip, and that moment."""
    day, mine = sets.day, one.load
    on = {load: n for load, n in out.get(gear.id, Counter()).items() if load != mine.id}
    if gear.kept_on is not None:
        return (gear.usable if gear.kept_on == one.trailer else 0), None
    trips = [(day.load_by_id[load], pieces) for load, pieces in on.items()]
    end = day.free_again(mine, gear)
    moments = {mine.out, *(load.out for load, _ in trips if mine.out < load.out < end)}
    worst, when = 0, mine.out
    for moment in sorted(moments):
        there = sum(n for load, n in trips if load.out <= moment < day.free_again(load, gear))
        if there > worst:
            worst, when = there, moment
    return gear.usable - worst, when


def _fewest_missing(sets: Sets, one: LoadSets, left: dict[str, int]) -> dict[str, int] | None:
    """Pieces of each kind that must be added; None where none of them would do."""
    alone = replace(sets, loads=(replace(one, possible=True),), plenty=True)
    program = build(alone, complete=True)
    variables = program.variables
    (ready,) = variables.ready
    ready.lowBound = 1
    takes: dict[str, list[tuple[pulp.LpVariable, float]]] = {}
    for activity in variables.activities:
        for gear, pieces in activity.uses:
            takes.setdefault(gear, []).append((activity.variable, pieces))
    for gear, variable in variables.protectors[0].items():
        takes.setdefault(gear, []).append((variable, 1))
    extra = {gear: variables.whole(1000) for gear in takes}
    on = Counter(piece.gear for piece in sets.day.fixed if piece.load == one.load.id)
    for number, (gear, terms) in enumerate(takes.items()):
        terms = [*terms, (extra[gear], -1)]
        row = pulp.LpConstraint(
            pulp.LpAffineExpression(terms), pulp.LpConstraintLE, rhs=left[gear] - on[gear]
        )
        program.problem.addConstraint(row, f"p{number}")
    cost = np.zeros(len(variables.all))
    place = {variable: at for at, variable in enumerate(variables.all)}
    for variable, strength in strength_issued(variables):
        cost[place[variable]] += float(strength)
    scale = max(1.0, float(cost.max(initial=0.0))) * 100
    for variable in extra.values():
        cost[place[variable]] = scale
    solver = Solver(matrix_of(program.problem, variables.all))
    solver.price(cost / scale * _PIECE)
    outcome = solver.solve(_SECONDS, 1.0)
    if outcome.values is None:
        return None
    values = outcome.values
    found = {gear: round(float(values[place[v]])) for gear, v in extra.items()}
    return {gear: pieces for gear, pieces in found.items() if pieces > 0}


def _words(sets: Sets, gear: Gear) -> str:
    """The missing piece in the yard's words, e.g. ``lever binder for 3/8 in chain, 5,400 lb``."""
    text = gear.kind.value
    if gear.kind in BINDERS and gear.fits:
        text += f" for {' and '.join(str(size) for size in gear.fits)} chain"
    elif gear.size is not None:
        text = f"{gear.size} {text}"
    if gear.id in sets.cage.wll:
        text += f", {mass_down(sets.cage.wll[gear.id], sets.day.units)} or more"
    return f"{text} (such as {gear.id})"


def _why(sets: Sets, gear: Gear, left: int, when: int | None) -> str:
    owned = count(gear.usable, "usable piece")
    if when is None:
        return f"The trailer's kit has {owned}."
    out = gear.usable - left
    if not out:
        return f"The cage has {owned}, and this load needs more at once."
    return f"The cage has {owned}; {out} are out with other loads at {sets.day.clock(when)}."
