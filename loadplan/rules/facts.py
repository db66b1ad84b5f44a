"""Facts of an article that contradict the section it is secured under."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Article, CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.canada import cite_in
from loadplan.rules.choice import length_counts, routing, secured_under_in
from loadplan.rules.commodities.boulders import too_heavy_for_general
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.profile import Profile
from loadplan.rules.read_details import detail_problems, details_of
from loadplan.rules.sources import COUNT, FOUR, HEAVY_SCOPE, LIGHT_VEHICLE
from loadplan.text import mass, names

__all__ = ["Contradiction", "contradictions"]

_SECTION = {SecuredUnder.HEAVY: FOUR, SecuredUnder.LIGHT_VEHICLE: LIGHT_VEHICLE}


def contradictions(
    article: Article, house: HouseRules, units: Units, rules: RuleSet = RuleSet.US
) -> Iterator[Contradiction]:
    """Everything about ``article`` that its section does not allow or cannot do without."""
    profile = Profile(rules=rules, units=units, house=house)
    section = secured_under_in(article, profile)
    if article.routing is Routing.ROUND:
        yield _round()
        return
    if article.cargo_class in COMMODITIES:
        yield from _of_commodity(article, section, profile)
    else:
        yield from _of_others(article, section, profile)
    if article.length is None and _needs_length(article, section, profile):
        yield _no_length(article, section, profile)


def _round() -> Contradiction:
    return Contradiction(
        column="Routing",
        text="Routing is round, which only the rules ask for (a ring or wrapper). "
        "Write direct, same side or over.",
    )


def _of_commodity(
    article: Article, section: SecuredUnder, profile: Profile
) -> Iterator[Contradiction]:
    commodity = COMMODITIES[article.cargo_class]
    if section is SecuredUnder.OWN_SECTION:
        yield from detail_problems(article, profile)
        details = details_of(article)
        yield from commodity.contradictions(article, details, profile)
        allowed = commodity.routings(details)
        if article.routing is not None and article.routing not in allowed:
            words = names(sorted(run.value for run in allowed), "or")
            yield Contradiction(
                column="Routing",
                text=f"Routing is {article.routing}, and here its section says how the tie-downs "
                f"run, by {cite_in(profile, commodity.section)}. Write {words}, or leave it blank.",
            )
    elif section is not SecuredUnder.GENERAL or not commodity.general_if:
        or_general = " or general" if commodity.general_if else ""
        yield Contradiction(
            column="Secured under",
            text=f"Secured under is {section.value}, and {commodity.title} have their own section, "
            f"by {cite_in(profile, commodity.section)}. Write own section{or_general}.",
        )
    elif article.cargo_class is CargoClass.BOULDER:
        yield from too_heavy_for_general(article, profile)


def _of_others(
    article: Article, section: SecuredUnder, profile: Profile
) -> Iterator[Contradiction]:
    if section is SecuredUnder.OWN_SECTION:
        yield Contradiction(
            column="Secured under",
            text=f"Secured under is own section, and class {article.cargo_class.value} has none. "
            "Write heavy, light vehicle or general.",
        )
        return
    if section is not SecuredUnder.GENERAL and routing(article) is Routing.OVER:
        yield _over(article, section, profile)
    if section is SecuredUnder.LIGHT_VEHICLE:
        yield from _too_heavy_for_light(article, profile)
    if section is SecuredUnder.GENERAL and article.cargo_class is not CargoClass.GENERAL:
        yield from _too_heavy_for_general(article, profile)


def _over(article: Article, section: SecuredUnder, profile: Profile) -> Contradiction:
    given = "is over" if article.routing else "is blank, which means over for class general,"
    return Contradiction(
        column="Routing",
        text=f"Routing {given} but the article is secured under {section.value} "
        f"({cite_in(profile, _SECTION[section])}), which needs tie-downs at its front and rear. "
        "Write direct or same side in Routing.",
    )


def _too_heavy_for_light(article: Article, profile: Profile) -> Iterator[Contradiction]:
    if profile.may_be_light(article.carried_weight):
        return
    yield Contradiction(
        column="Secured under" if article.secured_under else "Class",
        text=f"The article weighs {mass(article.carried_weight, profile.units)} with everything on "
        f"it, and light vehicle ({cite_in(profile, LIGHT_VEHICLE)}) goes up to {_limit(profile)}. "
        "Write heavy in Secured under, or correct the weight.",
    )


def _too_heavy_for_general(article: Article, profile: Profile) -> Iterator[Contradiction]:
    """Machines, and vehicles beyond what 393.128 reaches up to, have a section of their own."""
    weight, machine = article.carried_weight, article.cargo_class.is_machine
    heavy = profile.must_be_heavy(weight) if machine else not profile.may_be_light(weight)
    if not heavy:
        return
    noun = "machine" if machine else "vehicle"
    above = profile.canada or not machine
    from_up = f"above {_limit(profile)}" if above else f"from {_limit(profile)} up"
    yield Contradiction(
        column="Secured under",
        text=f"The {noun} weighs {mass(weight, profile.units)} with everything on "
        f"it, and {from_up} a {noun} is secured under heavy ({cite_in(profile, HEAVY_SCOPE)}). "
        "Write heavy in Secured under, or correct the weight.",
    )


def _needs_length(article: Article, section: SecuredUnder, profile: Profile) -> bool:
    own = section is SecuredUnder.OWN_SECTION and article.cargo_class in COMMODITIES
    if own and COMMODITIES[article.cargo_class].by_length(details_of(article)):
        return True
    return length_counts(article, profile)


def _no_length(article: Article, section: SecuredUnder, profile: Profile) -> Contradiction:
    machine = article.cargo_class.is_machine or article.cargo_class is CargoClass.LIGHT_VEHICLE
    switchable = section is not SecuredUnder.GENERAL and machine
    other = ", or set the house rule Length count on machines to no" if switchable else ""
    return Contradiction(
        column="Length",
        text=f"Length is blank, and tie-downs are counted by it ({cite_in(profile, COUNT)}). "
        f"Write the length{other}.",
    )


def _limit(profile: Profile) -> str:
    return mass(profile.limits.heavy, profile.measured_in)
