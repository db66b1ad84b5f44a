"""Heavy vehicles, equipment and machinery, 49 CFR 393.130."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.house import HeavyEnds
from loadplan.rules.aggregate import aggregate, each_direction
from loadplan.rules.choice import length_counts, routing
from loadplan.rules.general import length_count, main_set
from loadplan.rules.looks import AT_ENDS
from loadplan.rules.make import at_least, at_least_one, each_bears
from loadplan.rules.positions import CORNERS, FRONT, REAR
from loadplan.rules.requirement import CountRequirement, EachWLLRequirement
from loadplan.rules.section import Asks, Subject
from loadplan.rules.sources import CORNERS as CORNERS_SOURCE
from loadplan.rules.sources import FOUR, HEAVY_FLOOR, house_rule

ENDS_RULE = house_rule("Ends of heavy machines")
FLOOR_RULE = house_rule("Floor on heavy machines")
_FOUR = at_least("four tie-downs", 4, FOUR, words="On tracks or wheels: at least four")
_EACH_CORNER = tuple(
    at_least_one(f"tie-down at {corner}", (corner,), CORNERS_SOURCE) for corner in CORNERS
)
_TWO_AND_TWO = tuple(
    at_least(
        f"two tie-downs at the {end}",
        2,
        ENDS_RULE,
        words=f"As close as practicable to the {end}: at least two",
        positions=positions,
    )
    for end, positions in (("front", FRONT), ("rear", REAR))
)


def heavy(subject: Subject) -> Asks:
    """At least four tie-downs, one of them at each corner (393.130(c)), and half the weight.

    The section says "as close as practicable to the front and rear"; the four corners are our
    reading of it, two and two the other. The count by length adds to it unless a house rule says
    no.
    """
    article, profile = subject.article, subject.profile
    run = routing(article)
    two_and_two = subject.house.heavy_ends is HeavyEnds.TWO_AND_TWO
    counts: tuple[CountRequirement, ...] = (_FOUR, *(_TWO_AND_TWO if two_and_two else _EACH_CORNER))
    counted = length_counts(article, profile)
    if counted:
        counts = (*counts, length_count(article, profile))
    whole, main = aggregate(subject, run), main_set(article, profile, run)
    return Asks(
        section=FOUR,
        sets=(main,),
        counts=counts,
        strengths=(whole, *each_direction(whole, profile, main)),
        properties=tuple(_floor(subject)),
        looks=(AT_ENDS,),
        tie_points=True,
        counted=counted,
    )


def _floor(subject: Subject) -> Iterator[EachWLLRequirement]:
    least = subject.profile.heavy_floor
    if least is not None:
        source = HEAVY_FLOOR if subject.house.heavy_floor is None else FLOOR_RULE
        yield each_bears(
            "least WLL on heavy machines",
            least,
            source,
            subject.units,
            words="Each tie-down on heavy machinery has at least",
        )
