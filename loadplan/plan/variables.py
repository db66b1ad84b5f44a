"""The variables of the program, and the activities that take gear."""

from __future__ import annotations

from dataclasses import dataclass, field

import pulp

from loadplan.day.article import Routing
from loadplan.plan.activity import Activity
from loadplan.plan.assembly import Assembly
from loadplan.plan.counted import Counted, counted_of
from loadplan.plan.fixed import Completion
from loadplan.plan.loose import Loose, loose_of
from loadplan.plan.reach import Reach, Tiers, reach_of_simple, tiers_of
from loadplan.plan.sets import AccessoryClass, ArticleSets, LoadSets, PositionClass, Sets
from loadplan.rules.positions import MIDDLE

_PLENTY = 1000
CreditedAccessories = tuple[AccessoryClass, list[pulp.LpVariable]]


@dataclass(slots=True)
class MixedSet:
    """Variables of an article served by more than one assembly.

    ``chosen`` 1 where it is; ``patterns`` the minimal pattern it follows, or ``longer`` with more
    tie-downs than the patterns go; ``pieces`` tie-downs per assembly; ``used`` per pair whether
    it occurs.
    """

    place: PositionClass
    reach: Reach
    tiers: Tiers
    chosen: pulp.LpVariable
    patterns: list[pulp.LpVariable]
    longer: pulp.LpVariable | None
    pieces: list[pulp.LpVariable]
    used: dict[tuple[str, str], pulp.LpVariable]


@dataclass(slots=True)
class SimpleArticle:
    """Variables of an article whose main tie-downs are all alike in what they may take.

    ``pure`` holds, per place of an assembly that can serve the article alone, 1 where it does.
    """

    sets: ArticleSets
    pure: dict[int, pulp.LpVariable]
    mixed: MixedSet | None


@dataclass(slots=True)
class CoupledArticle:
    """Variables of an article whose tie-downs are not all alike.

    ``pieces`` tie-downs per class and assembly, ``at`` per position, ``slots`` the completion
    chosen for each begun tie-down, ``used`` per pair whether it occurs among the main ones;
    ``accessories`` those that add to its strength; ``middle`` whether any place in the middle is
    used, None where there is none. ``counted`` is more of an article that is simple all the same,
    in a program without patterns.
    """

    sets: ArticleSets
    pieces: list[list[pulp.LpVariable]]
    at: dict[str, pulp.LpVariable]
    slots: list[list[pulp.LpVariable]]
    used: dict[tuple[str, str], pulp.LpVariable]
    accessories: list[CreditedAccessories]
    middle: pulp.LpVariable | None
    counted: Counted | None = None


@dataclass(slots=True)
class Variables:
    """All variables: ``ready`` per load, the articles', protectors and ``loose`` per load.

    Those of a load come one after another from its ``ready`` on. After all of them comes what is
    ``out`` of a pool at each moment, per kind of gear.
    """

    ready: list[pulp.LpVariable]
    articles: list[list[SimpleArticle | CoupledArticle]]
    protectors: list[dict[str, pulp.LpVariable]]
    loose: list[list[Loose]]
    activities: list[Activity] = field(default_factory=list)
    all: list[pulp.LpVariable] = field(default_factory=list)
    out: dict[str, list[pulp.LpVariable]] = field(default_factory=dict)

    def binary(self) -> pulp.LpVariable:
        """A new 0-1 variable."""
        return self.whole(1)

    def whole(self, most: int) -> pulp.LpVariable:
        """A new whole variable from 0 to ``most``; named by its place, never by user text."""
        variable = pulp.LpVariable(f"x{len(self.all)}", 0, most, pulp.LpInteger)
        self.all.append(variable)
        return variable

    def out_of(self, gear: str, most: list[int]) -> list[pulp.LpVariable]:
        """New variables for the pieces of a pool that are out, up to ``most`` at each moment.

        They are whole wherever the others are.
        """
        first = len(self.all)
        found = [pulp.LpVariable(f"x{at}", 0, number) for at, number in enumerate(most, first)]
        self.all += found
        self.out[gear] = found
        return found


def make_variables(
    sets: Sets, *, complete: bool, patterns: bool = True, pairs: bool = True
) -> Variables:
    """The variables for ``sets``.

    ``complete`` gives every simple article all its sets, one variable per assembly alone and the
    tier patterns for mixed ones. Otherwise its sets are left to be added as columns later. Without
    ``patterns`` a complete one counts tie-downs per assembly only, and ``pairs`` unless that is
    not asked for.
    """
    made = Variables(ready=[], articles=[], protectors=[], loose=[])
    for index, load in enumerate(sets.loads):
        made.ready.append(made.whole(int(load.possible)))
        made.articles.append([])
        made.protectors.append({})
        made.loose.append([])
        if not load.possible:
            continue
        before = len(made.activities)
        for article in load.articles:
            if (article.simple and patterns) or (article.listable and not complete):
                one: SimpleArticle | CoupledArticle = _simple(made, sets, index, article, complete)
            else:
                one = _coupled(made, sets, index, article)
                if article.simple:
                    one.counted = counted_of(sets, article, made.binary if pairs else None)
            made.articles[index].append(one)
        made.loose[index] = loose_of(sets, index, made.whole, made.activities)
        _protectors(made, sets, load, made.activities[before:], made.protectors[index])
    return made


