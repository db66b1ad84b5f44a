"""Matters of looking at one article: check-list lines, each with its section."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Article, CargoClass, Routing, Stands
from loadplan.rules.accessories import accessory_looks
from loadplan.rules.requirement import Look
from loadplan.rules.section import Asks, Subject
from loadplan.rules.sources import (
    ANGLE,
    ARTICULATED,
    BLOCKING_STRENGTH,
    CORNERS,
    FRICTION_MAT,
    FRONT_STRUCTURE,
    LIGHT_VEHICLE,
    LOWEST_PART,
    PARKING_BRAKE,
    ROLLING,
    SIDE_BY_SIDE,
    USE,
)
from loadplan.text import mass_up, names

_ROLLS = frozenset(
    {CargoClass.WHEELED_MACHINE, CargoClass.ARTICULATED_MACHINE, CargoClass.LIGHT_VEHICLE}
)
BRAKE = Look(name="parking brake", source=PARKING_BRAKE, text="Parking brake set.")
CHOCKS = Look(
    name="chocks",
    source=ROLLING,
    text="Wheels chocked or wedged so that it cannot roll, and the chocks cannot come loose.",
)
CAN_ROLL = Look(
    name="chocks",
    source=ROLLING,
    text="If it can roll: chocks, wedges or a cradle that cannot come loose.",
)
ARTICULATION = Look(
    name="articulation lock",
    source=ARTICULATED,
    text="Articulation joint locked: the machine cannot articulate on the way.",
)
AT_ENDS = Look(
    name="tie points",
    source=CORNERS,
    text="Each tie-down is as close as practicable to the front or rear of the machine, or at a "
    "mounting point made for it.",
)
BOTH_ENDS = Look(
    name="front and rear",
    source=LIGHT_VEHICLE,
    text="Front and rear both held against movement forward, rearward, sideways and upward; "
    "tie-downs to the frame are at its mounting points.",
)
BLOCKED = Look(
    name="blocked forward",
    source=FRONT_STRUCTURE,
    text="What blocks it forward touches it and is high, wide and strong enough.",
)
SHARP = Look(
    name="edge protection",
    source=USE,
    text="Edge protectors lie under every strap at every edge; no other tie-down is cut or worn.",
)
EDGES = Look(
    name="edge protection",
    source=USE,
    text="No tie-down is cut or worn where it touches the article; if one is, add protection.",
)
SIDES = Look(
    name="side by side",
    source=SIDE_BY_SIDE,
    text="Articles side by side under the same tie-downs touch, or are kept apart.",
)
UNRATED_TIE_POINTS = Look(
    name="unrated tie points",
    source=LOWEST_PART,
    text="Its tie points are unrated and do not limit the figures here: use marked or designed "
    "points, and look up what they bear.",
)
UNDER_45 = Look(
    name="angle",
    source=ANGLE,
    text="Tie-downs run at less than 45 degrees to the deck where practicable.",
)


MATS = Look(
    name="friction mats",
    source=FRICTION_MAT,
    text="Friction mats: one without a mark resists sideways half the weight that rests on it; "
    "none of it is counted here.",
)
MATS_IN_CANADA = Look(
    name="friction mats",
    source=FRICTION_MAT,
    text="Friction mats: only with their resistance marked on them; none of it is counted here.",
)


def article_looks(subject: Subject, asks: Asks) -> tuple[Look, ...]:
    """What to look at on an article before it leaves, in the order it is walked round."""
    return tuple(_looks(subject, asks))


def _looks(subject: Subject, asks: Asks) -> Iterator[Look]:
    article = subject.article
    yield from accessory_looks(article, subject.profile)
    yield from _of_class(article)
    yield from asks.looks
    if article.blocked_forward:
        yield BLOCKED
        if subject.profile.canada:
            yield _blocking_strength(subject)
    if not asks.sets:
        return
    yield SHARP if article.sharp_edges else EDGES
    runs = {one.routing for one in asks.sets}
    if Routing.DIRECT in runs:
        yield UNDER_45
        if asks.tie_points and article.tie_point_wll is None:
            yield UNRATED_TIE_POINTS
    if subject.members:
        yield _group(subject)
    elif Routing.OVER in runs:
        yield SIDES


def _of_class(article: Article) -> Iterator[Look]:
    if article.cargo_class is CargoClass.ARTICULATED_MACHINE:
        yield ARTICULATION
    if article.cargo_class.is_machine or article.cargo_class is CargoClass.LIGHT_VEHICLE:
        yield BRAKE
    if article.cargo_class in _ROLLS:
        yield CHOCKS
    elif article.cargo_class is CargoClass.GENERAL:
        yield CAN_ROLL


def _blocking_strength(subject: Subject) -> Look:
    half = mass_up(subject.weight / 2, subject.units)
    return Look(
        name="blocking strength",
        source=BLOCKING_STRENGTH,
        text=f"What blocks it forward has working load limits of {half} or more in all.",
    )


def _group(subject: Subject) -> Look:
    who = names([one.id for one in subject.members])
    if subject.article.stands is Stands.IN_LINE:
        text = f"{who}: each under its own tie-downs; none leans or shifts toward another."
    else:
        text = f"{who}: they touch, or are kept apart, and every tie-down over them presses on all."
    return Look(name="group", source=SIDE_BY_SIDE, text=text)
