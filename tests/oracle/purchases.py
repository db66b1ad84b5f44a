"""Every purchase tried one by one: what each costs and how many loads it gets ready."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from tests.oracle.day import Day
from tests.oracle.model import build


@dataclass(frozen=True, kw_only=True)
class Offer:
    """Pieces to be had of the kind ``gear``, a key of the day's gear; it may have none yet."""

    gear: str
    price: Fraction
    most: int


@dataclass(frozen=True, kw_only=True)
class Bought:
    """One purchase: pieces of each offer, their cost, and loads ready at each priority."""

    pieces: tuple[int, ...]
    cost: Fraction
    ready: tuple[int, ...]


def with_pieces(day: Day, offers: Sequence[Offer], pieces: Sequence[int]) -> Day:
    """The day with so many pieces of each offer owned."""
    day = copy.deepcopy(day)
    for offer, number in zip(offers, pieces, strict=True):
        day.gear[offer.gear].owned += number
        day.gear[offer.gear].usable += number
    return day


def most_ready(day: Day, seconds: float = 60) -> tuple[int, ...]:
    """Loads ready at each priority, the first priority first; proved or an error."""
    model = build(day)
    found: list[int] = []
    for priority in sorted({load.priority for load in day.loads.values()}):
        loads = [v for name, v in model.ready.items() if day.loads[name].priority == priority]
        answer = model.program.least(dict.fromkeys(loads, -1), seconds)
        assert answer is not None
        assert answer.proved
        found.append(sum(answer.values[v] for v in loads))
        model.program.equal(dict.fromkeys(loads, 1), found[-1])
    return tuple(found)


def every_purchase(day: Day, offers: Sequence[Offer]) -> Iterator[Bought]:
    """All of them, the cheapest first and of one cost those of fewest pieces first."""
    vectors = product(*(range(offer.most + 1) for offer in offers))

    def cost(pieces: Sequence[int]) -> Fraction:
        return sum((o.price * n for o, n in zip(offers, pieces, strict=True)), Fraction(0))

    for pieces in sorted(vectors, key=lambda pieces: (cost(pieces), sum(pieces))):
        ready = most_ready(with_pieces(day, offers, pieces))
        yield Bought(pieces=pieces, cost=cost(pieces), ready=ready)


def cheapest(day: Day, offers: Sequence[Offer]) -> Bought | None:
    """The least cost, then the fewest pieces, with which every load is ready."""
    for one in every_purchase(day, offers):
        if sum(one.ready) == len(day.loads):
            return one
    return None


def curve(day: Day, offers: Sequence[Offer]) -> list[Bought]:
    """Each purchase that gets better loads ready than everything that costs less or the same.

    One per step of the curve: the cheapest, and of that cost the best, of the fewest pieces.
    """
    found: list[Bought] = []
    for one in every_purchase(day, offers):
        if not found or one.ready > found[-1].ready:
            if found and found[-1].cost == one.cost:
                found.pop()
            found.append(one)
    return found
