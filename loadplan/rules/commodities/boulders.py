"""Large boulders, 49 CFR 393.136."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from loadplan.day.article import Article, Routing, Stands
from loadplan.day.gear import Kind
from loadplan.rules.aggregate import aggregate, each_in_line
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import (
    BOULDER_BASE,
    BOULDER_CHAIN,
    BOULDER_CUBIC,
    BOULDER_STABLE,
    BOULDER_UNSTABLE,
    BOULDERS,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes
from loadplan.rules.make import at_least, each_bears, look, made_of, over
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, EachWLLRequirement, PositionSet
from loadplan.rules.section import Asks, Subject
from loadplan.text import mass

RING = ("ring",)
LEGS = ("leg 1", "leg 2", "leg 3", "leg 4")
DETAILS = (
    Detail(
        name="shape",
        takes=Takes.WORD,
        phrases={
            "cubic": ("cubic", "cube", "cubic shape", "cubic boulder"),
            "stable": ("stable", "stable base", "non cubic stable base", "non cubic stable"),
            "unstable": (
                "unstable",
                "unstable base",
                "non cubic unstable base",
                "non cubic unstable",
            ),
        },
        what="the shape of the boulder",
        write="cubic, stable base or unstable base",
        help="Cubic; or not cubic with a stable or an unstable base.",
        needed=lambda details: True,
    ),
)
CHAIN = made_of(
    "chain only",
    frozenset({Kind.CHAIN}),
    BOULDER_CHAIN,
    words="Large boulders: chain only",
    result="no strap or rope",
)
_LOOKS = (
    look(
        "how it lies",
        BOULDER_BASE,
        "Flattest or largest side down; a tapered one with its narrow end forward.",
    ),
    look(
        "hardwood",
        BOULDER_BASE,
        "At least two pieces of hardwood of 4 x 4 in (10 x 10 cm) or more over the full width, "
        "under at least three quarters of its length; a rounded base in a hardwood crib, touching "
        "at three or more separate points.",
    ),
    look(
        "chain on the rock",
        BOULDER_CHAIN,
        "Chains lie against the rock in valleys or notches and cannot slide.",
    ),
)
_NEAR = look("near the blocking", BOULDER_CUBIC, "The chains cross the top near the blocking.")
_CROSSED = look(
    "crossed",
    BOULDER_STABLE,
    "Two chains cross over the centre of the top and are joined to each other there.",
)
_RING_HEIGHT = look(
    "ring", BOULDER_UNSTABLE, "The ring goes round the boulder at half to two thirds of its height."
)
_LEG_ANGLE = look(
    "legs",
    BOULDER_UNSTABLE,
    "Four chains from the ring to the vehicle, each at 45 degrees or less to the deck.",
)


def boulder(subject: Subject) -> Asks:
    """Chains over the top of half the weight; with an unstable base a ring and four legs."""
    shape = subject.details.choice("shape")
    if shape == "unstable":
        return _unstable(subject)
    source, extra = (BOULDER_CUBIC, _NEAR) if shape == "cubic" else (BOULDER_STABLE, _CROSSED)
    in_line = bool(subject.members) and subject.article.stands is Stands.IN_LINE
    sets = [over(one.id, serves=one.id) for one in subject.members] if in_line else [over()]
    whole = aggregate(subject, Routing.OVER)
    whose = [one.id for one in subject.members] if in_line else [subject.article.id]
    counts = tuple(
        at_least(
            f"chains over {who}" if in_line else "chains over the top",
            2,
            source,
            words="Over the top: at least two",
            positions=one.positions if in_line else None,
        )
        for who, one in zip(whose, sets, strict=True)
    )
    return Asks(
        section=BOULDERS,
        sets=tuple(sets),
        counts=counts,
        strengths=(whole, *each_in_line(whole, subject, sets)),
        properties=(CHAIN,),
        looks=(*_LOOKS, extra),
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """A boulder with an unstable base has its own ring, whatever stands beside it."""
    if article.group and details.choice("shape") == "unstable":
        yield Contradiction(
            column="Group",
            text="A boulder with an unstable base has its own ring and legs, "
            f"by {cite_in(profile, BOULDER_UNSTABLE)}. Leave Group blank.",
        )


def too_heavy_for_general(article: Article, profile: Profile) -> Iterator[Contradiction]:
    """The general rules reach up to 11,000 lb (5,000 kg)."""
    limit = profile.limits.boulder
    if profile.mass(article.carried_weight) > limit:
        yield Contradiction(
            column="Secured under",
            text=f"The boulder weighs {mass(article.carried_weight, profile.units)}, and over "
            f"{mass(limit, profile.measured_in)} it has its own section, "
            f"by {cite_in(profile, BOULDERS)}. "
            "Leave Secured under blank, or correct the weight.",
        )


def _unstable(subject: Subject) -> Asks:
    ring = PositionSet(positions=RING, routing=Routing.ROUND)
    legs = PositionSet(positions=LEGS, routing=Routing.DIRECT)
    counts: list[CountRequirement] = [
        at_least("ring", 1, BOULDER_UNSTABLE, words="Round the top: one chain", positions=RING)
    ]
    counts += [
        at_least(
            leg, 1, BOULDER_UNSTABLE, words="From the ring to the vehicle: one", positions=(leg,)
        )
        for leg in LEGS
    ]
    return Asks(
        section=BOULDERS,
        sets=(ring, legs),
        counts=tuple(counts),
        strengths=(aggregate(subject, Routing.DIRECT, Routing.ROUND),),
        properties=(
            CHAIN,
            _share(subject, "ring", Fraction(1, 2), RING),
            _share(subject, "each leg", Fraction(1, 4), LEGS),
        ),
        looks=(*_LOOKS, _RING_HEIGHT, _LEG_ANGLE),
    )


def _share(
    subject: Subject, name: str, share: Fraction, positions: tuple[str, ...]
) -> EachWLLRequirement:
    least = share * subject.weight
    return each_bears(
        f"WLL of {name}",
        least,
        BOULDER_UNSTABLE,
        subject.units,
        words=f"{name.capitalize()} bears at least {share} of the weight",
        numbers=f"{share} x {mass(subject.weight, subject.units)}",
        positions=positions,
        share=share,
    )
