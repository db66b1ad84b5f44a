"""Walking through an article's sets: against trying every set, and against a program of its own."""

from __future__ import annotations

from itertools import product
from random import Random

import numpy as np
import pytest

from loadplan.day.load import Load
from loadplan.plan.blocks import Arrays, Block
from loadplan.plan.cheapest_set import cheapest_set
from loadplan.plan.clock import Clock
from loadplan.plan.pricing import cheapest
from loadplan.plan.scarcity import scarcity
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.sets import sets_of
from loadplan.plan.tie_set import TieSet
from loadplan.plan.within import places_within
from tests.plan.build import binder, chain, day, machine


def block_of(random: Random) -> tuple[Block, dict[int, int]]:
    """A machine that may take two kinds of chain and two of binder, few of each."""
    gear = [chain(f"c{n}", random.choice((2400, 3100, 5000)), random.randint(1, 5)) for n in (0, 1)]
    gear += [
        binder(f"b{n}", random.choice((2600, 3300, 5400)), random.randint(1, 5)) for n in (0, 1)
    ]
    weight = random.randrange(6_000, 15_000, 500)
    sets = sets_of(day([Load(id="L")], [machine("M", "L", weight)], gear))
    arrays = Arrays(sets)
    have = {at: piece.usable for at, piece in enumerate(sets.gear)}
    return arrays.blocks[0], have | {-1: 0}


def cost(
    block: Block,
    one: TieSet,
    price: list[float],
    per_pair: float,
    rounds: dict[tuple[int, int], float],
) -> float:
    """The price of ``one`` by its definition."""
    uses = sum(number * block.menu.uses[place] for place, number in one.chosen)
    on_top = sum(worth * (int(uses[gear]) // k) for (gear, k), worth in rounds.items())
    own = sum(number * price[place] for place, number in one.chosen)
    return own + per_pair * one.mixed(block) + on_top


def every_set(block: Block, have: dict[int, int]) -> list[TieSet]:
    """Every set that is enough and that there is gear for, by trying all."""
    found = []
    for numbers in product(range(6), repeat=block.main):
        one = TieSet(tuple((place, n) for place, n in enumerate(numbers) if n))
        uses = sum(n * block.menu.uses[place] for place, n in one.chosen)
        if one.chosen and one.enough(block) and all(uses[g] <= have[g] for g in range(len(uses))):
            found.append(one)
    return found


@pytest.mark.parametrize("number", range(40))
def test_the_cheapest_and_all_least_sets_within_the_budget(number: int) -> None:
    random = Random(number)
    block, have = block_of(random)
    price = [float(random.randint(0, 9)) for _ in range(block.main)]
    per_pair = random.choice((0.0, 4.0))
    gear = range(block.menu.uses.shape[1])
    rounds = {(g, random.randint(2, 4)): float(random.randint(1, 9)) for g in gear}
    prices = {one: cost(block, one, price, per_pair, rounds) for one in every_set(block, have)}
    budget = float(random.randint(10, 60))
    walk = enumerate_sets(block, price, per_pair, budget, have, lambda: None, rounds)
    found = {one: spent for spent, one in walk}
    assert found == {one: prices[one] for one in found}, "each is a set, at its price"
    within = {one for one, spent in prices.items() if spent <= budget}
    assert found.keys() <= within
    assert min(found.values(), default=None) == min((prices[one] for one in within), default=None)
    assert within == {one for one in within if any(fewer(least, one) for least in found)}
    usable = {place: pieces for place, pieces in have.items() if place >= 0}
    any_worth = {place: float(random.randint(0, 5)) for place in usable}
    good = scarcity(block, np.array(price), per_pair, have, Clock(10))
    for scarce in ({}, any_worth, good):
        again = enumerate_sets(block, price, per_pair, budget, have, lambda: None, rounds, scarce)
        assert {one: spent for spent, one in again} == found, "whatever a piece is worth"
    for most in (1, 2):
        few = {one: spent for one, spent in found.items() if one.mixed(block) < most}
        walk = enumerate_sets(
            block, price, per_pair, budget, have, lambda: None, rounds, most_pairs=most
        )
        assert {one: spent for spent, one in walk} == few, "no set of more pairs"
        bound = cheapest(block, np.array(price), per_pair, most)
        assert all(bound <= spent + 1e-9 for spent in few.values())


def test_no_place_of_a_set_is_left_out_at_the_price_of_the_set() -> None:
    left_out = 0
    for number in range(20):
        random = Random(number)
        block, have = block_of(random)
        price = [float(random.randint(1, 9)) for _ in range(block.main)]
        for one in every_set(block, have):
            budget = cost(block, one, price, 0.0, {})
            could = places_within(block, price, budget)
            assert all(could[place] for place, _ in one.chosen)
            left_out += int((~could).sum())
    assert left_out


def fewer(least: TieSet, one: TieSet) -> bool:
    """Whether ``one`` is ``least``, or has tie-downs to spare beside it."""
    have = dict(one.chosen)
    return all(have.get(place, 0) >= number for place, number in least.chosen)


@pytest.mark.parametrize("number", range(40, 60))
def test_agrees_with_the_program_for_the_cheapest(number: int) -> None:
    random = Random(number)
    block, have = block_of(random)
    price = [float(random.randint(1, 9)) for _ in range(block.main)]
    rounds = {(0, 3): 5.0, (2, 2): 3.0}
    most = random.choice((1, 2, 9))
    walk = enumerate_sets(
        block, price, 4.0, 1e6, have, lambda: None, rounds, most_pairs=float(most)
    )
    found = min((spent for spent, _ in walk), default=None)
    one = cheapest_set(
        block, np.array(price), 4.0, rounds, have, Clock(30.0), most_pairs=float(most)
    )
    assert (one is None) == (found is None)
    if one is not None and found is not None:
        assert cost(block, one, price, 4.0, rounds) == pytest.approx(found)
