"""Dressed lumber and similar building products, 49 CFR 393.118."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from loadplan.day.article import Article, Routing
from loadplan.rules.aggregate import aggregate
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import LUMBER, LUMBER_LOW, LUMBER_MIDDLE, LUMBER_TIERS
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, number
from loadplan.rules.general import general, length_count
from loadplan.rules.make import at_least, look, over
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, PositionSet
from loadplan.rules.section import Asks, Subject
from loadplan.rules.sources import house_rule

LOW_RULE = house_rule("Belly tie-down on lumber under 6 ft")
_MOST_ON_A_BUNDLE = 10
_OVER_TIERS = ("belly", "every tier")
DETAILS = (
    number("tiers", "How many tiers; 1 if not given.", "tier", "tiers high", most=10),
    Detail(
        name="method",
        takes=Takes.WORD,
        phrases={
            "stakes": ("stakes", "side stakes", "stakes at sides", "stakes at the sides"),
            "friction": (
                "friction",
                "friction between tiers",
                "friction mats",
                "high friction",
                "blocking between tiers",
            ),
            "belly": ("belly", "belly tier", "belly tiedown", "belly tiedowns", "middle tier"),
            "every tier": ("every tier", "each tier", "all tiers", "tiedowns over every tier"),
            "sided": ("sided", "sided vehicle"),
        },
        what="how the tiers are secured",
        write="stakes, friction, belly, every tier or sided",
        help="How more than one tier is secured: stakes at the sides; blocking or friction between "
        "the tiers; over the top and a belly tier; over every tier; a sided vehicle.",
        needed=lambda details: details.count("tiers") > 1,
    ),
    number(
        "top bundles",
        "Bundles in the top tier one behind the other; 1 if not given.",
        "top bundle",
        "bundles on top",
        most=6,
    ),
)
_TOUCH = look(
    "bundles side by side", LUMBER, "Bundles side by side touch, or are held apart by spacers."
)
_METHOD_LOOKS = {
    "stakes": look("stakes", LUMBER_TIERS, "Stakes at both sides reach up to the top tier."),
    "friction": look(
        "between the tiers",
        LUMBER_TIERS,
        "Blocking or high-friction devices lie between all tiers; a friction mat without a mark "
        "resists half the weight on it.",
    ),
    "belly": look(
        "belly tier",
        LUMBER_MIDDLE,
        "Three tiers: the belly tie-downs are over the middle one. More: over a middle tier no "
        "higher than 6 ft above the deck, else the second from the bottom (the handbook says the "
        "higher of the second tier and 6 ft, 1.85 m).",
    ),
    "every tier": look("every tier", LUMBER_TIERS, "Tie-downs run over every tier."),
    "sided": look("sides", LUMBER_TIERS, "The sides of the vehicle reach up to the top tier."),
}
_SPACERS = look(
    "spacers", LUMBER_TIERS, "Spacers reach across the bundle, lie flat and cannot roll."
)
_LOW = look(
    "no belly tie-down under 6 ft",
    LUMBER_LOW,
    "Under 6 ft high and read without a tie-down over the middle tier: make sure that this holds "
    "where the load goes.",
)


def lumber(subject: Subject) -> Asks:
    """By the general rules, and over a belly tier or every tier where that holds the tiers."""
    tiers, method = subject.details.count("tiers"), subject.details.choice("method")
    if tiers == 1 or method not in _OVER_TIERS:
        between = (_METHOD_LOOKS[method],) if method and tiers > 1 else ()
        asked = general(subject)
        return replace(asked, section=LUMBER, looks=(_TOUCH, *between), tie_points=False)
    tops, counts = _top(subject)
    lower, more = _lower(subject, tiers, method)
    low = method == "belly" and tiers > 2 and not lower
    looks = (_TOUCH, _LOW if low else _METHOD_LOOKS[method], _SPACERS)
    return Asks(
        section=LUMBER,
        sets=(*tops, *lower),
        counts=(*counts, *more),
        strengths=(aggregate(subject, Routing.OVER),),
        looks=looks,
        counted=True,
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """A stack of tiers tied over lower tiers is one row, not a group."""
    if article.group and details.choice("method") in _OVER_TIERS and details.count("tiers") > 1:
        yield Contradiction(
            column="Group",
            text="Tiers tied over a belly tier or over every tier are one stack, "
            f"by {cite_in(profile, LUMBER_TIERS)}. "
            "Write the stack as one row and leave Group blank.",
        )


def _top(subject: Subject) -> tuple[tuple[PositionSet, ...], tuple[CountRequirement, ...]]:
    """Over the top tier by length, and two on each of its bundles over 5 ft (1.52 m).

    Of several bundles one behind the other each is taken as longer than that if the whole is.
    """
    article, profile = subject.article, subject.profile
    bundles = subject.details.count("top bundles")
    sets = (
        (over(),)
        if bundles == 1
        else tuple(over(f"bundle {one}", most=_MOST_ON_A_BUNDLE) for one in range(1, bundles + 1))
    )
    everywhere = tuple(position for one in sets for position in one.positions)
    counts: list[CountRequirement] = [length_count(article, profile, positions=everywhere)]
    if article.length is not None and profile.length(article.length) > profile.limits.short:
        for place, one in enumerate(sets, start=1):
            name = "top bundle" if bundles == 1 else f"top bundle {place}"
            counts.append(
                at_least(
                    f"tie-downs on {name}",
                    2,
                    LUMBER_TIERS,
                    words="Each top bundle over 5 ft (1.52 m): at least two",
                    positions=one.positions,
                )
            )
    return sets, tuple(counts)


def _lower(
    subject: Subject, tiers: int, method: str | None
) -> tuple[tuple[PositionSet, ...], tuple[CountRequirement, ...]]:
    """Over the belly tier or over each tier below the top, as many as the length asks for."""
    names = [f"tier {tier}" for tier in range(1, tiers)]
    if method == "belly":
        names = ["belly"] if tiers > 2 and not _is_low(subject) else []
    sets = tuple(over(name) for name in names)
    by_length = length_count(subject.article, subject.profile)
    counts = tuple(
        replace(
            by_length,
            name=f"tie-downs over {'the belly tier' if name == 'belly' else name}",
            source=LUMBER_TIERS,
            positions=one.positions,
        )
        for name, one in zip(names, sets, strict=True)
    )
    return sets, counts


def _is_low(subject: Subject) -> bool:
    """Whether the stack is read as low enough to need no belly tie-down."""
    height = subject.article.height
    return (
        not subject.house.low_lumber_belly
        and height is not None
        and subject.profile.length(height) < subject.profile.limits.low_lumber
    )
