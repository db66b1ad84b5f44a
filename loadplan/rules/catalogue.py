"""The catalogue of rules as rows: rule sets, sections, switches and sources, for printing."""

from __future__ import annotations

from dataclasses import dataclass

from loadplan.day.article import CargoClass
from loadplan.day.day import RuleSet
from loadplan.rules import sources
from loadplan.rules.canada import CANADIAN_SOURCES, canadian
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.profile import EDITIONS
from loadplan.rules.switches import SWITCHES
from loadplan.source import Source
from loadplan.wll.rating_sources import (
    GRADE_MARKED,
    LOWEST_GRADE,
    MARKED,
    MARKED_IN_CANADA,
    NO_RATING,
    ONE_THIRD,
    STRAPPING_THIRD,
    UNMARKED_IS_ZERO,
    WIRE_ROPE_THIRD,
)
from loadplan.wll.tables import other_figures


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleSetRow:
    """One rule set: the value of ``Rules``, its document, the edition read and who it binds."""

    rules: str
    document: str
    read: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionRow:
    """One section of a rule set: what it is for, the classes it governs, what it asks."""

    rules: str
    section: str
    title: str
    classes: str
    details: str
    asks: str
    certainty: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SwitchRow:
    """One reading of one disputed point: its house rule, whether it is the default, its ground."""

    rule: str
    asks: str
    reading: str
    default: str
    rests_on: str
    certainty: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceRow:
    """One line of a rule set: where it stands, the edition read, how sure we are, what it says."""

    rules: str
    document: str
    section: str
    edition: str
    certainty: str
    says: str


# In Canada nothing stands in for a maker's mark but the grade mark of a chain.
_US_ONLY = (MARKED, NO_RATING, ONE_THIRD, WIRE_ROPE_THIRD, STRAPPING_THIRD)
_MACHINES = ", ".join(kind.value for kind in CargoClass if kind.is_machine)
_COMMON = (
    (sources.AGGREGATE, "aggregate working load limit", "every class"),
    (sources.LOWEST_PART, "working load limit of one tie-down", "every class"),
    (sources.COUNT, "number of tie-downs", "general; other classes where the section says"),
    (sources.LIGHT_VEHICLE, "automobiles, light trucks and vans", CargoClass.LIGHT_VEHICLE.value),
    (sources.FOUR, "heavy vehicles, equipment and machinery", _MACHINES),
    (sources.ACCESSORIES, "accessory equipment", _MACHINES),
)


def rule_set_rows() -> tuple[RuleSetRow, ...]:
    """The rule sets there are."""
    return tuple(
        RuleSetRow(rules=rules.value, document=one.document, read=one.read, note=one.note)
        for rules, one in EDITIONS.items()
    )


def section_rows(rules: RuleSet = RuleSet.US) -> tuple[SectionRow, ...]:
    """The sections of ``rules``: those for every class first, then the commodities."""
    common = [_section(rules, source, title, kinds, "") for source, title, kinds in _COMMON]
    commodities = [
        _section(
            rules,
            one.section,
            one.title,
            kind.value,
            "; ".join(detail.write for detail in one.details),
        )
        for kind, one in COMMODITIES.items()
    ]
    return (*common, *commodities)


def switch_rows() -> tuple[SwitchRow, ...]:
    """Every reading of every disputed point, the default of each rule set named."""
    return tuple(
        SwitchRow(
            rule=switch.name,
            asks=switch.asks,
            reading=reading.word,
            default=", ".join(rules.value for rules in RuleSet if switch.default(rules) is reading),
            rests_on=reading.rests_on,
            certainty=reading.certainty,
        )
        for switch in SWITCHES
        for reading in switch.readings
    )


def source_rows(rules: RuleSet = RuleSet.US) -> tuple[SourceRow, ...]:
    """Every source of ``rules``."""
    return tuple(
        SourceRow(
            rules=rules.value,
            document=one.document,
            section=one.section,
            edition=one.edition,
            certainty=one.certainty.value,
            says=one.says,
        )
        for one in sources_of(rules)
    )


def sources_of(rules: RuleSet) -> tuple[Source, ...]:
    """Every source of ``rules`` in a fixed order: rules, ratings, default tables, advice."""
    if rules is RuleSet.US:
        other_prints = (one.row.source for one in other_figures())
        return (*sources.catalogue(), LOWEST_GRADE, *other_prints)
    shared = (one for one in sources.US_SOURCES if one not in _US_ONLY)
    practice = (one for one in sources.PRACTICE_SOURCES if one not in _US_ONLY)
    marks = (MARKED_IN_CANADA, GRADE_MARKED, UNMARKED_IS_ZERO, LOWEST_GRADE)
    found = (*map(canadian, shared), *CANADIAN_SOURCES, *marks, *practice)
    return tuple(dict.fromkeys(found))


def _section(rules: RuleSet, source: Source, title: str, kinds: str, details: str) -> SectionRow:
    own = canadian(source) if rules is RuleSet.CANADA else source
    return SectionRow(
        rules=rules.value,
        section=f"{own.document} {own.section}",
        title=title,
        classes=kinds,
        details=details,
        asks=own.says,
        certainty=own.certainty.value,
    )
