"""Federal driver's handbook, chapters 3, 11 and 13: formulas of three commodity sections."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass
from loadplan.day.day import RuleSet
from loadplan.day.units import Units
from loadplan.rules.requirement import EachWLLRequirement
from tests.validation.days import asked, cargo, need
from tests.validation.published import Published

BOTH = [(RuleSet.US, Units.US), (RuleSet.CANADA, Units.METRIC)]


def row(section, what, printed, unit="lb", unrounded=None, tolerance=0):
    return Published(
        document="federal driver's handbook",
        section=section,
        tier="A",
        what=what,
        printed=printed,
        unrounded=printed if unrounded is None else unrounded,
        unit=unit,
        tolerance=Fraction(tolerance),
    )


def floors(found):
    return {
        one.name: one.at_least for one in found.properties if isinstance(one, EachWLLRequirement)
    }


@pytest.mark.parametrize(("rules", "units"), BOTH)
def test_boulder_with_an_unstable_base(rules, units):
    """Ring 1/2 W and four legs of 1/4 W: 20,000 gives 10,000 and 5,000."""
    boulder = cargo(20000, cargo_class=CargoClass.BOULDER, details="unstable base")
    found = asked(boulder, units, rules)
    row("chapter 13", "ring, one half of the weight", 10000).check(floors(found)["WLL of ring"])
    row("chapter 13", "each leg, one quarter", 5000).check(floors(found)["WLL of each leg"])
    legs = [one for one in found.counts if one.name.startswith("leg")]
    row("chapter 13", "legs", 4, "tie-downs").check(sum(one.at_least for one in legs))


@pytest.mark.parametrize(("rules", "units"), BOTH)
@pytest.mark.parametrize("weight", [6000, 42500, 60001])
def test_logs_lengthwise_need_one_sixth(rules, units, weight):
    logs = cargo(weight, None, cargo_class=CargoClass.LOGS, details="lengthwise; longwood")
    sixth = Fraction(weight, 6)
    row("chapter 3", "aggregate WLL of the stack", sixth).check(need(logs, units, rules))


@pytest.mark.parametrize(("walls", "number"), [(3, 2), (2, 3), (0, 4)])
@pytest.mark.parametrize(("rules", "units"), BOTH)
def test_crushed_cars_by_walls(rules, units, walls, number):
    cars = cargo(
        20000, None, cargo_class=CargoClass.FLATTENED_VEHICLES, details=f"{walls} walls; 1 stack"
    )
    found = asked(cars, units, rules)
    row("chapter 11", f"walls on {walls} sides", number, "tie-downs").check(
        found.counts[0].at_least
    )
    least = 5000 if units is Units.US else 2268
    row("chapter 11", "each tie-down", least, units.mass).check(
        floors(found)["least WLL on flattened vehicles"]
    )


def test_practice_question_on_longwood():
    """42,500 / 6 = 7,083.3: the printed answer is rounded up."""
    logs = cargo(42500, 40, cargo_class=CargoClass.LOGS, details="lengthwise; longwood")
    Published(
        document="handbook-based practice question",
        section="longwood",
        tier="B",
        what="aggregate WLL for 42,500 lb of longwood lengthwise",
        printed=7084,
        unrounded=Fraction(42500, 6),
        unit="lb",
        tolerance=Fraction(1),
    ).check(need(logs))
