"""The count of tie-downs by length and weight, 49 CFR 393.110."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from loadplan.day.article import Article, Routing, Stands
from loadplan.day.units import Units
from loadplan.rules.aggregate import aggregate, each_direction, each_in_line
from loadplan.rules.choice import routing
from loadplan.rules.limits import LIMITS, Limits
from loadplan.rules.make import at_least_one, over
from loadplan.rules.positions import FRONT, REAR, main_positions, most_at_each
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import CountRequirement, PositionSet, Step
from loadplan.rules.section import Asks, Subject
from loadplan.rules.sources import COUNT, COUNT_BLOCKED, FRONT_AND_REAR, house_rule
from loadplan.source import Source
from loadplan.text import count, length, mass, plain

BY_LENGTH = "tie-downs by length"
AT_FRONT = "tie-down at the front"
AT_REAR = "tie-down at the rear"
BLOCKS_RULE = house_rule("Direct tie-down blocks forward")


def tie_downs_by_length(
    *, length: Fraction, weight: Fraction, blocked: bool, limits: Limits = LIMITS[Units.US]
) -> int:
    """The least number of tie-downs of 49 CFR 393.110 for one article.

    ``length`` and ``weight`` with everything on it are in the units of ``limits``. Blocked
    forward: one per 10 ft (3.04 m) or part of it. Not blocked: one up to 5 ft (1.52 m) and
    1,100 lb (500 kg), two up to 10 ft (3.04 m) or if heavier, then one more per further 10 ft
    (3.04 m) or part of it.
    """
    if blocked:
        return max(1, ceil(length / limits.each))
    if length <= limits.short and weight <= limits.light:
        return 1
    return 2 + max(0, ceil((length - limits.each) / limits.each))


def length_count(
    article: Article,
    profile: Profile,
    *,
    of: str = "",
    positions: tuple[str, ...] | None = None,
) -> CountRequirement:
    """The count of 49 CFR 393.110 as a requirement; the article's length must be known.

    ``of`` is the id of a member of a group, whose tie-downs stand at ``positions``.
    """
    if article.length is None:
        raise ValueError(f"article {article.id} is counted by length but has none")
    blocked, source = _blocked(article, profile)
    number = tie_downs_by_length(
        length=profile.length(article.length),
        weight=profile.mass(article.carried_weight),
        blocked=blocked,
        limits=profile.limits,
    )
    words, numbers = _working(article, article.length, number, blocked, profile)
    step = Step(words=words, numbers=numbers, result=count(number, "tie-down"), source=source)
    return CountRequirement(
        name=f"{BY_LENGTH} of {of}" if of else BY_LENGTH,
        source=source,
        steps=(*_converted(article, article.length, profile), step),
        at_least=number,
        positions=positions,
    )


def front_and_rear(source: Source = FRONT_AND_REAR) -> tuple[CountRequirement, CountRequirement]:
    """At least one tie-down at the front and one at the rear of an article."""
    return (
        at_least_one(AT_FRONT, FRONT, source),
        at_least_one(AT_REAR, REAR, source),
    )


def general(subject: Subject) -> Asks:
    """What the general rules ask: a count by length, half the weight and, of two or more, ends.

    ``over`` tie-downs have no front and rear places, so only direct and same-side ones are asked
    for both ends. Articles of a group that touch are held by the same tie-downs, each by as many
    as it needs alone; those in line each by their own.
    """
    article, profile = subject.article, subject.profile
    if subject.members:
        return _group(subject)
    run = routing(article)
    by_length = length_count(article, profile)
    ends = by_length.at_least >= 2 and run is not Routing.OVER
    whole, main = aggregate(subject, run), main_set(article, profile, run)
    return Asks(
        section=COUNT_BLOCKED if article.blocked_forward else COUNT,
        sets=(main,),
        counts=(by_length, *front_and_rear()) if ends else (by_length,),
        strengths=(
            whole,
            *(each_direction(whole, profile, main) if run is not Routing.OVER else ()),
        ),
        tie_points=True,
        counted=True,
    )


def main_set(article: Article, profile: Profile, run: Routing) -> PositionSet:
    """The corners and middles of ``article``, or the places over it, for tie-downs that run so."""
    return PositionSet(
        positions=main_positions(run),
        routing=run,
        most_at_each=most_at_each(run, profile.house.most_per_position),
        tie_point_wll=article.tie_point_wll if run is Routing.DIRECT else None,
    )


def _group(subject: Subject) -> Asks:
    members, profile = subject.members, subject.profile
    whole = aggregate(subject, Routing.OVER)
    if subject.article.stands is Stands.IN_LINE:
        sets = tuple(over(one.id, serves=one.id) for one in members)
        places: tuple[tuple[str, ...] | None, ...] = tuple(one.positions for one in sets)
    else:
        sets = (over(),)
        places = (None,) * len(members)
    return Asks(
        section=COUNT,
        sets=sets,
        counts=tuple(
            length_count(one, profile, of=one.id, positions=at)
            for one, at in zip(members, places, strict=True)
        ),
        strengths=(whole, *each_in_line(whole, subject, sets)),
        counted=True,
    )


def _blocked(article: Article, profile: Profile) -> tuple[bool, Source]:
    """Whether ``article`` counts as blocked forward, and what says so."""
    if article.blocked_forward:
        return True, COUNT_BLOCKED
    if profile.house.direct_blocks_forward and routing(article) is Routing.DIRECT:
        return True, BLOCKS_RULE
    return False, COUNT


def _converted(article: Article, long: Fraction, profile: Profile) -> tuple[Step, ...]:
    """The length and weight in the units of the rule, where the day is in others."""
    if profile.measured_in is profile.units:
        return ()
    units = profile.measured_in
    weight = article.carried_weight
    return (
        Step(
            words="Length and weight in the units of the rule",
            numbers=f"{length(long, profile.units)}, {mass(weight, profile.units)}",
            result=f"{plain(profile.length(long), 4)} {units.length}, "
            f"{mass(profile.mass(weight), units)}",
            source=COUNT,
        ),
    )


def _working(
    article: Article, long: Fraction, number: int, blocked: bool, profile: Profile
) -> tuple[str, str]:
    limits, units = profile.limits, profile.measured_in
    long, weight = profile.length(long), mass(profile.mass(article.carried_weight), units)
    text, each = length(long, units), length(limits.each, units)
    if blocked:
        words = f"Blocked forward: one for each {each} or part of it"
        return words, f"{text} / {each}, rounded up"
    short, light = length(limits.short, units), mass(limits.light, units)
    if number == 1:
        words = f"Not blocked forward, up to {short} and up to {light}: one"
        return words, f"{text}, {weight}"
    if long <= limits.short:
        words = f"Not blocked forward, up to {short} but over {light}: two"
        return words, f"{text}, {weight}"
    if long <= limits.each:
        return f"Not blocked forward, over {short} and up to {each}: two", text
    words = f"Not blocked forward, over {each}: two, and one for each further {each} or part of it"
    return (
        words,
        f"2 + ({plain(long, 3)} - {plain(limits.each)}) / {plain(limits.each)}, rounded up",
    )
