"""The deck picture: where articles stand, what is said of what is not known, and the file."""

from __future__ import annotations

import io
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from PIL import Image

from loadplan.day.article import Accessory, Routing
from loadplan.day.units import Units
from loadplan.results.deck.inks import DPI, drawable, fitted, text_width
from loadplan.results.deck.labels import spread
from loadplan.results.deck.picture import HEIGHT, WIDTH, deck_picture
from loadplan.results.deck.placing import place
from loadplan.results.deck.strokes import Frame, strokes
from loadplan.results.load_layout import WIDTHS
from loadplan.tables.facts import DayFacts
from tests.results.build import DAY, EXCAVATOR, LUMBER, ROLLER, TRAILERS, plan_of

FRAME = Frame(
    left=100, right=300, top=50, bottom=150, deck_top=40, deck_bottom=160, before=20, behind=30
)


def _placed(*articles, trailer=TRAILERS[0], units=Units.US):
    return place(articles, trailer, units)


def test_articles_stand_one_gap_apart_from_the_front():
    # A 48 ft deck: 24 ft from 1 ft, then 14 ft from 1 + 24 + 1 = 26 ft.
    placing = _placed(EXCAVATOR, ROLLER, trailer=TRAILERS[1])
    assert [(block.front, block.rear) for block in placing.blocks] == [(1, 25), (26, 40)]
    assert placing.fits
    assert placing.notes == ()


def test_articles_that_only_just_fit_use_the_gap_in_front():
    placing = _placed(replace(EXCAVATOR, length=Fraction("29.5")))
    assert placing.blocks[0].front == 0.5


def test_an_article_blocked_forward_stands_at_the_front():
    placing = _placed(replace(ROLLER, blocked_forward=True))
    assert placing.blocks[0].front == 0


def test_what_does_not_fit_is_said_and_never_overlaps():
    # 24 + 1 + 14 = 39 ft on 30 ft.
    placing = _placed(EXCAVATOR, ROLLER)
    assert not placing.fits
    assert placing.notes == (
        "DOES NOT FIT: 2 articles with 1 ft between them need 39 ft; the deck is 30 ft.",
    )
    assert placing.blocks[1].front >= placing.blocks[0].rear
    assert placing.view_length == 39


def test_one_article_that_does_not_fit():
    placing = _placed(replace(EXCAVATOR, length=Fraction("30.25")))
    assert placing.notes == ("DOES NOT FIT: The article needs 30.25 ft; the deck is 30 ft.",)


def test_metric_gap():
    article = replace(ROLLER, length=Fraction(4))
    placing = _placed(article, article, trailer=None, units=Units.METRIC)
    assert [round(block.front, 6) for block in placing.blocks] == [0.3, 4.6]


def test_unknown_sizes_are_said():
    placing = _placed(replace(ROLLER, length=None, width=None), trailer=None)
    assert placing.notes == (
        "Deck length not given: the deck is drawn as long as its cargo.",
        "Deck width not given: drawn 8.5 ft wide.",
        "Length not given, so not to scale: RL-3.",
        "Width not given, so not to scale: RL-3.",
    )
    assert not placing.blocks[0].to_scale


def test_unknown_lengths_share_what_is_left():
    # 30 - 24 - 2 gaps = 4 ft for two; never less than 3 ft is drawn.
    nameless = replace(ROLLER, length=None)
    placing = _placed(EXCAVATOR, nameless, nameless)
    assert [block.length for block in placing.blocks] == [24, 3, 3]


def _strokes(load):
    facts = DayFacts(plan_of()).loads[load].articles[0]
    return list(strokes(facts.tie_downs, FRAME))


def test_corners_run_out_to_their_own_side_and_end():
    front_left, front_right, rear_left, rear_right = _strokes(0)[:4]
    # Front is at the left of the picture; with the front left, the left side is below.
    assert front_left.anchors == ((80, 160),)
    assert front_right.anchors == ((80, 40),)
    assert rear_left.anchors == ((330, 160),)
    assert rear_right.anchors == ((330, 40),)
    assert front_left.tie_points[0][0] < 200 < rear_left.tie_points[0][0]


def test_a_second_tie_down_at_a_corner_stands_beside_the_first():
    first, second = _strokes(0)[0], _strokes(0)[4]
    assert second.anchors[0][0] > first.anchors[0][0]
    assert second.tie_points[0][0] > first.tie_points[0][0]


def test_an_accessory_is_marked_and_named():
    boom = _strokes(0)[5]
    assert boom.accessory is not None
    assert boom.lines == ("boom", "CH-2", "B-1")


def test_straps_over_an_article_cross_the_deck_evenly():
    over = _strokes(1)
    assert [stroke.label_x for stroke in over] == pytest.approx([133.3333, 200, 266.6667])
    assert all(stroke.anchors == stroke.path for stroke in over)
    assert {point[1] for stroke in over for point in stroke.path} == {40, 160}


def test_same_side_runs_back_to_its_own_side():
    facts = DayFacts(plan_of()).loads[0].articles[0].tie_downs[0]
    turned = replace(facts, tie_down=replace(facts.tie_down, routing=Routing.SAME_SIDE))
    (stroke,) = strokes([turned], FRAME)
    assert len(stroke.anchors) == 2
    assert {point[1] for point in stroke.anchors} == {160}


