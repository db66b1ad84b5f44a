"""The profile: editions, measures and limits of each rule set."""

from fractions import Fraction

import pytest

from loadplan.day.article import Routing
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.profile import Profile, profile
from tests.rules.build import day


def of(rules, units, **house):
    return Profile(rules=rules, units=units, house=HouseRules(**house))


def test_it_is_that_of_the_day():
    whole = day(rules=RuleSet.CANADA, units=Units.METRIC)
    assert profile(whole) == of(RuleSet.CANADA, Units.METRIC)
    assert profile(whole).edition.document == "NSC Standard 10"
    assert profile(day()).edition.document == "49 CFR 392.9 and 393.100 to 393.136"


@pytest.mark.parametrize(
    ("rules", "units", "length", "mass", "heavy"),
    [
        (RuleSet.US, Units.US, Fraction(20), Fraction(1000), 10000),
        (RuleSet.US, Units.METRIC, Fraction(20), Fraction(1000), 4536),
        (RuleSet.CANADA, Units.US, Fraction("6.096"), Fraction("453.59237"), 4500),
        (RuleSet.CANADA, Units.METRIC, Fraction(20), Fraction(1000), 4500),
    ],
)
def test_only_the_measured_value_is_converted(rules, units, length, mass, heavy):
    found = of(rules, units)
    assert (found.length(Fraction(20)), found.mass(Fraction(1000))) == (length, mass)
    assert found.limits.heavy == heavy


def test_a_ring_counts_with_nothing():
    assert of(RuleSet.US, Units.US).credit(Routing.ROUND) == 0
    assert of(RuleSet.CANADA, Units.US).credit(Routing.ROUND) == 0


def test_the_canadian_metric_figures_but_one_are_those_of_the_us_rule():
    us, canada = of(RuleSet.US, Units.METRIC).limits, of(RuleSet.CANADA, Units.METRIC).limits
    assert (us.short, us.light, us.each) == (canada.short, canada.light, canada.each)
    assert (us.heavy, canada.heavy) == (4536, 4500)
