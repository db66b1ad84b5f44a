"""Concrete pipe up to and over 45 in inside diameter."""

from fractions import Fraction

import pytest

from loadplan.day.article import CargoClass, Routing, Stands
from loadplan.day.gear import Kind
from loadplan.day.house import HouseRules
from loadplan.day.size import read_size
from loadplan.day.units import Units
from loadplan.rules.demand import demand_of
from loadplan.rules.effects import fewest_tie_downs
from tests.rules.build import article, asked, day, look_names, needs, problems, sets, strengths

OVER = Routing.OVER
HANDBOOK = "(from the official handbook, not the regulation text read)"


def pipe(details, **known):
    return article(
        CargoClass.CONCRETE_PIPE, details=details, **{"weight": 44001, "length": 38, **known}
    )


def test_up_to_45_in():
    """38 ft / 10 ft = 3.8: four across; 44,001 / 2 = 22,000.5."""
    found = asked(pipe("diameter 36 in"))
    assert sets(found) == [
        ("lengthwise 1", 1, "over", 1, ""),
        ("lengthwise 2", 2, "over", 1, ""),
        ("front pipe", 1, "over", 2, ""),
        ("rear pipe", 1, "over", 2, ""),
        ("over 1", 20, "over", 1, ""),
    ]
    assert needs(found) == [
        ("lengthwise tie-downs", 2, "lengthwise 1"),
        ("tie-downs across", 4, "over 1"),
        ("tie-down of the front bottom pipe", 1, "front pipe"),
        ("tie-down of the rear bottom pipe", 1, "rear pipe"),
    ]
    assert strengths(found) == [(Fraction("22000.5"), {OVER: 1})]


def test_one_of_half_an_inch_counts_for_two_of_three_eighths():
    lengthwise = asked(pipe("diameter 36 in")).counts[0]
    worth = {p: lengthwise.worth(p) for p in ("lengthwise 1", "lengthwise 2", "over 1")}
    assert worth == {"lengthwise 1": 2, "lengthwise 2": 1, "over 1": 0}
    assert fewest_tie_downs(asked(pipe("diameter 36 in"))) == 1 + 4 + 1 + 1


@pytest.mark.parametrize(
    ("kind", "size", "strong", "light"),
    [
        (Kind.CHAIN, "1/2", True, True),
        (Kind.CHAIN, "13 mm", True, True),
        (Kind.CHAIN, "7/16", False, True),
        (Kind.WIRE_ROPE, "3/8", False, True),
        (Kind.WIRE_ROPE, "10 mm", False, True),
        (Kind.WIRE_ROPE, "14 mm", True, True),
        (Kind.WIRE_ROPE, "12 mm", False, True),
        (Kind.CHAIN, "5/16", False, False),
        (Kind.CHAIN, "", False, False),
        (Kind.WINCH_STRAP, "4", False, False),
    ],
)
def test_what_may_lie_lengthwise(kind, size, strong, light):
    one, two = asked(pipe("diameter 36 in")).properties
    assert (one.positions, two.positions) == (("lengthwise 1",), ("lengthwise 2", "lengthwise 3"))
    assert one.allows(kind, read_size(size)) is strong
    assert two.allows(kind, read_size(size)) is light


@pytest.mark.parametrize(
    ("units", "length", "across"),
    [
        (Units.US, 10, 1),
        (Units.US, "10.01", 2),
        (Units.METRIC, "3.04", 1),
        (Units.METRIC, "3.05", 2),
        (Units.METRIC, "9.12", 3),
    ],
)
def test_how_many_go_across(units, length, across):
    found = asked(pipe("diameter 36 in", length=length), units=units)
    assert needs(found)[1] == ("tie-downs across", across, "over 1")
    assert found.counts[1].source.cite() == "49 CFR 393.124 (memory)"


