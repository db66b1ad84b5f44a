"""The sets of the program: loads, articles, places, slots and the assemblies that suit them."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Routing
from loadplan.day.day import Day
from loadplan.day.gear import Gear
from loadplan.day.load import Load
from loadplan.plan.assembly import Assembly, Cage, Place, accessory_place, main_places
from loadplan.plan.fixed import Slot, slots_of
from loadplan.rules.demand import load_demand
from loadplan.rules.requirement import AnchorRequirement, Demand, LoadDemand, StrengthRequirement
from loadplan.text import down, up

ANY_GEAR = "any gear that could do it"


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionClass:
    """Positions of an article with the same candidate assemblies; ``room`` is what is left.

    ``counted`` says, per strength asked of the article, whether tie-downs here add to it.
    """

    positions: tuple[str, ...]
    routing: Routing
    assemblies: tuple[Assembly, ...]
    room: int
    counted: tuple[bool, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AccessoryClass:
    """Accessory tie-downs that no fixed gear has begun and that may take the same assemblies."""

    places: tuple[tuple[str, int], ...]
    assemblies: tuple[Assembly, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ArticleSets:
    """What the program knows of one article; ``slots`` are tie-downs begun by fixed gear."""

    demand: Demand
    classes: tuple[PositionClass, ...]
    slots: tuple[Slot, ...]
    accessories: tuple[AccessoryClass, ...]

    @property
    def listable(self) -> bool:
        """Whether its sets can be listed: one class of positions and one plain strength."""
        strengths = self.demand.strengths
        return (
            len(self.classes) == 1
            and len(self.demand.position_sets) == 1
            and len(strengths) == 1
            and strengths[0].need > 0
            and strengths[0].positions is None
            and not any(count.twice for count in self.demand.counts)
        )

    @property
    def simple(self) -> bool:
        """Whether moreover nothing is begun and no accessory adds to the strength."""
        return self.listable and not self.slots and not self.credits_accessories

    @property
    def credits_accessories(self) -> bool:
        """Whether tie-downs of its accessories add to a strength asked of it."""
        credited = any(one.accessory_credit > 0 for one in self.demand.strengths)
        return credited and bool(self.demand.accessories)

    @property
    def tied_down(self) -> bool:
        """Whether it takes any main tie-down when its load goes; some are held otherwise."""
        asked = any(one.need > 0 for one in self.demand.strengths)
        return asked or self.fewest() > 0

    def most(self) -> int:
        """No plan gives the article more tie-downs than this."""
        room = sum(place.room for place in self.classes)
        return room + len(self.slots) + sum(len(one.places) for one in self.accessories)

    def assemblies(self) -> Iterator[Assembly]:
        """Every assembly that could be somewhere on the article."""
        for place in self.classes:
            yield from place.assemblies
        for slot in self.slots:
            yield from (completion.assembly for completion in slot.assemblies)
        for one in self.accessories:
            yield from one.assemblies

    def fewest(self) -> int:
        """The fewest main tie-downs that can meet every count, by laying them out one by one."""
        taken = dict.fromkeys(self.demand.positions, 0)
        for slot in self.slots:
            if not slot.accessory:
                taken[slot.position] += 1
        for count in sorted(self.demand.counts, key=lambda count: len(count.positions or taken)):
            positions = count.positions or tuple(taken)
            while sum(count.worth(at) * taken[at] for at in positions) < count.at_least:
                emptiest = min(positions, key=lambda at: (-count.worth(at), taken[at]))
                taken[emptiest] += 1
        return sum(taken.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadSets:
    """One load in the program. ``possible`` is False where no gear at all could make it ready."""

    load: Load
    demand: LoadDemand
    articles: tuple[ArticleSets, ...]
    trailer: str | None
    possible: bool

    def needs_protectors(self) -> bool:
        """Whether some tie-down of the load would need edge protectors."""
        return any(one.protectors for article in self.articles for one in article.assemblies())

    @property
    def anchors(self) -> AnchorRequirement | None:
        """The limit on anchor points, where the trailer's count is given."""
        return self.demand.anchors


@dataclass(frozen=True, slots=True, kw_only=True)
class Sets:
    """Everything the program is built from, in an order that no row order can change.

    ``plenty`` leaves out what the cage owns: as many pieces of each kind as anyone could ask for.
    """

    day: Day
    cage: Cage
    loads: tuple[LoadSets, ...]
    plenty: bool = False

    @property
    def gear(self) -> tuple[Gear, ...]:
        """Usable gear in the fixed order."""
        return self.cage.usable


def sets_of(day: Day, only: Container[str] | None = None) -> Sets:
    """The program's sets for ``day``, or for ``only`` those of its loads."""
    cage = Cage(day)
    slots = slots_of(day)
    wanted = (load for load in day.loads if only is None or load.id in only)
    loads = sorted(wanted, key=lambda load: (load.id.casefold(), load.id))
    return Sets(
        day=day, cage=cage, loads=tuple(_load_sets(day, cage, slots, load) for load in loads)
    )


def _load_sets(day: Day, cage: Cage, slots: dict[str, tuple[Slot, ...]], load: Load) -> LoadSets:
    whole = load_demand(day, load)
    demands = sorted(whole.articles, key=lambda one: (one.article.id.casefold(), one.article.id))
    articles = tuple(
        _article_sets(cage, one, whole, load, slots.get(one.article.id, ())) for one in demands
    )
    return LoadSets(
        load=load,
        demand=whole,
        articles=articles,
        trailer=load.trailer,
        possible=all(not any(obstacles_to(article)) for article in articles),
    )


