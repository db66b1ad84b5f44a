"""Pieces, articles and sums that several published examples share."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from loadplan.day.article import Article, CargoClass
from loadplan.day.day import Day, RuleSet
from loadplan.day.gear import Gear, Kind
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.size import read_size
from loadplan.day.units import Units
from loadplan.rules.demand import demand
from loadplan.rules.general import length_count
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import Demand
from loadplan.wll.piece import rate_in


def cargo(weight, length=10, *, cargo_class=CargoClass.GENERAL, **known) -> Article:
    """One article, by weight and length in the units of its day."""
    return Article(
        id="M-1",
        load="L-1",
        cargo_class=cargo_class,
        weight=Fraction(weight),
        length=None if length is None else Fraction(length),
        **known,
    )


def day(*articles: Article, units=Units.US, rules=RuleSet.US, house=None) -> Day:
    """A day of one load carrying ``articles``."""
    return Day(
        loads=(Load(id="L-1"),),
        articles=articles,
        gear=(),
        units=units,
        rules=rules,
        house=house or HouseRules(),
    )


def asked(article: Article, units: Units = Units.US, rules: RuleSet = RuleSet.US) -> Demand:
    """All that is asked of one article."""
    return demand(day(article, units=units, rules=rules), article)


def need(article: Article, units: Units = Units.US, rules: RuleSet = RuleSet.US) -> Fraction:
    """The credited WLL the article's tie-downs must add up to."""
    return asked(article, units, rules).strengths[0].need


def counted(article: Article, units: Units = Units.US, rules: RuleSet = RuleSet.US) -> int:
    """The number of tie-downs by length and weight."""
    return length_count(article, Profile(units=units, rules=rules, house=HouseRules())).at_least


def fewest(
    article: Article, wll: Fraction | int, units: Units = Units.US, rules: RuleSet = RuleSet.US
) -> int:
    """How many tie-downs of one WLL satisfy both the count and the aggregate rule."""
    rule = asked(article, units, rules).strengths[0]
    return max(counted(article, units, rules), ceil(rule.need / (rule.credit * wll)))


def credited(article: Article, *wlls: Fraction | int, rules: RuleSet = RuleSet.US) -> Fraction:
    """The sum of credited WLLs of the article's tie-downs."""
    return asked(article, rules=rules).strengths[0].credit * sum(map(Fraction, wlls))


def wll(kind: Kind, size: str = "", grade: str = "", rules=RuleSet.US, **known) -> Fraction | None:
    """The WLL of one piece in pounds; None where it counts for nothing."""
    gear = Gear(id="G-1", kind=kind, size=read_size(size), size_text=size, grade=grade, **known)
    return rate_in(day(rules=rules), gear).wll
