"""Logs, 49 CFR 393.116 (read in the official handbook only)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from loadplan.day.article import Article, Routing
from loadplan.rules.aggregate import aggregate
from loadplan.rules.canada import LOG_TENSIONING, cite_in
from loadplan.rules.commodity_sources import (
    LOGS,
    LOGS_CROSSWISE,
    LOGS_FLOOR,
    LOGS_LENGTHWISE,
    LOGS_SHARE,
    LOGS_WRAPPERS,
)
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.details import Detail, Details, Takes, flag, number
from loadplan.rules.make import MOST_OVER, at_least, each_bears, look, over
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, Look, PositionSet
from loadplan.rules.section import Asks, Subject
from loadplan.text import length

SIXTH = Fraction(1, 6)
DETAILS = (
    Detail(
        name="direction",
        takes=Takes.WORD,
        phrases={
            "lengthwise": ("lengthwise", "loaded lengthwise", "logs lengthwise"),
            "crosswise": ("crosswise", "loaded crosswise", "logs crosswise"),
        },
        what="how the logs lie",
        write="lengthwise or crosswise",
        help="How the logs lie on the vehicle.",
        needed=lambda details: True,
    ),
    Detail(
        name="logs",
        takes=Takes.WORD,
        phrases={
            "shortwood": ("shortwood", "short wood", "short logs", "short"),
            "longwood": ("longwood", "long wood", "long logs", "long"),
        },
        what="whether they are shortwood (16 ft or 4.9 m, or any such log in the stack)",
        write="shortwood or longwood",
        help="Shortwood is up to 16 ft (4.9 m); a stack with any shortwood in it is shortwood.",
        needed=lambda details: details.choice("direction") == "lengthwise",
    ),
    flag(
        "blocked both ends",
        "Shortwood blocked in front and at the rear.",
        "blocked front and rear",
        "blocked front rear",
        "blocked at both ends",
    ),
    flag(
        "under 10 ft",
        "Every log is shorter than 10 ft (3.04 m).",
        "logs under 10 ft",
        "all logs under 10 ft",
        "under 10 feet",
        "under 3.04 m",
        "logs under 3.04 m",
    ),
    number("stacks", "Crosswise: one stack, or two side by side.", "stack", most=2),
    number("bunks", "Longwood: one tie-down at each of so many bunks.", "bunk", least=2),
    flag(
        "large logs on top",
        "Large logs rise above the bunks.",
        "large logs above bunks",
        "large logs above the bunks",
    ),
)
_LOOKS = (
    look(
        "bunks and stakes",
        LOGS,
        "Bunks, bolsters, stakes or standards hold the stack; outer bottom logs lie firm against "
        "them, and each outside log touches two or rests beyond them.",
    ),
    look(
        "crown",
        LOGS,
        "Packed solid; the centre of the highest outside log is below the stake tops; upper logs "
        "are crowned, or each is held by contact or a tie-down.",
    ),
    look("retighten", LOGS, "Tighten every tie-down again on entering a public road."),
)
_MIDWAY = look(
    "midway",
    LOGS_LENGTHWISE,
    "The one tie-down is midway along the logs; the stack is blocked in front and at the rear.",
)
_APART = look(
    "10 ft apart",
    LOGS_LENGTHWISE,
    "Front and rear tie-downs round the load are at least 10 ft (3.04 m) apart.",
)
_ON_TOP = look("large logs on top", LOGS_WRAPPERS, "Both wrappers hold the large logs to the load.")
_OVERHANG = look(
    "overhang",
    LOGS_CROSSWISE,
    "No log of the lowest tier hangs over by more than a third of its length; a vehicle over 33 ft "
    "(10 m) is divided by centre stakes, and each part is a row of its own.",
)
_ONE_STACK = look(
    "thirds",
    LOGS_CROSSWISE,
    "The tie-downs run lengthwise at about one and two thirds of the length of the logs.",
)
_TWO_STACKS = look(
    "two stacks",
    LOGS_CROSSWISE,
    "No gap between the stacks; outer ends raised by 1 in (2.5 cm) or more; top no higher than 8 "
    "ft (2.44 m) above the deck.",
)
_TENSIONING = look(
    "automatic tensioning",
    LOG_TENSIONING,
    "Logs crosswise: the tie-downs have automatic tensioning devices.",
)


def logs(subject: Subject) -> Asks:
    """One stack: tie-downs over it by how the logs lie, one sixth of the weight lengthwise.

    Each tie-down bears 4,000 lb (1,800 kg) unless a house rule lets that go.
    """
    lengthwise = subject.details.choice("direction") == "lengthwise"
    sets, counts, looks = _lengthwise(subject) if lengthwise else _crosswise(subject)
    runs = tuple(dict.fromkeys(one.routing for one in sets))
    strength = (
        aggregate(subject, *runs, fraction=SIXTH, source=LOGS_SHARE)
        if lengthwise
        else aggregate(subject, *runs)
    )
    floor = each_bears(
        "least WLL on logs",
        subject.profile.printed.log_floor,
        LOGS_FLOOR,
        subject.units,
        words="Each tie-down on logs has at least",
    )
    return Asks(
        section=LOGS,
        sets=sets,
        counts=counts,
        strengths=(strength,),
        properties=(floor,) if subject.house.log_floor else (),
        looks=(*_LOOKS, *looks),
    )


def contradictions(article: Article, details: Details, profile: Profile) -> Iterator[Contradiction]:
    """Words that do not go together, and a length that is no longwood's."""
    cite = cite_in(profile, LOGS_LENGTHWISE)
    crosswise = details.choice("direction") == "crosswise"
    if crosswise and details.choice("logs") == "longwood":
        yield Contradiction(
            column="Details",
            text=f"Details says longwood crosswise, and only shortwood is loaded so, by {cite}. "
            "Write lengthwise, or shortwood.",
        )
    if not crosswise and details.number("stacks") not in (None, 1):
        yield Contradiction(
            column="Details",
            text=f"Details says more than one stack lengthwise, and each has its own tie-downs and "
            f"strength, by {cite}. Write one row for each stack.",
        )
    limit = profile.limits.shortwood
    long = details.choice("logs") == "longwood" and article.length is not None
    if long and profile.length(article.length or Fraction(0)) <= limit:
        yield Contradiction(
            column="Details",
            text=f"Details says longwood and Length is no more than "
            f"{length(limit, profile.measured_in)}, which is shortwood, by {cite}. "
            "Write shortwood, or correct the length.",
        )


