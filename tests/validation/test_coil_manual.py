"""Practice question of a state coil manual: 6,350 lb, eye vertical."""

from tests.validation.days import cargo, need
from tests.validation.published import Published


def test_half_the_weight_of_a_coil():
    """6,350 / 2 = 3,175."""
    Published(
        document="state metal coil manual",
        section="practice question",
        tier="B",
        what="aggregate WLL for a 6,350 lb coil",
        printed=3175,
        unrounded=3175,
        unit="lb",
    ).check(need(cargo(6350, 5)))
