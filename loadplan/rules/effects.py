"""What the readings of a disputed point change on one day, in tie-downs and in strength."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.day import Day
from loadplan.rules.demand import demand
from loadplan.rules.groups import units_of
from loadplan.rules.rating_switches import RATING_SWITCHES
from loadplan.rules.readings import taken_word
from loadplan.rules.requirement import (
    Demand,
    EachWLLRequirement,
    MemberRequirement,
    StrengthRequirement,
)
from loadplan.rules.switch import Reading, Switch
from loadplan.rules.switches import SWITCHES
from loadplan.text import count, mass_down, mass_up
from loadplan.wll.piece import rate_in


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """What one other reading would change for one article or one kind of gear.

    ``load`` and ``article`` are "" for gear, ``gear`` for articles. ``tie_downs`` is how many
    more (or, below 0, fewer) tie-downs the count would ask for, ``wll`` how much more WLL of all
    tie-downs together the strengths would, in the day's mass unit, and ``held`` is 1 where the
    article could not be planned any more, -1 where it could again. ``text`` says it all in words.
    """

    load: str = ""
    article: str = ""
    gear: str = ""
    switch: str
    taken: str
    other: str
    tie_downs: int = 0
    wll: Fraction = Fraction(0)
    held: int = 0
    text: str


def effects(day: Day) -> tuple[Effect, ...]:
    """Every reading that would change something on ``day``, article by article, then gear.

    Nothing is planned: the counts and strengths asked are compared, and the ratings of the gear.
    """
    return (*_on_articles(day), *_on_gear(day))


def effects_on(day: Day, article: str) -> tuple[Effect, ...]:
    """The effects on one article or group: for printing where a reading bites."""
    return tuple(_on_articles(day, article))


def fewest_tie_downs(asked: Demand) -> int:
    """The fewest tie-downs that meet every count, accessories' included.

    Counts are met from the smallest set of positions up, each first where a tie-down counts for
    two: exact, since the sets of one demand lie inside one another or apart.
    """
    taken = dict.fromkeys(asked.positions, 0)
    room = {place: one.most_at_each for one in asked.position_sets for place in one.positions}
    for one in sorted(asked.counts, key=lambda one: len(one.positions or taken)):
        places = [place for place in taken if one.worth(place)]
        while sum(one.worth(place) * taken[place] for place in places) < one.at_least:
            free = [place for place in places if taken[place] < room[place]] or places
            taken[max(free, key=lambda place: (one.worth(place), -taken[place]))] += 1
    return sum(taken.values()) + sum(one.number for one in asked.accessories)


def wll_needed(asked: Demand) -> Fraction:
    """The least sum of WLLs of tie-downs that meets every strength, as far as they can share."""
    apart: list[StrengthRequirement] = []
    for one in asked.strengths:
        if one.positions is not None and all(
            not set(one.positions) & set(other.positions or ()) for other in apart
        ):
            apart.append(one)
    alone = [_sum_of_wlls(asked, one) for one in asked.strengths]
    together = sum((_sum_of_wlls(asked, one) for one in apart), Fraction(0))
    return max([together, *alone])


@dataclass(frozen=True, slots=True)
class _Otherwise:
    """The day with one point read otherwise."""

    switch: Switch
    reading: Reading
    day: Day


def _otherwise(day: Day, switches: tuple[Switch, ...]) -> tuple[_Otherwise, ...]:
    """``day`` under every reading it does not take, one at a time."""
    return tuple(
        _Otherwise(switch, reading, replace(day, house=switch.read_as(day.house, reading)))
        for switch in switches
        for reading in switch.others(day.house, day.rules)
    )


def _on_articles(day: Day, only: str | None = None) -> Iterator[Effect]:
    others = _otherwise(day, SWITCHES)
    known: dict[object, tuple[Effect, ...]] = {}
    for load in day.loads:
        trailer = day.trailer_of(load)
        for article in units_of(day, load):
            if only not in (None, article.id):
                continue
            # Days are full of articles alike but for their names, and each costs milliseconds.
            alike = (replace(article, id=article.group, load="", description=""), trailer)
            if alike not in known:
                known[alike] = tuple(_on_article(day, article, others))
            for one in known[alike]:
                yield replace(one, load=load.id, article=article.id)


def _on_article(day: Day, article: Article, others: tuple[_Otherwise, ...]) -> Iterator[Effect]:
    now = demand(day, article)
    for other in others:
        then = _other_demand(other, now)
        text, more = _changes(day, now, then, other.reading)
        if text:
            yield Effect(
                switch=other.switch.name,
                taken=taken_word(day, other.switch),
                other=other.reading.word,
                tie_downs=more,
                wll=Fraction(0) if then is None else wll_needed(then) - wll_needed(now),
                held=0 if then is None else bool(then.obstacles) - bool(now.obstacles),
                text=text,
            )


def _other_demand(other: _Otherwise, now: Demand) -> Demand | None:
    """What would be asked otherwise; None where it cannot be asked (a length is missing)."""
    try:
        return demand(other.day, now.article)
    except ValueError:
        return None


def _changes(day: Day, now: Demand, then: Demand | None, other: Reading) -> tuple[str, int]:
    """What changes from ``now`` to ``then``, in words, and by how many tie-downs."""
    if then is None:
        return f"{other.word}: counts by the length, which is not given", 0
    more = fewest_tie_downs(then) - fewest_tie_downs(now) if _counted(now) != _counted(then) else 0
    parts = []
    if more:
        word = "more" if more > 0 else "fewer"
        parts.append(f"{count(abs(more), f'{word} tie-down', f'{word} tie-downs')}")
    if _strong(now) != _strong(then) and (after := wll_needed(then)) != wll_needed(now):
        before = mass_up(wll_needed(now), day.units)
        parts.append(f"WLLs of {mass_up(after, day.units)} in all in place of {before}")
    parts += _each(day, now, then)
    if _kinds(now) != _kinds(then):
        parts.append("no webbing" if len(_kinds(then)) > len(_kinds(now)) else "webbing too")
    if _accessory_credit(now) != _accessory_credit(then):
        parts.append(f"accessory tie-downs count with {_accessory_credit(then)} of their WLL")
    if now.obstacles != then.obstacles:
        parts.append("held" if then.obstacles else "not held")
    return ", ".join(parts), more


def _counted(asked: Demand) -> tuple[object, ...]:
    """All that the fewest tie-downs follow from."""
    return asked.counts, asked.position_sets, asked.accessories


def _strong(asked: Demand) -> tuple[object, ...]:
    """All that the least sum of WLLs follows from."""
    return asked.strengths, asked.position_sets


def _each(day: Day, now: Demand, then: Demand) -> Iterator[str]:
    before, after = _least(now), _least(then)
    for name in {**before, **after}:
        if before.get(name) != after.get(name):
            least = after.get(name, Fraction(0))
            yield f"{name}: {mass_up(least, day.units)} each" if least else f"{name}: any"


def _least(asked: Demand) -> dict[str, Fraction]:
    found = {
        one.name: one.at_least for one in asked.properties if isinstance(one, EachWLLRequirement)
    }
    return found | {one.name: one.at_least for one in asked.accessories if one.at_least is not None}


def _kinds(asked: Demand) -> tuple[MemberRequirement, ...]:
    return tuple(one for one in asked.properties if isinstance(one, MemberRequirement))


def _accessory_credit(asked: Demand) -> Fraction:
    """With what the tie-downs of accessories count, where there are any."""
    credits = (one.accessory_credit for one in asked.strengths)
    return max(credits, default=Fraction(0)) if asked.accessories else Fraction(0)


def _on_gear(day: Day) -> Iterator[Effect]:
    others = _otherwise(day, RATING_SWITCHES)
    for gear in day.gear:
        now = rate_in(day, gear).wll
        for other in others:
            then = rate_in(other.day, gear).wll
            if then != now:
                yield Effect(
                    gear=gear.id,
                    switch=other.switch.name,
                    taken=taken_word(day, other.switch),
                    other=other.reading.word,
                    text=f"{_bears(day, then)} in place of {_bears(day, now)}",
                )


def _bears(day: Day, wll: Fraction | None) -> str:
    return "unknown" if wll is None else mass_down(wll, day.units)


def _sum_of_wlls(asked: Demand, strength: StrengthRequirement) -> Fraction:
    """The least sum of WLLs that reaches the need: all of it where tie-downs count for most."""
    best = max(
        (strength.credit_of(one.routing) for one in asked.position_sets), default=Fraction(0)
    )
    return strength.need / best if best else Fraction(0)
