"""Slots: tie-downs begun by gear that is already on a load."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace

from loadplan.day.day import Day
from loadplan.day.gear import TENSION_MEMBERS, TENSIONERS, FixedPiece, Kind
from loadplan.plan.assembly import Assembly


@dataclass(frozen=True, slots=True, kw_only=True)
class Completion:
    """One way to finish a begun tie-down: the whole assembly and what must be added to it."""

    assembly: Assembly
    adds: tuple[tuple[str, int], ...]
    protectors: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A tie-down begun by ``Fixed``: what is on, where, and the ways to finish it."""

    load: str
    article: str
    position: str
    number: int
    accessory: bool
    member: str | None = None
    tensioner: str | None = None
    shackle: str | None = None
    shackles: int = 0
    protectors: tuple[tuple[str, int], ...] = ()
    assemblies: tuple[Completion, ...] = ()

    def pieces(self) -> dict[str, int]:
        """The pieces already on."""
        found: dict[str, int] = dict(self.protectors)
        for gear in (self.member, self.tensioner):
            if gear is not None:
                found[gear] = found.get(gear, 0) + 1
        if self.shackle is not None:
            found[self.shackle] = self.shackles
        return found

    def with_assemblies(self, suited: Sequence[Assembly]) -> Slot:
        """This slot with those of ``suited`` that contain what is on."""
        return replace(
            self, assemblies=tuple(self._completion(one) for one in suited if self._begins(one))
        )

    def _begins(self, assembly: Assembly) -> bool:
        return (
            self.member in (None, assembly.member)
            and self.tensioner in (None, assembly.tensioner)
            and self.shackle in (None, assembly.shackle)
            and self.shackles <= assembly.shackles
        )

    def _completion(self, assembly: Assembly) -> Completion:
        on = self.pieces()
        adds = ((gear, pieces - on.get(gear, 0)) for gear, pieces in assembly.uses)
        lacking = assembly.protectors - sum(pieces for _, pieces in self.protectors)
        return Completion(
            assembly=assembly,
            adds=tuple((gear, pieces) for gear, pieces in adds if pieces > 0),
            protectors=max(0, lacking),
        )


def slots_of(day: Day) -> dict[str, tuple[Slot, ...]]:
    """The slots of each article, by article id, in the order of position and number."""
    rows: dict[tuple[str, str, int], list[FixedPiece]] = defaultdict(list)
    for piece in day.fixed:
        rows[piece.article, piece.position, piece.number].append(piece)
    found: dict[str, list[Slot]] = defaultdict(list)
    for article, position, number in sorted(rows):
        found[article].append(_slot(day, rows[article, position, number]))
    return {article: tuple(slots) for article, slots in found.items()}


def _slot(day: Day, pieces: list[FixedPiece]) -> Slot:
    first = pieces[0]
    accessories = day.article_by_id[first.article].accessories
    slot = Slot(
        load=first.load,
        article=first.article,
        position=first.position,
        number=first.number,
        accessory=any(accessory.name == first.position for accessory in accessories),
    )
    protectors: dict[str, int] = {}
    for piece in sorted(pieces, key=lambda piece: (piece.gear.casefold(), piece.gear)):
        kind = day.gear_by_id[piece.gear].kind
        if kind in TENSION_MEMBERS:
            slot = replace(slot, member=piece.gear)
        elif kind in TENSIONERS:
            slot = replace(slot, tensioner=piece.gear)
        elif kind is Kind.SHACKLE:
            slot = replace(slot, shackle=piece.gear, shackles=slot.shackles + 1)
        else:
            protectors[piece.gear] = protectors.get(piece.gear, 0) + 1
    return replace(slot, protectors=tuple(protectors.items()))
