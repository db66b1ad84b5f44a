"""Assemblies: the complete tie-downs that the cage can make for one kind of place."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from loadplan.day.article import Routing
from loadplan.day.day import Day
from loadplan.day.gear import TENSION_MEMBERS, TENSIONERS, Gear, Kind
from loadplan.day.load import Load
from loadplan.day.size import Size
from loadplan.rules.requirement import (
    Demand,
    LoadDemand,
    MemberRequirement,
    PositionSet,
    ProtectorRequirement,
    ReachRequirement,
    ShackleRequirement,
)
from loadplan.wll.assembly import fits, is_webbing, needs_tensioner, needs_winch, runs
from loadplan.wll.piece import rate_in
from loadplan.wll.tie_down import rate_tie_down


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """One way to make a complete tie-down, by ``Gear`` ids.

    ``uses`` are the load-bearing pieces it takes; ``protectors`` the number of edge protectors
    besides. ``wll`` is the lowest of all its parts with the points it hooks to; ``strength`` the
    sum of the pieces' own WLL, whatever caps them.
    """

    member: str
    tensioner: str | None
    shackle: str | None
    shackles: int
    protectors: int
    winch: bool
    wll: Fraction
    strength: Fraction
    uses: tuple[tuple[str, int], ...]

    @property
    def pair(self) -> tuple[str, str]:
        """What makes two tie-downs one set: tension member and tensioner."""
        return (self.member, self.tensioner or "")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """What an assembly must suit: everything about a position that decides what may go there.

    ``members`` are the kinds of tension member allowed and the least size, one pair per
    requirement; all of them hold.
    """

    routing: Routing
    members: tuple[tuple[frozenset[Kind], Size | None], ...] = ()
    reach: Fraction | None = None
    shackles: int = 0
    protectors: int = 0
    least: Fraction = Fraction(0)
    anchor_wll: Fraction | None = None
    tie_point_wll: Fraction | None = None
    trailer: str | None = None
    winches: bool = False


def main_places(demand: Demand, whole: LoadDemand, trailer: str | None) -> dict[str, Place]:
    """What an assembly must suit at each main position of ``demand``."""
    return {
        position: _main_place(demand, whole, trailer, one, position)
        for one in demand.position_sets
        for position in one.positions
    }


def accessory_place(whole: LoadDemand, trailer: str | None, least: Fraction | None) -> Place:
    """What a tie-down of an accessory must suit: ratings and the anchor, little of the article."""
    return Place(
        routing=Routing.DIRECT,
        anchor_wll=whole.anchor_wll,
        trailer=trailer,
        least=least or Fraction(0),
    )


def _main_place(
    demand: Demand, whole: LoadDemand, trailer: str | None, one: PositionSet, position: str
) -> Place:
    members: list[tuple[frozenset[Kind], Size | None]] = []
    reach: Fraction | None = None
    shackles = protectors = 0
    least = Fraction(0)
    for asked in demand.properties:
        if isinstance(asked, MemberRequirement):
            if asked.positions is None or position in asked.positions:
                members.append((asked.kinds, asked.least_size))
        elif isinstance(asked, ReachRequirement):
            reach = asked.at_least if reach is None else max(reach, asked.at_least)
        elif isinstance(asked, ShackleRequirement):
            shackles = asked.number
        elif isinstance(asked, ProtectorRequirement):
            protectors = asked.number
        elif asked.positions is None or position in asked.positions:
            least = max(least, asked.at_least)
    return Place(
        routing=one.routing,
        members=tuple(members),
        reach=reach,
        shackles=shackles,
        protectors=protectors,
        least=least,
        anchor_wll=None if one.routing is Routing.ROUND else whole.anchor_wll,
        tie_point_wll=one.tie_point_wll if one.routing is Routing.DIRECT else None,
        trailer=trailer,
        winches=whole.winches.at_most > 0,
    )


@dataclass(frozen=True)
class Cage:
    """The usable gear of a day, rated, and the assemblies it can make.

    Gear is kept in the order of its id, so that the rows of the workbook may stand in any order.
    """

    day: Day
    _made: dict[Place, tuple[Assembly, ...]] = field(default_factory=dict)

    @cached_property
    def usable(self) -> tuple[Gear, ...]:
        """Good gear in the fixed order, rated or bearing no load."""
        good = [gear for gear in self.day.gear if gear.usable > 0]
        good.sort(key=lambda gear: (gear.id.casefold(), gear.id))
        return tuple(
            gear for gear in good if gear.id in self.wll or gear.kind is Kind.EDGE_PROTECTOR
        )

    @cached_property
    def wll(self) -> dict[str, Fraction]:
        """The own WLL of each rated kind of gear."""
        rated = ((gear.id, rate_in(self.day, gear).wll) for gear in self.day.gear)
        return {gear: wll for gear, wll in rated if wll is not None}

    @cached_property
    def kit_trailers(self) -> frozenset[str]:
        """Trailers that have usable gear of their own."""
        return frozenset(gear.kept_on for gear in self.usable if gear.kept_on is not None)

    def kit_of(self, load: Load) -> str | None:
        """The trailer of ``load`` where it has a kit, else None (so that places compare equal)."""
        return load.trailer if load.trailer in self.kit_trailers else None

    @cached_property
    def pairs(self) -> tuple[tuple[Gear, Gear | None], ...]:
        """Every (tension member, tensioner) that goes together, whatever it is for."""
        members = [gear for gear in self.usable if gear.kind in TENSION_MEMBERS]
        tensioners = [gear for gear in self.usable if gear.kind in TENSIONERS]
        found: list[tuple[Gear, Gear | None]] = []
        for member in members:
            if not needs_tensioner(member):
                found.append((member, None))
            found += [(member, tensioner) for tensioner in tensioners if fits(member, tensioner)]
        return tuple(found)

    def protectors(self, trailer: str | None) -> tuple[Gear, ...]:
        """Edge protectors a load of ``trailer`` may take."""
        return tuple(
            gear
            for gear in self.usable
            if gear.kind is Kind.EDGE_PROTECTOR and gear.kept_on in (None, trailer)
        )

    def assemblies(self, place: Place) -> tuple[Assembly, ...]:
        """Every assembly that suits ``place``, in the fixed order."""
        if place not in self._made:
            self._made[place] = tuple(self._make(place))
        return self._made[place]

    def _make(self, place: Place) -> list[Assembly]:
        shackles: list[Gear | None] = [None]
        if place.shackles:
            shackles = [
                gear
                for gear in self.usable
                if gear.kind is Kind.SHACKLE
                and gear.kept_on in (None, place.trailer)
                and gear.usable >= place.shackles
            ]
        made = (
            self._assemble(place, member, tensioner, shackle)
            for member, tensioner in self.pairs
            if _suits(place, member) and _at_hand(place, member, tensioner)
            for shackle in shackles
        )
        return [assembly for assembly in made if assembly.wll >= place.least]

    def _assemble(
        self, place: Place, member: Gear, tensioner: Gear | None, shackle: Gear | None
    ) -> Assembly:
        own = [self.wll[member.id]]
        uses = [(member.id, 1)]
        if tensioner is not None:
            own.append(self.wll[tensioner.id])
            uses.append((tensioner.id, 1))
        number = place.shackles if shackle is not None else 0
        if shackle is not None:
            own.append(self.wll[shackle.id] * number)
            uses.append((shackle.id, number))
        rating = rate_tie_down(
            member=self.wll[member.id],
            tensioner=None if tensioner is None else self.wll[tensioner.id],
            connector=None if shackle is None else self.wll[shackle.id],
            anchor=place.anchor_wll,
            tie_point=place.tie_point_wll,
        )
        return Assembly(
            member=member.id,
            tensioner=None if tensioner is None else tensioner.id,
            shackle=None if shackle is None else shackle.id,
            shackles=number,
            protectors=place.protectors if is_webbing(member) else 0,
            winch=needs_winch(member),
            wll=rating.wll,
            strength=sum(own, Fraction(0)),
            uses=tuple(uses),
        )


def _suits(place: Place, member: Gear) -> bool:
    """Whether ``member`` may be the tension member there."""
    if not runs(member, place.routing) or (needs_winch(member) and not place.winches):
        return False
    for kinds, least in place.members:
        if member.kind not in kinds:
            return False
        if least is not None and (member.size is None or member.size.inches < least.inches):
            return False
    return place.reach is None or (member.length is not None and member.length >= place.reach)


def _at_hand(place: Place, member: Gear, tensioner: Gear | None) -> bool:
    """Whether both pieces are in the cage or in the kit of the trailer that goes."""
    return member.kept_on in (None, place.trailer) and (
        tensioner is None or tensioner.kept_on in (None, place.trailer)
    )
