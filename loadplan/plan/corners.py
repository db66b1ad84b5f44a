"""Corners are filled evenly, and before the middle, where the places of an article are not alike.

Where all are alike the layout alone sees to it. Where a strength is asked of one end or side, each
corner is a class of its own, and only the program can choose how many stand at each.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations

import pulp
from pulp import LpConstraint, LpConstraintGE, LpConstraintLE

from loadplan.plan.constraints import row
from loadplan.plan.variables import CoupledArticle
from loadplan.rules.positions import CORNERS, MIDDLE
from loadplan.rules.requirement import PositionSet

_ROUNDS_BEFORE_MIDDLE = 2


def corners_first(article: CoupledArticle) -> Iterator[LpConstraint]:
    """Each corner once before any again, and the middle only behind the second round."""
    begun = [slot.position for slot in article.sets.slots if not slot.accessory]
    for places in article.sets.demand.position_sets:
        corners = [at for at in places.positions if at in CORNERS]
        yield from _evenly(article, corners, begun)
        if article.middle is not None:
            yield from _middle_last(article, article.middle, places, begun)


def _evenly(
    article: CoupledArticle, corners: list[str], begun: list[str]
) -> Iterator[LpConstraint]:
    """t_p − t_q ≤ 1 − ahead, where p is ``ahead`` of q by what was already on."""
    for one, other in permutations(corners, 2):
        ahead = begun.count(one) - begun.count(other)
        if ahead < 2:
            terms = [(article.at[one], 1.0), (article.at[other], -1.0)]
            yield row(terms, LpConstraintLE, 1 - ahead)
        else:
            terms = [(article.at[one], float(ahead)), (article.at[other], -1.0)]
            yield row(terms, LpConstraintLE, 0)


def _middle_last(
    article: CoupledArticle, used: pulp.LpVariable, places: PositionSet, begun: list[str]
) -> Iterator[LpConstraint]:
    """t_m ≤ room b for the middles, and t_c ≥ (rounds − begun) b for the corners."""
    least = min(_ROUNDS_BEFORE_MIDDLE, places.most_at_each)
    for at in places.positions:
        if at in MIDDLE:
            terms = [(article.at[at], 1.0), (used, -float(places.most_at_each))]
            yield row(terms, LpConstraintLE, 0)
        elif at in CORNERS and begun.count(at) < least:
            terms = [(article.at[at], 1.0), (used, float(begun.count(at) - least))]
            yield row(terms, LpConstraintGE, 0)
