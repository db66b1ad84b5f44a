"""The whole count rule, 49 CFR 393.110, over length x weight x blocked, in both unit systems.

The table is made by hand from the words of the rule: each length stands just below, at, or just
above an edge, with the number for a light article, a heavy one, and one blocked forward.
"""

from fractions import Fraction

import pytest

from loadplan.day.units import Units
from loadplan.rules.general import tie_downs_by_length
from loadplan.rules.limits import LIMITS

# length: not blocked and light, not blocked and heavy, blocked (any weight)
FEET = {
    "0.01": (1, 2, 1),
    "4.99": (1, 2, 1),
    "5": (1, 2, 1),
    "5.01": (2, 2, 1),
    "9.99": (2, 2, 1),
    "10": (2, 2, 1),
    "10.01": (3, 3, 2),
    "19.99": (3, 3, 2),
    "20": (3, 3, 2),
    "20.01": (4, 4, 3),
    "30": (4, 4, 3),
    "30.01": (5, 5, 4),
    "40": (5, 5, 4),
    "48": (6, 6, 5),
    "53": (7, 7, 6),
}
METRES = {
    "0.01": (1, 2, 1),
    "1.51": (1, 2, 1),
    "1.52": (1, 2, 1),
    "1.524": (2, 2, 1),
    "1.53": (2, 2, 1),
    "3.03": (2, 2, 1),
    "3.04": (2, 2, 1),
    "3.048": (3, 3, 2),
    "3.05": (3, 3, 2),
    "6.07": (3, 3, 2),
    "6.08": (3, 3, 2),
    "6.09": (4, 4, 3),
    "6.096": (4, 4, 3),
    "9.12": (4, 4, 3),
    "9.13": (5, 5, 4),
    "14.63": (6, 6, 5),
}
LIGHT = {Units.US: ("1", "1100"), Units.METRIC: ("1", "500")}
HEAVY = {Units.US: ("1100.01", "60000"), Units.METRIC: ("500.01", "27000")}
CASES = [
    (units, length, weight, blocked, number)
    for units, table in ((Units.US, FEET), (Units.METRIC, METRES))
    for length, (light, heavy, held) in table.items()
    for blocked, weights, number in (
        (False, LIGHT[units], light),
        (False, HEAVY[units], heavy),
        (True, LIGHT[units] + HEAVY[units], held),
    )
    for weight in weights
]


@pytest.mark.parametrize(("units", "length", "weight", "blocked", "number"), CASES)
def test_edge(units, length, weight, blocked, number):
    found = tie_downs_by_length(
        length=Fraction(length), weight=Fraction(weight), blocked=blocked, limits=LIMITS[units]
    )
    assert found == number


@pytest.mark.parametrize(
    ("feet", "metres", "more"), [("5", "1.524", 1), ("10", "3.048", 1), ("20", "6.096", 1)]
)
def test_the_limits_are_not_conversions_of_each_other(feet, metres, more):
    """20 ft are 6.096 m, which is more than 2 x 3.04 m: one tie-down more in a metric day."""
    assert Fraction(feet) * Fraction("0.3048") == Fraction(metres)
    us, metric = (
        tie_downs_by_length(
            length=Fraction(length), weight=Fraction(100), blocked=False, limits=LIMITS[units]
        )
        for length, units in ((feet, Units.US), (metres, Units.METRIC))
    )
    assert metric - us == more
