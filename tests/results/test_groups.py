"""Articles secured together as one group: one band, each weight on its own line, one sum."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from loadplan.day.article import AddedWeight, Stands
from loadplan.day.units import Units
from loadplan.results import load_layout as at
from loadplan.results.deck.above import Area
from loadplan.results.deck.inks import Inks
from loadplan.results.deck.picture import deck_picture
from loadplan.results.deck.placing import place
from loadplan.results.deck.side import Side
from loadplan.results.workbook import results_bytes
from loadplan.tables.facts import DayFacts
from loadplan.tables.flat import flat_tables
from tests.results.build import DAY, LUMBER, TRAILERS, plan_of, strap
from tests.results.dump import opened

# Three bundles of 8,000, 3,000 and 1,000 lb side by side: 12,000 lb, so 6,000 lb are needed.
# Each is 16 ft long, so three straps over them hold every one: 3 x 5,400 = 16,200 lb.
BUNDLES = tuple(
    replace(LUMBER, id=name, weight=Fraction(weight), group="G1", stands=Stands.SIDE_BY_SIDE)
    for name, weight in (("LU-A", 8000), ("LU-B", 3000), ("LU-C", 1000))
)

US = Units.US
AREA = Area(left=20, top=20, right=380, bottom=280)
LIMIT = Fraction("13.5")


@pytest.fixture(scope="module")
def plan():
    day = replace(DAY, loads=DAY.loads[1:2], articles=BUNDLES, fixed=())
    straps = tuple(replace(strap(number), article="G1") for number in (1, 2, 3))
    return plan_of(day, ready=("2",), tie_downs=straps, shortages=())


def test_summary_counts_the_articles_and_sums_once(plan):
    row = flat_tables(plan)["Summary"].rows[0]
    assert row[6:12] == (3, 12000, 3, 6000, 16200, Fraction(16200, 6000) - 1)


def test_tie_downs_are_the_groups(plan):
    table = flat_tables(plan)["Tie-downs"]
    assert set(table.column("Article")) == {"G1"}


def test_serves_stands_last_and_names_the_articles_held(plan):
    table = flat_tables(plan)["Tie-downs"]
    assert table.headings[-2:] == ("Counts in aggregate", "Serves")
    assert table.column("Serves") == ("LU-A; LU-B; LU-C",) * 3


def test_in_line_each_tie_down_serves_its_own_article():
    """Each bundle is 16 ft long, so each has 3 straps of its own."""
    line = tuple(replace(one, stands=Stands.IN_LINE) for one in BUNDLES)
    day = replace(DAY, loads=DAY.loads[1:2], articles=line, fixed=(), warnings=())
    straps = tuple(
        replace(strap(1), article="G1", position=f"{one.id} over {number}")
        for one in line
        for number in (1, 2, 3)
    )
    gear = tuple(replace(one, quantity=20) for one in DAY.gear)
    plan = plan_of(
        replace(day, gear=gear), ready=("2",), tie_downs=straps, shortages=(), remarks=()
    )
    served = flat_tables(plan)["Tie-downs"].column("Serves")
    assert served == (*["LU-A"] * 3, *["LU-B"] * 3, *["LU-C"] * 3)


def test_in_line_each_strength_follows_the_weight_of_its_own_article():
    """A bundle with something on it: half of both lines of it, whatever the others weigh."""
    line = [replace(one, stands=Stands.IN_LINE) for one in BUNDLES]
    line[1] = replace(line[1], added=(AddedWeight(what="skids", weight=Fraction(400)),))
    straps = tuple(
        replace(strap(1), article="G1", position=f"{one.id} over {number}")
        for one in line
        for number in (1, 2, 3)
    )
    day = replace(DAY, loads=DAY.loads[1:2], articles=tuple(line), fixed=(), warnings=())
    gear = tuple(replace(one, quantity=20) for one in DAY.gear)
    plan = plan_of(
        replace(day, gear=gear), ready=("2",), tie_downs=straps, shortages=(), remarks=()
    )
    sheets = [opened(results_bytes(plan), values=values)["Load 2"] for values in (False, True)]
    formulas, values = (
        {
            row[at.TENSIONER].value: row[at.CREDITED].value
            for row in sheet.iter_rows()
            if row[at.TENSIONER].value
        }
        for sheet in sheets
    )
    (weight,) = (
        row[4].row for row in sheets[1].iter_rows() if row[2].value == "LU-B: weight, scale"
    )
    name = "aggregate WLL of LU-B: needed, share x weight"
    assert values[name] == (3000 + 400) / 2
    assert formulas[name].endswith(f"*SUM(E{weight}:E{weight + 1})")


def test_there_is_no_serves_without_groups_and_none_for_articles_alone():
    assert "Serves" not in flat_tables(plan_of())["Tie-downs"].headings
    alone = replace(LUMBER, id="LU-2")
    day = replace(DAY, articles=(alone, *BUNDLES), loads=DAY.loads[1:2], fixed=())
    day = replace(day, gear=tuple(replace(one, quantity=20) for one in DAY.gear))
    straps = tuple(strap(number) for number in (1, 2, 3))
    plan = plan_of(
        day,
        ready=("2",),
        tie_downs=(*straps, *(replace(one, article="G1") for one in straps)),
        shortages=(),
    )
    table = flat_tables(plan)["Tie-downs"]
    served = dict(zip(table.column("Article"), table.column("Serves"), strict=True))
    assert served == {"LU-2": "", "G1": "LU-A; LU-B; LU-C"}


def test_every_weight_has_its_line(plan):
    sheet = opened(results_bytes(plan), values=True)["Load 2"]
    lines = {row[2].value: row[4].value for row in sheet.iter_rows() if row[4].value is not None}
    assert lines["LU-A: weight, scale"] == 8000
    assert lines["LU-B: weight, scale"] == 3000
    assert lines["LU-C: weight, scale"] == 1000
    assert lines["weight with everything on it [lb]"] == 12000


def test_every_article_is_drawn(plan):
    facts = DayFacts(plan).loads[0]
    assert [article.id for article in facts.cargo] == ["LU-A", "LU-B", "LU-C"]
    assert "DOES NOT FIT" not in deck_picture(plan.day, facts).words
    # In line, 3 x 16 ft and 2 gaps of 1 ft are 50 ft on a 48 ft deck.
    placing = place([replace(one, stands=Stands.IN_LINE) for one in BUNDLES], TRAILERS[1], US)
    assert placing.notes[0] == (
        "DOES NOT FIT: 3 articles with 1 ft between them need 50 ft; the deck is 48 ft."
    )


def test_bundles_side_by_side_share_one_place_and_do_not_overlap():
    """Each 2 ft wide: 6 ft across the middle of the deck, the first at the right."""
    placing = place([replace(one, width=Fraction(2)) for one in BUNDLES], TRAILERS[1], US)
    assert [(block.front, block.rear) for block in placing.blocks] == [(1, 17)] * 3
    assert [(block.aside, block.width) for block in placing.blocks] == [(-2, 2), (0, 2), (2, 2)]
    unknown = place(BUNDLES, TRAILERS[1], US).blocks
    edges = [(block.aside - block.width / 2, block.aside + block.width / 2) for block in unknown]
    assert all(right <= left + 1e-9 for (_, right), (left, _) in pairwise(edges))


def test_a_stack_stands_in_one_place_and_its_heights_add_up(plan):
    """Three of 3 ft on a deck of 5 ft: 14 ft, above the limit of 13 ft 6 in."""
    stack = [replace(one, stands=Stands.STACKED, height=Fraction(3)) for one in BUNDLES]
    placing = place(stack, replace(TRAILERS[1], deck_height=Fraction(5)), US)
    assert [block.front for block in placing.blocks] == [1, 1, 1]
    assert [len(block.under) for block in placing.blocks] == [0, 1, 2]
    side = Side(Inks(400, 300), AREA, placing, replace(TRAILERS[1], deck_height=5), LIMIT, US)
    side.draw()
    assert [side.overall(block) for block in placing.blocks] == [8, 11, 14]


def test_each_tie_down_says_which_articles_it_holds(plan):
    sheet = opened(results_bytes(plan), values=True)["Load 2"]
    held = [str(row[3].value) for row in sheet.iter_rows() if "holds" in str(row[3].value)]
    assert len(held) == 3
    assert all(words.endswith("; holds LU-A, LU-B and LU-C") for words in held)
