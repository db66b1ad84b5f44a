"""Decoding: from the values of a solution to tie-downs at their positions."""

from __future__ import annotations

from collections import defaultdict
from typing import Any

import numpy as np

from loadplan.day.article import Routing
from loadplan.outcome.tie_down import TieDown
from loadplan.plan.assembly import Assembly
from loadplan.plan.layout import lay_out
from loadplan.plan.master import Master
from loadplan.plan.sets import ArticleSets, LoadSets
from loadplan.plan.variables import CoupledArticle, SimpleArticle

Array = np.ndarray[Any, np.dtype[Any]]


def decode(master: Master, values: Array) -> tuple[tuple[str, ...], tuple[TieDown, ...]]:
    """The ids of the ready loads and every tie-down of theirs, in workbook order."""
    chosen: dict[tuple[int, int], list[Assembly]] = defaultdict(list)
    for column in np.nonzero(values[master.base :] > 0.5)[0]:
        number, one = master.sets[column]
        block = master.arrays.blocks[number]
        for place, count in one.chosen:
            chosen[block.load, block.place] += [block.menu.assemblies[place]] * count
    sets, day = master.arrays.sets, master.arrays.sets.day
    ready: set[str] = set()
    tie_downs: dict[str, list[TieDown]] = {}
    for load, one_load in enumerate(sets.loads):
        if values[master.going[load]] < 0.5:
            continue
        ready.add(one_load.load.id)
        tie_downs[one_load.load.id] = _Load(master, values, load, one_load).tie_downs(chosen)
    in_order = [load.id for load in day.loads if load.id in ready]
    return tuple(in_order), tuple(t for load in in_order for t in tie_downs[load])


class _Load:
    """Decodes one ready load; ``bag`` holds the edge protectors it was given."""

    def __init__(self, master: Master, values: Array, load: int, sets: LoadSets):
        self.master, self.values, self.load, self.sets = master, values, load, sets
        self.bag = {
            gear: self._value(variable)
            for gear, variable in master.program.variables.protectors[load].items()
        }

    def tie_downs(self, chosen: dict[tuple[int, int], list[Assembly]]) -> list[TieDown]:
        found: dict[str, list[TieDown]] = {}
        variables = self.master.program.variables.articles[self.load]
        for place, (article, made) in enumerate(zip(self.sets.articles, variables, strict=True)):
            main = self._simple(article, chosen[self.load, place])
            if isinstance(made, CoupledArticle):
                main = self._coupled(article, made)
            every = [*main, *self._accessories(article, made)]
            order = {at: number for number, at in enumerate(article.demand.positions)}
            every.sort(key=lambda t: (t.accessory, order.get(t.position, 0), t.position, t.number))
            found[article.demand.article.id] = every
        demands = self.sets.demand.articles
        return [tie_down for demand in demands for tie_down in found[demand.article.id]]

    def _value(self, variable: Any) -> int:
        return round(float(self.values[self.master.place[variable]]))

    def _simple(self, article: ArticleSets, assemblies: list[Assembly]) -> list[TieDown]:
        if not article.simple:
            return []
        (place,) = article.classes
        ordered = sorted(assemblies, key=lambda a: (-a.wll, a.member, a.tensioner or ""))
        spots = lay_out(article, place, len(ordered))
        return [self._make(article, one, *spot) for one, spot in zip(ordered, spots, strict=True)]

    def _coupled(self, article: ArticleSets, made: CoupledArticle) -> list[TieDown]:
        found: list[TieDown] = []
        for place, pieces in zip(article.classes, made.pieces, strict=True):
            assemblies: list[Assembly] = []
            for assembly, variable in zip(place.assemblies, pieces, strict=True):
                assemblies += [assembly] * self._value(variable)
            assemblies.sort(key=lambda a: (-a.wll, a.member, a.tensioner or ""))
            spots = lay_out(article, place, len(assemblies))
            found += [self._make(article, a, *s) for a, s in zip(assemblies, spots, strict=True)]
        return [*found, *self._slots(article, made)]

    def _slots(self, article: ArticleSets, made: CoupledArticle) -> list[TieDown]:
        found: list[TieDown] = []
        for slot, choices in zip(article.slots, made.slots, strict=True):
            at = next(n for n, variable in enumerate(choices) if self._value(variable))
            completion = slot.assemblies[at]
            on = dict(slot.protectors)
            for gear, pieces in self._deal(completion.protectors):
                on[gear] = on.get(gear, 0) + pieces
            found.append(
                self._tie_down(
                    article,
                    completion.assembly,
                    slot.position,
                    slot.number,
                    tuple(sorted(on.items())),
                    accessory=slot.accessory,
                )
            )
        return found

    def _accessories(
        self, article: ArticleSets, made: SimpleArticle | CoupledArticle
    ) -> list[TieDown]:
        found: list[TieDown] = []
        for group, variables in zip(article.accessories, made.accessories, strict=True):
            assemblies: list[Assembly] = []
            for assembly, variable in zip(group.assemblies, variables, strict=True):
                assemblies += [assembly] * self._value(variable)
            for one, spot in zip(assemblies, group.places, strict=True):
                found.append(self._tie_down(article, one, *spot, (), accessory=True))
        return found

    def _make(
        self, article: ArticleSets, assembly: Assembly, position: str, number: int
    ) -> TieDown:
        protectors = self._deal(assembly.protectors)
        return self._tie_down(article, assembly, position, number, protectors, accessory=False)

    def _deal(self, number: int) -> tuple[tuple[str, int], ...]:
        """Take ``number`` edge protectors out of the bag."""
        found: dict[str, int] = {}
        for gear, left in self.bag.items():
            taken = min(left, number - sum(found.values()))
            if taken > 0:
                found[gear] = taken
                self.bag[gear] = left - taken
        return tuple(found.items())

    def _tie_down(
        self,
        article: ArticleSets,
        assembly: Assembly,
        position: str,
        number: int,
        protectors: tuple[tuple[str, int], ...],
        *,
        accessory: bool,
    ) -> TieDown:
        at = None if accessory else article.demand.set_of(position)
        return TieDown(
            load=self.sets.load.id,
            article=article.demand.article.id,
            position=position,
            number=number,
            routing=Routing.DIRECT if at is None else at.routing,
            member=assembly.member,
            tensioner=assembly.tensioner,
            shackle=assembly.shackle,
            shackles=assembly.shackles,
            protectors=protectors,
            accessory=accessory,
        )