_Found = tuple[tuple[PositionSet, ...], tuple[CountRequirement, ...], tuple[Look, ...]]


def _lengthwise(subject: Subject) -> _Found:
    details = subject.details
    number, words, looks = _number_lengthwise(details)
    main = over()
    counts = [
        at_least(
            "tie-downs over the stack",
            number,
            LOGS_LENGTHWISE,
            words=words,
            positions=main.positions,
        )
    ]
    if not details.has("large logs on top"):
        return (main,), tuple(counts), looks
    wrappers = PositionSet(positions=("wrapper 1", "wrapper 2"), routing=Routing.ROUND)
    counts.append(
        at_least(
            "wrappers",
            2,
            LOGS_WRAPPERS,
            words="Large logs on top: two more wrappers to the load beneath",
            positions=wrappers.positions,
        )
    )
    return (main, wrappers), tuple(counts), (*looks, _ON_TOP)


def _number_lengthwise(details: Details) -> tuple[int, str, tuple[Look, ...]]:
    """How many tie-downs over a stack lengthwise, why, and what to look at."""
    if details.choice("logs") == "longwood":
        if details.number("bunks") is not None:
            return details.count("bunks"), "Longwood: one at each bunk", ()
        return 2, "Longwood: at least two round the load", (_APART,)
    if details.has("blocked both ends") and details.has("under 10 ft"):
        return 1, "Shortwood under 10 ft (3.04 m), blocked at both ends: one midway", (_MIDWAY,)
    return 2, "Shortwood: at least two over the stack", ()


def _crosswise(subject: Subject) -> _Found:
    tensioning = (_TENSIONING,) if subject.profile.canada else ()
    if subject.details.count("stacks") == 1:
        places = tuple(f"lengthwise {number}" for number in range(1, MOST_OVER + 1))
        two = at_least(
            "tie-downs lengthwise",
            2,
            LOGS_CROSSWISE,
            words="One stack crosswise: at least two lengthwise",
        )
        only = PositionSet(positions=places, routing=Routing.OVER)
        return (only,), (two,), (_OVERHANG, _ONE_STACK, *tensioning)
    sets = tuple(over(f"{side} stack") for side in ("left", "right"))
    counts = tuple(
        at_least(
            f"tie-down over the {side} stack",
            1,
            LOGS_CROSSWISE,
            words="Two stacks side by side: at least one lengthwise across each",
            positions=one.positions,
        )
        for side, one in zip(("left", "right"), sets, strict=True)
    )
    return sets, counts, (_OVERHANG, _TWO_STACKS, *tensioning)
