"""The words of ``Details``: order, form, numbers, units, and what is wrong with them."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.details import Takes
from loadplan.rules.read_details import details_of
from tests.rules.build import article, problems

C = CargoClass


def read(kind, details):
    return details_of(article(kind, details=details))


@pytest.mark.parametrize(
    ("kind", "name", "value", "written"),
    [
        (
            C.METAL_COIL,
            "eye",
            "vertical",
            ["eye vertical", "Vertical  Eye", "eyes: vertical", "eye to the sky"],
        ),
        (C.METAL_COIL, "eye", "crosswise", ["eye crosswise", "crosswise", "EYE CROSSWISE;"]),
        (C.LOGS, "direction", "lengthwise", ["lengthwise", "loaded lengthwise", "logs lengthwise"]),
        (C.LOGS, "logs", "shortwood", ["shortwood", "short logs", "short-wood"]),
        (
            C.BOULDER,
            "shape",
            "unstable",
            ["unstable base", "base unstable", "unstable", "non-cubic with an unstable base"],
        ),
        (C.BOULDER, "shape", "stable", ["stable base", "base: stable", "non-cubic, stable base"]),
        (C.BOULDER, "shape", "cubic", ["cubic", "cubic shape"]),
        (
            C.DRESSED_LUMBER,
            "method",
            "belly",
            ["belly", "belly tie-down", "belly tie down", "belly tie-downs"],
        ),
        (
            C.ROLL_OFF_CONTAINER,
            "rear",
            "one",
            ["rear one", "rear 1", "one tie-down", "1 rear tie-down"],
        ),
        (C.ROLL_OFF_CONTAINER, "rear", "two", ["rear two", "two tie-downs", "2 tie downs"]),
        (C.ROLL_OFF_CONTAINER, "rear", "hooks", ["rear hooks", "two hooks", "hooks"]),
        (
            C.INTERMODAL_CONTAINER,
            "place",
            "chassis",
            ["chassis", "on a chassis", "on container chassis"],
        ),
        (C.PAPER_ROLLS, "stand", "on end", ["on end", "eyes vertical"]),
    ],
)
def test_a_choice_in_any_order_and_form(kind, name, value, written):
    for text in written:
        assert read(kind, text).choice(name) == value


@pytest.mark.parametrize(
    ("kind", "name", "value", "written"),
    [
        (
            C.FLATTENED_VEHICLES,
            "walls",
            3,
            ["walls 3", "3 walls", "three walls", "walls: 3", "walls=3"],
        ),
        (C.FLATTENED_VEHICLES, "walls", 0, ["no walls", "walls none", "without walls", "0 walls"]),
        (C.CONCRETE_PIPE, "pipes", 4, ["pipes 4", "4 pipes", "four pipes"]),
        (
            C.CONCRETE_PIPE,
            "diameter",
            48,
            [
                "diameter 48 in",
                "inside diameter 48 in",
                "48 in inside diameter",
                'ID 48"',
                "diameter 4 ft",
                "4' dia",
                "diameter: 48in",
            ],
        ),
        (
            C.CONCRETE_PIPE,
            "diameter",
            54,
            ["diameter 4 ft 6 in", "4' 6\" diameter", "diameter 4’6”"],
        ),
        (
            C.CONCRETE_PIPE,
            "diameter",
            Fraction(91, 2),
            ["diameter 45.5 in", "diameter 45 1/2 in", "45-1/2 in diameter"],
        ),
        (
            C.CONCRETE_PIPE,
            "diameter",
            45,
            ["diameter 1,143 mm", "1143 mm diameter", "diameter 114.3 cm", "diameter 1.143 m"],
        ),
    ],
)
def test_a_number_in_any_order_and_form(kind, name, value, written):
    for text in written:
        assert read(kind, text).number(name) == value


def test_several_at_once_with_and_without_signs_between():
    for text in ("walls 3; stacks 2", "3 walls, 2 stacks", "2 stacks 3 walls", "walls 3\nstacks 2"):
        found = read(C.FLATTENED_VEHICLES, text)
        assert (found.count("walls"), found.count("stacks")) == (3, 2)
    found = read(C.LOGS, "lengthwise shortwood, under 10 ft; blocked front and rear")
    assert found.flags == {"under 10 ft", "blocked both ends"}
    assert (found.choice("direction"), found.choice("logs")) == ("lengthwise", "shortwood")


def test_what_is_not_said():
    found = read(C.LOGS, "")
    assert (found.choice("direction"), found.number("bunks")) == (None, None)
    assert (found.count("stacks"), found.count("bunks", 0), found.has("under 10 ft")) == (
        1,
        0,
        False,
    )


def test_other_classes_keep_their_text_to_themselves():
    assert read(C.TRACKED_MACHINE, "eye vertical").choices == {}
    assert problems(article(C.TRACKED_MACHINE, details="anything at all")) == []


COIL = "Write eye vertical, eye crosswise or eye lengthwise; option 1, option 2 or option 3."
PIPE = (
    "Write diameter and a length, such as diameter 36 in; pipes and a number, such as pipes 4; "
    "against structure."
)


@pytest.mark.parametrize(
    ("kind", "details", "text"),
    [
        (
            C.METAL_COIL,
            "eye sideways",
            'Details says "eye sideways", and a row of class metal coil has no "eye sideways". '
            + COIL,
        ),
        (
            C.METAL_COIL,
            "eye vertical; painted red",
            'Details says "painted red", and a row of class metal coil has no "painted red". '
            + COIL,
        ),
        (
            C.METAL_COIL,
            "eye vertical; crosswise",
            "Details says the way the coil's eye points twice, vertical and crosswise. "
            "Write eye vertical, eye crosswise or eye lengthwise.",
        ),
        (
            C.CONCRETE_PIPE,
            "diameter 48",
            'Details gives the inside diameter as "diameter 48", without a unit. '
            "Write diameter and a length, such as diameter 36 in.",
        ),
        (
            C.CONCRETE_PIPE,
            "diameter 0 in",
            "Details gives the inside diameter as 0. "
            "Write diameter and a length, such as diameter 36 in.",
        ),
        (
            C.CONCRETE_PIPE,
            "diameter 36 in; diameter 42 in",
            "Details gives the inside diameter twice. Write it once.",
        ),
        (
            C.CONCRETE_PIPE,
            "diameter 36 in 42 in",
            'Details says "diameter 36 in 42 in", and a row of class concrete pipe has no '
            f'"42 in". {PIPE}',
        ),
        (
            C.CONCRETE_PIPE,
            "36 in diameter 42 in",
            'Details says "36 in diameter 42 in", and a row of class concrete pipe has no '
            f'"42 in". {PIPE}',
        ),
        (
            C.CONCRETE_PIPE,
            "diameter -36 in",
            f'Details says "diameter -36 in", and a row of class concrete pipe has no '
            f'"diameter -36 in". {PIPE}',
        ),
        (
            C.CONCRETE_PIPE,
            "diameter 36/0 in",
            f'Details says "diameter 36/0 in", and a row of class concrete pipe has no '
            f'"diameter 36/0 in". {PIPE}',
        ),
        (
            C.FLATTENED_VEHICLES,
            "walls 2.5",
            "Details says walls 2.5. It must be 0, 2, 3 or 4.",
        ),
    ],
)
def test_what_is_wrong(kind, details, text):
    assert ("Details", text) in problems(article(kind, details=details))


def test_wrong_words_are_not_followed_by_what_they_may_have_meant():
    """One slip gives one message, not a second one that asks for the word."""
    assert len(problems(article(C.METAL_COIL, details="eye sideways"))) == 1


@pytest.mark.parametrize("kind", COMMODITIES)
def test_every_phrase_of_the_table_is_read_as_itself(kind):
    for one in COMMODITIES[kind].details:
        for word, phrases in one.phrases.items():
            for phrase in phrases:
                if one.takes is Takes.WORD:
                    assert read(kind, phrase).choice(one.name) == word
                elif one.takes is Takes.FLAG:
                    assert read(kind, phrase).has(one.name)
                elif one.takes is Takes.COUNT:
                    number = (one.among or (one.least,))[0]
                    assert read(kind, f"{phrase} {number}").number(one.name) == number
                else:
                    assert read(kind, f"{phrase} 12 in").number(one.name) == 12
