"""Facts everybody in the trade knows and nobody prints: common practice, no source."""

from fractions import Fraction

from loadplan.day.article import AddedWeight, CargoClass
from loadplan.day.gear import Kind
from loadplan.wll.tie_down import Part, rate_tie_down
from tests.validation.days import cargo, credited, need, wll
from tests.validation.published import Published


def row(what, printed, unrounded=None, tolerance=0):
    return Published(
        document="common practice, no source",
        section="",
        tier="P",
        what=what,
        printed=printed,
        unrounded=printed if unrounded is None else unrounded,
        unit="lb",
        tolerance=Fraction(tolerance),
    )


def test_the_weakest_part_is_the_strength_of_the_tie_down():
    rating = rate_tie_down(
        member=Fraction(6600), tensioner=Fraction(4000), connector=Fraction(5400)
    )
    row("6,600 lb chain, 4,000 lb binder, 5,400 lb shackle", 4000).check(rating.wll)
    assert rating.weakest is Part.TENSIONER


def test_four_direct_tie_downs_of_4000_hold_16000():
    """4 x 4,000 / 2 = 8,000 = 16,000 / 2, and one pound more is too much."""
    machine = cargo(16000, 18, cargo_class=CargoClass.TRACKED_MACHINE)
    have = credited(machine, 4000, 4000, 4000, 4000)
    row("four direct tie-downs of 4,000 lb", 8000).check(have)
    row("aggregate WLL for 16,000 lb", 8000).check(need(machine))
    assert have < need(cargo(16001, 18))


def test_four_direct_tie_downs_of_1167_hold_just_over_4600():
    """4 x 1,167 / 2 = 2,334, half of 4,668."""
    have = credited(cargo(4600, 12, cargo_class=CargoClass.WHEELED_MACHINE), *[1167] * 4)
    row("twice the aggregate WLL of four of 1,167 lb", 4600, 4668, tolerance=100).check(2 * have)


def test_one_third_of_the_breaking_strength():
    """5,000 / 3 = 1,666.7 and 10,000 / 3 = 3,333.3, marked to the nearest pound."""
    for breaking, marked in ((5000, 1667), (10000, 3333)):
        third = wll(Kind.RATCHET_STRAP, breaking_strength=Fraction(breaking))
        row(f"strap that breaks at {breaking:,} lb", marked).check(third)


def test_what_rides_on_a_machine_belongs_to_its_weight():
    """1,800 + 600 + 600 = 3,000."""
    added = tuple(AddedWeight(what=what, weight=Fraction(600)) for what in ("bucket", "ballast"))
    machine = cargo(1800, 8, cargo_class=CargoClass.WHEELED_MACHINE, added=added)
    row("machine, bucket and ballast", 3000).check(machine.carried_weight)
    row("aggregate WLL for all of it", 1500).check(need(machine))
