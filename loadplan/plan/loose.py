"""Loose accessory tie-downs: those that add to no strength, so that any assembly does.

Every tension member of a part goes with every tensioner of it. The choice of an assembly is then
the choice of a member and of a tensioner, and what it takes the sum of what the two take: m + t
variables say what m · t would, and no two of them are alike.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import pulp

from loadplan.day.article import Routing
from loadplan.plan.activity import Activity
from loadplan.plan.assembly import Assembly
from loadplan.plan.sets import LoadSets, Sets

Spot = tuple[int, str, int]


@dataclass(frozen=True, slots=True)
class Part:
    """How many of each tension member and of each tensioner; none of these for members alone."""

    members: dict[str, pulp.LpVariable]
    tensioners: dict[str, pulp.LpVariable]

    @property
    def variables(self) -> Iterator[pulp.LpVariable]:
        """All its variables, in a fixed order."""
        yield from self.members.values()
        yield from self.tensioners.values()


@dataclass(frozen=True, slots=True)
class Loose:
    """Accessory tie-downs of one load that may take the same assemblies.

    ``spots`` are (place of the article on its load, accessory, number).
    """

    spots: tuple[Spot, ...]
    assemblies: tuple[Assembly, ...]
    parts: tuple[Part, ...]

    def chosen(self, value: Callable[[pulp.LpVariable], int]) -> list[Assembly]:
        """The assemblies of a solution, one per spot: members and tensioners paired in order."""
        by_pair = {one.pair: one for one in self.assemblies}
        found: list[Assembly] = []
        for part in self.parts:
            members = [m for m, variable in part.members.items() for _ in range(value(variable))]
            tensioners = [
                t for t, variable in part.tensioners.items() for _ in range(value(variable))
            ]
            pairs = zip(members, tensioners or [""] * len(members), strict=True)
            found += [by_pair[pair] for pair in pairs]
        return found

    def take(self, assembly: Assembly) -> Iterator[pulp.LpVariable]:
        """The variables that count one more tie-down of ``assembly``."""
        part = next(
            part
            for part in self.parts
            if assembly.member in part.members
            and (assembly.tensioner in part.tensioners if part.tensioners else True)
        )
        yield part.members[assembly.member]
        if assembly.tensioner is not None:
            yield part.tensioners[assembly.tensioner]


def loose_of(
    sets: Sets, load: int, whole: Callable[[int], pulp.LpVariable], activities: list[Activity]
) -> list[Loose]:
    """The loose accessory tie-downs of a load, with new variables; adds what these take."""
    groups: dict[int, tuple[tuple[Assembly, ...], list[Spot]]] = {}
    for place, article in enumerate(sets.loads[load].articles):
        if article.credits_accessories:
            continue
        for one in article.accessories:
            spots = groups.setdefault(id(one.assemblies), (one.assemblies, []))[1]
            spots += [(place, name, number) for name, number in one.places]
    found: list[Loose] = []
    for assemblies, spots in groups.values():
        parts = _parts(sets, sets.loads[load], assemblies, len(spots), whole)
        found.append(Loose(tuple(spots), assemblies, tuple(parts)))
        for part in parts:
            activities += _activities(sets, load, part)
    return found


def _parts(
    sets: Sets,
    load: LoadSets,
    assemblies: Sequence[Assembly],
    most: int,
    whole: Callable[[int], pulp.LpVariable],
) -> list[Part]:
    tensioners: dict[str, list[str]] = {}
    for one in assemblies:
        mine = tensioners.setdefault(one.member, [])
        if one.tensioner is not None:
            mine.append(one.tensioner)
    alike: dict[tuple[str, ...], list[str]] = {}
    for member, mine in tensioners.items():
        alike.setdefault(tuple(mine), []).append(member)
    return [
        Part(
            {name: whole(_at_most(sets, load, name, most)) for name in members},
            {name: whole(_at_most(sets, load, name, most)) for name in mine},
        )
        for mine, members in alike.items()
    ]


def _at_most(sets: Sets, load: LoadSets, gear: str, most: int) -> int:
    return most if sets.plenty else min(most, sets.day.gear_by_id[gear].usable)


def _activities(sets: Sets, load: int, part: Part) -> Iterator[Activity]:
    for tie_downs, half in ((1, part.members), (0, part.tensioners)):
        for gear, variable in half.items():
            yield Activity(
                variable=variable,
                load=load,
                routing=Routing.DIRECT,
                tie_downs=tie_downs,
                strength=sets.cage.wll[gear],
                uses=((gear, 1),),
            )