def test_round_has_no_anchor():
    facts = DayFacts(plan_of()).loads[0].articles[0].tie_downs[0]
    turned = replace(facts, tie_down=replace(facts.tie_down, routing=Routing.ROUND))
    (stroke,) = strokes([turned], FRAME)
    assert stroke.anchors == ()
    assert stroke.path[0] == stroke.path[-1]


def test_labels_do_not_touch():
    middles = spread([10, 12, 14, 90], [20, 20, 20, 20], 0, 100)
    gaps = [later - earlier for earlier, later in pairwise(middles)]
    assert min(gaps) >= 28 - 1e-9
    assert middles[-1] <= 90


def test_the_picture_is_a_small_grey_png_of_print_quality():
    picture = deck_picture(DAY, DayFacts(plan_of()).loads[0])
    image = Image.open(io.BytesIO(picture.png))
    assert image.format == "PNG"
    assert image.size == (WIDTH, HEIGHT)
    assert round(image.info["dpi"][0]) == DPI
    assert len(image.getcolors()) <= 16
    assert len(picture.png) < 60_000
    # It prints 7.8 in wide at most: Letter less its margins.
    assert WIDTH / 7.8 >= 200
    # On the sheet it is as wide as the columns.
    assert sum(WIDTHS) <= WIDTH / DPI * 96


def test_one_ink_prints_the_same_in_black_and_white():
    picture = deck_picture(DAY, DayFacts(plan_of()).loads[0])
    image = Image.open(io.BytesIO(picture.png)).convert("RGB")
    shades = sorted((sum(colour), colour) for _, colour in image.getcolors(64))
    greys = [Image.new("RGB", (1, 1), colour).convert("L").getpixel((0, 0)) for _, colour in shades]
    assert greys == sorted(greys)
    assert len(set(greys)) == len(greys)


def test_the_words_say_what_is_on_the_deck():
    loads = DayFacts(plan_of()).loads
    assert deck_picture(DAY, loads[0]).words == (
        "Deck of load 1, front to rear: EX-1, 21,900 lb, 6 tie-downs; "
        "Pinned, no tie-down (open diamond): EX-1 blade."
    )
    assert deck_picture(DAY, loads[1]).words == (
        "Deck of load 2, front to rear: LU-2, 8,000 lb, 3 tie-downs; "
        "Width not given, so not to scale: LU-2. Height not given: LU-2."
    )


def test_the_same_load_gives_the_same_picture():
    facts = DayFacts(plan_of()).loads[0]
    assert deck_picture(DAY, facts).png == deck_picture(DAY, facts).png


def test_held_loads_are_drawn_without_tie_downs():
    words = deck_picture(DAY, DayFacts(plan_of()).loads[2]).words
    assert "RL-3, 12,000 lb, 0 tie-downs;" in words


def test_text_is_drawn_in_the_characters_there_are():
    assert drawable("Ü é × 中") == "U e x ?"
    assert fitted("C38-70", 18, 500) == "C38-70"
    short = fitted("a very long name of a chain", 18, 80)
    assert short.endswith("..")
    assert text_width(short, 18) <= 80


def test_lumber_has_no_width_so_it_is_not_to_scale():
    placing = _placed(LUMBER, trailer=TRAILERS[1])
    assert placing.notes == ("Width not given, so not to scale: LU-2.",)


def test_lengthwise_tie_downs_run_along_and_legs_to_the_four_corners():
    from types import SimpleNamespace

    from loadplan.day.article import Routing
    from loadplan.day.gear import Kind
    from loadplan.results.deck.strokes import Frame, strokes

    def tie_down(number, position, routing):
        return SimpleNamespace(
            number=number,
            tie_down=SimpleNamespace(position=position, routing=routing, number=1, accessory=False),
            member=SimpleNamespace(id="C", kind=Kind.CHAIN),
            tensioner=None,
        )

    frame = Frame(
        left=100, right=300, top=40, bottom=100, deck_top=20, deck_bottom=120, before=30, behind=30
    )
    pipe = [tie_down(1, "lengthwise 1", Routing.OVER), tie_down(2, "over 1", Routing.OVER)]
    across, along = strokes(pipe, frame)
    assert along.path == ((70, 70.0), (330, 70.0))
    assert {y for _, y in across.path} == {20, 120}
    legs = [tie_down(n, f"leg {n}", Routing.DIRECT) for n in range(1, 5)]
    anchors = {stroke.anchors[0] for stroke in strokes(legs, frame)}
    assert anchors == {(70, 120), (70, 20), (330, 120), (330, 20)}


def test_notes_beyond_the_picture_are_cut_with_a_word():
    """Forty pinned accessories with long names do not run out of the page."""
    pinned = tuple(Accessory(name=f"attachment number {n}", pinned=True) for n in range(40))
    day = replace(DAY, articles=(replace(EXCAVATOR, accessories=pinned), *DAY.articles[1:]))
    facts = DayFacts(plan_of(day, ready=(), tie_downs=(), shortages=())).loads[0]
    image = Image.open(io.BytesIO(deck_picture(day, facts).png)).convert("L")
    foot = image.crop((1100, HEIGHT - 4, WIDTH, HEIGHT))
    assert foot.getextrema() == (255, 255)
