"""The aggregate WLL rule, 49 CFR 393.106(d)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Article, Routing, Stands
from loadplan.day.units import Units
from loadplan.rules.positions import BY_DIRECTION
from loadplan.rules.profile import HALF, Profile
from loadplan.rules.requirement import PositionSet, Step, StrengthRequirement
from loadplan.rules.section import Subject
from loadplan.rules.sources import (
    ADDED_WEIGHT,
    AGGREGATE,
    CARGO,
    CREDIT_DIRECT,
    CREDIT_OVER,
    CREDIT_ROUND,
    CREDIT_SAME_SIDE,
    house_rule,
)
from loadplan.source import Source
from loadplan.text import mass, mass_up, names, plain

SHARE_RULE = house_rule("Aggregate share")
ACCESSORY_RULE = house_rule("Accessory counts in aggregate")
DIRECT_RULE = house_rule("Direct credit")
SAME_SIDE_RULE = house_rule("Same side credit")
DIRECTION_RULE = house_rule("Aggregate in each direction")
_CREDIT_WORDS = {
    Routing.DIRECT: "Each tie-down from the vehicle to the article counts with",
    Routing.SAME_SIDE: "Each tie-down around the article and back to the same side counts with",
    Routing.OVER: "Each tie-down over the article to the other side counts with",
    Routing.ROUND: "A tie-down round the article only counts with",
}
_CREDIT_SOURCE = {
    Routing.DIRECT: CREDIT_DIRECT,
    Routing.SAME_SIDE: CREDIT_SAME_SIDE,
    Routing.OVER: CREDIT_OVER,
    Routing.ROUND: CREDIT_ROUND,
}
_SHARES = {HALF: ("One half", "1/2"), Fraction(1, 6): ("One sixth", "1/6")}


def aggregate(
    subject: Subject,
    *runs: Routing,
    fraction: Fraction = HALF,
    source: Source = AGGREGATE,
) -> StrengthRequirement:
    """Credited WLL of all tie-downs >= share x weight of the subject with everything on it.

    ``runs`` are the ways its tie-downs run. The share is ``fraction`` (one half in 393.106(d)),
    raised in proportion where a house rule asks more than one half. An accessory tie-down counts
    with nothing, or with one half where a house rule says so.
    """
    profile, house = subject.profile, subject.house
    share = fraction * house.aggregate_share / HALF
    need = share * subject.weight
    if house.aggregate_share != HALF:
        source = SHARE_RULE
    steps = [
        *_weight_steps(subject),
        _need_step(subject, share, need, source),
        *(_credit_step(profile, run) for run in runs),
    ]
    if any(not accessory.pinned for accessory in subject.article.accessories):
        steps.append(_accessory_step(profile))
    credit = profile.credit(runs[0])
    return StrengthRequirement(
        name="aggregate WLL",
        source=source,
        steps=tuple(steps),
        need=need,
        credit=credit,
        accessory_credit=HALF if house.accessory_counts else Fraction(0),
        credits=tuple(
            (run, profile.credit(run)) for run in runs[1:] if profile.credit(run) != credit
        ),
    )


def each_direction(
    whole: StrengthRequirement, profile: Profile, at: PositionSet
) -> Iterator[StrengthRequirement]:
    """The aggregate again for the tie-downs at the front, rear, left and right of ``at`` alone.

    Only for articles tied at corners and middles, and only where the house asks for it.
    """
    if not profile.house.each_direction:
        return
    for name, everywhere in BY_DIRECTION.items():
        positions = tuple(position for position in everywhere if position in at.positions)
        step = Step(
            words=f"The same again from the tie-downs at the {name} alone",
            numbers=names(positions, "or"),
            result=mass_up(whole.need, profile.units),
            source=DIRECTION_RULE,
        )
        yield replace(
            whole,
            name=f"aggregate WLL at the {name}",
            source=DIRECTION_RULE,
            steps=(step,),
            positions=positions,
            accessory_credit=Fraction(0),
        )


def each_in_line(
    whole: StrengthRequirement, subject: Subject, sets: Sequence[PositionSet]
) -> Iterator[StrengthRequirement]:
    """The aggregate again for each member of a group in line, from the tie-downs over it alone.

    No tie-down of another member holds it: what is strong enough for the group may be far too
    little for its heaviest. ``sets`` are the members' positions, in their order. Nothing for a
    group that stands otherwise, or a row with tie-downs against its ends, which all share.
    """
    if subject.article.stands is not Stands.IN_LINE or len(sets) != len(subject.members):
        return
    for one, at in zip(subject.members, sets, strict=True):
        share = one.carried_weight / subject.weight
        step = Step(
            words=f"The same of {one.id}, by its weight, from the tie-downs over it alone",
            numbers=f"{plain(one.carried_weight)} / {plain(subject.weight)} "
            f"x {mass_up(whole.need, subject.units)}",
            result=mass_up(share * whole.need, subject.units),
            source=whole.source,
        )
        yield replace(
            whole,
            name=f"aggregate WLL of {one.id}",
            steps=(step,),
            need=share * whole.need,
            positions=at.positions,
        )


def _weight_steps(subject: Subject) -> list[Step]:
    article, units = subject.article, subject.units
    if subject.members:
        return [_group_step(subject.members, units)]
    if not article.added:
        return []
    parts = [plain(article.weight), *(plain(added.weight) for added in article.added)]
    what = ", ".join(added.what or "added weight" for added in article.added)
    return [
        Step(
            words=f"Weight with everything on it: {what}",
            numbers=" + ".join(parts),
            result=mass(article.carried_weight, units),
            source=ADDED_WEIGHT,
        )
    ]


def _group_step(members: tuple[Article, ...], units: Units) -> Step:
    total = sum((one.carried_weight for one in members), Fraction(0))
    return Step(
        words=f"Weight of the group: {', '.join(one.id for one in members)}",
        numbers=" + ".join(plain(one.carried_weight) for one in members),
        result=mass(total, units),
        source=CARGO,
    )


def _need_step(subject: Subject, share: Fraction, need: Fraction, source: Source) -> Step:
    text = plain(share, 4)
    words, number = _SHARES.get(share, (text, text))
    return Step(
        words=f"{words} of the weight",
        numbers=f"{number} x {mass(subject.weight, subject.units)}",
        result=mass_up(need, subject.units),
        source=source,
    )


def _credit_step(profile: Profile, run: Routing) -> Step:
    credit, source = profile.credit(run), _CREDIT_SOURCE[run]
    if run is Routing.DIRECT and profile.house.direct_credit is not None:
        source = DIRECT_RULE
    if run is Routing.SAME_SIDE and profile.house.same_side_credit is not None:
        source = SAME_SIDE_RULE
    return _share_step(_CREDIT_WORDS[run], credit, source)


def _share_step(words: str, credit: Fraction, source: Source) -> Step:
    if credit == 0:
        return Step(words=words, numbers="nothing", result="0", source=source)
    what = "the whole of its WLL" if credit == 1 else f"{credit} of its WLL"
    return Step(words=words, numbers=what, result=f"{credit} x WLL", source=source)


def _accessory_step(profile: Profile) -> Step:
    credit = HALF if profile.house.accessory_counts else Fraction(0)
    return _share_step("Each tie-down of an accessory counts with", credit, ACCESSORY_RULE)
