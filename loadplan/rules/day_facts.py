"""Facts that only the whole day shows: groups, coils light together, house rules too loose."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from loadplan.day.article import Article, CargoClass, SecuredUnder
from loadplan.day.day import Day, RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import COILS
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.groups import group_contradictions
from loadplan.rules.profile import HALF, Profile, profile
from loadplan.rules.sources import AGGREGATE, HEAVY_SCOPE
from loadplan.text import mass, plain


def day_contradictions(day: Day) -> Iterator[tuple[Article, Contradiction]]:
    """What contradicts between the rows of a day, each with the article whose row it stands in."""
    yield from group_contradictions(day)
    for load in day.loads:
        cargo = day.articles_by_load[load.id]
        coils = [one for one in cargo if one.cargo_class is CargoClass.METAL_COIL]
        yield from _light_together(coils, profile(day))


def house_contradictions(
    house: HouseRules, units: Units, rules: RuleSet = RuleSet.US
) -> Iterator[Contradiction]:
    """House rules only ever tighten: lines that would go below the rule set.

    The column of each is the name of the house rule. The listed readings of disputed points are
    words of their own (:mod:`loadplan.rules.switches`) and cannot go below anything else.
    """
    asked = Profile(rules=rules, units=units, house=house)
    heavy = mass(asked.limits.heavy, asked.measured_in)
    if asked.mass(house.heavy_from) > asked.limits.heavy:
        yield Contradiction(
            column="Heavy from",
            text=f"Heavy from is {mass(house.heavy_from, units)}, and beyond {heavy} "
            f"{cite_in(asked, HEAVY_SCOPE)} holds in any case. It must be {heavy} or less.",
        )
    if house.aggregate_share < HALF:
        yield Contradiction(
            column="Aggregate share",
            text=f"Aggregate share is {plain(house.aggregate_share, 4)}, below the half that "
            f"{cite_in(asked, AGGREGATE)} asks for. It must be 0.5 or more.",
        )


def _light_together(
    coils: list[Article], asked: Profile
) -> Iterator[tuple[Article, Contradiction]]:
    """General rules chosen for coils that together weigh as much as their own section asks.

    Paper rolls are not refused so: on pallets they may follow the general rules at any weight.
    """
    limit = asked.limits.commodity
    together = asked.mass(sum((one.carried_weight for one in coils), Fraction(0)))
    for one in coils:
        if one.secured_under is SecuredUnder.GENERAL and together >= limit:
            yield (
                one,
                Contradiction(
                    column="Secured under",
                    text=f"The metal coils of load {one.load} weigh "
                    f"{mass(together, asked.measured_in)} together, and from "
                    f"{mass(limit, asked.measured_in)} up they have their own section, "
                    f"by {cite_in(asked, COILS)}. Leave Secured under blank.",
                ),
            )
