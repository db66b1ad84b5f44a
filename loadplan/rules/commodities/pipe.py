"""Concrete pipe loaded crosswise, 49 CFR 393.124."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil

from loadplan.day.article import Article, Routing
from loadplan.day.gear import Kind
from loadplan.day.size import Size
from loadplan.rules.aggregate import aggregate
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import PIPE, PIPE_OVER_45, PIPE_TRANSVERSE, PIPE_UP_TO_45
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, flag
from loadplan.rules.make import at_least, look, made_of, over, place
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, PositionSet
from loadplan.rules.section import Asks, Subject
from loadplan.text import length

LARGE = 45  # inches inside: the printed pair, 1,143 mm, is exactly as much
_CHAIN_OR_WIRE_ROPE = frozenset({Kind.CHAIN, Kind.WIRE_ROPE})
_HALF_INCH, _THREE_EIGHTHS = Size(Fraction(1, 2)), Size(Fraction(3, 8))
_STRONG, _LIGHT = ("lengthwise 1",), ("lengthwise 2", "lengthwise 3")


def is_large(details: Details) -> bool:
    """Whether the pipe is over 45 in (1,143 mm) inside."""
    diameter = details.number("diameter")
    return diameter is not None and diameter > LARGE


DETAILS = (
    Detail(
        name="diameter",
        takes=Takes.LENGTH,
        phrases={
            "diameter": (
                "diameter",
                "inside diameter",
                "inner diameter",
                "internal diameter",
                "inside dia",
                "dia",
                "id",
                "bore",
            )
        },
        what="the inside diameter",
        write="diameter and a length, such as diameter 36 in",
        help="Inside diameter: the rule differs up to and over 45 in (1,143 mm).",
        needed=lambda details: True,
    ),
    Detail(
        name="pipes",
        takes=Takes.COUNT,
        phrases={"pipes": ("pipes", "pipe", "pieces")},
        what="the number of pipes",
        write="pipes and a number, such as pipes 4",
        help="How many pipes the row is; needed over 45 in, where each is tied down.",
        needed=is_large,
        most=40,
    ),
    flag(
        "against structure",
        "Over 45 in: front and rear pipe stand against structure.",
        "against the structure",
        "against end structure",
    ),
)
_LOOKS = (
    look(
        "blocking",
        PIPE,
        "Blocking symmetrical about the centre of each pipe, firm and fixed: one piece over at "
        "least half the way to each end, or one piece opposite each end.",
    ),
    look("timber", PIPE_UP_TO_45, "Timber of at least 4 x 6 in (10 x 15 cm)."),
    look(
        "tiers and bells",
        PIPE_UP_TO_45,
        "Upper pipes lie in the wells of full tiers; bells alternate or lie on two or more "
        "spacers; pipe of another diameter is a group of its own.",
    ),
)
_TIED_BACK = look(
    "front and rear pipe",
    PIPE_UP_TO_45,
    "Front bottom pipe tied rearward, rear bottom pipe tied forward, at 45 degrees or less where "
    "practicable.",
)
_HALVES = look(
    "which way",
    PIPE_OVER_45,
    "The front half, the middle pipe with it, is tied rearward and the rear half forward, at 45 "
    "degrees or less where practicable; front and rear pipe are blocked.",
)
_AGAINST = look("structure", PIPE_OVER_45, "Front and rear pipe stand against structure.")


_LENGTHWISE = replace(
    at_least(
        "lengthwise tie-downs",
        2,
        PIPE_UP_TO_45,
        words="Lengthwise over the group: one of 1/2 in (13 mm), which counts for two, or two of "
        "3/8 in (10 mm)",
        positions=_STRONG + _LIGHT,
    ),
    twice=_STRONG,
)
_LENGTHWISE_MEMBERS = tuple(
    made_of(
        f"lengthwise, {text}",
        _CHAIN_OR_WIRE_ROPE,
        PIPE_UP_TO_45,
        words=f"Lengthwise tie-down of at least {text}",
        result="no strap or rope",
        positions=positions,
        least_size=size,
    )
    for text, positions, size in (
        ("1/2 in (13 mm)", _STRONG, _HALF_INCH),
        ("3/8 in (10 mm)", _LIGHT, _THREE_EIGHTHS),
    )
)


def pipe(subject: Subject) -> Asks:
    """A group of pipes of one diameter: half its weight, and tie-downs by that diameter."""
    return _over_45(subject) if is_large(subject.details) else _up_to_45(subject)


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """What only pipe over 45 in has."""
    if details.has("against structure") and not is_large(details):
        yield Contradiction(
            column="Details",
            text="Details says against structure, which changes nothing up to 45 in (1,143 mm), "
            f"by {cite_in(profile, PIPE_UP_TO_45)}. Leave it out, or correct the diameter.",
        )


def _up_to_45(subject: Subject) -> Asks:
    across = over()
    ends = [place(f"{end} pipe", Routing.OVER, subject.most_at_each) for end in ("front", "rear")]
    lengthwise = [
        PositionSet(positions=positions, routing=Routing.OVER) for positions in (_STRONG, _LIGHT)
    ]
    tied_back = tuple(
        at_least(
            f"tie-down of the {end} bottom pipe",
            1,
            PIPE_UP_TO_45,
            words=f"{end.capitalize()} bottom pipe tied {way}: at least one",
            positions=one.positions,
        )
        for end, way, one in zip(("front", "rear"), ("rearward", "forward"), ends, strict=True)
    )
    return Asks(
        section=PIPE,
        sets=(*lengthwise, *ends, across),
        counts=(_LENGTHWISE, _transverse(subject, across), *tied_back),
        strengths=(aggregate(subject, Routing.OVER),),
        properties=_LENGTHWISE_MEMBERS,
        looks=(*_LOOKS, _TIED_BACK),
    )


def _transverse(subject: Subject, across: PositionSet) -> CountRequirement:
    """One across for each 10 ft (3.04 m) of the length of the load or part of it."""
    long = subject.article.length
    if long is None:
        raise ValueError(f"{subject.article.id} is counted by length but has none")
    profile = subject.profile
    each, units = profile.limits.each, profile.measured_in
    return at_least(
        "tie-downs across",
        ceil(profile.length(long) / each),
        PIPE_TRANSVERSE,
        words=f"Across: one for each {length(each, units)} of load or part of it",
        numbers=f"{length(profile.length(long), units)} / {length(each, units)}, rounded up",
        positions=across.positions,
    )


def _over_45(subject: Subject) -> Asks:
    names = tuple(_pipes(subject))
    against = subject.details.has("against structure")
    most = max(2, subject.most_at_each)
    sets = [place(name, Routing.OVER, most, serves=serves) for name, serves in names]
    counts = [
        at_least(
            f"tie-downs through {one.positions[0]}",
            2 if at_end and not against else 1,
            PIPE_OVER_45,
            words="Front or rear pipe, not against structure: at least two"
            if at_end and not against
            else "Through each pipe: at least one",
            positions=one.positions,
        )
        for one, at_end in zip(sets, _at_ends(len(sets)), strict=True)
    ]
    return Asks(
        section=PIPE,
        sets=tuple(sets),
        counts=tuple(counts),
        strengths=(aggregate(subject, Routing.OVER),),
        looks=(*_LOOKS, _HALVES, *((_AGAINST,) if against else ())),
    )


def _at_ends(number: int) -> list[bool]:
    return [place in (0, number - 1) for place in range(number)]


def _pipes(subject: Subject) -> Iterator[tuple[str, str]]:
    """Every pipe from front to rear: its position, and the member of a group it belongs to."""
    number = subject.details.count("pipes")
    if not subject.members:
        for place_ in range(1, number + 1):
            yield f"pipe {place_}", ""
        return
    for one in subject.members:
        for place_ in range(1, number + 1):
            yield (f"{one.id} pipe {place_}" if number > 1 else f"{one.id} pipe"), one.id
