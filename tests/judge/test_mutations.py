"""Spoiled plans: the judgement disagrees with exactly those that break a rule.

Hand-made plans of random days are changed in every way of :mod:`tests.judge.mutate`. Which rules
each changed plan breaks is for the oracle to say, and the judgement must name the same ones.
"""

from __future__ import annotations

import random
from functools import cache

import pytest

from loadplan.judge.judge import judge
from tests.judge import oracle
from tests.judge.classify import PHRASES, rules
from tests.judge.days import hand_plan, random_day, tightened, with_some_fixed
from tests.judge.mutate import Plan, mutations

SEEDS = range(20)
# Where a piece is unknown or no tension member, further rules about it are moot.
MOOT = {"unknown gear", "tension member"}


@cache
def plans() -> tuple[Plan, ...]:
    """Good plans: some with gear to spare, some with none, some with pieces already on."""
    found = []
    for seed in SEEDS:
        day = random_day(seed)
        ready, tie_downs = hand_plan(day, seed)
        if not tie_downs:
            continue
        if seed % 2:
            day = with_some_fixed(day, tie_downs, seed)
        if seed % 3:
            day = tightened(day, ready, tie_downs)
        found.append(Plan(day, ready, tuple(tie_downs)))
    return tuple(found)


@cache
def broken_by(name: str) -> tuple[tuple[frozenset[str], frozenset[str]], ...]:
    """For each plan spoiled in the way ``name``: rules broken, and rules disagreed about."""
    found = []
    for number, plan in enumerate(plans()):
        spoiled = mutations()[name](random.Random(f"{number} {name}"), plan)
        oracles = oracle.broken(spoiled.day, spoiled.ready, list(spoiled.tie_downs))
        judged = judge(spoiled.day, spoiled.ready, spoiled.tie_downs)
        found.append((frozenset(oracles), frozenset(rules(judged.disagreements))))
    return tuple(found)


def test_there_are_plans_of_every_sort():
    assert len(plans()) >= 18
    assert sum(len(plan.ready) for plan in plans()) >= 50
    assert sum(bool(plan.day.fixed) for plan in plans()) >= 8
    assert len(mutations()) >= 70


def test_good_plans_stand():
    for plan in plans():
        assert oracle.broken(plan.day, plan.ready, list(plan.tie_downs)) == set()
        assert judge(plan.day, plan.ready, plan.tie_downs).disagreements == ()


@pytest.mark.parametrize("name", mutations())
def test_every_broken_rule_is_disagreed_with(name):
    for number, (oracles, judged) in enumerate(broken_by(name)):
        if oracles & MOOT:
            assert judged, (number, oracles)
        else:
            assert judged == oracles, number


def test_every_rule_was_broken():
    broken = {rule for name in mutations() for found, _ in broken_by(name) for rule in found}
    assert broken == set(PHRASES.values())
    spoiled = sum(bool(found) for name in mutations() for found, _ in broken_by(name))
    assert spoiled >= 700
