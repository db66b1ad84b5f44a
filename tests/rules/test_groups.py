"""Groups: several articles secured together, each touched by enough."""

from fractions import Fraction

import pytest

from loadplan.day.article import Accessory, CargoClass, Routing, SecuredUnder, Stands, WeightFrom
from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules
from loadplan.rules.day_facts import day_contradictions
from loadplan.rules.demand import demand_of, load_demand
from loadplan.rules.groups import article_named, members_of, units_of
from tests.rules.build import article, day, look_names, needs, sets, strengths, working

SIDE, STACKED, LINE = Stands.SIDE_BY_SIDE, Stands.STACKED, Stands.IN_LINE


def crate(name, *, group="G", stands=SIDE, **known):
    return article(
        CargoClass.GENERAL,
        id=name,
        group=group,
        stands=stands,
        **{"weight": 2000, "length": 8, **known},
    )


def two(stands=SIDE, *, first=None, second=None, **known):
    return day(
        crate("A", stands=stands, **(first or {})),
        crate("B", stands=stands, **{"length": 12, "weight": 3001, **(second or {})}),
        **known,
    )


@pytest.mark.parametrize("stands", [SIDE, STACKED])
def test_articles_that_touch_share_their_tie_downs(stands):
    """A alone needs 2 (8 ft), B 3 (12 ft): three over both; (2,000 + 3,001) / 2 = 2,500.5."""
    found = demand_of(two(stands), "G")
    assert sets(found) == [("over 1", 20, "over", 1, "")]
    assert needs(found) == [
        ("tie-downs by length of A", 2, None),
        ("tie-downs by length of B", 3, None),
    ]
    assert strengths(found) == [(Fraction("2500.5"), {Routing.OVER: 1})]
    assert working(found.strengths[0])[0] == (
        "Weight of the group: A, B",
        "2,000 + 3,001",
        "5,001 lb",
        "day workbook 'Cargo'",
    )


def test_articles_in_line_have_their_own_tie_downs_each_of_half_its_weight():
    """2,000 / 2 over A, 3,001 / 2 over B, and with them half of both together."""
    found = demand_of(two(LINE), "G")
    assert sets(found) == [("A over 1", 20, "over", 1, "A"), ("B over 1", 20, "over", 1, "B")]
    assert needs(found) == [
        ("tie-downs by length of A", 2, "A over 1"),
        ("tie-downs by length of B", 3, "B over 1"),
    ]
    asked = [(one.name, one.need, one.positions and one.positions[0]) for one in found.strengths]
    assert asked == [
        ("aggregate WLL", Fraction("2500.5"), None),
        ("aggregate WLL of A", 1000, "A over 1"),
        ("aggregate WLL of B", Fraction("1500.5"), "B over 1"),
    ]
    assert working(found.strengths[2]) == [
        (
            "The same of B, by its weight, from the tie-downs over it alone",
            "3,001 / 5,001 x 2,501 lb",
            "1,501 lb",
            "49 CFR 393.106(d)",
        )
    ]


def test_the_share_of_a_member_in_line_follows_the_house():
    found = demand_of(two(LINE, house=HouseRules(aggregate_share=Fraction(3, 5))), "G")
    assert [one.need for one in found.strengths] == [
        Fraction("3000.6"),
        1200,
        Fraction("1800.6"),
    ]


def test_each_member_counts_as_it_is_blocked_itself():
    """Blocked, 12 ft: two; not blocked, 8 ft: two."""
    found = demand_of(two(second={"blocked_forward": True}), "G")
    assert [number for _, number, _ in needs(found)] == [2, 2]


def test_who_is_served_where():
    line, side = demand_of(two(LINE), "G"), demand_of(two(), "G")
    assert [one.id for one in line.served_at("A over 2")] == ["A"]
    assert [one.id for one in side.served_at("over 2")] == ["A", "B"]
    assert [one.id for one in side.served] == ["A", "B"]
    assert side.served_at("nowhere") == side.served
    assert side.set_of("nowhere") is None


def test_an_article_alone_is_served_by_all_its_tie_downs():
    alone = demand_of(day(crate("A", group="")), "A")
    assert alone.members == ()
    assert [one.id for one in alone.served_at("over 1")] == ["A"]


def test_the_article_that_stands_for_the_group():
    found = demand_of(
        two(
            first={"width": 3, "height": 4, "weight_from": WeightFrom.SCALE, "reach": 20},
            second={"width": 4, "height": 5, "weight_from": WeightFrom.PLATE, "shackles": 2},
        ),
        "G",
    ).article
    assert (found.id, found.load, found.weight, found.description) == (
        "G",
        "L-1",
        5001,
        "group of A, B",
    )
    assert (found.length, found.width, found.height) == (12, 7, 5)
    assert (found.weight_from, found.reach, found.shackles) == (WeightFrom.PLATE, 20, 2)


@pytest.mark.parametrize(
    ("stands", "length", "width", "height"),
    [(SIDE, 12, 7, 5), (STACKED, 12, 4, 9), (LINE, 20, 4, 5)],
)
def test_its_size(stands, length, width, height):
    found = article_named(
        two(stands, first={"width": 3, "height": 4}, second={"width": 4, "height": 5}), "G"
    )
    assert (found.length, found.width, found.height) == (length, width, height)


def test_a_size_that_one_member_lacks_is_not_known():
    found = article_named(two(first={"width": 3}), "G")
    assert (found.width, found.height) == (None, None)


def test_the_strictest_of_the_rows_holds():
    found = demand_of(
        two(first={"chain_only": True, "reach": 15}, second={"sharp_edges": True, "reach": 25}), "G"
    )
    assert [one.name for one in found.properties] == ["chain only", "reach", "edge protectors"]
    assert found.properties[1].at_least == 25


