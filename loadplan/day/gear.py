"""Gear: one kind of piece in the cage or in a trailer's kit."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from loadplan.day.row import Row
from loadplan.day.size import Size


class Kind(StrEnum):
    """What a piece is."""

    CHAIN = "chain"
    WINCH_STRAP = "winch strap"
    RATCHET_STRAP = "ratchet strap"
    RETRACTABLE_STRAP = "retractable strap"
    WIRE_ROPE = "wire rope"
    ROPE = "rope"
    STEEL_STRAPPING = "steel strapping"
    LEVER_BINDER = "lever binder"
    RATCHET_BINDER = "ratchet binder"
    TURNBUCKLE = "turnbuckle"
    SHACKLE = "shackle"
    EDGE_PROTECTOR = "edge protector"


WEBBING = frozenset({Kind.WINCH_STRAP, Kind.RATCHET_STRAP, Kind.RETRACTABLE_STRAP})
TENSION_MEMBERS = WEBBING | {Kind.CHAIN, Kind.WIRE_ROPE, Kind.ROPE, Kind.STEEL_STRAPPING}
BINDERS = frozenset({Kind.LEVER_BINDER, Kind.RATCHET_BINDER})
TENSIONERS = BINDERS | {Kind.TURNBUCKLE}
SELF_TENSIONED = frozenset({Kind.RATCHET_STRAP, Kind.RETRACTABLE_STRAP, Kind.STEEL_STRAPPING})


class Condition(StrEnum):
    """Only good gear is planned."""

    GOOD = "good"
    HOLD = "hold"
    SCRAP = "scrap"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gear:
    """One row of ``Gear``.

    ``size`` is None where the cell is blank or cannot be read as a size; ``size_text`` keeps it
    as typed. ``kept_on`` is the id of the trailer whose kit this is; None is the cage.
    """

    id: str
    kind: Kind
    size: Size | None = None
    size_text: str = ""
    grade: str = ""
    length: Fraction | None = None
    wll: Fraction | None = None
    breaking_strength: Fraction | None = None
    fits: tuple[Size, ...] = ()
    quantity: int = 1
    condition: Condition = Condition.GOOD
    kept_on: str | None = None
    mass: Fraction | None = None
    row: Row | None = field(default=None, compare=False, repr=False)

    @property
    def usable(self) -> int:
        """Pieces that may be planned as far as their condition goes."""
        return self.quantity if self.condition is Condition.GOOD else 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """One row of ``Prices``: a specification, what a piece costs, how many can be had."""

    specification: Gear
    price: Fraction
    currency: str = ""
    most: int | None = None
    row: Row | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class FixedPiece:
    """One row of ``Fixed``: a piece already on a load."""

    load: str
    article: str
    position: str
    gear: str
    number: int = 1
    row: Row | None = field(default=None, compare=False, repr=False)
