"""The day in arrays: per article, the assemblies it may take and what each of them costs."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import numpy as np

from loadplan.day.article import Routing
from loadplan.plan.assembly import Assembly
from loadplan.plan.cliques import cliques
from loadplan.plan.fixed import Slot
from loadplan.plan.reach import Reach, reach_of
from loadplan.plan.sets import ArticleSets, PositionClass, Sets, slot_credit

Array = np.ndarray[Any, np.dtype[Any]]
Needs = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Menu:
    """A list of assemblies as arrays of one row per assembly; many articles share one.

    ``uses`` counts pieces of each kind of gear (columns in the fixed order), ``strength`` is the
    rated strength issued, ``exact`` the same in whole numbers of a unit of which so many make one,
    ``winch`` and ``protectors`` what one tie-down takes, ``pair`` a number for its (tension member,
    tensioner), -1 where it is an accessory's; ``shared_pairs`` whether some pair comes with several
    kinds of shackle. ``needs`` is the pieces of each kind of gear that a tie-down takes, by column,
    and winches at -1.
    """

    assemblies: tuple[Assembly, ...]
    gear: tuple[str, ...]
    uses: Array
    strength: Array
    exact: tuple[int, tuple[int, ...]]
    winch: Array
    protectors: Array
    pair: Array
    shared_pairs: bool
    needs: tuple[Needs, ...]


@dataclass(frozen=True, slots=True)
class Apart:
    """Tie-downs of an article that are settled apart from its free main ones.

    ``number`` of them are taken from the menu's places ``first`` to before ``end``: the ways to
    finish the begun tie-down ``slot``, or the choices of the accessory class ``accessories``.
    """

    number: int
    first: int
    end: int
    slot: int | None = None
    accessories: int | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """The tie-downs of a listable article: one set of them is chosen if its load goes.

    The first ``main`` places of the menu are free main tie-downs, the rest those of ``apart``.
    ``value`` is each place's share of the need, a float for pricing only; whether a set is enough
    is decided by ``reach`` in whole numbers. ``anchors`` is per tie-down, by place.
    """

    load: int
    place: int
    article: ArticleSets
    menu: Menu
    reach: Reach
    room: int
    main: int
    apart: tuple[Apart, ...]
    anchors: Array
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

    def beside(self, load: int) -> Array:
        """Marks the loads out at some moment with ``load``, itself among them."""
        return self.together(load) > 0

    def together(self, load: int) -> Array:
        """At how many moments each load is out with ``load``."""
        begins = np.maximum(self.first, self.first[load])
        found: Array = np.maximum(np.minimum(self.last, self.last[load]) - begins + 1, 0)
        return found


class Arrays:
    """Blocks, menus and pools of a day's sets; ``of_load`` are the numbers of a load's blocks."""

    def __init__(self, sets: Sets):
        self.sets = sets
        self.gear = [gear.id for gear in sets.gear]
        self.index = {gear: place for place, gear in enumerate(self.gear)}
        self._menus: dict[int, Menu] = {}
        self._reaches: dict[tuple[object, ...], Reach] = {}
        self.blocks: list[Block] = []
        for load, one in enumerate(sets.loads):
            for place, article in enumerate(one.articles if one.possible else ()):
                if article.listable:
                    self.blocks.append(self._block(load, place, article))
        self.of_load: list[list[int]] = [[] for _ in sets.loads]
        for number, block in enumerate(self.blocks):
            self.of_load[block.load].append(number)
        self.pools = self._pools()

    def sets_for(self, goes: Array) -> int:
        """How many sets a plan has in which ``goes`` are ready."""
        return sum(len(self.of_load[load]) for load in np.nonzero(goes)[0])

    def _block(self, load: int, number: int, article: ArticleSets) -> Block:
        (place,) = article.classes
        (strength,) = article.demand.strengths
        entries, apart = _apart(article, len(place.assemblies))
        credit = strength.credit_of(place.routing)
        fewest = article.fewest() - sum(1 for slot in article.slots if not slot.accessory)
        helped = tuple(
            (slot_credit(article, one.slot, strength) if one.slot else strength.accessory_credit)
            * one.assembly.wll
            for one in entries
        )
        reach = self._reach(place.assemblies, strength.need, credit, max(0, fewest), helped)
        menu = self.menu(place.assemblies)
        return Block(
            load=load,
            place=number,
            article=article,
            menu=self._longer(menu, entries) if entries else menu,
            reach=reach,
            room=place.room,
            main=len(place.assemblies),
            apart=apart,
            anchors=self._anchors(load, article, place, entries),
            value=np.array([value / reach.need for value in reach.values]),
            alone=np.array(_alone(reach, apart)),
        )

    def _anchors(
        self, load: int, article: ArticleSets, place: PositionClass, entries: list[Entry]
    ) -> Array:
        per = self.sets.loads[load].anchors
        if per is None:
            return np.zeros(len(place.assemblies) + len(entries))
        runs = [place.routing] * len(place.assemblies)
        runs += [one.routing(article) for one in entries]
        return np.array([float(per.per_tie_down[run]) for run in runs])

    def _reach(
        self,
        assemblies: tuple[Assembly, ...],
        need: Fraction,
        credit: Fraction,
        fewest: int,
        helped: tuple[Fraction, ...],
    ) -> Reach:
        key = (id(assemblies), need, credit, fewest, helped)
        if key not in self._reaches:
            values = [credit * assembly.wll for assembly in assemblies]
            self._reaches[key] = reach_of(values, need, fewest, helped)
        return self._reaches[key]

    def menu(self, assemblies: tuple[Assembly, ...]) -> Menu:
        """The shared arrays of ``assemblies``; one for each list that the cage has made."""
        if id(assemblies) not in self._menus:
            entries = [Entry(one, one.uses, one.protectors) for one in assemblies]
            self._menus[id(assemblies)] = self._menu(entries)
        return self._menus[id(assemblies)]

    def _longer(self, menu: Menu, entries: list[Entry]) -> Menu:
        """``menu`` with the choices apart behind it."""
        main = [Entry(one, one.uses, one.protectors) for one in menu.assemblies]
        return self._menu([*main, *entries])

    def _menu(self, entries: list[Entry]) -> Menu:
        counted = [one for one in entries if not one.accessory]
        pairs = {pair: n for n, pair in enumerate(dict.fromkeys(o.assembly.pair for o in counted))}
        uses = np.zeros((len(entries), len(self.gear)), dtype=np.int64)
        for place, one in enumerate(entries):
            for gear, pieces in one.uses:
                uses[place, self.index[gear]] += pieces
        return Menu(
            tuple(one.assembly for one in entries),
            tuple(self.gear),
            uses,
            np.array([float(one.assembly.strength) for one in entries]),
            _exact([one.assembly.strength for one in entries]),
            np.array([float(one.assembly.winch) for one in entries]),
            np.array([float(one.protectors) for one in entries]),
            np.array([-1 if o.accessory else pairs[o.assembly.pair] for o in entries], dtype=int),
            len(pairs) < len(counted),
            tuple(
                _needs(row, bool(one.assembly.winch))
                for row, one in zip(uses, entries, strict=True)
            ),
        )

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


@dataclass(frozen=True, slots=True)
class Entry:
    """One place of a menu: an assembly, what making it takes, and the slot it finishes, if any."""

    assembly: Assembly
    uses: tuple[tuple[str, int], ...]
    protectors: int
    slot: Slot | None = None
    accessory: bool = False

    def routing(self, article: ArticleSets) -> Routing:
        """How a tie-down apart runs."""
        at = None if self.slot is None else article.demand.set_of(self.slot.position)
        return Routing.DIRECT if at is None else at.routing


def _exact(strengths: list[Fraction]) -> tuple[int, tuple[int, ...]]:
    unit = math.lcm(*(one.denominator for one in strengths))
    return unit, tuple(int(one * unit) for one in strengths)


def _needs(uses: Array, winch: bool) -> Needs:
    found = [(int(gear), int(uses[gear])) for gear in uses.nonzero()[0]]
    return (*found, (-1, 1)) if winch else tuple(found)


def _apart(article: ArticleSets, first: int) -> tuple[list[Entry], tuple[Apart, ...]]:
    """The choices for begun tie-downs and credited accessories, and how they are grouped."""
    entries: list[Entry] = []
    apart: list[Apart] = []
    for number, slot in enumerate(article.slots):
        begins = first + len(entries)
        for one in slot.assemblies:
            entries.append(Entry(one.assembly, one.adds, one.protectors, slot, slot.accessory))
        apart.append(Apart(1, begins, first + len(entries), slot=number))
    for number, group in enumerate(article.accessories if article.credits_accessories else ()):
        begins = first + len(entries)
        entries += [Entry(one, one.uses, 0, None, True) for one in group.assemblies]
        end = first + len(entries)
        apart.append(Apart(len(group.places), begins, end, accessories=number))
    return entries, tuple(apart)


def _alone(reach: Reach, apart: tuple[Apart, ...]) -> list[int]:
    """How many of each main assembly do with the best of what is settled apart."""
    best = sum(one.number * max(reach.values[one.first : one.end]) for one in apart)
    lacking = max(0, reach.need - best)
    main = reach.values[: len(reach.alone)]
    return [max(reach.fewest, -(-lacking // value)) for value in main]
