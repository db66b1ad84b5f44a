"""Roll-on/roll-off and hook-lift containers, 49 CFR 393.134."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Article, Routing
from loadplan.rules.aggregate import aggregate
from loadplan.rules.commodity_sources import ROLL_OFF, ROLL_OFF_PARTS
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes
from loadplan.rules.make import at_least, at_least_one, look
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import PositionSet
from loadplan.rules.section import Asks, Subject

DETAILS = (
    Detail(
        name="rear",
        takes=Takes.WORD,
        phrases={
            "integral": ("integral", "integral system", "integral securement system"),
            "one": ("rear one", "one tiedown", "one rear tiedown"),
            "two": ("rear two", "two tiedowns", "two rear tiedowns"),
            "hooks": ("rear hooks", "hooks", "two hooks", "two rear hooks"),
        },
        what="how the rear of the container is held",
        write="integral, rear one, rear two or rear hooks",
        help="An integral system; or at the rear one tie-down to chassis and container, two to the "
        "side rails, or hooks.",
        needed=lambda details: True,
    ),
)
_INTEGRAL = look(
    "integral system", ROLL_OFF, "The vehicle's own securement system is complete and fastened."
)
_FRONT = look(
    "front of the container",
    ROLL_OFF,
    "Blocked forward by the lifting device, stops or both; its front held against movement "
    "sideways and upward by the lifting device or other means.",
)
_WITHIN = look(
    "rear device", ROLL_OFF, "What holds the rear is within 6 ft 7 in (2 m) of its rear end."
)
_HOOKS = look(
    "hooks", ROLL_OFF, "Two hooks or the like hold the rear; nothing is counted for them."
)
_LENGTHWISE = look(
    "side rails", ROLL_OFF, "One tie-down lengthwise on each side, to the vehicle's side rail."
)
_PARTS = look(
    "missing parts",
    ROLL_OFF_PARTS,
    "Where a part of the system is missing or broken, tie-downs of equal strength stand in.",
)


_SIDES = ("rear left", "rear right")
_ONE = at_least(
    "tie-down at the rear",
    1,
    ROLL_OFF,
    words="To the chassis of the vehicle and of the container: at least one",
)
_TWO = tuple(at_least_one(f"tie-down at {side}", (side,), ROLL_OFF) for side in _SIDES)


def roll_off(subject: Subject) -> Asks:
    """An integral system or hooks need no tie-downs; else one or two at the rear.

    The lifting device holds the front; whether half the weight is still asked of the tie-downs at
    the rear is a house rule.
    """
    rear = subject.details.choice("rear")
    if rear == "integral":
        return Asks(section=ROLL_OFF, looks=(_INTEGRAL, _PARTS))
    if rear == "hooks":
        return Asks(section=ROLL_OFF, looks=(_FRONT, _HOOKS, _WITHIN, _PARTS))
    one = rear == "one"
    strength = subject.house.roll_off_aggregate
    return Asks(
        section=ROLL_OFF,
        sets=(
            PositionSet(
                positions=("rear",) if one else _SIDES,
                routing=Routing.DIRECT,
                most_at_each=subject.most_at_each,
                tie_point_wll=subject.article.tie_point_wll,
            ),
        ),
        counts=(_ONE,) if one else _TWO,
        strengths=(aggregate(subject, Routing.DIRECT),) if strength else (),
        looks=(_FRONT, *(() if one else (_LENGTHWISE,)), _WITHIN, _PARTS),
        tie_points=True,
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """Nothing of its own."""
    yield from ()
