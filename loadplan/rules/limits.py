"""The limits that the rule sets print.

The pairs of the US rule are not conversions of each other: a US day is judged by the figures of
its own units. In Canada the metric figures are the limits whatever units the day is in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from loadplan.day.day import RuleSet
from loadplan.day.units import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Lengths and weights of one unit system.

    ``short`` and ``light`` bound the one-tie-down article, ``each`` is the length per tie-down
    (393.110); ``heavy`` is where heavy machinery begins and light vehicles end; ``commodity`` is
    where coils and paper rolls fall under their own section and also the least WLL on heavy
    machines and flattened vehicles; ``boulder`` where rock does; ``height`` and ``width`` of the
    whole vehicle are advice only.
    """

    short: Fraction
    light: Fraction
    each: Fraction
    heavy: Fraction
    commodity: Fraction
    boulder: Fraction
    log_floor: Fraction
    shortwood: Fraction
    low_lumber: Fraction
    height: Fraction
    width: Fraction


LIMITS: Mapping[Units, Limits] = {
    Units.US: Limits(
        short=Fraction(5),
        light=Fraction(1100),
        each=Fraction(10),
        heavy=Fraction(10000),
        commodity=Fraction(5000),
        boulder=Fraction(11000),
        log_floor=Fraction(4000),
        shortwood=Fraction(16),
        low_lumber=Fraction(6),
        height=Fraction("13.5"),
        width=Fraction("8.5"),
    ),
    Units.METRIC: Limits(
        short=Fraction("1.52"),
        light=Fraction(500),
        each=Fraction("3.04"),
        heavy=Fraction(4536),
        commodity=Fraction(2268),
        boulder=Fraction(5000),
        log_floor=Fraction(1800),
        shortwood=Fraction("4.9"),
        low_lumber=Fraction("1.83"),
        height=Fraction("4.11"),
        width=Fraction("2.6"),
    ),
}
CANADA = replace(LIMITS[Units.METRIC], heavy=Fraction(4500))


def limits_of(rules: RuleSet, units: Units) -> Limits:
    """The limits of a rule set that a day in ``units`` is held to."""
    return CANADA if rules is RuleSet.CANADA else LIMITS[units]