def _simple(
    made: Variables, sets: Sets, load: int, article: ArticleSets, complete: bool
) -> SimpleArticle:
    if not complete:
        return SimpleArticle(article, {}, None)
    (place,), reach = article.classes, reach_of_simple(article)
    pure: dict[int, pulp.LpVariable] = {}
    for at, (assembly, number) in enumerate(zip(place.assemblies, reach.alone, strict=True)):
        if number <= min(place.room, _most(sets, load, assembly)):
            pure[at] = made.binary()
            _act(made, load, place.routing, assembly, pure[at], number)
    mixed = _mixed(made, sets, load, article, place, reach)
    return SimpleArticle(article, pure, mixed)


def _mixed(
    made: Variables,
    sets: Sets,
    load: int,
    article: ArticleSets,
    place: PositionClass,
    reach: Reach,
) -> MixedSet | None:
    if not place.assemblies or place.room < 2:
        return None
    pieces = []
    for assembly in place.assemblies:
        pieces.append(made.whole(min(place.room, _most(sets, load, assembly))))
        _act(made, load, place.routing, assembly, pieces[-1], 1)
    tiers = tiers_of(reach, place.room)
    return MixedSet(
        place=place,
        reach=reach,
        tiers=tiers,
        chosen=made.binary(),
        patterns=[made.binary() for _ in tiers.patterns],
        longer=made.binary() if tiers.longest < place.room else None,
        pieces=pieces,
        used={pair: made.binary() for pair in dict.fromkeys(a.pair for a in place.assemblies)},
    )


def _coupled(made: Variables, sets: Sets, load: int, article: ArticleSets) -> CoupledArticle:
    pieces = []
    for place in article.classes:
        pieces.append(
            [
                made.whole(max(0, min(place.room, _most(sets, load, assembly))))
                for assembly in place.assemblies
            ]
        )
        for assembly, variable in zip(place.assemblies, pieces[-1], strict=True):
            _act(made, load, place.routing, assembly, variable, 1)
    slots = []
    for slot in article.slots:
        slots.append([made.binary() for _ in slot.assemblies])
        at = None if slot.accessory else article.demand.set_of(slot.position)
        run = Routing.DIRECT if at is None else at.routing
        for completion, variable in zip(slot.assemblies, slots[-1], strict=True):
            _finish(made, load, run, completion, variable)
    taken = [slot.position for slot in article.slots if not slot.accessory]
    most = {at: one.most_at_each for one in article.demand.position_sets for at in one.positions}
    main = [a for place in article.classes for a in place.assemblies]
    main += [c.assembly for slot in article.slots if not slot.accessory for c in slot.assemblies]
    return CoupledArticle(
        sets=article,
        pieces=pieces,
        at={p: made.whole(max(0, most[p] - taken.count(p))) for p in article.demand.positions},
        slots=slots,
        used={pair: made.binary() for pair in dict.fromkeys(a.pair for a in main)},
        accessories=_accessories(made, sets, load, article),
        middle=made.binary() if any(at in MIDDLE for at in article.demand.positions) else None,
    )


def _accessories(
    made: Variables, sets: Sets, load: int, article: ArticleSets
) -> list[CreditedAccessories]:
    found: list[CreditedAccessories] = []
    for one in article.accessories if article.credits_accessories else ():
        variables: list[pulp.LpVariable] = []
        for assembly in one.assemblies:
            most = min(len(one.places), _most(sets, load, assembly))
            variables.append(made.whole(most))
            _act(made, load, Routing.DIRECT, assembly, variables[-1], 1)
        found.append((one, variables))
    return found


def _protectors(
    made: Variables,
    sets: Sets,
    load: LoadSets,
    activities: list[Activity],
    found: dict[str, pulp.LpVariable],
) -> None:
    if load.needs_protectors():
        for gear in sets.cage.protectors(load.trailer):
            found[gear.id] = made.whole(_PLENTY if sets.plenty else gear.usable)


def _most(sets: Sets, load: int, assembly: Assembly) -> int:
    """How many of ``assembly`` all usable pieces together make, on one load."""
    if sets.plenty:
        return _PLENTY
    gear = sets.day.gear_by_id
    most = min(gear[piece].usable // number for piece, number in assembly.uses)
    return min(most, sets.loads[load].demand.winches.at_most) if assembly.winch else most


def _act(
    made: Variables,
    load: int,
    routing: Routing,
    assembly: Assembly,
    variable: pulp.LpVariable,
    tie_downs: int,
) -> None:
    made.activities.append(
        Activity(
            variable=variable,
            load=load,
            routing=routing,
            tie_downs=tie_downs,
            strength=assembly.strength * tie_downs,
            uses=tuple((gear, pieces * tie_downs) for gear, pieces in assembly.uses),
            protectors=assembly.protectors * tie_downs,
            winches=tie_downs if assembly.winch else 0,
        )
    )


def _finish(
    made: Variables,
    load: int,
    routing: Routing,
    completion: Completion,
    variable: pulp.LpVariable,
) -> None:
    assembly = completion.assembly
    made.activities.append(
        Activity(
            variable=variable,
            load=load,
            routing=routing,
            tie_downs=1,
            strength=assembly.strength,
            uses=completion.adds,
            protectors=completion.protectors,
            winches=int(assembly.winch),
        )
    )
