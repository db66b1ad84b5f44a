"""The whole judgement: which loads and tie-downs it knows, held loads, order."""

from dataclasses import replace
from fractions import Fraction

from loadplan.day.article import Accessory
from loadplan.day.house import HouseRules, UnratedPoints
from loadplan.day.load import Load
from loadplan.judge.judge import judge
from loadplan.outcome.check import Judgement, Verdict
from tests.judge.build import (
    broken,
    checks,
    crate,
    day,
    four,
    machine,
    over,
    row,
    tied,
    trailer,
)

TWO = (machine(), crate(load="L-2"))


def test_an_empty_day():
    empty = replace(day(), loads=(), articles=())
    assert judge(empty, (), ()) == Judgement(checks=(), disagreements=())


def test_a_load_without_cargo_is_ready():
    whole = replace(day(), loads=(Load(id="L-1", trailer="T-1"), Load(id="L-2")))
    judged = judge(whole, ("L-1", "L-2"), four())
    assert judged.disagreements == ()
    assert {check.load for check in judged.checks} == {"L-1"}


def test_loads_that_are_not_of_the_day():
    assert broken(day(), four(), ready=("L-1", "L-9")) == [
        "Load L-9: the plan says it is ready, and the day has no such load."
    ]


def test_a_load_said_ready_twice():
    assert broken(day(), four(), ready=("L-1", "L-1")) == [
        "Load L-1: the plan says 2 times that it is ready."
    ]


def test_tie_downs_of_unknown_loads_and_articles():
    stray = [tied("front left", load="L-9"), tied("front left", article="M-9")]
    assert broken(day(), [*four(), *stray]) == [
        "Load L-9, article M-1, front left, number 1: the day has no such load.",
        "Load L-1, article M-9, front left, number 1: the day has no such article.",
    ]


def test_a_tie_down_on_the_wrong_load():
    plan = [*four(), over(1, load="L-2"), over(2, load="L-2")]
    assert broken(day(*TWO), plan, ready=("L-1", "L-2")) == []
    plan[-1] = replace(plan[-1], load="L-1")
    assert broken(day(*TWO), plan, ready=("L-1", "L-2")) == [
        "Load L-1, article G-1, over 2, number 1: the article is on load L-2.",
        "Load L-2, article G-1: tie-downs by length needs 2 tie-downs, and the plan has 1 "
        "(49 CFR 393.110(b)).",
    ]


def test_a_held_load_gets_no_tie_downs():
    assert broken(day(*TWO), [*four(), over(1, load="L-2")]) == [
        "Load L-2, article G-1, over 1, number 1: "
        "the load is held, and a held load gets no tie-downs."
    ]


def test_a_ready_load_without_tie_downs():
    found = broken(day(crate()), [])
    assert found == [
        "Load L-1, article G-1: tie-downs by length needs 2 tie-downs, and the plan has 0 "
        "(49 CFR 393.110(b)).",
        "Load L-1, article G-1: aggregate WLL needs 1,500 lb, and the plan has 0 lb "
        "(49 CFR 393.106(d)).",
    ]
    line = checks(day(crate()), [])["G-1", "aggregate WLL"]
    assert line.working.endswith("Planned: nothing that counts.")


def test_a_held_load_shows_what_it_needs_and_is_never_met():
    cargo = machine(
        accessories=(Accessory(name="boom"),), chain_only=True, shackles=1, width=8, height=9
    )
    house = HouseRules(least_wll_each=Fraction(5000), unrated_points=UnratedPoints.HOLD)
    on = trailer(payload=48000, anchors=12, winches=4)
    judged = judge(day(cargo, on=on, house=house), (), ())
    assert judged.disagreements == ()
    assert [(check.article, check.name, *row(check)) for check in judged.checks] == [
        ("M-1", "unrated anchor points", "-", "-", "", "not met"),
        ("M-1", "unrated tie points", "-", "-", "", "not met"),
        ("M-1", "four tie-downs", "4", "-", "tie-downs", "not met"),
        ("M-1", "tie-down at front left", "1", "-", "tie-downs", "not met"),
        ("M-1", "tie-down at front right", "1", "-", "tie-downs", "not met"),
        ("M-1", "tie-down at rear left", "1", "-", "tie-downs", "not met"),
        ("M-1", "tie-down at rear right", "1", "-", "tie-downs", "not met"),
        ("M-1", "tie-downs by length", "3", "-", "tie-downs", "not met"),
        ("M-1", "aggregate WLL", "10,000", "-", "lb", "not met"),
        ("M-1", "least WLL each", "5,000", "-", "lb", "not met"),
        ("M-1", "chain only", "chain", "-", "", "not met"),
        ("M-1", "shackles", "1", "-", "shackles each", "not met"),
        ("M-1", "tie-down of boom", "1", "-", "tie-downs", "not met"),
        ("", "anchor points", "-", "12", "anchor points", "advice"),
        ("", "deck length", "18", "-", "ft", "advice"),
        ("", "width on the deck", "8", "-", "ft", "advice"),
        ("", "overall width", "-", "8.5", "ft", "advice"),
        ("", "overall height", "-", "13.5", "ft", "advice"),
    ]
    by_name = {check.name: check for check in judged.checks}
    assert by_name["unrated anchor points"].working == (
        "Unrated points: hold: no rating; held. "
        "The anchor points of trailer T-1 have no rating (Anchor WLL is blank). The load is held."
    )
    assert by_name["aggregate WLL"].working.endswith("counts with: nothing; 0. The load is held.")
    assert by_name["anchor points"].working.endswith("12 anchor points. The load is held.")


def test_tie_downs_of_a_held_load_show_nothing():
    cargo = crate(sharp_edges=True)
    plan = [over(1, member="S-4"), over(2, member="S-4")]
    whole = day(cargo, on=trailer(winches=4))
    assert judge(whole, (), plan).checks == judge(whole, (), ()).checks


def test_a_held_load_of_a_trailer_without_anchor_count():
    found = checks(day(), [], ready=())
    assert row(found["", "anchor points"]) == ("-", "-", "anchor points", "advice")
    assert row(found["M-1", "tie point rating"]) == ("rated", "unrated", "", "advice")
    assert Verdict.MET not in {check.verdict for check in found.values()}


def test_checks_stand_in_workbook_order():
    plan = [over(1, load="L-2"), over(2, load="L-2"), *four()]
    judged = judge(day(*TWO), ("L-2", "L-1"), plan)
    places = list(dict.fromkeys((check.load, check.article) for check in judged.checks))
    assert places == [("L-1", "M-1"), ("L-1", ""), ("L-2", "G-1"), ("L-2", "")]


def test_every_unmet_check_of_a_ready_load_is_a_disagreement():
    judged = judge(day(machine(weight=30000, length=60)), ("L-1",), four()[:3])
    unmet = [check.name for check in judged.checks if check.verdict is Verdict.NOT_MET]
    assert unmet == [
        "four tie-downs",
        "tie-down at rear right",
        "tie-downs by length",
        "aggregate WLL",
    ]
    assert len(judged.disagreements) == len(unmet)
