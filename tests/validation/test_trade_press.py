"""Officials quoted in the trade press: second-hand, with the sums ours."""

from loadplan.day.article import CargoClass, Routing
from loadplan.day.day import RuleSet
from loadplan.day.gear import Kind
from tests.validation.days import cargo, credited, need, wll
from tests.validation.published import Published


def row(who, what, printed):
    return Published(
        document="trade press",
        section=who,
        tier="C",
        what=what,
        printed=printed,
        unrounded=printed,
        unit="lb",
    )


def test_chain_with_an_illegible_grade_mark_is_grade_30():
    row("state inspector", "5/16 in chain, marked grade 70", 4700).check(
        wll(Kind.CHAIN, "5/16", "70")
    )
    row("state inspector", "5/16 in chain, no mark to be read", 1900).check(wll(Kind.CHAIN, "5/16"))


def test_telehandler_on_four_chains():
    """6,600 / 2 x 4 = 13,200, and 11,000 / 2 = 5,500 is needed."""
    telehandler = cargo(11000, 18, cargo_class=CargoClass.WHEELED_MACHINE)
    chain = wll(Kind.CHAIN, "3/8", "70")
    row("trade article", "four 3/8 in grade 70 chains, direct", 13200).check(
        credited(telehandler, chain, chain, chain, chain)
    )
    row("trade article", "aggregate WLL for 11,000 lb", 5500).check(need(telehandler))


def test_four_marked_straps_and_one_of_them_unmarked():
    """4 x 5,400 = 21,600; one at the US default of 4 in webbing: 16,200 + 4,000 = 20,200.

    In Canada it counts for nothing: 3 x 5,400 = 16,200.
    """
    crate = cargo(30000, 20, routing=Routing.OVER)
    chair = "chair of a rule interpretation group"
    row(chair, "four 4 in straps marked 5,400 lb, over", 21600).check(
        credited(crate, 5400, 5400, 5400, 5400)
    )
    row(chair, "one of them without a mark, US default", 20200).check(
        credited(crate, 5400, 5400, 5400, wll(Kind.WINCH_STRAP, "4"))
    )
    canada = RuleSet.CANADA
    row(chair, "four marked straps in Canada", 21600).check(
        credited(crate, 5400, 5400, 5400, 5400, rules=canada)
    )
    assert wll(Kind.WINCH_STRAP, "4", rules=canada) is None
    row(chair, "three of them left in Canada", 16200).check(
        credited(crate, 5400, 5400, 5400, rules=canada)
    )
