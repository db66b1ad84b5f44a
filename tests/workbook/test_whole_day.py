"""All nine sheets with every column, read back value by value."""

import datetime
from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, Routing, SecuredUnder, WeightFrom
from loadplan.day.gear import Condition, Kind
from loadplan.day.house import UnratedPoints
from loadplan.day.units import Units
from tests.workbook.build import read

SHEETS = {
    "Day": [
        ("Setting", "Value"),
        ("Yard", "Bergheim summer yard"),
        ("Date", datetime.date(2026, 7, 14)),
        ("Units", "US"),
        ("Rules", "US"),
        ("Turnaround [min]", 20),
        ("Time limit [s]", 30),
        ("Height limit [ft]", "13' 6\""),
        ("Width limit [ft]", 8.5),
    ],
    "Loads": [
        ("Load", "Trailer", "Out", "Back", "Priority", "Driver", "Destination", "Notes"),
        (7, "t-1", datetime.time(6, 30), "11:00", 2, "Anna", "Top station", "narrow road"),
        ("L-2", "T-1", "11:00", datetime.datetime(2026, 7, 15, 1, 30), 1, None, None, None),
    ],
    "Cargo": [
        (
            *("Article", "Load", "Class", "Description", "Weight [lb]", "Weight from"),
            *("Length [ft]", "Width [ft]", "Height [ft]", "Secured under", "Blocked forward"),
            *("Routing", "Tie point WLL [lb]", "Accessories", "Reach [ft]", "Shackles"),
            *("Sharp edges", "Chain only", "Details"),
        ),
        (
            *("EX-1", "7", "tracked machine", "excavator", 36000.5, "scale", "24' 6\"", 8, 9.75),
            *("heavy", "no", "direct", 8000, "boom; bucket\nblade (pinned)", 12, 1, "no", "yes"),
            "eye vertical",
        ),
        (
            *("PAL", "l-2", "General", None, "0.9 t", "Plate", 4, None, None, None, True),
            *(None, None, None, None, None, "YES", None, None),
        ),
    ],
    "Added weight": [
        ("Article", "What", "Weight [lb]"),
        ("ex-1", "bucket", 1200),
        ("EX-1", "fuel", 340),
    ],
    "Trailers": [
        (
            *("Trailer", "Deck length [ft]", "Deck width [ft]", "Deck height [ft]"),
            *("Payload [lb]", "Anchors", "Anchor WLL [lb]", "Winches", "Front structure"),
        ),
        ("T-1", 48, 8.5, 3.25, 60000, 20, 6670, 10, "yes"),
    ],
    "Gear": [
        (
            *("Gear", "Kind", "Size", "Grade", "Length [ft]", "WLL [lb]"),
            *("Breaking strength [lb]", "Fits", "Quantity", "Condition", "Kept on", "Mass [lb]"),
        ),
        ("007", "chain", "3/8", 70, 20, None, None, None, 12, "good", None, 33),
        ("B-1", "ratchet binder", None, None, None, None, 18000, "5/16-3/8", None, "hold", None, 7),
        ("RS", "retractable strap", 4, None, 27, 5400, None, None, 2, None, "T-1", None),
    ],
    "Prices": [
        ("Gear", "Kind", "Size", "Grade", "WLL [lb]", "Fits", "Price", "Most"),
        ("b-1", None, None, None, None, None, "$ 42.50", 4),
        (None, "chain", "1/2", "70", 11300, None, 88, None),
    ],
    "House rules": [
        ("Rule", "Value"),
        ("Heavy from [lb]", 5000),
        ("Least WLL each [lb]", "2 t"),
        ("Aggregate share", "60%"),
        ("Estimated weight margin", 0.15),
        ("Accessory counts in aggregate", "yes"),
        ("Unrated points", "Hold"),
        ("Most per position", 3),
        ("Length count on machines", "no"),
        ("Straps on machines", "no"),
    ],
    "Fixed": [
        ("Load", "Article", "Position", "No", "Gear"),
        ("7", "ex-1", "Front  Left", 2, "007"),
        ("7", "EX-1", "BOOM", None, "007"),
    ],
}


@pytest.fixture(scope="module")
def day(tmp_path_factory):
    return read(tmp_path_factory.mktemp("whole"), SHEETS)


def test_settings(day):
    assert (day.yard, day.date, day.units) == (
        "Bergheim summer yard",
        datetime.date(2026, 7, 14),
        Units.US,
    )
    assert (day.turnaround, day.time_limit) == (1200, 30)
    assert (day.height_limit, day.width_limit) == (Fraction(27, 2), Fraction(17, 2))


