"""The day in arrays: per article, the assemblies it may take and what each of them costs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import numpy as np

from loadplan.plan.assembly import Assembly
from loadplan.plan.cliques import cliques
from loadplan.plan.reach import Reach, reach_of
from loadplan.plan.sets import ArticleSets, Sets

Array = np.ndarray[Any, np.dtype[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Menu:
    """A list of assemblies that many articles share, as arrays of one row per assembly.

    ``uses`` counts pieces of each kind of gear (columns in the fixed order), ``strength`` is the
    rated strength issued, ``winch`` and ``protectors`` what one tie-down takes, ``pair`` a number
    for its (tension member, tensioner); ``shared_pairs`` whether some pair comes with several kinds
    of shackle.
    """

    assemblies: tuple[Assembly, ...]
    gear: tuple[str, ...]
    uses: Array
    strength: Array
    winch: Array
    protectors: Array
    pair: Array
    shared_pairs: bool


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """The main tie-downs of a simple article: one set of them is chosen if its load goes.

    ``value`` is each assembly's share of the need, a float for pricing only; whether a set is
    enough is decided by ``reach`` in whole numbers. ``anchors`` is per tie-down.
    """

    load: int
    place: int
    article: ArticleSets
    menu: Menu
    reach: Reach
    room: int
    anchors: int
    value: Array
    alone: Array


@dataclass(frozen=True, slots=True, eq=False)
class Pools:
    """What there is of each kind of gear at each moment that matters.

    ``usable`` is moments x gear, after what ``Fixed`` has put on. ``first`` and ``last`` are the
    moments each load covers; gear kept on a trailer is only looked at in the moment ``first`` of
    the load that uses it, since two loads of one trailer never overlap. ``kit_usable`` is loads x
    gear, what is left of kit gear on that load.
    """

    moments: tuple[int, ...]
    first: Array
    last: Array
    usable: Array
    kit: Array
    kit_usable: Array


class Arrays:
    """Blocks, menus and pools of a day's sets."""

    def __init__(self, sets: Sets):
        self.sets = sets
        self.gear = [gear.id for gear in sets.gear]
        self.index = {gear: place for place, gear in enumerate(self.gear)}
        self._menus: dict[int, Menu] = {}
        self._reaches: dict[tuple[object, ...], Reach] = {}
        self.blocks: list[Block] = []
        for load, one in enumerate(sets.loads):
            for place, article in enumerate(one.articles if one.possible else ()):
                if article.simple:
                    self.blocks.append(self._block(load, place, article))
        self.pools = self._pools()

    def _block(self, load: int, number: int, article: ArticleSets) -> Block:
        per = self.sets.loads[load].anchors
        (place,) = article.classes
        (strength,) = article.demand.strengths
        reach = self._reach(
            place.assemblies, strength.need, strength.credit_of(place.routing), article.fewest()
        )
        return Block(
            load=load,
            place=number,
            article=article,
            menu=self.menu(place.assemblies),
            reach=reach,
            room=place.room,
            anchors=0 if per is None else per.per_tie_down[place.routing],
            value=np.array([value / reach.need for value in reach.values]),
            alone=np.array(reach.alone),
        )

    def _reach(
        self,
        assemblies: tuple[Assembly, ...],
        need: Fraction,
        credit: Fraction,
        fewest: int,
    ) -> Reach:
        key = (id(assemblies), need, credit, fewest)
        if key not in self._reaches:
            self._reaches[key] = reach_of(assemblies, need, credit, fewest)
        return self._reaches[key]

    def menu(self, assemblies: tuple[Assembly, ...]) -> Menu:
        """The shared arrays of ``assemblies``; one for each list that the cage has made."""
        if id(assemblies) not in self._menus:
            pairs = {pair: n for n, pair in enumerate(dict.fromkeys(a.pair for a in assemblies))}
            uses = np.zeros((len(assemblies), len(self.gear)), dtype=np.int64)
            for place, assembly in enumerate(assemblies):
                for gear, pieces in assembly.uses:
                    uses[place, self.index[gear]] += pieces
            self._menus[id(assemblies)] = Menu(
                assemblies,
                tuple(self.gear),
                uses,
                np.array([float(a.strength) for a in assemblies]),
                np.array([float(a.winch) for a in assemblies]),
                np.array([float(a.protectors) for a in assemblies]),
                np.array([pairs[a.pair] for a in assemblies]),
                len(pairs) < len(assemblies),
            )
        return self._menus[id(assemblies)]

    def _pools(self) -> Pools:
        day, loads = self.sets.day, self.sets.loads
        trips = [(one.load.out, one.load.back + day.turnaround) for one in loads]
        moments, spans = cliques(trips)
        whole = np.array([gear.usable for gear in self.sets.gear], dtype=np.int64)
        usable = np.tile(whole, (len(moments), 1))
        kit_usable = np.tile(whole, (len(loads), 1))
        place = {one.load.id: number for number, one in enumerate(loads)}
        for piece in day.fixed:
            load, gear = place[piece.load], self.index[piece.gear]
            kit_usable[load, gear] -= 1
            usable[spans[load][0] : spans[load][1] + 1, gear] -= 1
        return Pools(
            moments=tuple(moments),
            first=np.array([first for first, _ in spans], dtype=np.int64),
            last=np.array([last for _, last in spans], dtype=np.int64),
            usable=usable,
            kit=np.array([gear.kept_on is not None for gear in self.sets.gear], dtype=bool),
            kit_usable=kit_usable,
        )
