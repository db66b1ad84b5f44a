"""What the other readings would cost on one day."""

from dataclasses import replace
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, Stands
from loadplan.day.day import Day, RuleSet
from loadplan.day.gear import Gear, Kind
from loadplan.day.house import HouseRules
from loadplan.day.load import Load
from loadplan.day.size import read_size
from loadplan.day.trailer import Trailer
from loadplan.rules.effects import effects, effects_on, fewest_tie_downs, wll_needed
from tests.rules.build import article, asked, day


def told(cargo, **known):
    return {
        (one.switch, one.other): (one.tie_downs, one.text) for one in effects(day(cargo, **known))
    }


def test_an_excavator():
    """40,000 lb, 31 ft: 5 by length and one for the boom; 40,000 / 2 at half credit = 40,000."""
    boom = (Accessory(name="boom", weight=Fraction(3000)),)
    assert told(article(weight=40000, length=31, accessories=boom)) == {
        ("Floor on heavy machines", "yes"): (0, "least WLL on heavy machines: 5,000 lb each"),
        ("Straps on machines", "no"): (0, "no webbing"),
        ("Direct credit", "1"): (0, "WLLs of 20,000 lb in all in place of 40,000 lb"),
        ("Aggregate in each direction", "yes"): (
            0,
            "WLLs of 80,000 lb in all in place of 40,000 lb",
        ),
        ("Length count on machines", "no"): (-1, "1 fewer tie-down"),
        ("Direct tie-down blocks forward", "yes"): (-1, "1 fewer tie-down"),
        ("Accessory tie-downs", "2"): (1, "1 more tie-down"),
        ("Accessory counts in number", "yes"): (-1, "1 fewer tie-down"),
        ("Accessory counts in aggregate", "yes"): (
            0,
            "accessory tie-downs count with 1/2 of their WLL",
        ),
        ("Accessory WLL", "half its weight"): (0, "tie-down of boom: 1,500 lb each"),
        ("Unrated points", "hold"): (0, "held"),
    }


def test_a_small_machine_may_be_light():
    """6,000 lb, 8 ft: four at the corners, or two as a light vehicle."""
    found = told(article(weight=6000, length=8))
    assert found["Heavy from", "10,000 lb (4,536 kg; in Canada 4,500 kg)"] == (
        -2,
        "2 fewer tie-downs",
    )


def test_a_light_vehicle():
    """15 ft: 3 by length; two at each end make 4, California 4."""
    found = told(article(CargoClass.LIGHT_VEHICLE, weight=4000, length=15))
    assert found["Light vehicle tie-downs", "4"] == (1, "1 more tie-down")
    assert found["State rules", "California vehicles on trailers"] == (1, "1 more tie-down")
    assert found["Length count on machines", "no"] == (-1, "1 fewer tie-down")


def test_what_the_stricter_reading_taken_costs():
    house = HouseRules(light_vehicle_tie_downs=4, straps_on_machines=False)
    car = article(CargoClass.LIGHT_VEHICLE, weight=4000, length=15)
    assert told(car, house=house)["Light vehicle tie-downs", "2"] == (-1, "1 fewer tie-down")
    assert told(article(), house=house)["Straps on machines", "yes"] == (0, "webbing too")


def test_floors_taken_away():
    logs = article(CargoClass.LOGS, details="lengthwise; longwood", length=40)
    assert told(logs)["Floor on logs", "no"] == (0, "least WLL on logs: any")
    canada = told(article(), rules=RuleSet.CANADA)
    assert canada["Floor on heavy machines", "no"] == (0, "least WLL on heavy machines: any")


def test_a_reading_that_needs_what_the_row_lacks_is_said():
    coil = article(CargoClass.METAL_COIL, details="eye vertical", length=None)
    assert told(coil)["Length count on commodities", "yes"] == (
        0,
        "yes: counts by the length, which is not given",
    )


def test_a_group_has_one_line_for_all_of_it():
    crates = [
        article(CargoClass.GENERAL, id=name, group="G", stands=Stands.STACKED) for name in "AB"
    ]
    hold = [(one.load, one.article) for one in effects(day(*crates)) if one.other == "hold"]
    assert hold == [("L-1", "G")]


def test_effects_on_one_article():
    machine, crate = article(), article(CargoClass.GENERAL, id="C-1")
    whole = day(machine, crate)
    assert {one.article for one in effects_on(whole, "C-1")} == {"C-1"}
    assert [one.switch for one in effects_on(whole, "C-1")] == ["Unrated points"]


def piece(kind, size, grade="", **known):
    return Gear(id="G-1", kind=kind, size=read_size(size), size_text=size, grade=grade, **known)


