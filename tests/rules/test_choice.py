"""Which section governs, how tie-downs run, and whether length counts."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing, SecuredUnder
from loadplan.day.day import RuleSet
from loadplan.day.house import AtThreshold, HouseRules
from loadplan.day.units import Units
from loadplan.rules.choice import counts_length, routing, secured_under
from tests.rules.build import article

MACHINES = [kind for kind in CargoClass if kind.is_machine]


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize(
    ("heavy_from", "weight", "section"),
    [
        (0, 1, SecuredUnder.HEAVY),
        (10000, 10000, SecuredUnder.HEAVY),
        (10000, "9999.99", SecuredUnder.LIGHT_VEHICLE),
        (6000, 6000, SecuredUnder.HEAVY),
        (6000, 5999, SecuredUnder.LIGHT_VEHICLE),
    ],
)
def test_a_machine_is_heavy_from_the_house_limit_up(machine, heavy_from, weight, section):
    house = HouseRules(heavy_from=Fraction(heavy_from))
    assert secured_under(article(machine, weight=weight), house, Units.US) is section


def test_the_weight_that_counts_is_that_with_everything_on_it():
    house = HouseRules(heavy_from=Fraction(10000))
    with_bucket = article(weight=9000, added=[("bucket", 1000)])
    assert secured_under(with_bucket, house, Units.US) is SecuredUnder.HEAVY


@pytest.mark.parametrize(
    ("units", "weight", "section"),
    [
        (Units.US, 10000, SecuredUnder.HEAVY),
        (Units.US, 9999, SecuredUnder.LIGHT_VEHICLE),
        (Units.METRIC, 4536, SecuredUnder.HEAVY),
        (Units.METRIC, 4535, SecuredUnder.LIGHT_VEHICLE),
    ],
)
def test_no_house_limit_lifts_that_of_the_section(units, weight, section):
    house = HouseRules(heavy_from=Fraction(99999))
    assert secured_under(article(weight=weight), house, units) is section


def test_other_classes_go_by_their_name():
    for weight in (100, 50000):
        light = article(CargoClass.LIGHT_VEHICLE, weight=weight)
        cargo = article(CargoClass.GENERAL, weight=weight)
        assert secured_under(light, HouseRules(), Units.US) is SecuredUnder.LIGHT_VEHICLE
        assert secured_under(cargo, HouseRules(), Units.US) is SecuredUnder.GENERAL


@pytest.mark.parametrize("kind", CargoClass)
@pytest.mark.parametrize("section", SecuredUnder)
def test_a_stated_section_is_taken(kind, section):
    stated = article(kind, secured_under=section)
    assert secured_under(stated, HouseRules(), Units.US) is section


TIED_DIRECT = {
    *MACHINES,
    CargoClass.LIGHT_VEHICLE,
    CargoClass.INTERMODAL_CONTAINER,
    CargoClass.ROLL_OFF_CONTAINER,
}


@pytest.mark.parametrize("kind", CargoClass)
def test_routing_as_stated_else_over_for_cargo_but_containers(kind):
    blank = Routing.DIRECT if kind in TIED_DIRECT else Routing.OVER
    assert routing(article(kind)) is blank
    for stated in Routing:
        assert routing(article(kind, routing=stated)) is stated


@pytest.mark.parametrize("kind", CargoClass)
@pytest.mark.parametrize("section", SecuredUnder)
def test_the_switch_frees_only_machines_and_light_vehicles_and_not_under_general(kind, section):
    cargo = article(kind, secured_under=section)
    off = HouseRules(length_count_on_machines=False)
    always = kind is CargoClass.GENERAL or section is SecuredUnder.GENERAL
    own = section is SecuredUnder.OWN_SECTION
    assert counts_length(cargo, HouseRules(), Units.US) is (always or not own)
    assert counts_length(cargo, off, Units.US) is always


COMMODITIES = [kind for kind in CargoClass if kind.is_commodity]


@pytest.mark.parametrize("kind", COMMODITIES)
def test_a_commodity_follows_its_own_section_and_its_length_only_where_the_house_says(kind):
    cargo = article(kind)
    on = HouseRules(length_count_on_commodities=True)
    assert secured_under(cargo, HouseRules(), Units.US) is SecuredUnder.OWN_SECTION
    assert not counts_length(cargo, HouseRules(), Units.US)
    assert counts_length(cargo, on, Units.US)


@pytest.mark.parametrize(
    ("at_threshold", "weight", "section"),
    [
        (AtThreshold.HEAVY, 10000, SecuredUnder.HEAVY),
        (AtThreshold.LIGHT, 10000, SecuredUnder.LIGHT_VEHICLE),
        (AtThreshold.LIGHT, "10000.01", SecuredUnder.HEAVY),
    ],
)
def test_a_machine_of_exactly_the_limit_is_read_as_the_house_says(at_threshold, weight, section):
    house = HouseRules(heavy_from=Fraction(10000), at_threshold=at_threshold)
    assert secured_under(article(weight=weight), house, Units.US) is section


@pytest.mark.parametrize(
    ("units", "weight", "section"),
    [
        (Units.METRIC, 4500, SecuredUnder.LIGHT_VEHICLE),
        (Units.METRIC, 4501, SecuredUnder.HEAVY),
        (Units.US, 9920, SecuredUnder.LIGHT_VEHICLE),
        (Units.US, 9921, SecuredUnder.HEAVY),
        (Units.US, 9950, SecuredUnder.HEAVY),
    ],
)
def test_in_canada_a_machine_is_heavy_above_4500_kg_whatever_the_units(units, weight, section):
    """4,500 kg / 0.45359237 = 9,920.8 lb."""
    house = HouseRules(heavy_from=Fraction(99999))
    assert secured_under(article(weight=weight), house, units, RuleSet.CANADA) is section


def test_in_canada_the_length_of_a_light_vehicle_is_not_counted():
    car = article(CargoClass.LIGHT_VEHICLE, weight=1500)
    assert not counts_length(car, HouseRules(), Units.METRIC, RuleSet.CANADA)
    assert counts_length(article(weight=9000), HouseRules(), Units.METRIC, RuleSet.CANADA)
