"""Halves: many (tension member, tensioner) choices as one choice of each, for whole-number solves.

Where every member of a list goes with every tensioner of another, the choice of a pair is the
choice of a member and of a tensioner, and everything a pair takes is the sum of what the two take.
m + t columns then say what m · t did, exactly: with fewer columns, none of them alike.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from loadplan.plan.assembly import Assembly
from loadplan.plan.master import Master
from loadplan.plan.solver import Matrix
from loadplan.plan.stage_cost import StageCost
from loadplan.plan.tie_set import TieSet

Array = np.ndarray[Any, np.dtype[Any]]
_Pair = tuple[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Choice:
    """Sets of ``number`` tie-downs of one assembly that differ in the assembly alone.

    ``block`` is the block whose sets they are. Every member may go with every rest (tensioner and
    shackle): ``places`` on the menu, ``columns`` of those that have one already. ``strength`` is
    what the rest of all tie-downs adds to the rated strength issued.
    """

    block: int
    number: int
    members: tuple[str, ...]
    rests: tuple[tuple[str, str], ...]
    columns: dict[_Pair, int]
    places: dict[_Pair, int]
    strength: dict[tuple[str, str], float]


@dataclass(frozen=True, slots=True, eq=False)
class Halves:
    """A whole-number problem with halves in place of pairs, and the way back.

    ``keep`` are the master's columns it still has, before the halves of ``choices`` in turn.
    """

    master: Master
    matrix: Matrix
    cost: Array
    keep: Array
    choices: tuple[Choice, ...]

    def whole(self, values: Array) -> Array:
        """The values of the master's own columns; adds the columns that are new to it."""
        at = len(self.keep)
        sets: list[tuple[int, TieSet]] = []
        for choice in self.choices:
            middle, end = at + len(choice.members), at + len(choice.members) + len(choice.rests)
            members = np.nonzero(values[at:middle] > 0.5)[0]
            for member, rest in zip(members, np.nonzero(values[middle:end] > 0.5)[0], strict=True):
                place = choice.places[choice.members[member], choice.rests[rest]]
                sets.append((choice.block, TieSet(((place, choice.number),))))
            at = end
        self.master.add_sets(sets)
        found = np.zeros(len(self.master.upper))
        found[self.keep] = np.round(values[: len(self.keep)])
        found[[self.master.column_of(one) for one in sets]] = 1.0
        return found


def halved(master: Master, matrix: Matrix, stage: StageCost, could: Array, free: Array) -> Halves:
    """The problem over the columns ``could``, by halves where that is fewer.

    ``matrix`` has all the master's columns with the bounds to solve with; only columns that are
    ``free`` to be 0 may be replaced.
    """
    cost = master.traits.cost(stage)
    choices = tuple(_choices(master, could & free))
    replaced = np.zeros(len(could), dtype=bool)
    for choice in choices:
        replaced[list(choice.columns.values())] = True
    keep = np.nonzero(could & ~replaced)[0]
    part = matrix.part(keep, matrix.lower, matrix.upper)
    built = _Builder(master, matrix, cost, stage)
    for choice in choices:
        built.add(choice)
    return Halves(
        master=master,
        matrix=built.joined(part),
        cost=np.concatenate((cost[keep], built.costs)),
        keep=keep,
        choices=choices,
    )


def _choices(master: Master, usable: Array) -> Iterator[Choice]:
    for number, tie_downs, places in _set_groups(master, usable):
        block = master.arrays.blocks[number]
        menu = block.menu.assemblies[: block.main]
        columns = {_pair(menu[place]): column for place, column in places.items()}
        enough = {
            _pair(one): place
            for place, one in enumerate(menu)
            if TieSet(((place, tie_downs),)).enough(block)
        }
        for members, rests in _complete(list(columns), enough):
            held = {pair: columns[pair] for pair in columns if pair[0] in members}
            strength = {rest: tie_downs * _own(master, rest, menu) for rest in rests}
            yield Choice(number, tie_downs, members, rests, held, enough, strength)


def _own(master: Master, rest: tuple[str, str], assemblies: Sequence[Assembly]) -> float:
    """What the tensioner and shackles of one tie-down add to the rated strength issued."""
    wll = master.arrays.sets.cage.wll
    one = next(one for one in assemblies if _pair(one)[1] == rest)
    return float(one.strength - wll[one.member])


