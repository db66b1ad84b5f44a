"""Flattened or crushed vehicles, 49 CFR 393.132 (read in the official handbook only)."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Article, Routing
from loadplan.day.gear import TENSION_MEMBERS, WEBBING
from loadplan.rules.aggregate import aggregate
from loadplan.rules.commodity_sources import (
    CONNECTING_WEBBING,
    FLATTENED,
    FLATTENED_FOUR,
    NO_WEBBING,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, number
from loadplan.rules.make import at_least, each_bears, look, made_of, over
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import EachWLLRequirement
from loadplan.rules.section import Asks, Subject

PER_STACK = {4: 0, 3: 2, 2: 3, 0: 4}
_MOST_ON_A_STACK = 10
_SIDES = {
    3: "Walls on three sides",
    2: "Walls in front and at the rear",
    0: "No walls",
}
DETAILS = (
    Detail(
        name="walls",
        takes=Takes.COUNT,
        phrases={"walls": ("walls", "wall", "sides walls", "walled sides")},
        what="the number of walls",
        write="walls 0, walls 2, walls 3 or walls 4",
        help="On how many sides the vehicle has walls of the full height of the load.",
        needed=lambda details: True,
        among=(0, 2, 3, 4),
    ),
    number("stacks", "How many stacks; 1 if not given.", "stack", most=6),
)
_LOOSE = look(
    "loose parts",
    FLATTENED,
    "Walls, boards, a covering or a mix of them contain loose parts on all four sides over the "
    "full height.",
)
_WALLS = look(
    "walls", FLATTENED, "The walls reach over the full height of the load and stop it their way."
)
_FOUR_WALLS = look(
    "walls", FLATTENED_FOUR, "Walls on all four sides reach over the full height of the load."
)
_CONNECTING = look(
    "webbing", CONNECTING_WEBBING, "Webbing only connects chain or wire rope and touches nothing."
)


_NO_WEBBING = made_of(
    "no webbing",
    TENSION_MEMBERS - WEBBING,
    NO_WEBBING,
    words="Flattened vehicles: no synthetic webbing",
    result="no webbing",
)


def flattened(subject: Subject) -> Asks:
    """Tie-downs over each stack by the number of walls, each of 5,000 lb, none of webbing."""
    walls = subject.details.count("walls")
    if walls == 4:
        return Asks(section=FLATTENED, looks=(_FOUR_WALLS, _LOOSE))
    stacks = subject.details.count("stacks")
    sets = (
        (over(),)
        if stacks == 1
        else tuple(over(f"stack {one}", most=_MOST_ON_A_STACK) for one in range(1, stacks + 1))
    )
    counts = tuple(
        at_least(
            "tie-downs over the stack" if stacks == 1 else f"tie-downs over stack {place}",
            PER_STACK[walls],
            FLATTENED,
            words=f"{_SIDES[walls]}: at least {PER_STACK[walls]} over each stack",
            positions=one.positions,
        )
        for place, one in enumerate(sets, start=1)
    )
    return Asks(
        section=FLATTENED,
        sets=sets,
        counts=counts,
        strengths=(aggregate(subject, Routing.OVER),),
        properties=(_floor(subject), _NO_WEBBING),
        looks=(*((_WALLS,) if walls else ()), _LOOSE, _CONNECTING),
    )


def _floor(subject: Subject) -> EachWLLRequirement:
    return each_bears(
        "least WLL on flattened vehicles",
        subject.profile.printed.commodity,
        FLATTENED,
        subject.units,
        words="Each tie-down over flattened vehicles has at least",
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """Nothing of its own."""
    yield from ()
