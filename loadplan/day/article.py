"""An article: one machine or one piece of cargo on a load."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from loadplan.day.row import Row


class CargoClass(StrEnum):
    """What an article is; it decides which section may govern it."""

    TRACKED_MACHINE = "tracked machine"
    WHEELED_MACHINE = "wheeled machine"
    ARTICULATED_MACHINE = "articulated machine"
    LIGHT_VEHICLE = "light vehicle"
    GENERAL = "general"
    LOGS = "logs"
    DRESSED_LUMBER = "dressed lumber"
    METAL_COIL = "metal coil"
    PAPER_ROLLS = "paper rolls"
    CONCRETE_PIPE = "concrete pipe"
    INTERMODAL_CONTAINER = "intermodal container"
    FLATTENED_VEHICLES = "flattened vehicles"
    ROLL_OFF_CONTAINER = "roll-off container"
    BOULDER = "boulder"

    @property
    def is_machine(self) -> bool:
        """Whether this is one of the machine classes (a light vehicle is not)."""
        return self in _MACHINES

    @property
    def is_commodity(self) -> bool:
        """Whether this class has a commodity section of its own."""
        return self in _COMMODITIES


_MACHINES = frozenset(
    {CargoClass.TRACKED_MACHINE, CargoClass.WHEELED_MACHINE, CargoClass.ARTICULATED_MACHINE}
)
_COMMODITIES = frozenset(
    {
        CargoClass.LOGS,
        CargoClass.DRESSED_LUMBER,
        CargoClass.METAL_COIL,
        CargoClass.PAPER_ROLLS,
        CargoClass.CONCRETE_PIPE,
        CargoClass.INTERMODAL_CONTAINER,
        CargoClass.FLATTENED_VEHICLES,
        CargoClass.ROLL_OFF_CONTAINER,
        CargoClass.BOULDER,
    }
)


class SecuredUnder(StrEnum):
    """The section an article is secured under.

    ``own section`` is the section that names the article's class, for commodity classes only.
    """

    HEAVY = "heavy"
    LIGHT_VEHICLE = "light vehicle"
    GENERAL = "general"
    OWN_SECTION = "own section"


class Routing(StrEnum):
    """How a tie-down runs.

    ``round`` is round the article or the load only and not to the vehicle: rules ask for it, a
    row of ``Cargo`` never does.
    """

    DIRECT = "direct"
    SAME_SIDE = "same side"
    OVER = "over"
    ROUND = "round"


class Stands(StrEnum):
    """How the articles of a group stand to each other.

    Side by side or stacked: a tie-down over the group holds every one. In line: each has its own.
    """

    SIDE_BY_SIDE = "side by side"
    STACKED = "stacked"
    IN_LINE = "in line"


class WeightFrom(StrEnum):
    """Where a weight comes from."""

    SCALE = "scale"
    PLATE = "plate"
    ESTIMATE = "estimate"


@dataclass(frozen=True, slots=True, kw_only=True)
class Accessory:
    """A part of a machine that needs its own tie-down unless it is pinned.

    ``weight`` None: not known.
    """

    name: str
    pinned: bool = False
    weight: Fraction | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AddedWeight:
    """Something riding on an article: bucket, ballast, fuel, tools."""

    what: str
    weight: Fraction
    row: Row | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Article:
    """One row of ``Cargo`` with what ``Added weight`` puts on it.

    ``weight`` is the article's own, ``carried_weight`` with everything on it. Quantities are in
    the day's units. ``secured_under`` and ``routing`` are None where the cell is blank; the
    rules resolve them (:mod:`loadplan.rules.choice`). ``group`` is the id of the group it is
    secured with, "" where it is secured alone; ``stands`` is None where the cell is blank.
    """

    id: str
    load: str
    cargo_class: CargoClass
    weight: Fraction
    description: str = ""
    weight_from: WeightFrom = WeightFrom.ESTIMATE
    added: tuple[AddedWeight, ...] = ()
    length: Fraction | None = None
    width: Fraction | None = None
    height: Fraction | None = None
    secured_under: SecuredUnder | None = None
    blocked_forward: bool = False
    routing: Routing | None = None
    tie_point_wll: Fraction | None = None
    accessories: tuple[Accessory, ...] = ()
    reach: Fraction | None = None
    shackles: int = 0
    sharp_edges: bool = False
    chain_only: bool = False
    details: str = ""
    group: str = ""
    stands: Stands | None = None
    row: Row | None = field(default=None, compare=False, repr=False)

    @property
    def carried_weight(self) -> Fraction:
        """The weight every rule uses: the article and everything riding on it."""
        return sum((added.weight for added in self.added), self.weight)
