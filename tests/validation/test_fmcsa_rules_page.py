"""FMCSA cargo securement rules page and 49 CFR 393.110(b), (c): the lines of the count rule."""

from fractions import Fraction

import pytest

from tests.validation.days import cargo, counted
from tests.validation.published import Published

PAGE = "FMCSA cargo securement rules page"


def line(what, printed, section="393.110(b)"):
    return Published(
        document=PAGE,
        section=section,
        tier="A",
        what=what,
        printed=printed,
        unrounded=printed,
        unit="tie-downs",
    )


ROWS = [
    (line("5 ft or less and 1,100 lb or less", 1), (1100, 5, False)),
    (line("5 ft or less and 1,100 lb or less", 1), (1, "0.5", False)),
    (line("5 ft or less and over 1,100 lb", 2), (1101, 5, False)),
    (line("over 5 ft up to 10 ft, whatever the weight", 2), (1, "5.01", False)),
    (line("over 5 ft up to 10 ft, whatever the weight", 2), (90000, 10, False)),
    (line("over 10 ft: two, and one per further 10 ft or fraction", 3), (1, "10.01", False)),
    (line("over 10 ft: two, and one per further 10 ft or fraction", 3), (1, 20, False)),
    (line("over 10 ft: two, and one per further 10 ft or fraction", 4), (1, "20.01", False)),
    (line("over 10 ft: two, and one per further 10 ft or fraction", 6), (1, 48, False)),
    (line("blocked: one per 10 ft or fraction", 1, "393.110(c)"), (90000, 4, True)),
    (line("blocked: one per 10 ft or fraction", 1, "393.110(c)"), (90000, 10, True)),
    (line("blocked: one per 10 ft or fraction", 2, "393.110(c)"), (1, "10.01", True)),
    (line("blocked: one per 10 ft or fraction", 5, "393.110(c)"), (1, 48, True)),
]


@pytest.mark.parametrize(("published", "article"), ROWS, ids=str)
def test_count(published, article):
    weight, length, blocked = article
    published.check(counted(cargo(Fraction(weight), Fraction(length), blocked_forward=blocked)))
