"""Decoding: from the values of a solution to tie-downs at their positions."""

from __future__ import annotations

from typing import Any

import numpy as np

from loadplan.day.article import Routing
from loadplan.outcome.tie_down import Shown, TieDown
from loadplan.plan.assembly import Assembly
from loadplan.plan.blocks import Block
from loadplan.plan.layout import lay_out
from loadplan.plan.master import Master
from loadplan.plan.sets import ArticleSets, LoadSets
from loadplan.plan.tie_set import TieSet
from loadplan.plan.variables import CoupledArticle

Array = np.ndarray[Any, np.dtype[Any]]


def decode(master: Master, values: Array) -> Shown:
    """The ids of the ready loads and every tie-down of theirs, in workbook order."""
    chosen: dict[tuple[int, int], tuple[Block, TieSet]] = {}
    for column in np.nonzero(values[master.base :] > 0.5)[0]:
        number, one = master.sets[column]
        block = master.arrays.blocks[number]
        chosen[block.load, block.place] = (block, one)
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

    def tie_downs(self, chosen: dict[tuple[int, int], tuple[Block, TieSet]]) -> list[TieDown]:
        found: dict[str, list[TieDown]] = {}
        variables = self.master.program.variables.articles[self.load]
        loose = self._loose()
        for place, (article, made) in enumerate(zip(self.sets.articles, variables, strict=True)):
            if isinstance(made, CoupledArticle):
                main = self._coupled(article, made)
            else:
                main = self._listed(article, *chosen[self.load, place])
            every = [*main, *loose.get(place, [])]
            order = {at: number for number, at in enumerate(article.demand.positions)}
            every.sort(key=lambda t: (t.accessory, order.get(t.position, 0), t.position, t.number))
            found[article.demand.article.id] = every
        demands = self.sets.demand.articles
        return [tie_down for demand in demands for tie_down in found[demand.article.id]]

    def _value(self, variable: Any) -> int:
        return round(float(self.values[self.master.place[variable]]))

    def _listed(self, article: ArticleSets, block: Block, one: TieSet) -> list[TieDown]:
        """The main tie-downs of a set, and those settled apart with them."""
        (place,) = article.classes
        main: list[Assembly] = []
        for at, count in one.chosen:
            if at < block.main:
                main += [block.menu.assemblies[at]] * count
        main.sort(key=lambda a: (-a.wll, a.member, a.tensioner or ""))
        spots = lay_out(article, place, len(main))
        found = [self._make(article, a, *spot) for a, spot in zip(main, spots, strict=True)]
        for group in block.apart:
            taken = [(at, n) for at, n in one.chosen if group.first <= at < group.end]
            if group.slot is not None:
                found.append(self._slot(article, group.slot, taken[0][0] - group.first))
            elif group.accessories is not None:
                places = article.accessories[group.accessories].places
                every = [block.menu.assemblies[at] for at, n in taken for _ in range(n)]
                for assembly, spot in zip(every, places, strict=True):
                    found.append(self._tie_down(article, assembly, *spot, (), accessory=True))
        return found

    def _coupled(self, article: ArticleSets, made: CoupledArticle) -> list[TieDown]:
        found: list[TieDown] = []
        for place, pieces in zip(article.classes, made.pieces, strict=True):
            assemblies: list[Assembly] = []
            for assembly, variable in zip(place.assemblies, pieces, strict=True):
                assemblies += [assembly] * self._value(variable)
            assemblies.sort(key=lambda a: (-a.wll, a.member, a.tensioner or ""))
            spots = lay_out(article, place, len(assemblies))
            found += [self._make(article, a, *s) for a, s in zip(assemblies, spots, strict=True)]
        return [*found, *self._slots(article, made), *self._accessories(article, made)]

    def _slots(self, article: ArticleSets, made: CoupledArticle) -> list[TieDown]:
        found: list[TieDown] = []
        for number, choices in enumerate(made.slots):
            at = next(n for n, variable in enumerate(choices) if self._value(variable))
            found.append(self._slot(article, number, at))
        return found

    def _slot(self, article: ArticleSets, number: int, at: int) -> TieDown:
        """The ``number``-th begun tie-down, finished in its ``at``-th way."""
        slot = article.slots[number]
        completion = slot.assemblies[at]
        on = dict(slot.protectors)
        for gear, pieces in self._deal(completion.protectors):
            on[gear] = on.get(gear, 0) + pieces
        return self._tie_down(
            article,
            completion.assembly,
            slot.position,
            slot.number,
            tuple(sorted(on.items())),
            accessory=slot.accessory,
        )

    def _loose(self) -> dict[int, list[TieDown]]:
        """The loose accessory tie-downs by the place of their article."""
        found: dict[int, list[TieDown]] = {}
        for one in self.master.program.variables.loose[self.load]:
            for assembly, spot in zip(one.chosen(self._value), one.spots, strict=True):
                place, position, number = spot
                article = self.sets.articles[place]
                made = self._tie_down(article, assembly, position, number, (), accessory=True)
                found.setdefault(place, []).append(made)
        return found

    def _accessories(self, article: ArticleSets, made: CoupledArticle) -> list[TieDown]:
        found: list[TieDown] = []
        for group, variables in made.accessories:
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
