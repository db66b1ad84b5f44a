"""Automobiles, light trucks and vans, 49 CFR 393.128."""

from __future__ import annotations

from loadplan.day.article import CargoClass, Routing, SecuredUnder
from loadplan.day.house import StateRules
from loadplan.rules.aggregate import aggregate, each_direction
from loadplan.rules.choice import length_counts, routing, secured_under_in
from loadplan.rules.general import front_and_rear, length_count, main_set
from loadplan.rules.looks import BOTH_ENDS
from loadplan.rules.make import at_least
from loadplan.rules.positions import FRONT, REAR
from loadplan.rules.requirement import CountRequirement
from loadplan.rules.section import Asks, Subject
from loadplan.rules.sources import CALIFORNIA_VEHICLES, LIGHT_VEHICLE, house_rule

ENDS_RULE = house_rule("Light vehicle tie-downs")
_TWO = at_least(
    "two tie-downs", 2, LIGHT_VEHICLE, words="Held at the front and at the rear: at least two"
)
_TWO_AT_EACH_END = tuple(
    at_least(
        f"two tie-downs at the {end}",
        2,
        ENDS_RULE,
        words=f"Read as two at both ends: at the {end} at least two",
        positions=positions,
    )
    for end, positions in (("front", FRONT), ("rear", REAR))
)
_FOUR_AT_BOTH_ENDS = at_least(
    "four tie-downs", 4, ENDS_RULE, words="Read as two at both ends: at least four"
)
_CALIFORNIA = at_least(
    "four tie-downs on a trailer",
    4,
    CALIFORNIA_VEHICLES,
    words="A vehicle on a trailer: at least four",
)


def light_vehicle(subject: Subject) -> Asks:
    """At least two tie-downs, one at the front and one at the rear, and half the weight.

    The count by length adds to it in the US unless a house rule says no, in Canada never
    (s. 88(2), "despite section 22").
    """
    article, profile = subject.article, subject.profile
    run = routing(article)
    counts = light_vehicle_counts(subject, run)
    counted = length_counts(article, profile)
    if counted:
        counts = (*counts, length_count(article, profile))
    whole, main = aggregate(subject, run), main_set(article, profile, run)
    directions = each_direction(whole, profile, main) if run is not Routing.OVER else ()
    return Asks(
        section=LIGHT_VEHICLE,
        sets=(main,),
        counts=counts,
        strengths=(whole, *directions),
        looks=(BOTH_ENDS,),
        tie_points=True,
        counted=counted,
    )


def light_vehicle_counts(subject: Subject, run: Routing) -> tuple[CountRequirement, ...]:
    """The counts of the section and of the state rules chosen.

    Tie-downs over the article have no front and rear places: there the number alone is asked.
    """
    over = run is Routing.OVER
    counts: tuple[CountRequirement, ...] = (
        (_TWO,) if over else (_TWO, *front_and_rear(LIGHT_VEHICLE))
    )
    if subject.house.light_vehicle_tie_downs > 2:
        counts = (*counts, _FOUR_AT_BOTH_ENDS) if over else (*counts, *_TWO_AT_EACH_END)
    if subject.house.state_rules is StateRules.CALIFORNIA_VEHICLES and _is_vehicle(subject):
        counts = (*counts, _CALIFORNIA)
    return counts


def _is_vehicle(subject: Subject) -> bool:
    section = secured_under_in(subject.article, subject.profile)
    light = subject.article.cargo_class is CargoClass.LIGHT_VEHICLE
    return light or section is SecuredUnder.LIGHT_VEHICLE
