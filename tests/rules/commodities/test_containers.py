"""Intermodal containers on a chassis, and on the deck of another vehicle."""

import pytest

from loadplan.day.article import CargoClass, Routing
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules, UnratedPoints
from tests.rules.build import article, asked, look_names, needs, problems, sets, strengths

CORNERS = ("front left", "front right", "rear left", "rear right")


def box(details, **known):
    return article(
        CargoClass.INTERMODAL_CONTAINER, details=details, **{"weight": 30001, "length": 20, **known}
    )


def test_locks_of_a_chassis_need_no_tie_down():
    found = asked(box("chassis"))
    assert (found.positions, found.counts, found.strengths, found.properties) == ((), (), (), ())
    assert look_names(found) == ["locks"]


def test_a_container_that_needs_no_tie_down_is_not_held_for_unrated_points():
    hold = HouseRules(unrated_points=UnratedPoints.HOLD)
    assert asked(box("chassis"), house=hold).obstacles == ()
    assert len(asked(box("deck loaded"), house=hold).obstacles) == 2


def test_chain_or_wire_rope_stands_in_for_missing_locks():
    found = asked(box("chassis; locks missing 2"))
    assert sets(found) == [("front left", 4, "direct", 2, "")]
    assert needs(found) == [("locks replaced", 2, None)]
    assert found.strengths == ()
    assert found.properties[0].kinds == {Kind.CHAIN, Kind.WIRE_ROPE}
    assert look_names(found)[:2] == ["locks", "locks replaced"]


def test_loaded_on_a_deck():
    """30,001 / 2 = 15,000.5, each chain with half its WLL."""
    found = asked(box("deck loaded", tie_point_wll=9000))
    assert found.positions == CORNERS
    assert needs(found) == [(f"tie-down at {corner}", 1, corner) for corner in CORNERS]
    assert strengths(found) == [(15000.5, {Routing.DIRECT: 0.5})]
    assert found.properties[0].kinds == {Kind.CHAIN, Kind.WIRE_ROPE}
    assert found.tie_point_wll == 9000
    assert look_names(found)[:2] == ["corners", "front and rear"]


def test_devices_of_the_vehicle_hold_it_as_locks_do():
    found = asked(box("deck loaded; integral devices"))
    assert (found.positions, found.strengths) == ((), ())
    assert look_names(found) == ["corners", "devices"]


def test_empty_on_a_deck_follows_the_general_rules():
    """20 ft: 2 + (20 - 10) / 10 = 3."""
    found = asked(box("deck empty"))
    assert needs(found) == [
        ("tie-downs by length", 3, None),
        ("tie-down at the front", 1, "front left"),
        ("tie-down at the rear", 1, "rear left"),
    ]
    assert found.properties == ()
    assert look_names(found)[:2] == ["steady", "overhang"]
    over = asked(box("deck empty", routing=Routing.OVER))
    assert needs(over) == [("tie-downs by length", 3, None)]


@pytest.mark.parametrize(
    ("details", "known", "found"),
    [
        (
            "",
            {},
            (
                "Details",
                "Details lacks what the container stands on, needed by 49 CFR 393.126. "
                "Write chassis, deck loaded or deck empty.",
            ),
        ),
        (
            "on deck",
            {},
            (
                "Details",
                "Details lacks whether the container on the deck is loaded, needed by 49 CFR "
                "393.126. Write deck loaded or deck empty.",
            ),
        ),
        (
            "deck loaded; locks missing 1",
            {},
            (
                "Details",
                "Details gives locks missing, and only a container chassis has locks, by 49 CFR "
                "393.126. Write chassis, or leave the locks out.",
            ),
        ),
        (
            "deck empty; integral devices",
            {},
            (
                "Details",
                "Details says integral devices, which hold a loaded container on a deck, by 49 CFR "
                "393.126. Write deck loaded, or leave them out.",
            ),
        ),
        (
            "deck loaded",
            {"routing": Routing.OVER},
            (
                "Routing",
                "Routing is over, and here its section says how the tie-downs run, by 49 CFR "
                "393.126. Write direct, or leave it blank.",
            ),
        ),
        (
            "deck empty",
            {"length": None},
            (
                "Length",
                "Length is blank, and tie-downs are counted by it (49 CFR 393.110(b)). "
                "Write the length.",
            ),
        ),
    ],
)
def test_what_a_row_lacks_or_contradicts(details, known, found):
    assert problems(box(details, **known)) == [found]


@pytest.mark.parametrize(
    "details", ["chassis", "chassis; loaded", "deck loaded", "locks missing 0; chassis"]
)
def test_sound_rows(details):
    assert problems(box(details, length=None)) == []


def test_integral_devices_hold_a_loaded_container_on_a_deck():
    known = {"cargo_class": CargoClass.INTERMODAL_CONTAINER, "routing": None}
    assert problems(article(**known, details="deck loaded; integral devices")) == []
    ((column, text),) = problems(article(**known, details="deck empty; integral devices"))
    assert (column, text.split(",")[0]) == ("Details", "Details says integral devices")
