"""What a blank cell of an article means: the section it is secured under and its routing."""

from __future__ import annotations

from loadplan.day.article import Article, CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.profile import Profile

_DIRECT_COMMODITIES = frozenset({CargoClass.INTERMODAL_CONTAINER, CargoClass.ROLL_OFF_CONTAINER})


def secured_under(
    article: Article, house: HouseRules, units: Units, rules: RuleSet = RuleSet.US
) -> SecuredUnder:
    """The section that governs ``article`` in a day of these units, rules and house rules."""
    return secured_under_in(article, Profile(rules=rules, units=units, house=house))


def secured_under_in(article: Article, profile: Profile) -> SecuredUnder:
    """The section that governs ``article`` (49 CFR 393.130(a) leaves the choice for light ones).

    As stated; else machines from the house rule ``Heavy from`` up are ``heavy`` and lighter ones
    ``light vehicle``, by the weight with everything on it, commodities follow their own section,
    and other classes go by their name.
    """
    if article.secured_under is not None:
        return article.secured_under
    if article.cargo_class is CargoClass.GENERAL:
        return SecuredUnder.GENERAL
    if article.cargo_class is CargoClass.LIGHT_VEHICLE:
        return SecuredUnder.LIGHT_VEHICLE
    if article.cargo_class.is_commodity:
        return SecuredUnder.OWN_SECTION
    heavy = profile.is_heavy(article.carried_weight)
    return SecuredUnder.HEAVY if heavy else SecuredUnder.LIGHT_VEHICLE


def routing(article: Article) -> Routing:
    """How the main tie-downs of ``article`` run: as stated, else over for cargo.

    Machines, vehicles and containers are tied direct unless their row says otherwise. Where a
    commodity section fixes how its tie-downs run, the section decides.
    """
    if article.routing is not None:
        return article.routing
    cargo = article.cargo_class is CargoClass.GENERAL or article.cargo_class.is_commodity
    direct = article.cargo_class in _DIRECT_COMMODITIES
    return Routing.OVER if cargo and not direct else Routing.DIRECT


def counts_length(
    article: Article, house: HouseRules, units: Units, rules: RuleSet = RuleSet.US
) -> bool:
    """Whether the tie-downs of ``article`` are counted by its length (49 CFR 393.110)."""
    return length_counts(article, Profile(rules=rules, units=units, house=house))


def length_counts(article: Article, profile: Profile) -> bool:
    """Whether the tie-downs of ``article`` are counted by its length (49 CFR 393.110).

    Always for class general and under ``general``; for commodities under their own section as
    that section or the house rule ``Length count on commodities`` says; otherwise as the house
    rule ``Length count on machines`` says, but in Canada never for light vehicles.
    """
    section = secured_under_in(article, profile)
    if article.cargo_class is CargoClass.GENERAL or section is SecuredUnder.GENERAL:
        return True
    if section is SecuredUnder.OWN_SECTION:
        return profile.house.length_count_on_commodities
    if profile.canada and section is SecuredUnder.LIGHT_VEHICLE:
        return False
    return profile.house.length_count_on_machines
