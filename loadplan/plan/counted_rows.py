"""Constraints that say more of counted articles than whole numbers need: a far better bound.

Notation as in :mod:`loadplan.plan.constraints`; moreover p_iq article i has pair q alone, m_i it
has several pairs. None cuts off a set without a tie-down to spare, and no stage wants another.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import pairwise

import pulp
from pulp import LpConstraint, LpConstraintEQ, LpConstraintGE, LpConstraintLE

from loadplan.plan.constraints import Terms, row
from loadplan.plan.counted import Counted, Pair
from loadplan.plan.reach import Reach
from loadplan.plan.variables import CoupledArticle


def tiers_counted(
    ready: pulp.LpVariable, article: CoupledArticle, counted: Counted
) -> Iterator[LpConstraint]:
    """Σ_{a: v_a ≥ t} z_ia + c_t (Σ_a z_ia − n) ≥ c_t y_l for every tier t.

    n is the fewest tie-downs that do, c_t how many of n must be of the tier or above, if all those
    are of the best and all others of the next tier below. With more than n the row asks nothing.
    """
    (pieces,) = article.pieces
    values, fewest = counted.reach.values, min(counted.reach.alone)
    for tier, must in strong_ones(counted.reach):
        terms: Terms = [
            (variable, must + int(value >= tier))
            for variable, value in zip(pieces, values, strict=True)
        ]
        yield row([*terms, (ready, -must * (fewest + 1))], LpConstraintGE, 0)


def strong_ones(reach: Reach) -> Iterator[tuple[int, int]]:
    """Tiers, highest first, and how many tie-downs of the fewest that do must be as strong.

    Only where a lower tier does not ask as many.
    """
    tiers, fewest, before = sorted(set(reach.values)), min(reach.alone), 0
    for below, tier in reversed(list(pairwise(tiers))):
        gain = tiers[-1] - below
        must = max(0, -(-(reach.need - fewest * below) // gain))
        if must > before:
            yield tier, must
            before = must


def alone_or_mixed(
    ready: pulp.LpVariable, article: CoupledArticle, counted: Counted
) -> Iterator[LpConstraint]:
    """Σ_q p_iq + m_i = y_l; Σ_q (w_iq − p_iq) ≥ 2 m_i; and for every pair q 0 ≤ w_iq − p_iq ≤ m_i.

    Of pair q there are Σ_a z_ia, as many as do alone or more if p_iq = 1, and no more than do with
    any shackles; beside other pairs fewer than that.
    """
    mixed, used = counted.mixed, article.used
    if mixed is None:
        return
    alone: Terms = [(variable, 1) for variable in counted.alone.values()]
    yield row([*alone, (mixed, 1), (ready, -1)], LpConstraintEQ, 0)
    beside: Terms = [(used[pair], 1) for pair in counted.alone]
    beside += [(variable, -1) for variable in counted.alone.values()]
    yield row([*beside, (mixed, -2)], LpConstraintGE, 0)
    ((place,), (pieces,)) = article.sets.classes, article.pieces
    of_pair: dict[Pair, Terms] = defaultdict(list)
    for assembly, variable in zip(place.assemblies, pieces, strict=True):
        of_pair[assembly.pair].append((variable, 1))
    for pair, most in counted.pairs.items():
        one, several, terms = counted.alone[pair], used[pair], of_pair[pair]
        if not most.alone:
            one.upBound = 0
        yield row([(several, 1), (one, -1)], LpConstraintGE, 0)
        yield row([(several, 1), (one, -1), (mixed, -1)], LpConstraintLE, 0)
        yield row([*terms, (one, -most.least)], LpConstraintGE, 0)
        yield row(
            [*terms, (several, -most.beside), (one, most.beside - most.alone)], LpConstraintLE, 0
        )
