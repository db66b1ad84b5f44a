"""The cheapest set with pairs and shackles counted apart, against walking through every set."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import permutations
from random import Random

import numpy as np
import pytest

from loadplan.day.gear import FixedPiece
from loadplan.day.load import Load
from loadplan.plan.article_rows import most_of
from loadplan.plan.blocks import Arrays, Block
from loadplan.plan.cheapest_set import cheapest_set
from loadplan.plan.clock import Clock
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.sets import sets_of
from loadplan.plan.shackled import columns_apart
from tests.plan.build import day, gear_with_shackles, machine
from tests.plan.test_set_walk import cost

FIXED = [FixedPiece(load="L", article="M", position="front left", number=1, gear="c0")]


def block_of(random: Random, *, begun: bool = False) -> tuple[Block, dict[int, int]]:
    """A machine with two shackles a tie-down, and gear of which there is hardly enough."""
    gear = gear_with_shackles(random, 2, 5, 4)
    article = replace(machine("M", "L", random.randrange(6_000, 15_000, 500)), shackles=2)
    one = replace(day([Load(id="L")], [article], gear), fixed=tuple(FIXED if begun else ()))
    sets = sets_of(one)
    have = {at: piece.usable for at, piece in enumerate(sets.gear)}
    for piece in one.fixed:
        have[next(at for at, kind in enumerate(sets.gear) if kind.id == piece.gear)] -= 1
    return Arrays(sets).blocks[0], have | {-1: 0}


@pytest.mark.parametrize("begun", [False, True], ids=["nothing on", "one begun"])
@pytest.mark.parametrize("number", range(25))
def test_it_is_the_cheapest_of_all(number: int, begun: bool) -> None:
    random = Random(number)
    block, have = block_of(random, begun=begun)
    per_piece = [float(random.randint(1, 9)) for _ in block.menu.gear]
    price = block.menu.uses @ np.array(per_piece) + 3.0
    rounds = {(random.randrange(len(per_piece)), random.randint(2, 4)): 5.0}
    per_pair = random.choice((0.0, 4.0))
    walk = enumerate_sets(block, price.tolist(), per_pair, 1e6, have, lambda: None, rounds)
    least = min((spent for spent, _ in walk), default=None)
    assert columns_apart(block, price, most_of(block, have), have) is not None
    one = cheapest_set(block, price, per_pair, rounds, have, Clock(30.0))
    assert (one is None) == (least is None)
    if one is not None:
        assert one.enough(block)
        uses = sum(n * block.menu.uses[place] for place, n in one.chosen)
        assert all(pieces <= have[gear] for gear, pieces in enumerate(uses))
        assert cost(block, one, price.tolist(), per_pair, rounds) == pytest.approx(least)


def test_prices_that_pairs_and_shackles_do_not_add_up_to_are_taken_place_by_place() -> None:
    block, have = block_of(Random(3))
    price = block.menu.uses @ np.arange(1.0, 1.0 + len(block.menu.gear))
    price[0] += 1.0
    assert columns_apart(block, price, most_of(block, have), have) is None
    walk = enumerate_sets(block, price.tolist(), 4.0, 1e6, have, lambda: None)
    one = cheapest_set(block, price, 4.0, {}, have, Clock(30.0))
    assert one is not None
    assert cost(block, one, price.tolist(), 4.0, {}) == pytest.approx(min(s for s, _ in walk))


@pytest.mark.parametrize("number", range(10))
def test_joined_as_strong_as_can_be(number: int) -> None:
    random = Random(number)
    block, have = block_of(random)
    price = np.zeros(block.main)
    columns = columns_apart(block, price, most_of(block, have), have)
    assert columns is not None
    values = block.reach.values
    names = [(one.pair, one.shackle) for one in block.menu.assemblies]
    pairs, shackles = (list(dict.fromkeys(part)) for part in zip(*names, strict=True))
    taken = [random.randrange(len(pairs)) for _ in range(4)]
    ends = [random.randrange(len(shackles)) for _ in range(4)]
    numbers = [taken.count(at) for at in range(len(pairs))]
    numbers += [ends.count(at) for at in range(len(shackles))]
    joined = columns.places([*numbers, *[0] * (len(columns.price) - len(numbers))])
    worth = dict(zip(names, values, strict=True))
    assert sum(n * values[place] for place, n in joined.items()) == max(
        sum(worth[pairs[pair], shackles[end]] for pair, end in zip(taken, order, strict=True))
        for order in permutations(ends)
    )
    assert Counter(pairs.index(names[p][0]) for p in joined for _ in range(joined[p])) == Counter(
        taken
    )