def test_what_to_look_at():
    side, line = demand_of(two(), "G"), demand_of(two(LINE), "G")
    assert look_names(side)[-1] == look_names(line)[-1] == "group"
    assert side.looks[-1].text == (
        "A and B: they touch, or are kept apart, and every tie-down over them presses on all."
    )
    assert line.looks[-1].text == (
        "A and B: each under its own tie-downs; none leans or shifts toward another."
    )


def test_a_group_stands_where_its_first_member_does():
    whole = day(crate("X", group=""), crate("A"), crate("Y", group=""), crate("B"))
    load = whole.loads[0]
    assert [one.id for one in units_of(whole, load)] == ["X", "G", "Y"]
    assert [one.article.id for one in load_demand(whole, load).articles] == ["X", "G", "Y"]
    assert [one.id for one in members_of(whole, "G")] == ["A", "B"]
    assert (members_of(whole, "H"), article_named(whole, "H"), demand_of(whole, "H")) == (
        (),
        None,
        None,
    )
    assert article_named(whole, "X").id == "X"


def found(whole):
    return [(one.id, said.column, said.text) for one, said in day_contradictions(whole)]


def test_sound_groups():
    assert found(two()) == []
    assert found(day(crate("A"), crate("B", stands=None))) == []
    assert found(day(crate("A", group=""))) == []


SAME = "Correct it, or give the article another group."


@pytest.mark.parametrize(
    ("first", "second", "problem"),
    [
        (
            {"id": "G"},
            {},
            (
                "G",
                "Group",
                "The group G has the name of an article. Give the group a name of its own.",
            ),
        ),
        (
            {"stands": None},
            {"stands": None},
            (
                "A",
                "Group stands",
                "No row says how the articles of the group G stand to each other. "
                "Write side by side, stacked or in line.",
            ),
        ),
        (
            {},
            {"stands": LINE},
            (
                "B",
                "Group stands",
                f"Every article of the group G stands in the same way as A. {SAME}",
            ),
        ),
        (
            {},
            {"secured_under": SecuredUnder.GENERAL},
            (
                "B",
                "Secured under",
                f"Every article of the group G is secured under the same section as A. {SAME}",
            ),
        ),
        (
            {},
            {"routing": Routing.DIRECT},
            (
                "B",
                "Routing",
                "Routing is direct, and a group is held by tie-downs over it, by 49 CFR "
                "393.106(c)(2). Leave Routing blank, or leave Group blank.",
            ),
        ),
        (
            {},
            {"accessories": (Accessory(name="lid"),)},
            (
                "B",
                "Accessories",
                "A member of a group has no accessories. "
                "Leave Accessories blank, or leave Group blank.",
            ),
        ),
    ],
)
def test_what_cannot_be(first, second, problem):
    whole = day(crate("A"), crate("B"))
    changed = day(
        crate(**{"name": first.pop("id", "A"), **first}), crate(**{"name": "B", **second})
    )
    assert found(whole) == []
    assert found(changed) == [problem]


def test_members_of_different_classes_and_of_classes_secured_alone():
    coil = article(CargoClass.METAL_COIL, id="B", group="G", details="eye vertical", weight=6000)
    assert (
        "B",
        "Class",
        f"Every article of the group G has the same class as A. {SAME}",
    ) in found(day(crate("A"), coil))
    car = article(CargoClass.LIGHT_VEHICLE, id="A", group="G", stands=SIDE, weight=4000)
    assert found(day(car)) == [
        ("A", "Group", "An article of class light vehicle is secured alone. Leave Group blank.")
    ]


def test_members_with_other_details():
    pipes = [
        article(CargoClass.CONCRETE_PIPE, id=name, group="G", stands=SIDE, details=details)
        for name, details in (
            ("A", "diameter 36 in"),
            ("B", "36 in diameter"),
            ("C", "diameter 42 in"),
        )
    ]
    assert found(day(*pipes)) == [
        ("C", "Details", f"Every article of the group G has the same details as A. {SAME}")
    ]


def test_coils_light_alone_but_not_together():
    """2 x 2,600 lb = 5,200 lb; 2 x 2,499.5 = 4,999."""
    general = {"secured_under": SecuredUnder.GENERAL, "length": 5}
    coils = [article(CargoClass.METAL_COIL, id=name, weight=2600, **general) for name in "AB"]
    text = (
        "The metal coils of load L-1 weigh 5,200 lb together, and from 5,000 lb up they have their "
        "own section, by 49 CFR 393.120 (from the official handbook, not the regulation text "
        "read). Leave Secured under blank."
    )
    assert found(day(*coils)) == [("A", "Secured under", text), ("B", "Secured under", text)]
    light = [article(CargoClass.METAL_COIL, id=name, weight="2499.5", **general) for name in "AB"]
    assert found(day(*light)) == []
    alone = [article(CargoClass.METAL_COIL, id=name, weight=2600) for name in "AB"]
    assert found(day(*alone)) == []


def test_in_canada_the_citation_is_canadian():
    whole = day(crate("A", routing=Routing.DIRECT), crate("B"), rules=RuleSet.CANADA)
    ((_, _, text),) = found(whole)
    assert "by NSC Standard 10 Part 1, securement systems (from the official handbook" in text


@pytest.mark.parametrize(("first", "second"), [(True, True), (True, False), (False, False)])
def test_a_group_is_blocked_forward_where_each_of_it_is(first, second):
    known = two(first={"blocked_forward": first}, second={"blocked_forward": second})
    assert article_named(known, "G").blocked_forward is (first and second)