@pytest.mark.parametrize(
    ("diameter", "large"),
    [("45 in", False), ("1,143 mm", False), ("45.1 in", True), ("1144 mm", True), ("4 ft", True)],
)
def test_where_large_pipe_begins(diameter, large):
    found = asked(pipe(f"diameter {diameter}; pipes 3"))
    assert (needs(found)[0][0] == "tie-downs through pipe 1") is large


def test_over_45_in_each_pipe_is_tied():
    found = asked(pipe("diameter 48 in; pipes 3", length=None))
    assert sets(found) == [(f"pipe {n}", 1, "over", 2, "") for n in (1, 2, 3)]
    assert needs(found) == [
        ("tie-downs through pipe 1", 2, "pipe 1"),
        ("tie-downs through pipe 2", 1, "pipe 2"),
        ("tie-downs through pipe 3", 2, "pipe 3"),
    ]
    assert "which way" in look_names(found)


def test_against_structure_one_is_enough():
    found = asked(pipe("diameter 48 in; pipes 2; against structure"))
    assert [number for _, number, _ in needs(found)] == [1, 1]
    assert "structure" in look_names(found)


def test_a_place_takes_the_two_that_are_asked_of_it():
    found = asked(pipe("diameter 48 in; pipes 1"), house=HouseRules(most_per_position=1))
    assert sets(found) == [("pipe 1", 1, "over", 2, "")]
    assert needs(found) == [("tie-downs through pipe 1", 2, "pipe 1")]


def group(details, stands=Stands.SIDE_BY_SIDE, lengths=(6, 7)):
    pipes = [
        pipe(details, id=f"P-{n}", group="G", stands=stands, length=length)
        for n, length in enumerate(lengths, start=1)
    ]
    return demand_of(day(*pipes), "G")


def test_a_group_is_as_long_as_its_pipes_together():
    """6 + 7 = 13 ft: two across; stacked, 7 ft: one."""
    assert needs(group("diameter 36 in"))[1] == ("tie-downs across", 2, "over 1")
    assert needs(group("diameter 36 in", Stands.STACKED))[1] == ("tie-downs across", 1, "over 1")
    assert strengths(group("diameter 36 in")) == [(44001, {OVER: 1})]


def test_the_pipes_of_a_group_have_their_own_places():
    assert sets(group("diameter 48 in; pipes 1")) == [
        ("P-1 pipe", 1, "over", 2, "P-1"),
        ("P-2 pipe", 1, "over", 2, "P-2"),
    ]
    assert needs(group("diameter 48 in; pipes 2")) == [
        ("tie-downs through P-1 pipe 1", 2, "P-1 pipe 1"),
        ("tie-downs through P-1 pipe 2", 1, "P-1 pipe 2"),
        ("tie-downs through P-2 pipe 1", 1, "P-2 pipe 1"),
        ("tie-downs through P-2 pipe 2", 2, "P-2 pipe 2"),
    ]


@pytest.mark.parametrize(
    ("details", "known", "found"),
    [
        (
            "",
            {},
            (
                "Details",
                "Details lacks the inside diameter, needed by 49 CFR 393.124. "
                "Write diameter and a length, such as diameter 36 in.",
            ),
        ),
        (
            "diameter 48 in",
            {},
            (
                "Details",
                "Details lacks the number of pipes, needed by 49 CFR 393.124. "
                "Write pipes and a number, such as pipes 4.",
            ),
        ),
        (
            "diameter 36 in; against structure",
            {},
            (
                "Details",
                "Details says against structure, which changes nothing up to 45 in (1,143 mm), by "
                f"49 CFR 393.124 {HANDBOOK}. Leave it out, or correct the diameter.",
            ),
        ),
        (
            "diameter 36 in",
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
    assert problems(pipe(details, **known)) == [found]


def test_pipe_counted_by_a_length_it_has_not():
    with pytest.raises(ValueError, match="M-1 is counted by length but has none"):
        asked(pipe("diameter 36 in", length=None))
