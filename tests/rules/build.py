"""Small days for the tests of the rules."""

from __future__ import annotations

from fractions import Fraction

from loadplan.day.article import AddedWeight, Article, CargoClass, Routing
from loadplan.day.day import Day, RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.rules.demand import demand, load_demand, subject_of
from loadplan.rules.facts import contradictions
from loadplan.rules.requirement import Demand, LoadDemand
from loadplan.rules.section import Subject

_QUANTITIES = ("weight", "length", "height", "width", "tie_point_wll", "reach")


def article(cargo_class=CargoClass.TRACKED_MACHINE, *, added=(), **known) -> Article:
    """An article ``M-1`` on load ``L-1``; numbers may be given as int, str or Fraction."""
    values = {"id": "M-1", "load": "L-1", "weight": 20000, "length": 18, **known}
    for name in _QUANTITIES:
        if values.get(name) is not None:
            values[name] = Fraction(values[name])
    return Article(
        cargo_class=cargo_class,
        added=tuple(AddedWeight(what=what, weight=Fraction(weight)) for what, weight in added),
        **values,
    )


def day(
    *articles: Article,
    house: HouseRules | None = None,
    units: Units = Units.US,
    rules: RuleSet = RuleSet.US,
    trailer: Trailer | None = None,
) -> Day:
    """A day of one load carrying ``articles`` on ``trailer``."""
    return Day(
        loads=(Load(id="L-1", trailer=None if trailer is None else trailer.id),),
        articles=articles,
        gear=(),
        trailers=() if trailer is None else (trailer,),
        house=house or HouseRules(),
        units=units,
        rules=rules,
    )


def subject(cargo: Article, house: HouseRules | None = None, units: Units = Units.US) -> Subject:
    """What the sections are asked about for ``cargo``, alone on its load."""
    return subject_of(day(cargo, house=house, units=units), cargo)


def asked(cargo: Article, **known) -> Demand:
    """The demand of ``cargo``, alone on its load."""
    return demand(day(cargo, **known), cargo)


def asked_of_load(*articles: Article, **known) -> LoadDemand:
    """The demand of the one load."""
    whole = day(*articles, **known)
    return load_demand(whole, whole.loads[0])


def counts(found: Demand) -> list[tuple[str, int, tuple[str, ...] | None, str]]:
    """Name, number, positions and section of each count."""
    return [
        (count.name, count.at_least, count.positions, count.source.section)
        for count in found.counts
    ]


def working(requirement) -> list[tuple[str, str, str, str]]:
    """The steps of a requirement as text: words, numbers, result, citation."""
    return [
        (step.words, step.numbers, step.result, step.source.cite()) for step in requirement.steps
    ]


def sets(found: Demand) -> list[tuple[str, int, str, int, str]]:
    """First position, how many, routing, most at each and whom it serves, for each set."""
    return [
        (one.positions[0], len(one.positions), one.routing.value, one.most_at_each, one.serves)
        for one in found.position_sets
    ]


def needs(found: Demand) -> list[tuple[str, int, str | None]]:
    """Name, number and first position of each count."""
    return [
        (one.name, one.at_least, None if one.positions is None else one.positions[0])
        for one in found.counts
    ]


def strengths(found: Demand) -> list[tuple[Fraction, dict[Routing, Fraction]]]:
    """Need and the credit of each routing there is, for each strength over all tie-downs."""
    runs = dict.fromkeys(one.routing for one in found.position_sets)
    return [
        (one.need, {run: one.credit_of(run) for run in runs})
        for one in found.strengths
        if one.positions is None
    ]


def look_names(found: Demand) -> list[str]:
    """The names of the check-list lines."""
    return [one.name for one in found.looks]


def problems(cargo: Article, house=None, units=Units.US, rules=RuleSet.US) -> list[tuple[str, str]]:
    """Column and text of everything that contradicts in ``cargo``."""
    found = contradictions(cargo, house or HouseRules(), units, rules)
    return [(one.column, one.text) for one in found]
