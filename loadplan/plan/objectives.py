"""The stages of the objective, as terms over the variables."""

from __future__ import annotations

from fractions import Fraction

import pulp

from loadplan.plan.sets import Sets
from loadplan.plan.variables import SimpleArticle, Variables

Weighted = list[tuple[pulp.LpVariable, Fraction]]

ONE = Fraction(1)


def loads_ready(sets: Sets, variables: Variables, priority: int) -> Weighted:
    """Stage 1, one part per priority: Σ y_l over the loads of ``priority``, to be greatest."""
    return [
        (variable, ONE)
        for one, variable in zip(sets.loads, variables.ready, strict=True)
        if one.load.priority == priority
    ]


def tie_downs(variables: Variables) -> Weighted:
    """Stage 2: the number of tie-downs, accessories' included."""
    return [(one.variable, Fraction(one.tie_downs)) for one in variables.activities]


def mixed_sets(variables: Variables) -> Weighted:
    """Stage 3: Σ over articles of the pairs that occur beyond the first.

    Σ_q w_iq − m_i for a mixed set, Σ_q w_iq − y_l for a coupled article; Σ_q w_iq for one that
    takes no tie-down, which must not make up for a pair of another.
    """
    terms: Weighted = []
    for ready, articles in zip(variables.ready, variables.articles, strict=True):
        for article in articles:
            if isinstance(article, SimpleArticle):
                if article.mixed is not None:
                    terms += [(used, ONE) for used in article.mixed.used.values()]
                    terms.append((article.mixed.chosen, -ONE))
            else:
                terms += [(used, ONE) for used in article.used.values()]
                if article.sets.tied_down:
                    terms.append((ready, -ONE))
    return terms


def strength_issued(variables: Variables) -> Weighted:
    """Stage 4: the own WLL of every tension member, tensioner and shackle of every tie-down."""
    return [(one.variable, one.strength) for one in variables.activities]
