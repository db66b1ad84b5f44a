"""House rules: the readings and stricter limits a yard has chosen."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from loadplan.day.row import Row


class UnratedPoints(StrEnum):
    """What an anchor or tie point without a rating means."""

    WARN = "warn"
    HOLD = "hold"


class AtThreshold(StrEnum):
    """What a machine of exactly the weight is that 393.128 and 393.130 both name."""

    HEAVY = "heavy"
    LIGHT = "light"


class HeavyEnds(StrEnum):
    """Where the four tie-downs of a heavy machine stand."""

    EACH_CORNER = "each corner"
    TWO_AND_TWO = "two front and two rear"


class AccessoryWLL(StrEnum):
    """What WLL the tie-down of an accessory must have."""

    ANY = "any"
    HALF = "half its weight"


class UnmarkedHardware(StrEnum):
    """What a binder, turnbuckle or shackle without a WLL bears."""

    UNKNOWN = "unknown"
    LOWEST_GRADE = "lowest grade"


class TableFigures(StrEnum):
    """Whose print of the default tables is used where the prints differ."""

    FEDERAL = "federal"
    STATE_MANUAL = "state manual"


class WireRopeFigure(StrEnum):
    """What an unmarked 3/4 in wire rope bears."""

    TABLE = "table"
    QUARTER = "quarter of strength"


class StateRules(StrEnum):
    """A declared add-on of one state, on top of the rule set."""

    NONE = "none"
    CALIFORNIA_VEHICLES = "California vehicles on trailers"


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseRules:
    """The value of every house rule; the defaults are those used when a line is absent.

    ``stated`` maps the name of each rule that the workbook gives to the row it stands in, so
    that results can tell a chosen value from a default. None stands for the rule set's own
    reading. What each reading rests on is told in :mod:`loadplan.rules.switches`.
    """

    heavy_from: Fraction = Fraction(0)
    least_wll_each: Fraction | None = None
    aggregate_share: Fraction = Fraction(1, 2)
    estimate_margin: Fraction = Fraction(1, 10)
    accessory_counts: bool = False
    unrated_points: UnratedPoints = UnratedPoints.WARN
    most_per_position: int = 2
    length_count_on_machines: bool = True
    straps_on_machines: bool = True
    light_vehicle_tie_downs: int = 2
    at_threshold: AtThreshold = AtThreshold.HEAVY
    heavy_floor: bool | None = None
    direct_credit: Fraction | None = None
    same_side_credit: Fraction | None = None
    each_direction: bool = False
    accessory_tie_downs: int = 1
    accessory_in_number: bool = False
    accessory_wll: AccessoryWLL = AccessoryWLL.ANY
    unmarked_hardware: UnmarkedHardware = UnmarkedHardware.UNKNOWN
    heavy_ends: HeavyEnds = HeavyEnds.EACH_CORNER
    direct_blocks_forward: bool = False
    table_figures: TableFigures = TableFigures.FEDERAL
    wire_rope_figure: WireRopeFigure = WireRopeFigure.TABLE
    length_count_on_commodities: bool = False
    log_floor: bool = True
    roll_off_aggregate: bool = True
    low_lumber_belly: bool = True
    state_rules: StateRules = StateRules.NONE
    stated: dict[str, Row | None] = field(default_factory=dict, compare=False, repr=False)