def test_loads(day):
    first, second = day.loads
    assert (first.id, first.trailer) == ("7", "T-1")
    assert (first.out, first.back, first.priority) == (23400, 39600, 2)
    assert (first.driver, first.destination, first.notes) == ("Anna", "Top station", "narrow road")
    # 01:30 on the next day: 24 h + 1.5 h = 91,800 s.
    assert (second.out, second.back) == (39600, 91800)


def test_cargo(day):
    machine, pallet = day.articles
    assert (machine.weight, machine.weight_from) == (Fraction(72001, 2), WeightFrom.SCALE)
    # 36,000.5 + 1,200 + 340
    assert machine.carried_weight == Fraction(75081, 2)
    assert [(one.what, one.weight) for one in machine.added] == [("bucket", 1200), ("fuel", 340)]
    assert (machine.length, machine.width, machine.height) == (
        Fraction(49, 2),
        8,
        Fraction(39, 4),
    )
    assert (machine.secured_under, machine.routing) == (SecuredUnder.HEAVY, Routing.DIRECT)
    assert machine.accessories == (
        Accessory(name="boom"),
        Accessory(name="bucket"),
        Accessory(name="blade", pinned=True),
    )
    assert (machine.tie_point_wll, machine.reach, machine.shackles) == (8000, 12, 1)
    assert (machine.chain_only, machine.sharp_edges, machine.details) == (
        True,
        False,
        "eye vertical",
    )
    assert (pallet.load, pallet.weight_from) == ("L-2", WeightFrom.PLATE)
    # 1 lb = 0.45359237 kg exactly
    assert pallet.weight == 900 / Fraction("0.45359237")
    assert (pallet.blocked_forward, pallet.sharp_edges, pallet.routing) == (True, True, None)


def test_trailers(day):
    (trailer,) = day.trailers
    assert (trailer.deck_length, trailer.deck_width, trailer.deck_height) == (
        48,
        Fraction(17, 2),
        Fraction(13, 4),
    )
    assert (trailer.payload, trailer.anchors, trailer.anchor_wll) == (60000, 20, 6670)
    assert (trailer.winches, trailer.front_structure) == (10, True)


def test_gear(day):
    chain, binder, strap = day.gear
    assert (chain.id, chain.grade, chain.wll, chain.mass) == ("007", "70", None, 33)
    assert (binder.breaking_strength, binder.quantity) == (18000, 1)
    assert (binder.condition, binder.usable) == (Condition.HOLD, 0)
    assert (strap.kind, strap.kept_on, strap.size_text) == (Kind.RETRACTABLE_STRAP, "T-1", "4")


def test_prices(day):
    more, new = day.prices
    assert (more.specification.id, more.price, more.currency, more.most) == (
        "B-1",
        Fraction(85, 2),
        "$",
        4,
    )
    assert more.specification.breaking_strength == 18000
    assert (new.specification.id, new.specification.wll) == ("new 1/2 grade 70 chain", 11300)
    assert (new.price, new.currency, new.most) == (88, "", None)


def test_house_rules(day):
    house = day.house
    assert house.heavy_from == 5000
    assert house.least_wll_each == 2000 / Fraction("0.45359237")
    assert (house.aggregate_share, house.estimate_margin) == (Fraction(3, 5), Fraction(3, 20))
    assert house.accessory_counts
    assert house.unrated_points is UnratedPoints.HOLD
    assert house.most_per_position == 3
    assert not house.length_count_on_machines
    assert not house.straps_on_machines
    assert len(house.stated) == 9
    assert house.stated["Unrated points"].cell("Value") == "B7"


def test_fixed(day):
    first, second = day.fixed
    assert (first.load, first.article, first.position, first.number, first.gear) == (
        "7",
        "EX-1",
        "front left",
        2,
        "007",
    )
    assert (second.position, second.number) == ("boom", 1)


def test_a_metric_day(tmp_path):
    sheets = {
        "Day": [("Setting", "Value"), ("Units", "Metric"), ("Height limit [m]", 4)],
        "Cargo": [
            ("Article", "Load", "Class", "Weight [t]", "Length [ft]"),
            ("EX", "L", "tracked machine", 16.4, 20),
        ],
        "Gear": [("Gear", "Kind", "WLL [lb]"), ("S", "ratchet strap", 3333)],
    }
    day = read(tmp_path, sheets)
    assert day.units is Units.METRIC
    assert day.articles[0].weight == 16400
    # 1 ft = 0.3048 m exactly
    assert day.articles[0].length == 20 * Fraction("0.3048")
    assert day.gear[0].wll == 3333 * Fraction("0.45359237")
    assert day.height_limit == 4
