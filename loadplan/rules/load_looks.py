"""Matters of looking at a whole load: gear, vehicle, and the stops on the road."""

from __future__ import annotations

from loadplan.day.trailer import Trailer
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import Look
from loadplan.rules.sources import (
    ADJUSTABLE,
    BINDER_HANDLES,
    DEVICES,
    DISTRIBUTED,
    LOWEST_PART,
    ON_THE_ROAD,
    RUB_RAILS,
    STRUCTURES,
    USE,
)

_BEFORE = (
    Look(
        name="gear",
        source=DEVICES,
        text="Every piece looked over: no crack, cut, stretch, gouge or worn part; none is used "
        "damaged.",
    ),
    Look(name="knots", source=USE, text="No knots; nothing can come loose or open on the way."),
    Look(name="binder handles", source=BINDER_HANDLES, text="Every binder handle locked or tied."),
    Look(
        name="tightening",
        source=ADJUSTABLE,
        text="Every tie-down but steel strapping can be tightened on the road.",
    ),
    Look(
        name="deck and anchor points",
        source=STRUCTURES,
        text="Deck, anchor points and front structure undamaged.",
    ),
)
_UNRATED_ANCHORS = Look(
    name="unrated anchor points",
    source=LOWEST_PART,
    text="The trailer's anchor points are unrated and do not limit the figures here: look up what "
    "they bear.",
)
_WINCHES = Look(
    name="winches",
    source=LOWEST_PART,
    text="The winches have no rating in the day workbook and do not limit the figures here: read "
    "their marking; a lower one limits its strap.",
)
_ROAD = (
    Look(
        name="loose equipment",
        source=DISTRIBUTED,
        text="Ramps, tailgate, spare wheel, tarps, dunnage and loose chains secured.",
    ),
    Look(
        name="weight on the deck",
        source=DISTRIBUTED,
        text="Cargo spread properly; nothing blocks the driver's view, movement or way out.",
    ),
    Look(
        name="before driving",
        source=ON_THE_ROAD,
        text="Before driving: check the cargo and every tie-down.",
    ),
)
_IN_THE_US = (
    Look(
        name="first check",
        source=ON_THE_ROAD,
        text="Within the first 50 miles: check again; tighten or add tie-downs as needed.",
    ),
    Look(
        name="further checks",
        source=ON_THE_ROAD,
        text="Then at a change of duty status, after 3 hours or after 150 miles, whichever comes "
        "first.",
    ),
)
_IN_CANADA = (
    Look(
        name="first check",
        source=ON_THE_ROAD,
        text="Within the first 80 km: check again; tighten or add tie-downs as needed.",
    ),
    Look(
        name="further checks",
        source=ON_THE_ROAD,
        text="Then at a change of duty status, after 3 hours or after 240 km, whichever comes "
        "first.",
    ),
)
_RUB_RAILS = Look(
    name="rub rails",
    source=RUB_RAILS,
    text="Tie-downs run inboard of the rub rails where practicable.",
)


def load_looks(trailer: Trailer | None, profile: Profile) -> tuple[Look, ...]:
    """What to look at on the whole load before driving and on the road."""
    looks = list(_BEFORE)
    if profile.canada:
        looks.append(_RUB_RAILS)
    if trailer is None or trailer.anchor_wll is None:
        looks.append(_UNRATED_ANCHORS)
    if trailer is not None and trailer.winches:
        looks.append(_WINCHES)
    return (*looks, *_ROAD, *(_IN_CANADA if profile.canada else _IN_THE_US))
