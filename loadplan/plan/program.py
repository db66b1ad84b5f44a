"""The program of a day: every variable and every constraint, as a PuLP problem.

It comes in two forms that mean the same. The complete form holds every set of tie-downs an article
can have, through the tier patterns. The other leaves the sets of simple articles out: they are
added as columns, the few that a good plan can contain (:mod:`loadplan.plan.master`).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pulp
from pulp import LpConstraint

from loadplan.plan import constraints
from loadplan.plan.activity import Activity
from loadplan.plan.corners import corners_first
from loadplan.plan.counted_rows import alone_or_mixed, tiers_counted
from loadplan.plan.sets import Sets
from loadplan.plan.variables import (
    CoupledArticle,
    SimpleArticle,
    Variables,
    make_variables,
)


@dataclass(slots=True)
class Program:
    """The problem with the variables it is made of; the stages give it its objectives.

    ``rows`` finds the row of a shared constraint: ("article", load, article), ("anchors", load),
    ("winches", load) or ("edges", load).
    """

    sets: Sets
    variables: Variables
    problem: pulp.LpProblem
    rows: dict[tuple[str | int, ...], int]


def build(sets: Sets, *, complete: bool, pairs: bool = True, patterns: bool = True) -> Program:
    """The program of ``sets``, complete or with the sets of simple articles left out.

    Without ``pairs`` nothing counts the pairs of a set: for objectives that mixed sets do not
    matter to, and much smaller. Without ``patterns`` a complete program has no tier patterns: a
    weaker linear bound, smaller still.
    """
    variables = make_variables(sets, complete=complete, patterns=patterns, pairs=pairs)
    problem = pulp.LpProblem("day", pulp.LpMinimize)
    rows: dict[tuple[str | int, ...], int] = {}
    for number, (name, constraint) in enumerate(_rows(sets, variables, complete, pairs)):
        problem.addConstraint(constraint, f"r{number}")
        if name:
            rows[name] = number
    return Program(sets, variables, problem, rows)


def _rows(
    sets: Sets, variables: Variables, complete: bool, pairs: bool
) -> Iterator[tuple[tuple[str | int, ...], LpConstraint]]:
    activities: list[list[Activity]] = [[] for _ in sets.loads]
    for activity in variables.activities:
        activities[activity.load].append(activity)
    for index, load in enumerate(sets.loads):
        ready = variables.ready[index]
        for place, article in enumerate(variables.articles[index]):
            if isinstance(article, SimpleArticle):
                yield ("article", index, place), constraints.one_set_each(ready, article)
                rows = _mixed_rows(article, pairs)
            else:
                rows = _coupled_rows(ready, article, pairs)
            for constraint in rows:
                yield (), constraint
        for loose in variables.loose[index]:
            for constraint in constraints.loose_tied(ready, loose):
                yield (), constraint
        for name, shared in (
            ("anchors", constraints.anchors_enough(load, activities[index])),
            ("winches", constraints.winches_enough(load, activities[index])),
            (
                "edges",
                constraints.edges_protected(load, variables.protectors[index], activities[index]),
            ),
        ):
            for constraint in shared:
                yield (name, index), constraint
    if complete and not sets.plenty:
        for constraint in constraints.pools(sets, variables):
            yield (), constraint


def _mixed_rows(article: SimpleArticle, pairs: bool) -> Iterator[LpConstraint]:
    mixed = article.mixed
    if mixed is None:
        return
    yield constraints.one_pattern(mixed)
    yield from constraints.strong_enough(mixed)
    yield from constraints.longer_is_strong(mixed)
    yield constraints.mixed_within_room(mixed)
    if pairs:
        yield from constraints.pairs_used(mixed)


def _coupled_rows(
    ready: pulp.LpVariable, article: CoupledArticle, pairs: bool
) -> Iterator[LpConstraint]:
    yield from constraints.accessories_tied(ready, article)
    yield from constraints.slots_finished(ready, article)
    yield from constraints.pieces_at_positions(article)
    yield from constraints.counts_met(ready, article)
    yield from constraints.coupled_strength(ready, article)
    yield from corners_first(article)
    if article.counted is not None:
        yield from tiers_counted(ready, article, article.counted)
        yield from alone_or_mixed(ready, article, article.counted)
    elif pairs:
        yield from constraints.coupled_pairs(article)
