"""Canada (NSC Standard 10) at its edges, and against the US rule on the same article."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules
from loadplan.day.units import Units
from loadplan.rules.effects import fewest_tie_downs
from loadplan.rules.facts import contradictions
from tests.validation.days import asked, cargo, counted, wll
from tests.validation.published import Published

CANADA, US = RuleSet.CANADA, RuleSet.US


def row(section, what, printed, unit="tie-downs"):
    return Published(
        document="NSC Standard 10",
        section=section,
        tier="A",
        what=what,
        printed=printed,
        unrounded=printed,
        unit=unit,
    )


# metres: light, heavy, blocked forward; by hand from the words of the rule
METRES = {
    "1.52": (1, 2, 1),
    "1.521": (2, 2, 1),
    "1.524": (2, 2, 1),
    "3.04": (2, 2, 1),
    "3.041": (3, 3, 2),
    "3.048": (3, 3, 2),
    "6.08": (3, 3, 2),
    "6.081": (4, 4, 3),
    "6.096": (4, 4, 3),
    "9.12": (4, 4, 3),
}


@pytest.mark.parametrize(("metres", "numbers"), METRES.items())
@pytest.mark.parametrize("units", Units)
def test_the_metric_limits_hold_in_either_unit_system(metres, numbers, units):
    """The measured value is converted exactly: m / 0.3048, kg / 0.45359237."""
    foot = Fraction("0.3048") if units is Units.US else 1
    pound = Fraction("0.45359237") if units is Units.US else 1
    length = Fraction(metres) / foot
    light, heavy, blocked = numbers
    for kilograms, number, held in (
        ("500", light, False),
        ("500.01", heavy, False),
        ("500.01", blocked, True),
    ):
        article = cargo(Fraction(kilograms) / pound, length, blocked_forward=held)
        row("s. 22", f"{metres} m, {kilograms} kg", number).check(counted(article, units, CANADA))


@pytest.mark.parametrize(("feet", "metres"), [("20", "6.096"), ("10", "3.048"), ("5", "1.524")])
def test_one_more_in_canada_than_the_same_length_in_the_us(feet, metres):
    """20 ft are 6.096 m, more than 2 x 3.04 m."""
    assert Fraction(feet) * Fraction("0.3048") == Fraction(metres)
    in_feet, in_metres = cargo(1000, feet), cargo(450, metres)
    more = counted(in_metres, Units.METRIC, CANADA) - counted(in_feet, Units.US, US)
    row("s. 22", f"{metres} m against {feet} ft in the US", 1).check(more)
    assert counted(in_feet, Units.US, CANADA) == counted(in_metres, Units.METRIC, CANADA)


@pytest.mark.parametrize(
    ("rules", "units", "weight", "light"),
    [
        (US, Units.US, 9950, True),
        (US, Units.US, 10000, True),
        (US, Units.US, "10000.01", False),
        (CANADA, Units.US, 9950, False),
        (CANADA, Units.METRIC, 4500, True),
        (CANADA, Units.METRIC, "4500.01", False),
        (US, Units.METRIC, "4500.01", True),
    ],
)
def test_where_light_ends(rules, units, weight, light):
    """A machine of 9,950 lb (4,513 kg) is light in the US and heavy in Canada."""
    machine = cargo(
        weight,
        3,
        cargo_class=CargoClass.WHEELED_MACHINE,
        secured_under=SecuredUnder.LIGHT_VEHICLE,
    )
    found = list(contradictions(machine, HouseRules(), units, rules))
    assert (found == []) is light


@pytest.mark.parametrize(
    ("kind", "size", "grade", "us"),
    [
        (Kind.CHAIN, "3/8", "", 2650),
        (Kind.WINCH_STRAP, "4", "", 4000),
        (Kind.WIRE_ROPE, "1/2", "", 5300),
    ],
)
def test_unmarked_gear_is_zero_and_not_counted(kind, size, grade, us):
    row("s. 11(4)", f"unmarked {size} in {kind.value} in the US", us, "lb").check(
        wll(kind, size, grade)
    )
    assert wll(kind, size, grade, CANADA) is None


def test_chain_marked_by_grade_counts_in_both():
    for rules in RuleSet:
        row("s. 11(3)", "3/8 in chain marked grade 70", 6600, "lb").check(
            wll(Kind.CHAIN, "3/8", "70", rules)
        )


def test_a_light_vehicle_needs_two_whatever_its_length():
    """s. 88(2) stands "despite section 22": 6 m would ask for 2 + 1 = 3."""
    car = cargo(1500, 6, cargo_class=CargoClass.LIGHT_VEHICLE)
    row("s. 88(2)", "light vehicle of 6 m", 2).check(
        fewest_tie_downs(asked(car, Units.METRIC, CANADA))
    )
    assert fewest_tie_downs(asked(car, Units.METRIC, US)) == 3
