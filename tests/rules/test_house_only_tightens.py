"""House rules that would go below the rule set are named with the section they would break."""

from fractions import Fraction

import pytest

from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.day_facts import house_contradictions


def found(house, units=Units.US, rules=RuleSet.US):
    return [(one.column, one.text) for one in house_contradictions(house, units, rules)]


@pytest.mark.parametrize("rules", RuleSet)
@pytest.mark.parametrize("units", Units)
def test_the_defaults_are_sound(rules, units):
    assert found(HouseRules(), units, rules) == []


@pytest.mark.parametrize(
    ("rules", "units", "limit", "more", "text"),
    [
        (
            RuleSet.US,
            Units.US,
            10000,
            "10000.5",
            "Heavy from is 10,000.5 lb, and beyond 10,000 lb 49 CFR 393.130(a) holds in any case. "
            "It must be 10,000 lb or less.",
        ),
        (
            RuleSet.US,
            Units.METRIC,
            4536,
            4537,
            "Heavy from is 4,537 kg, and beyond 4,536 kg 49 CFR 393.130(a) holds in any case. "
            "It must be 4,536 kg or less.",
        ),
        (
            RuleSet.CANADA,
            Units.METRIC,
            4500,
            4501,
            "Heavy from is 4,501 kg, and beyond 4,500 kg NSC Standard 10 s. 89(1) holds in any "
            "case. It must be 4,500 kg or less.",
        ),
        # 9,920 lb = 4,499.6 kg, 9,921 lb = 4,500.1 kg
        (
            RuleSet.CANADA,
            Units.US,
            9920,
            9921,
            "Heavy from is 9,921 lb, and beyond 4,500 kg NSC Standard 10 s. 89(1) holds in any "
            "case. It must be 4,500 kg or less.",
        ),
    ],
)
def test_heavy_from(rules, units, limit, more, text):
    assert found(HouseRules(heavy_from=Fraction(limit)), units, rules) == []
    assert found(HouseRules(heavy_from=Fraction(more)), units, rules) == [("Heavy from", text)]


@pytest.mark.parametrize(
    ("rules", "cite"),
    [(RuleSet.US, "49 CFR 393.106(d)"), (RuleSet.CANADA, "NSC Standard 10 s. 10")],
)
def test_the_share(rules, cite):
    assert found(HouseRules(aggregate_share=Fraction("0.5")), rules=rules) == []
    assert found(HouseRules(aggregate_share=Fraction("0.4999")), rules=rules) == [
        (
            "Aggregate share",
            f"Aggregate share is 0.4999, below the half that {cite} asks for. "
            "It must be 0.5 or more.",
        )
    ]
