"""A crawler loader that came off, 2002: the plan as found must not pass."""

from loadplan.day.article import CargoClass
from loadplan.day.gear import Kind
from tests.validation.days import cargo, credited, need, wll
from tests.validation.published import Published


def row(what, printed):
    return Published(
        document="national occupational-safety fatality report",
        section="2002, crawler loader",
        tier="A",
        what=what,
        printed=printed,
        unrounded=printed,
        unit="lb",
    )


def test_four_chains_do_not_hold_sixty_thousand_pounds():
    """4 x 6,600 / 2 = 13,200, and 60,000 / 2 = 30,000 is needed."""
    loader = cargo(60000, 20, cargo_class=CargoClass.TRACKED_MACHINE)
    chains = [wll(Kind.CHAIN, "3/8", "70")] * 4
    have, needed = credited(loader, *chains), need(loader)
    row("aggregate WLL of four 6,600 lb chains, direct", 13200).check(have)
    row("aggregate WLL for 60,000 lb", 30000).check(needed)
    assert have < needed
