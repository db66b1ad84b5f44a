"""Pricing: the sets that could lower a linear solution, and the bound once there are none."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from itertools import islice
from typing import Any

import numpy as np

from loadplan.plan.blocks import Block, Menu
from loadplan.plan.cheapest_set import cheapest_set
from loadplan.plan.clock import Steps, TooManyStepsError
from loadplan.plan.master import Master
from loadplan.plan.scarcity import scarcity
from loadplan.plan.set_walk import enumerate_sets
from loadplan.plan.solved import Outcome
from loadplan.plan.stage_cost import MIXED_SETS, StageCost
from loadplan.plan.tie_set import Chosen, TieSet

Array = np.ndarray[Any, np.dtype[Any]]
_BETTER = 1e-6
_MOST_STEPS = 5_000
_MORE_STEPS = 20_000  # with the worth of scarce gear
_MOST_STEPS_IN_ALL = 200_000


@dataclass(frozen=True, slots=True)
class Prices:
    """What the duals of a linear solution make each choice cost.

    ``tie_down`` is, per block, the price of one tie-down of each assembly; ``pair`` the price of
    each pair beyond the first; ``earns`` what a set of each block earns by serving its article.
    ``rounds`` is, per load, the price of each ⌊pieces / k⌋ of a kind of gear, on top. A set of more
    than ``most_pairs`` pairs is in no plan with as few mixed sets as are held.
    """

    tie_down: list[Array]
    pair: float
    earns: Array
    rounds: dict[int, dict[tuple[int, int], float]]
    most_pairs: float = math.inf

    def on_top(self, block: Block, one: TieSet) -> float:
        """What the rounded pool limits add to the price of a set."""
        rounds = self.rounds.get(block.load)
        if not rounds:
            return 0.0
        uses = one.uses(block)
        return sum(price * float(uses[gear] // k) for (gear, k), price in rounds.items())


def prices_of(master: Master, stage: StageCost, outcome: Outcome) -> Prices:
    """The prices of every block under the duals of ``outcome``."""
    duals = outcome.prices
    per_tie_down, per_pair, per_strength = _stage_prices(master, stage, duals)
    gear = master.limits.gear_prices(duals)
    anchors, winches, edges = (
        master.shared_prices(name, duals) for name in ("anchors", "winches", "edges")
    )
    blocks = master.arrays.blocks
    found: list[Array] = [np.zeros(0)] * len(blocks)
    for menu, numbers in _by_menu(blocks):
        loads = np.array([blocks[number].load for number in numbers])
        price = gear[loads] @ menu.uses.T + per_strength * menu.strength + per_tie_down
        price -= np.outer(winches[loads], menu.winch)
        price += np.outer(edges[loads], menu.protectors)
        price -= anchors[loads][:, None] * np.array([blocks[n].anchors for n in numbers])
        for number, row in zip(numbers, np.maximum(price, 0.0), strict=True):
            found[number] = row
    earns = np.array([duals[row] for row in master.article_row])
    # No article has less than one pair, so one alone may have all mixed sets that are held.
    held = (1.0 + value for value in master.held_values(MIXED_SETS))
    most_pairs = min(held, default=math.inf)
    rounds = master.limits.round_prices(duals)
    return Prices(found, max(0.0, per_pair), earns, rounds, most_pairs)


def improving_sets(
    master: Master,
    prices: Prices,
    most: int,
    settled: Collection[int] = (),
    patience: Steps | None = None,
) -> list[tuple[int, TieSet]]:
    """Up to ``most`` sets per block that cost less than they earn; none only if there are none.

    Blocks that are ``settled`` are passed over. Where a block has more sets than can soon be walked
    through, ``patience`` counts; at its end, or where they are too many to walk at all, that raises
    ``TooManyStepsError``.
    """
    found: list[tuple[int, TieSet]] = []
    for number, block in enumerate(master.arrays.blocks):
        if number in settled:
            continue
        budget = float(prices.earns[number]) - _BETTER
        price = prices.tie_down[number]
        if cheapest(block, price, prices.pair, prices.most_pairs) > budget:
            continue
        found += [(number, one) for one in _search(master, number, prices, budget, most, patience)]
    return found


def sets_within(
    master: Master, prices: Prices, budget: float, most: int, goes: Array
) -> list[tuple[int, TieSet]] | None:
    """Every set of a load in ``goes`` whose reduced cost is at most ``budget``.

    None where there are more than ``most``, or too many to walk through.
    """
    found: list[tuple[int, TieSet]] = []
    steps = Steps(_MOST_STEPS_IN_ALL, master.clock)
    for number, block in enumerate(master.arrays.blocks):
        if not goes[block.load]:
            continue
        limit = float(prices.earns[number]) + budget
        price = prices.tie_down[number]
        if cheapest(block, price, prices.pair, prices.most_pairs) > limit:
            continue
        try:
            mine = _all_within(master, number, prices, limit, most - len(found) + 1, steps)
        except TooManyStepsError:
            return None
        found += [(number, one) for one in mine]
        if len(found) > most:
            return None
    return found


def _all_within(
    master: Master, number: int, prices: Prices, limit: float, most: int, steps: Steps
) -> list[TieSet]:
    """Every set of a block that costs at most ``limit``, the first ``most`` of them.

    ``steps`` count where scarce gear must be priced to walk through them.
    """
    try:
        few = Steps(_MOST_STEPS, master.clock)
        sets = list(islice(_walk(master, number, prices, limit, few), most))
    except TooManyStepsError:
        scarce = _scarce(master, number, prices)
        sets = list(islice(_walk(master, number, prices, limit, steps, scarce), most))
    return [one for _, one in sets]


def cheapest(block: Block, price: Array, per_pair: float, most_pairs: float = math.inf) -> float:
    """A bound below the price of every set of ``block``, of one assembly or of several.

    ``price`` is that of one tie-down at each place, ``per_pair`` of each pair beyond the first; no
    set has more than ``most_pairs``.
    """
    apart = sum(one.number * float(np.min(price[one.first : one.end])) for one in block.apart)
    if not block.main:
        return apart
    main, reach = price[: block.main], block.reach
    alone = float(np.min(block.alone * main))
    if block.apart:
        return apart + max(alone if block.main == 1 else 0.0, reach.fewest * float(np.min(main)))
    if most_pairs <= 1 and not block.menu.shared_pairs:
        return alone
    any_set = max(reach.fewest * float(np.min(main)), float(np.min(main / block.value)))
    return min(alone, any_set + (0.0 if block.menu.shared_pairs else per_pair))


def have_of(master: Master, block: Block) -> dict[int, int]:
    """What there is of each kind of gear for one article alone, and of winches at -1."""
    pools, load = master.arrays.pools, block.load
    span = slice(int(pools.first[load]), int(pools.last[load]) + 1)
    least = np.where(pools.kit, pools.kit_usable[load], pools.usable[span].min(axis=0))
    have = dict(enumerate(least.tolist()))
    have[-1] = master.arrays.sets.loads[load].demand.winches.at_most
    return have


def _search(
    master: Master, number: int, prices: Prices, budget: float, most: int, patience: Steps | None
) -> Iterator[TieSet]:
    """The cheapest of the first sets found within ``budget``; nothing only if there is none."""
    scarce: dict[int, float] | None = None
    found: list[tuple[float, Chosen, TieSet]] = []
    for most_steps in (_MOST_STEPS, _MORE_STEPS):
        steps = Steps(most_steps, master.clock)
        sets = _walk(master, number, prices, budget, steps, scarce)
        try:
            for cost, one in islice(sets, 10 * most):
                found.append((cost, one.chosen, one))
            break
        except TooManyStepsError:
            if found:
                break
            if patience is not None:
                patience.tick()
            scarce = _scarce(master, number, prices)
    else:
        if patience is not None:
            raise TooManyStepsError
        yield from _by_program(master, number, prices, budget)
    for _, _, one in sorted(found)[:most]:
        yield one


def _walk(
    master: Master,
    number: int,
    prices: Prices,
    budget: float,
    steps: Steps,
    scarce: dict[int, float] | None = None,
) -> Iterator[tuple[float, TieSet]]:
    """The sets of a block within ``budget`` and their costs, as far as ``steps`` go."""
    block, price = master.arrays.blocks[number], prices.tie_down[number].tolist()
    have, rounds = have_of(master, block), prices.rounds.get(block.load)
    pair, most_pairs = prices.pair, prices.most_pairs
    return enumerate_sets(
        block, price, pair, budget, have, steps.tick, rounds, scarce, most_pairs=most_pairs
    )


def _scarce(master: Master, number: int, prices: Prices) -> dict[int, float]:
    """What scarce gear is worth to a block."""
    block, price = master.arrays.blocks[number], prices.tie_down[number]
    return scarcity(block, price, prices.pair, have_of(master, block), master.clock)


def _by_program(master: Master, number: int, prices: Prices, budget: float) -> Iterator[TieSet]:
    """The cheapest set of an article with too many to walk through, if it is within ``budget``."""
    block, price = master.arrays.blocks[number], prices.tie_down[number]
    rounds, have = prices.rounds.get(block.load, {}), have_of(master, block)
    one = cheapest_set(
        block, price, prices.pair, rounds, have, master.clock, most_pairs=prices.most_pairs
    )
    if one is not None and one.enough(block):
        cost = sum(n * float(price[at]) for at, n in one.chosen)
        cost += prices.pair * one.mixed(block) + prices.on_top(block, one)
        if cost <= budget:
            yield one


def _stage_prices(master: Master, stage: StageCost, duals: Array) -> tuple[float, float, float]:
    """The cost per tie-down, per extra pair and per unit of strength, with the held stages'."""
    costs = [float(stage.tie_downs), float(stage.mixed), float(stage.strength)]
    for held, row in master.stage_rows:
        for place, weight in enumerate((held.tie_downs, held.mixed, held.strength)):
            costs[place] -= weight * float(duals[row])
    return costs[0], costs[1], costs[2]


def _by_menu(blocks: list[Block]) -> list[tuple[Menu, list[int]]]:
    menus: dict[int, tuple[Menu, list[int]]] = defaultdict(lambda: (blocks[0].menu, []))
    for number, block in enumerate(blocks):
        if id(block.menu) not in menus:
            menus[id(block.menu)] = (block.menu, [])
        menus[id(block.menu)][1].append(number)
    return list(menus.values())
