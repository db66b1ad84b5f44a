"""Intermodal containers, 49 CFR 393.126."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from loadplan.day.article import Article, Routing
from loadplan.day.gear import Kind
from loadplan.rules.aggregate import aggregate, each_direction
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import (
    CHASSIS,
    CONTAINER_DECK,
    CONTAINER_EMPTY,
    CONTAINER_OVERHANG,
    CONTAINER_SHARE,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, flag
from loadplan.rules.general import general
from loadplan.rules.make import at_least, at_least_one, look, made_of
from loadplan.rules.positions import CORNERS
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import PositionSet
from loadplan.rules.section import Asks, Subject

DETAILS = (
    Detail(
        name="place",
        takes=Takes.WORD,
        phrases={
            "chassis": ("chassis", "on chassis", "container chassis", "on container chassis"),
            "deck": ("deck", "on deck", "flatbed", "on flatbed"),
        },
        what="what the container stands on",
        write="chassis, deck loaded or deck empty",
        help="On a container chassis, or on the deck of another vehicle, loaded or empty.",
        needed=lambda details: True,
    ),
    Detail(
        name="filling",
        takes=Takes.WORD,
        phrases={"loaded": ("loaded", "full"), "empty": ("empty",)},
        what="whether the container on the deck is loaded",
        write="deck loaded or deck empty",
        help="Loaded or empty, where it stands on a deck.",
        needed=lambda details: details.choice("place") == "deck",
    ),
    Detail(
        name="locks missing",
        takes=Takes.COUNT,
        phrases={"locks missing": ("locks missing", "missing locks", "lock missing")},
        what="the number of locks missing",
        write="locks missing and a number",
        help="On a chassis: locks replaced by chain or wire rope; 0 if not given.",
        least=0,
        most=4,
    ),
    flag(
        "integral devices",
        "On a deck, loaded: devices of the vehicle hold all four lower corners.",
        "integral locking devices",
        "integral locks",
    ),
)
_CHAIN_OR_WIRE_ROPE = made_of(
    "chain or wire rope",
    frozenset({Kind.CHAIN, Kind.WIRE_ROPE}),
    CONTAINER_DECK,
    words="Corners of a container",
    result="no strap or rope",
)
_LOCKS = look(
    "locks",
    CHASSIS,
    "Every lock at the lower corners is fastened and cannot unfasten; play up to 1/2 in (1.27 cm) "
    "forward, rearward and sideways, 1 in (2.54 cm) upward; front and rear are held independently.",
)
_REPLACED = look(
    "locks replaced",
    CHASSIS,
    "Chain or wire rope stands at each corner without a lock, as strong as the lock it replaces.",
)
_RESTS = look(
    "corners",
    CONTAINER_DECK,
    "All lower corners rest on the vehicle, or on a structure that bears the weight and is secured "
    "by itself.",
)
_INDEPENDENT = look(
    "front and rear", CONTAINER_SHARE, "Front and rear of the container are held independently."
)
_DEVICES = look(
    "devices", CONTAINER_DECK, "Devices of the vehicle are fastened at all four lower corners."
)
_STEADY = look(
    "steady",
    CONTAINER_EMPTY,
    "The container is steady before tie-downs are put on and cannot move.",
)
_OVERHANG = look(
    "overhang", CONTAINER_OVERHANG, "It hangs over by no more than 5 ft (1.5 m) at front or rear."
)


def container(subject: Subject) -> Asks:
    """By where it stands: locks of a chassis, corners on a deck, the general rules if empty."""
    details = subject.details
    if details.choice("place") == "chassis":
        return _on_chassis(subject)
    if details.choice("filling") == "empty":
        base = general(subject)
        return replace(base, section=CONTAINER_EMPTY, looks=(_STEADY, _OVERHANG))
    if details.has("integral devices"):
        return Asks(section=CONTAINER_DECK, looks=(_RESTS, _DEVICES))
    whole, corners = aggregate(subject, Routing.DIRECT), _corners(subject)
    return Asks(
        section=CONTAINER_DECK,
        sets=(corners,),
        counts=tuple(
            at_least_one(f"tie-down at {corner}", (corner,), CONTAINER_DECK) for corner in CORNERS
        ),
        strengths=(whole, *each_direction(whole, subject.profile, corners)),
        properties=(_CHAIN_OR_WIRE_ROPE,),
        looks=(_RESTS, _INDEPENDENT),
        tie_points=True,
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """Words that belong to the other way of carrying it."""
    on_chassis = details.choice("place") == "chassis"
    if details.number("locks missing") and not on_chassis:
        yield Contradiction(
            column="Details",
            text=f"Details gives locks missing, and only a container chassis has locks, "
            f"by {cite_in(profile, CHASSIS)}. Write chassis, or leave the locks out.",
        )
    loaded = not on_chassis and details.choice("filling") == "loaded"
    if details.has("integral devices") and not loaded:
        yield Contradiction(
            column="Details",
            text="Details says integral devices, which hold a loaded container on a deck, "
            f"by {cite_in(profile, CONTAINER_DECK)}. Write deck loaded, or leave them out.",
        )


def _on_chassis(subject: Subject) -> Asks:
    """Its locks hold it; chain or wire rope stands in for those that are missing."""
    missing = subject.details.count("locks missing", 0)
    if not missing:
        return Asks(section=CHASSIS, looks=(_LOCKS,))
    return Asks(
        section=CHASSIS,
        sets=(_corners(subject),),
        counts=(
            at_least(
                "locks replaced",
                missing,
                CHASSIS,
                words="Chain or wire rope in place of each missing lock",
            ),
        ),
        properties=(replace(_CHAIN_OR_WIRE_ROPE, source=CHASSIS),),
        looks=(_LOCKS, _REPLACED),
        tie_points=True,
    )


def _corners(subject: Subject) -> PositionSet:
    return PositionSet(
        positions=CORNERS,
        routing=Routing.DIRECT,
        most_at_each=subject.most_at_each,
        tie_point_wll=subject.article.tie_point_wll,
    )
