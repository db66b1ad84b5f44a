"""Practice question of a state coil manual: 6,350 lb, eye vertical."""

from loadplan.day.article import CargoClass
from loadplan.rules.effects import fewest_tie_downs
from tests.validation.days import asked, cargo, need
from tests.validation.published import Published


def row(what, printed, unit="lb"):
    return Published(
        document="state metal coil manual",
        section="practice question",
        tier="B",
        what=what,
        printed=printed,
        unrounded=printed,
        unit=unit,
    )


def test_half_the_weight_of_a_coil():
    """6,350 / 2 = 3,175; one each way diagonally and one straight over."""
    coil = cargo(6350, cargo_class=CargoClass.METAL_COIL, details="eye vertical")
    row("aggregate WLL for a 6,350 lb coil", 3175).check(need(coil))
    row("tie-downs", 3, "tie-downs").check(fewest_tie_downs(asked(coil)))
