"""The complete program at one set of ready loads, for when its sets are too many to list."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np
import pulp

from loadplan.plan import objectives
from loadplan.plan.apart import Apart, Tabled, apart
from loadplan.plan.blocks import Block
from loadplan.plan.clock import Clock
from loadplan.plan.master import Master
from loadplan.plan.matrix import matrix_of
from loadplan.plan.program import Program, build
from loadplan.plan.shackled import table_of
from loadplan.plan.solved import Outcome
from loadplan.plan.solver import Solver
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet
from loadplan.plan.variables import CoupledArticle, SimpleArticle

Array = np.ndarray[Any, np.dtype[Any]]
MOST_LOADS = 25


@dataclass(eq=False)
class CompleteSearch:
    """The complete program of a day, built once and asked again with other loads and stages."""

    master: Master
    program: Program
    place: dict[pulp.LpVariable, int]
    _costs: dict[StageCost, Array] = field(default_factory=dict, init=False)

    @classmethod
    def of(cls, master: Master, *, patterns: bool = True, pairs: bool = True) -> CompleteSearch:
        """The search for the master's day; ``patterns`` and ``pairs`` as in the program."""
        program = build(master.arrays.sets, complete=True, patterns=patterns, pairs=pairs)
        every = program.variables.all
        place = {variable: number for number, variable in enumerate(every)}
        return cls(master, program, place)

    @cached_property
    def apart(self) -> Apart:
        """The program as it is solved; made when first asked for, as some only read plans."""
        matrix = matrix_of(self.program.problem, self.program.variables.all)
        return apart(matrix, _tabled(self.master, self.program, self.place))

    @cached_property
    def load(self) -> Array:
        """The load of each column, as it is solved; -1 where it is what is out of a pool."""
        first = [self.place[variable] for variable in self.program.variables.ready]
        of_loads = len(self.place) - sum(map(len, self.program.variables.out.values()))
        load = np.searchsorted(first, np.arange(len(self.place)), side="right") - 1
        load[of_loads:] = -1
        return self.apart.of_columns(load)

    @cached_property
    def out(self) -> dict[int, Array]:
        """Per kind of gear, the columns of what is out of its pool at each moment."""
        index = self.master.arrays.index
        return {
            index[gear]: self.apart.column_of(np.array([self.place[one] for one in mine]))
            for gear, mine in self.program.variables.out.items()
        }

    @cached_property
    def going(self) -> Array:
        """The column of each load that says whether it goes."""
        ready = [self.place[variable] for variable in self.program.variables.ready]
        return self.apart.column_of(np.array(ready))

    def at(self, stage: StageCost, goes: Array, below: float, step: float, clock: Clock) -> Outcome:
        """The least of ``stage`` at ``below`` or less with exactly ``goes`` ready.

        The values, if any, are those of the master's columns; their sets are added to it.
        """
        solver = self.solver(clock.report if clock.tell is not None else None)
        cost = self.cost(stage)
        solver.keep_within(cost, below)
        solver.bound_columns(self.going, goes, goes)
        solver.price(cost)
        outcome = solver.solve(clock.left(), step)
        if outcome.values is None:
            return outcome
        values = self.read(outcome.values)
        return Outcome(outcome.status, values, outcome.bound, outcome.reduced, outcome.prices)

    def solver(
        self, report: Callable[[float, float], None] | None = None, *, held: bool = True
    ) -> Solver:
        """The program to be solved, with the stages that the master holds if ``held``."""
        solver = Solver(self.apart.matrix, report)
        for stage, row in self.master.stage_rows if held else ():
            solver.keep_within(self.cost(stage), self.master.held[row])
        return solver

    def cost(self, stage: StageCost) -> Array:
        """What one of each column adds to ``stage``."""
        if stage not in self._costs:
            self._costs[stage] = self._cost(stage)
        return self._costs[stage]

    def _cost(self, stage: StageCost) -> Array:
        variables, traits = self.program.variables, self.master.traits
        cost = np.zeros(len(self.place))
        for each, terms in (
            (stage.tie_downs, objectives.tie_downs),
            (stage.mixed, objectives.mixed_sets),
            (stage.strength, objectives.strength_issued),
        ):
            for variable, weight in terms(variables) if each else ():
                cost[self.place[variable]] += each * float(weight)
        ready = [self.place[variable] for variable in variables.ready]
        cost[ready] += traits.of_going(stage)[self.master.going]
        return self.apart.cost(cost)

    def read(self, values: Array) -> Array:
        """The plan in the ``values`` of the solver in the master's columns; its sets are added."""
        return self.translate(self.apart.values(values))

    def translate(self, values: Array) -> Array:
        """The plan in ``values`` of this program in the master's columns; its sets are added."""
        master = self.master
        theirs, ours = self.program.variables, master.program.variables
        sets: list[tuple[int, TieSet]] = []
        for number, block in enumerate(master.arrays.blocks):
            article = theirs.articles[block.load][block.place]
            if isinstance(article, SimpleArticle):
                chosen = self._set(article, block.reach.alone, values)
            else:
                chosen = self._coupled_set(article, block, values)
            if chosen.chosen:
                sets.append((number, chosen))
        master.add_sets(sets)
        found = np.zeros(len(master.traits.load))
        found[[master.column_of(one) for one in sets]] = 1
        pairs = zip(ours.ready, theirs.ready, strict=True)
        for mine, other in (*pairs, *self._shared()):
            found[master.place[mine]] = round(float(values[self.place[other]]))
        for article in (one for load in ours.articles for one in load):
            if isinstance(article, CoupledArticle):
                self._count_pairs(article, found)
        return found

    def _count_pairs(self, article: CoupledArticle, found: Array) -> None:
        """Set which pairs occur, by the tie-downs; the program may not have counted them."""
        sets, occurs = article.sets, dict.fromkeys(article.used, 0.0)
        for place, pieces in zip(sets.classes, article.pieces, strict=True):
            for assembly, variable in zip(place.assemblies, pieces, strict=True):
                if found[self.master.place[variable]] > 0:
                    occurs[assembly.pair] = 1.0
        for slot, choices in zip(sets.slots, article.slots, strict=True):
            for completion, variable in zip(slot.assemblies, choices, strict=True):
                if not slot.accessory and found[self.master.place[variable]] > 0:
                    occurs[completion.assembly.pair] = 1.0
        for pair, used in occurs.items():
            found[self.master.place[article.used[pair]]] = used

    def _shared(self) -> Iterator[tuple[pulp.LpVariable, pulp.LpVariable]]:
        """Variables that both forms of the program have, master's and complete."""
        theirs, ours = self.program.variables, self.master.program.variables
        for load, articles in enumerate(ours.articles):
            for gear, variable in ours.protectors[load].items():
                yield variable, theirs.protectors[load][gear]
            for loose, twin in zip(ours.loose[load], theirs.loose[load], strict=True):
                for part, same in zip(loose.parts, twin.parts, strict=True):
                    yield from zip(part.variables, same.variables, strict=True)
            for mine, other in zip(articles, theirs.articles[load], strict=True):
                if isinstance(mine, CoupledArticle) and isinstance(other, CoupledArticle):
                    yield from _coupled(mine, other)

    def _set(self, article: SimpleArticle, alone: tuple[int, ...], values: Array) -> TieSet:
        numbers: dict[int, int] = {}
        for at, variable in article.pure.items():
            if values[self.place[variable]] > 0.5:
                numbers[at] = alone[at]
        for at, variable in enumerate(article.mixed.pieces if article.mixed is not None else ()):
            number = round(float(values[self.place[variable]]))
            if number:
                numbers[at] = numbers.get(at, 0) + number
        return TieSet(tuple(sorted(numbers.items())))

    def _coupled_set(self, article: CoupledArticle, block: Block, values: Array) -> TieSet:
        """The set of a listable article that the complete program does not list."""
        (pieces,) = article.pieces
        entries = [*enumerate(pieces)]
        for group in block.apart:
            if group.slot is not None:
                entries += enumerate(article.slots[group.slot], group.first)
            elif group.accessories is not None:
                entries += enumerate(article.accessories[group.accessories][1], group.first)
        numbers = ((at, round(float(values[self.place[variable]]))) for at, variable in entries)
        return TieSet(tuple((at, number) for at, number in numbers if number))


def _tabled(
    master: Master, program: Program, place: dict[pulp.LpVariable, int]
) -> Iterator[Tabled]:
    """The articles counted assembly by assembly whose pairs and shackles can be told apart."""
    for block in master.arrays.blocks:
        article = program.variables.articles[block.load][block.place]
        if isinstance(article, CoupledArticle) and article.counted is not None:
            (pieces,), table = article.pieces, table_of(block)
            if table is not None:
                yield Tabled([place[variable] for variable in pieces], table)


def _coupled(
    mine: CoupledArticle, other: CoupledArticle
) -> Iterator[tuple[pulp.LpVariable, pulp.LpVariable]]:
    for pieces, same in zip(mine.pieces, other.pieces, strict=True):
        yield from zip(pieces, same, strict=True)
    for choices, same in zip(mine.slots, other.slots, strict=True):
        yield from zip(choices, same, strict=True)
    for (_, group), (_, same) in zip(mine.accessories, other.accessories, strict=True):
        yield from zip(group, same, strict=True)
    yield from ((variable, other.at[position]) for position, variable in mine.at.items())