def _set_groups(master: Master, usable: Array) -> Iterator[tuple[int, int, dict[int, int]]]:
    """Usable columns of one assembly alone: block, tie-downs, and column by place."""
    groups: dict[tuple[int, int], dict[int, int]] = defaultdict(dict)
    for number, (block, one) in enumerate(master.sets):
        column = master.base + number
        if usable[column] and len(one.chosen) == 1:
            ((place, tie_downs),) = one.chosen
            groups[block, tie_downs][place] = column
    for (block, tie_downs), places in groups.items():
        yield block, tie_downs, places


def _pair(assembly: Assembly) -> _Pair:
    return assembly.member, (assembly.tensioner or "", assembly.shackle or "")


def _complete(
    pairs: list[_Pair], allowed: dict[_Pair, int]
) -> Iterator[tuple[tuple[str, ...], tuple[tuple[str, str], ...]]]:
    """Members and rests of which every one may go with every other, where halves are fewer."""
    rests: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for member, rest in pairs:
        rests[member].append(rest)
    alike: dict[frozenset[tuple[str, str]], list[str]] = defaultdict(list)
    for member, mine in rests.items():
        alike[frozenset(mine)].append(member)
    while alike:
        # Join what shares a tensioner, as long as every member may have every one of them.
        shared, members = alike.popitem()
        for other in [one for one in alike if one & shared]:
            joined, both = shared | other, members + alike[other]
            if all((member, rest) in allowed for member in both for rest in joined):
                shared, members = joined, both
                del alike[other]
        if len(members) * len(shared) > len(members) + len(shared) + 1 and all(
            (member, rest) in allowed for member in members for rest in shared
        ):
            yield tuple(members), tuple(sorted(shared))


class _Builder:
    """Collects the columns of halves and the rows that tie them together."""

    def __init__(self, master: Master, matrix: Matrix, cost: Array, stage: StageCost):
        self.matrix, self.cost, self.stage = matrix, cost, stage
        self.strength_rows = [(row, held.strength) for held, row in master.stage_rows]
        rows = master.limits.gear_of_rows()
        self.gear_of = {row: master.arrays.gear[gear] for row, gear in rows.items()}
        self.columns: list[dict[int, float]] = []
        self.costs: list[float] = []
        self.links = 0

    def add(self, choice: Choice) -> None:
        """Add the halves of ``choice`` and the row that keeps them as many as each other."""
        link = len(self.matrix.row_lower) + self.links
        self.links += 1
        for member in choice.members:
            (_, rest), column = next(one for one in choice.columns.items() if one[0][0] == member)
            strength = choice.strength[rest]
            entries = {
                row: value
                for row, value in self._entries(column).items()
                if self.gear_of.get(row) not in rest
            }
            for row, share in self.strength_rows:
                if share:
                    entries[row] -= share * strength
            cost = float(self.cost[column]) - self.stage.strength * strength
            self._column(entries | {link: 1.0}, cost)
        for rest in choice.rests:
            column = next(n for (_, other), n in choice.columns.items() if other == rest)
            strength = choice.strength[rest]
            entries = {
                row: value
                for row, value in self._entries(column).items()
                if self.gear_of.get(row) in rest
            }
            entries |= {row: share * strength for row, share in self.strength_rows if share}
            self._column(entries | {link: -1.0}, self.stage.strength * strength)

    def joined(self, part: Matrix) -> Matrix:
        """``part`` with the halves as columns behind its own, and the rows that tie them."""
        none = np.zeros(self.links)
        sizes = [len(entries) for entries in self.columns]
        ends = part.starts[-1] + np.cumsum([0, *sizes])
        rows = [row for entries in self.columns for row in entries]
        values = [value for entries in self.columns for value in entries.values()]
        new = len(self.columns)
        return replace(
            part,
            lower=np.concatenate((part.lower, np.zeros(new))),
            upper=np.concatenate((part.upper, np.ones(new))),
            whole=np.ones(len(part.lower) + new, dtype=bool),
            row_lower=np.concatenate((part.row_lower, none)),
            row_upper=np.concatenate((part.row_upper, none)),
            starts=np.concatenate((part.starts[:-1], ends)).astype(np.int32),
            places=np.concatenate((part.places, np.array(rows, dtype=np.int32))).astype(np.int32),
            coefficients=np.concatenate((part.coefficients, np.array(values, dtype=float))),
        )

    def _entries(self, column: int) -> dict[int, float]:
        first, end = int(self.matrix.starts[column]), int(self.matrix.starts[column + 1])
        rows = self.matrix.places[first:end].tolist()
        return dict(zip(rows, self.matrix.coefficients[first:end].tolist(), strict=True))

    def _column(self, entries: dict[int, float], cost: float) -> None:
        self.columns.append(entries)
        self.costs.append(cost)
