"""All that is asked of an article, a group and a load: the one door of this package."""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from loadplan.day.article import Article, CargoClass, Routing, SecuredUnder
from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.rules.accessories import accessory_tie_downs, counted_in_number
from loadplan.rules.anchors import anchors, winches
from loadplan.rules.article_asks import chain_only, protectors, reach, shackles
from loadplan.rules.canada import canadian, in_canada
from loadplan.rules.choice import routing, secured_under_in
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.general import general, length_count
from loadplan.rules.groups import article_named, members_of, units_of
from loadplan.rules.heavy import heavy
from loadplan.rules.house import least_each, straps_on_machines, unrated_points
from loadplan.rules.light_vehicle import light_vehicle, light_vehicle_counts
from loadplan.rules.load_looks import load_looks
from loadplan.rules.looks import CAN_ROLL, article_looks
from loadplan.rules.make import look
from loadplan.rules.profile import profile
from loadplan.rules.read_details import details_of
from loadplan.rules.requirement import (
    AccessoryRequirement,
    CannotPlan,
    Demand,
    LoadDemand,
    PositionSet,
    Requirement,
)
from loadplan.rules.section import Asks, Subject

Asked = TypeVar("Asked", bound=Requirement)


def demand(day: Day, article: Article) -> Demand:
    """All that is asked of the tie-downs of one article, or of a group's, under the day's rules.

    A group is asked for by the article that stands for it
    (:func:`~loadplan.rules.groups.units_of`).
    Raises ``ValueError`` where the article is counted by length and has none; a day that was read
    from a workbook has no such article.
    """
    subject = subject_of(day, article)
    asks = section_asks(subject)
    found = _demand(day, subject, asks)
    return _canadian_demand(found) if subject.profile.canada else found


def demand_of(day: Day, name: str) -> Demand | None:
    """The demand of the article or group called ``name``; None where the day has neither."""
    article = article_named(day, name)
    return None if article is None else demand(day, article)


def load_demand(day: Day, load: Load) -> LoadDemand:
    """All that is asked of one load: its articles' and groups' demands, and what they share."""
    trailer = day.trailer_of(load)
    asked = profile(day)
    looks = load_looks(trailer, asked)
    return LoadDemand(
        load=load,
        articles=tuple(demand(day, article) for article in units_of(day, load)),
        winches=winches(trailer),
        anchors=anchors(trailer),
        anchor_wll=None if trailer is None else trailer.anchor_wll,
        looks=tuple(in_canada(one) for one in looks) if asked.canada else looks,
    )


def subject_of(day: Day, article: Article) -> Subject:
    """What the sections are asked about: ``article``, its details and the day's readings."""
    group = article.group if article.group == article.id else ""
    return Subject(
        article=article,
        profile=profile(day),
        details=details_of(article),
        members=members_of(day, group) if group else (),
    )


def section_asks(subject: Subject) -> Asks:
    """What the section that governs asks, and what else counts beside it."""
    article = subject.article
    section = secured_under_in(article, subject.profile)
    if section is SecuredUnder.HEAVY:
        return heavy(subject)
    if section is SecuredUnder.LIGHT_VEHICLE:
        return light_vehicle(subject)
    if section is SecuredUnder.OWN_SECTION:
        return _by_length_too(COMMODITIES[article.cargo_class].asks(subject), subject)
    asks = general(subject)
    if article.cargo_class is CargoClass.LIGHT_VEHICLE:
        by_length = tuple(one for one in asks.counts if one.positions is None)
        return replace(asks, counts=(*light_vehicle_counts(subject, routing(article)), *by_length))
    if article.cargo_class in COMMODITIES:
        commodity = COMMODITIES[article.cargo_class]
        why = look("general rules", commodity.section, commodity.general_if)
        return replace(asks, looks=(why, CAN_ROLL, *asks.looks))
    return asks


def _by_length_too(asks: Asks, subject: Subject) -> Asks:
    """``asks`` with the count by length, where the house asks it of commodities too."""
    if asks.counted or not asks.counts or not subject.house.length_count_on_commodities:
        return asks
    to_vehicle = tuple(
        position
        for one in asks.sets
        if one.routing is not Routing.ROUND
        for position in one.positions
    )
    more = length_count(subject.article, subject.profile, positions=to_vehicle)
    return replace(asks, counts=(*asks.counts, more))


def _demand(day: Day, subject: Subject, asks: Asks) -> Demand:
    article, house = subject.article, day.house
    first = asks.sets[0] if asks.sets else PositionSet(positions=(), routing=routing(article))
    runs = tuple(dict.fromkeys(one.routing for one in asks.sets))
    accessories = accessory_tie_downs(article, subject.profile)
    return Demand(
        article=article,
        routing=first.routing,
        positions=tuple(position for one in asks.sets for position in one.positions),
        most_per_position=first.most_at_each,
        counts=counted_in_number(asks.counts, accessories, subject.profile),
        strengths=asks.strengths,
        properties=(
            *least_each(house, day.units),
            *straps_on_machines(article, house),
            *asks.properties,
            *chain_only(article),
            *reach(article, day.units),
            *shackles(article),
            *protectors(article, runs),
        ),
        accessories=accessories,
        obstacles=_obstacles(day, asks, accessories, article),
        looks=article_looks(subject, asks),
        tie_point_wll=first.tie_point_wll,
        sets=asks.sets if len(asks.sets) > 1 else (),
        members=subject.members,
        section=asks.section,
    )


def _obstacles(
    day: Day, asks: Asks, accessories: tuple[AccessoryRequirement, ...], article: Article
) -> tuple[CannotPlan, ...]:
    """Points without a rating that the house holds; none where there are no tie-downs."""
    if not asks.sets and not accessories:
        return ()
    trailer = day.trailer_of(day.load_by_id[article.load])
    direct = any(one.routing is Routing.DIRECT for one in asks.sets)
    return unrated_points(article, trailer, day.house, tie_points=asks.tie_points and direct)


def _canadian_demand(found: Demand) -> Demand:
    """``found`` with every source exchanged for the Canadian one."""
    return replace(
        found,
        counts=_exchanged(found.counts),
        strengths=_exchanged(found.strengths),
        properties=tuple(in_canada(one) for one in found.properties),
        accessories=_exchanged(found.accessories),
        obstacles=_exchanged(found.obstacles),
        looks=_exchanged(found.looks),
        section=None if found.section is None else canadian(found.section),
    )


def _exchanged(asked: tuple[Asked, ...]) -> tuple[Asked, ...]:
    return tuple(in_canada(one) for one in asked)
