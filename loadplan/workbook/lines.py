"""The settings on ``Day`` and the rules on ``House rules``, described like columns."""

from __future__ import annotations

from loadplan.day.day import RuleSet
from loadplan.day.house import UnratedPoints
from loadplan.day.units import Units
from loadplan.rules.switch import Switch
from loadplan.rules.switches import SWITCHES
from loadplan.workbook.column import Column, Value

_DAY_SECONDS = 24 * 3600

DAY_LINES = (
    Column(name="Yard", field="yard", value=Value.TEXT, help="Printed on the results."),
    Column(
        name="Date",
        field="date",
        value=Value.DATE,
        help="The day; needed where some times on Loads carry a date and others do not.",
    ),
    Column(
        name="Units",
        field="units",
        value=Value.WORD,
        words=tuple(Units),
        help="US: lb and ft. metric: kg and m.",
        default="US",
    ),
    Column(
        name="Rules",
        field="rules",
        value=Value.WORD,
        words=tuple(RuleSet),
        help="The rule set the day is planned under.",
        default="US",
    ),
    Column(
        name="Turnaround",
        field="turnaround",
        value=Value.TIME,
        unit="min",
        help="Gear from the cage is free again this long after Back; a kit at Back.",
        default="0",
        least=0,
        most=30 * 24 * 60,
    ),
    Column(
        name="Time limit",
        field="time_limit",
        value=Value.TIME,
        unit="s",
        help="How long the planning may take.",
        default="60",
        least=0,
        above=True,
        most=_DAY_SECONDS,
    ),
    Column(
        name="Height limit",
        field="height_limit",
        value=Value.LENGTH,
        help="For the height advice.",
        default="13.5 ft (4.11 m)",
        least=0,
        above=True,
        most=1_000,
    ),
    Column(
        name="Width limit",
        field="width_limit",
        value=Value.LENGTH,
        help="For the width advice.",
        default="8.5 ft (2.6 m)",
        least=0,
        above=True,
        most=1_000,
    ),
)

_OWN_LINES = (
    Column(
        name="Heavy from",
        field="heavy_from",
        value=Value.MASS,
        help="Machines from this weight up are secured under heavy by default. At most "
        "10,000 lb (4,536 kg).",
        default="0",
        least=0,
    ),
    Column(
        name="Least WLL each",
        field="least_wll_each",
        value=Value.MASS,
        help="No tie-down of an article may be weaker than this.",
        default="none",
        least=0,
        above=True,
    ),
    Column(
        name="Aggregate share",
        field="aggregate_share",
        value=Value.SHARE,
        help="Share of the weight the credited strength must reach; 0.5 or more.",
        default="0.5",
        most=10,
    ),
    Column(
        name="Estimated weight margin",
        field="estimate_margin",
        value=Value.SHARE,
        help="A load that passes by less on an estimated weight is flagged.",
        default="0.10",
        least=0,
        most=1,
    ),
    Column(
        name="Accessory counts in aggregate",
        field="accessory_counts",
        value=Value.YES_NO,
        help="Whether accessory tie-downs count in the aggregate, with a credit of 1/2.",
        default="no",
    ),
    Column(
        name="Unrated points",
        field="unrated_points",
        value=Value.WORD,
        words=tuple(UnratedPoints),
        help="What an anchor or tie point without a rating does: warn (it does not cap, and every "
        "sheet says so) or hold (the article cannot be planned).",
        default="warn",
    ),
    Column(
        name="Most per position",
        field="most_per_position",
        value=Value.WHOLE,
        help="How many tie-downs may stand at one corner or middle.",
        default="2",
        least=1,
        most=100,
    ),
    Column(
        name="Length count on machines",
        field="length_count_on_machines",
        value=Value.YES_NO,
        help="Whether the count by length holds for machines and light vehicles too.",
        default="yes",
    ),
    Column(
        name="Straps on machines",
        field="straps_on_machines",
        value=Value.YES_NO,
        help="Whether webbing may be used on machines.",
        default="yes",
    ),
)


def _reading_line(switch: Switch) -> Column:
    """The line that chooses between the readings of a disputed point."""
    canada = f" (in Canada {switch.canada})" if switch.canada else ""
    return Column(
        name=switch.name,
        field=switch.field,
        value=Value.READING,
        readings=switch.words,
        help=switch.asks,
        default=f"{switch.us}{canada}",
    )


_OWN_FIELDS = frozenset(line.field for line in _OWN_LINES)
HOUSE_LINES = _OWN_LINES + tuple(
    _reading_line(switch) for switch in SWITCHES if switch.field not in _OWN_FIELDS
)
