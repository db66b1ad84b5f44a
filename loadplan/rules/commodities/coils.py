"""Metal coils, 49 CFR 393.120 (read in the official handbook and a state manual)."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.article import Article, Routing, Stands
from loadplan.rules.aggregate import aggregate, each_in_line
from loadplan.rules.canada import COIL_ROWS as CANADIAN_ROWS
from loadplan.rules.canada import cite_in
from loadplan.rules.commodity_sources import (
    COIL_CROSSWISE,
    COIL_LENGTHWISE,
    COIL_NO_X,
    COIL_ROWS,
    COIL_VERTICAL,
    COILS,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes
from loadplan.rules.make import at_least, look, over, place
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, Look, PositionSet
from loadplan.rules.section import Asks, Subject
from loadplan.source import Source

DETAILS = (
    Detail(
        name="eye",
        takes=Takes.WORD,
        phrases={
            "vertical": ("eye vertical", "eyes vertical", "vertical", "eye to sky", "eye up"),
            "crosswise": ("eye crosswise", "eyes crosswise", "crosswise", "eye to side"),
            "lengthwise": ("eye lengthwise", "eyes lengthwise", "lengthwise", "eye to front"),
        },
        what="the way the coil's eye points",
        write="eye vertical, eye crosswise or eye lengthwise",
        help="Which way the eye of the coil points.",
        needed=lambda details: True,
    ),
    Detail(
        name="option",
        takes=Takes.WORD,
        phrases={
            str(option): (f"option {option}", f"opt {option}", f"method {option}")
            for option in (1, 2, 3)
        },
        what="the option",
        write="option 1, option 2 or option 3",
        help="Eye lengthwise, alone: 1 diagonals through the eye and one over; 2 straight through "
        "the eye and one over; 3 two over the top (taken if not given).",
    ),
)
_DIAGONALS = ("diagonal left to right", "diagonal right to left")
_FORE_AND_AFT = look(
    "forward and rearward",
    COILS,
    "Blocking, bracing, friction mats or tie-downs stop every coil forward and rearward.",
)
_SUPPORT = look(
    "coil bunks",
    COILS,
    "A support keeps the coil off the deck and from rolling and cannot loosen; timbers, chocks or "
    "wedges are held by coil bunks or the like.",
)
_NAILED = look(
    "nailed blocking",
    COIL_CROSSWISE,
    "Nailed blocking or cleats are not the only means, and no cradle is nailed wood.",
)
_NO_X = look("no crossing", COIL_NO_X, "The tie-downs do not cross in the eye of the coil.")
_ANGLE = look(
    "angle of the tie-downs",
    COILS,
    "Tie-downs forward and rearward run at 45 degrees or less to the deck where practicable.",
)
_NEAR_ENDS = look(
    "near front and rear", COIL_LENGTHWISE, "The two over the top are near its front and rear."
)
_ALL_WAYS = look(
    "rows", COIL_ROWS, "The row cannot shift or tip any way; each tie-down is near the eye."
)
_CANADIAN = look("transverse rows", CANADIAN_ROWS, "Transverse rows: see the current text.")
_Asked = tuple[tuple[PositionSet, ...], tuple[CountRequirement, ...], tuple[Look, ...]]


def coil(subject: Subject) -> Asks:
    """One coil by the way its eye points, or a row of coils; half the weight over all of it."""
    eye = subject.details.choice("eye")
    if subject.members:
        sets, counts, looks = _row(subject, eye)
    elif eye == "vertical":
        sets, counts, looks = _vertical(subject)
    elif eye == "crosswise":
        sets, counts, looks = _crosswise(subject)
    else:
        sets, counts, looks = _lengthwise(subject)
    runs = tuple(dict.fromkeys(one.routing for one in reversed(sets)))
    whole = aggregate(subject, *runs)
    return Asks(
        section=COILS,
        sets=sets,
        counts=counts,
        strengths=(whole, *each_in_line(whole, subject, sets)),
        looks=looks,
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """An option where there is none, and rows that no text we have covers."""
    eye = details.choice("eye")
    if details.choice("option") is not None and (eye != "lengthwise" or article.group):
        yield Contradiction(
            column="Details",
            text="Details gives an option, and only a single coil with its eye lengthwise has one, "
            f"by {cite_in(profile, COIL_LENGTHWISE)}. Leave the option out.",
        )
    if article.group and eye == "crosswise":
        yield Contradiction(
            column="Group",
            text="Coils with their eyes crosswise have no rule for rows in the text read, "
            f"by {cite_in(profile, COIL_ROWS)}. Leave Group blank and secure each alone.",
        )
    if article.group and article.stands is Stands.STACKED:
        yield Contradiction(
            column="Group stands",
            text=f"Coils are secured in rows, not stacked, by {cite_in(profile, COIL_ROWS)}. "
            "Write in line or side by side.",
        )


def _one_at(name: str, position: PositionSet, source: Source, words: str) -> CountRequirement:
    return at_least(name, 1, source, words=words, positions=position.positions)


def _diagonals(
    subject: Subject, source: Source
) -> tuple[list[PositionSet], list[CountRequirement]]:
    sets = [place(name, Routing.OVER, subject.most_at_each) for name in _DIAGONALS]
    counts = [
        _one_at(name, one, source, "At least one through or across the eye")
        for name, one in zip(_DIAGONALS, sets, strict=True)
    ]
    return sets, counts


def _vertical(subject: Subject) -> _Asked:
    sets, counts = _diagonals(subject, COIL_VERTICAL)
    straight = over()
    counts.append(
        _one_at("straight over the eye", straight, COIL_VERTICAL, "At least one across the eye")
    )
    return (*sets, straight), tuple(counts), (_FORE_AND_AFT,)


def _crosswise(subject: Subject) -> _Asked:
    sets = [
        place(f"eye {way}", Routing.OVER, subject.most_at_each) for way in ("forward", "rearward")
    ]
    counts = tuple(
        _one_at(
            f"tie-down through the eye {way}",
            one,
            COIL_CROSSWISE,
            f"At least one through the eye {way}",
        )
        for way, one in zip(("forward", "rearward"), sets, strict=True)
    )
    return tuple(sets), counts, (_SUPPORT, _NAILED, _NO_X, _ANGLE)


def _lengthwise(subject: Subject) -> _Asked:
    option = subject.details.choice("option") or "3"
    straight = over()
    looks = (_SUPPORT, _FORE_AND_AFT)
    if option == "3":
        two = at_least(
            "tie-downs over the top", 2, COIL_LENGTHWISE, words="Option 3: two over the top"
        )
        return (straight,), (two,), (*looks, _NEAR_ENDS)
    words = f"Option {option}: at least one straight over the top"
    one_over = _one_at("tie-down over the top", straight, COIL_LENGTHWISE, words)
    if option == "1":
        sets, counts = _diagonals(subject, COIL_LENGTHWISE)
        return (*sets, straight), (*counts, one_over), (*looks, _ANGLE)
    sides = [
        place(f"eye {side}", Routing.SAME_SIDE, subject.most_at_each) for side in ("left", "right")
    ]
    through = tuple(
        _one_at(
            f"tie-down through the eye, {side}",
            one,
            COIL_LENGTHWISE,
            "Option 2: at least one straight through the eye on each side",
        )
        for side, one in zip(("left", "right"), sides, strict=True)
    )
    return (*sides, straight), (*through, one_over), looks


def _row(subject: Subject, eye: str | None) -> _Asked:
    """In line each coil has its own over it; side by side they are one transverse row."""
    members, number = subject.members, 1 if eye == "vertical" else 2
    in_line = subject.article.stands is Stands.IN_LINE
    sets = [over(one.id, serves=one.id) for one in members] if in_line else [over()]
    whose = [one.id for one in members] if in_line else ["the row"]
    counts = [
        at_least(
            f"tie-downs over {who}",
            number,
            COIL_ROWS,
            words="At least one over each coil or transverse row"
            if number == 1
            else "At least two over each coil or transverse row, near front and rear",
            positions=one.positions,
        )
        for who, one in zip(whose, sets, strict=True)
    ]
    if eye == "vertical":
        for end in ("front", "rear"):
            against = place(f"row {end}", Routing.OVER, subject.most_at_each)
            sets.append(against)
            counts.append(
                _one_at(
                    f"tie-down against the {end} of the row",
                    against,
                    COIL_ROWS,
                    f"At least one against the {end}",
                )
            )
    looks = (_ALL_WAYS, _ANGLE) if eye == "vertical" else (_SUPPORT, _FORE_AND_AFT, _ALL_WAYS)
    canadian = (_CANADIAN,) if subject.profile.canada else ()
    return tuple(sets), tuple(counts), (*looks, *canadian)