@pytest.mark.parametrize(
    ("gear", "told_of"),
    [
        (
            piece(Kind.WINCH_STRAP, "2"),
            ("Table figures", "federal", "state manual", "2,100 lb in place of 2,000 lb"),
        ),
        (
            piece(Kind.CHAIN, "3/8", "100"),
            ("Table figures", "federal", "state manual", "8,600 lb in place of 8,800 lb"),
        ),
        (
            piece(Kind.WIRE_ROPE, "3/4"),
            (
                "Wire rope of 3/4 in",
                "table",
                "quarter of strength",
                "11,900 lb in place of 10,900 lb",
            ),
        ),
        (
            piece(Kind.SHACKLE, "1/2"),
            ("Unmarked hardware", "unknown", "lowest grade", "4,500 lb in place of unknown"),
        ),
    ],
)
def test_ratings_that_prints_and_readings_change(gear, told_of):
    whole = Day(loads=(Load(id="L-1"),), articles=(), gear=(gear,))
    assert [(one.gear, one.switch, one.taken, one.other, one.text) for one in effects(whole)] == [
        ("G-1", *told_of)
    ]


def test_a_marked_piece_is_beyond_dispute():
    whole = Day(
        loads=(Load(id="L-1"),),
        articles=(),
        gear=(piece(Kind.WINCH_STRAP, "2", wll=Fraction(3333)),),
    )
    assert effects(whole) == ()


def test_a_figure_of_the_house_is_told_as_it_is():
    house = HouseRules(heavy_from=Fraction(9000))
    (found,) = [
        one
        for one in effects(day(article(weight=9500, length=8), house=house))
        if one.switch == "Heavy from"
    ]
    assert (found.taken, found.other, found.tie_downs) == (
        "9,000 lb",
        "10,000 lb (4,536 kg; in Canada 4,500 kg)",
        -2,
    )


@pytest.mark.parametrize(
    ("cargo", "number"),
    [
        # five by length, over 40 ft
        (article(CargoClass.GENERAL, length=40), 5),
        # four at the corners though the length asks for three
        (article(length=15), 4),
        # one of 1/2 in lengthwise, two across, front and rear pipe
        (article(CargoClass.CONCRETE_PIPE, details="diameter 36 in", length=18), 5),
        # two, one and two
        (article(CargoClass.CONCRETE_PIPE, details="diameter 60 in; pipes 3"), 5),
        # a ring and four legs
        (article(CargoClass.BOULDER, details="unstable"), 5),
        (article(CargoClass.INTERMODAL_CONTAINER, details="chassis"), 0),
        (article(accessories=(Accessory(name="boom"), Accessory(name="hoe")), length=15), 6),
    ],
)
def test_the_fewest_that_meet_every_count(cargo, number):
    assert fewest_tie_downs(asked(cargo)) == number


def test_more_than_there_are_places_for_is_still_counted():
    """Direct tie-downs have six places of two; 120 ft ask for 2 + 11 = 13."""
    cargo = article(CargoClass.GENERAL, length=120, routing=Routing.DIRECT)
    assert fewest_tie_downs(asked(cargo)) == 13


@pytest.mark.parametrize(
    ("cargo", "weight"),
    [
        (article(weight=20000), 20000),
        (article(CargoClass.GENERAL, weight=20000), 10000),
        (article(CargoClass.INTERMODAL_CONTAINER, details="chassis"), 0),
        (article(CargoClass.BOULDER, details="unstable", weight=20000), 20000),
    ],
)
def test_the_wlls_needed_in_all(cargo, weight):
    assert wll_needed(asked(cargo)) == weight


def test_articles_alike_are_told_each_by_its_own_name_and_load():
    """Alike but for id, load and description; on a trailer with rated anchor points none is
    held for them, and its tie points are rated."""
    first = article(weight=40000, length=31, tie_point_wll=Fraction(9000))
    whole = day(first)
    second = replace(first, id="Z", description="the other one")
    third = replace(first, id="Y", load="L-9")
    rated = Trailer(id="T-9", anchor_wll=Fraction(6000))
    whole = replace(
        whole,
        articles=(first, second, third),
        loads=(*whole.loads, Load(id="L-9", trailer="T-9")),
        trailers=(*whole.trailers, rated),
    )
    found = effects(whole)
    by_name = {
        name: [(one.switch, one.other, one.text) for one in found if one.article == name]
        for name in (first.id, "Z", "Y")
    }
    assert by_name["Z"] == by_name[first.id]
    assert {one.load for one in found if one.article == "Y"} == {"L-9"}
    assert {one.load for one in found if one.article == "Z"} == {first.load}
    assert ("Unrated points", "hold", "held") in by_name["Z"]
    assert ("Unrated points", "hold", "held") not in by_name["Y"]
    assert by_name["Y"] == [one for one in by_name["Z"] if one[0] != "Unrated points"]