def _article_sets(
    cage: Cage, demand: Demand, whole: LoadDemand, load: Load, begun: tuple[Slot, ...]
) -> ArticleSets:
    kit = cage.kit_of(load)
    places = main_places(demand, whole, kit)
    least = {asked.accessory: asked.at_least for asked in demand.accessories}
    slots = []
    for slot in begun:
        place = places.get(slot.position)
        if place is None:
            place = accessory_place(whole, kit, least.get(slot.position))
        slots.append(slot.with_assemblies(cage.assemblies(place)))
    return ArticleSets(
        demand=demand,
        classes=tuple(_classes(cage, demand, places, slots)),
        slots=tuple(slots),
        accessories=tuple(_accessories(cage, demand, whole, kit, slots)),
    )


def _classes(
    cage: Cage, demand: Demand, places: dict[str, Place], slots: Iterable[Slot]
) -> Iterator[PositionClass]:
    groups: dict[tuple[Place, tuple[bool, ...]], list[str]] = {}
    for position, place in places.items():
        counted = tuple(_counts_at(strength, position) for strength in demand.strengths)
        groups.setdefault((place, counted), []).append(position)
    most = {at: one.most_at_each for one in demand.position_sets for at in one.positions}
    for (place, counted), positions in groups.items():
        begun = sum(1 for slot in slots if not slot.accessory and slot.position in positions)
        yield PositionClass(
            positions=tuple(positions),
            routing=place.routing,
            assemblies=cage.assemblies(place),
            room=sum(most[position] for position in positions) - begun,
            counted=counted,
        )


def _counts_at(strength: StrengthRequirement, position: str) -> bool:
    return strength.positions is None or position in strength.positions


def _accessories(
    cage: Cage, demand: Demand, whole: LoadDemand, kit: str | None, slots: Iterable[Slot]
) -> Iterator[AccessoryClass]:
    begun = {(slot.position, slot.number) for slot in slots if slot.accessory}
    groups: dict[Place, list[tuple[str, int]]] = {}
    for asked in demand.accessories:
        place = accessory_place(whole, kit, asked.at_least)
        for number in range(1, asked.number + 1):
            if (asked.accessory, number) not in begun:
                groups.setdefault(place, []).append((asked.accessory, number))
    for place, spots in groups.items():
        yield AccessoryClass(places=tuple(spots), assemblies=cage.assemblies(place))


def obstacles_to(article: ArticleSets) -> Iterator[tuple[str, str]]:
    """What the article lacks if every usable piece were there for it alone, and why."""
    yield from ((ANY_GEAR, obstacle.why) for obstacle in article.demand.obstacles)
    for one in article.accessories:
        if not one.assemblies:
            names = ", ".join(dict.fromkeys(name for name, _ in one.places))
            yield ANY_GEAR, f"No gear in the cage makes a tie-down for the {names}."
    for slot in article.slots:
        if not slot.assemblies:
            yield (
                "gear that finishes what is fixed on it",
                f"Nothing in the cage finishes the fixed tie-down at {slot.position} "
                f"number {slot.number} as the article and the house rules ask.",
            )
    room = sum(one.room for one in article.classes if one.assemblies)
    begun = sum(1 for slot in article.slots if not slot.accessory)
    fewest = article.fewest()
    if fewest and not room + begun:
        yield ANY_GEAR, "No gear in the cage makes a tie-down that suits this article."
    elif fewest > room + begun:
        why = f"It needs {fewest} tie-downs and there are places for {room + begun}."
        yield "places for tie-downs", why
    else:
        yield from ((ANY_GEAR, why) for why in _too_weak(article))


def _too_weak(article: ArticleSets) -> Iterator[str]:
    for number, strength in enumerate(article.demand.strengths):
        best = _best_credit(article, number, strength)
        if best < strength.need:
            yield (
                f"{strength.name}: {up(strength.need)} is needed; with the strongest gear "
                f"that suits it at every place it would reach {down(best)}."
            )


def _best_credit(article: ArticleSets, number: int, strength: StrengthRequirement) -> Fraction:
    """The credited strength if every place took the best assembly that suits it."""
    best = Fraction(0)
    for one in article.classes:
        if one.counted[number]:
            wll = max((a.wll for a in one.assemblies), default=Fraction(0))
            best += one.room * strength.credit_of(one.routing) * wll
    for slot in article.slots:
        share = slot_credit(article, slot, strength)
        best += share * max((c.assembly.wll for c in slot.assemblies), default=Fraction(0))
    for group in article.accessories:
        wll = max((a.wll for a in group.assemblies), default=Fraction(0))
        best += len(group.places) * strength.accessory_credit * wll
    return best


def slot_credit(article: ArticleSets, slot: Slot, strength: StrengthRequirement) -> Fraction:
    """The share of its WLL with which a begun tie-down counts in ``strength``."""
    if slot.accessory:
        return strength.accessory_credit
    one = article.demand.set_of(slot.position)
    if one is None or not _counts_at(strength, slot.position):
        return Fraction(0)
    return strength.credit_of(one.routing)
