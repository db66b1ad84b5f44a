"""Paper rolls, 49 CFR 393.122 (read in the official handbook only)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.units import Units
from loadplan.rules.commodity_sources import PAPER, PAPER_WIDTH
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, number
from loadplan.rules.general import general
from loadplan.rules.make import look
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import Look
from loadplan.rules.section import Asks, Subject
from loadplan.text import plain

DETAILS = (
    Detail(
        name="stand",
        takes=Takes.WORD,
        phrases={
            "on end": ("on end", "eyes vertical", "eye vertical", "vertical"),
            "on side": (
                "on side",
                "on their side",
                "eyes crosswise",
                "eye crosswise",
                "crosswise",
                "eyes lengthwise",
                "eye lengthwise",
                "lengthwise",
            ),
        },
        what="how the rolls stand",
        write="on end or on side",
        help="How the rolls stand; the check list differs.",
    ),
    number("layers", "How many layers; 1 if not given.", "layer", most=4),
    Detail(
        name="diameter",
        takes=Takes.LENGTH,
        phrases={"diameter": ("diameter", "roll diameter", "dia")},
        what="the diameter",
        write="diameter and a length, such as diameter 40 in",
        help="With Height, for the check line on tipping.",
    ),
)
_CONTACT = look(
    "contact",
    PAPER,
    "Each roll touches a wall or other rolls at three well separated points, or is blocked, "
    "braced, banded or tied.",
)
_VOID = look(
    "void behind",
    PAPER,
    "A void behind the group larger than a roll's diameter: the rear of the group is secured.",
)
_FORWARD = look(
    "forward roll",
    PAPER_WIDTH,
    "A forward roll on end that can tip is banded where it is wider than 1.25 times its diameter, "
    "with friction mats alone from 1.75 times on.",
)
_WIDE = look(
    "wide rolls",
    PAPER,
    "A roll on end wider than twice its diameter and not supported is banded, braced or tied "
    "against tipping.",
)
_ROLLING = look(
    "rolling", PAPER, "Rolls on their side are stopped from rolling by chocks, wedges or blocking."
)
_LAYERS = look(
    "upper layer",
    PAPER,
    "An upper layer only where the one below reaches the front; no roll raised on dunnage stands "
    "in the rearmost row.",
)
_MATS = look(
    "mats under rolls", PAPER, "A mat that is the main restraint sticks out the way it works."
)
_INCHES = {Units.US: Fraction(12), Units.METRIC: Fraction(10000, 254)}


def paper_rolls(subject: Subject) -> Asks:
    """Tie-downs by the general rules; contact, voids, tipping and mats are matters of looking."""
    return replace(general(subject), section=PAPER, looks=tuple(_looks(subject)), tie_points=False)


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """Nothing of its own: the section is all looking."""
    yield from ()


def _looks(subject: Subject) -> Iterator[Look]:
    stand = subject.details.choice("stand")
    yield _CONTACT
    yield _VOID
    if stand != "on side":
        yield _FORWARD
        yield from _tipping(subject)
    if stand != "on end":
        yield _ROLLING
    if subject.details.count("layers") > 1:
        yield _LAYERS
    yield _MATS


def _tipping(subject: Subject) -> Iterator[Look]:
    """How wide a roll on end is for its diameter: its width is its height as it stands."""
    diameter, height = subject.details.number("diameter"), subject.article.height
    if not diameter or height is None or subject.details.count("layers") > 1:
        yield _WIDE
        return
    times = height * _INCHES[subject.units] / diameter
    text = f"The roll is {plain(times)} times as wide as its diameter"
    if times > 2:
        yield look("wide rolls", PAPER, f"{text}: band, brace or tie it unless it is supported.")
    else:
        yield look("wide rolls", PAPER, f"{text}, no more than twice.")
