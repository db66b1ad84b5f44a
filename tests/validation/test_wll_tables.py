"""49 CFR 393.108: every printed row, and the printed kg and lb figures against each other."""

from fractions import Fraction

import pint
import pytest

from loadplan.day.size import read_size
from loadplan.day.units import Units
from loadplan.wll.tables import Material, find, rows

# size (and grade), kg, lb, as printed
PRINTED = {
    Material.CHAIN: """
        1/4 30 580 1300; 5/16 30 860 1900; 3/8 30 1200 2650; 7/16 30 1680 3700;
        1/2 30 2030 4500; 5/8 30 3130 6900; 1/4 43 1180 2600; 5/16 43 1770 3900;
        3/8 43 2450 5400; 7/16 43 3270 7200; 1/2 43 4170 9200; 5/8 43 5910 13000;
        1/4 70 1430 3150; 5/16 70 2130 4700; 3/8 70 2990 6600; 7/16 70 3970 8750;
        1/2 70 5130 11300; 5/8 70 7170 15800; 1/4 80 1570 3500; 5/16 80 2000 4500;
        3/8 80 3200 7100; 1/2 80 5400 12000; 5/8 80 8200 18100; 1/4 100 1950 4300;
        5/16 100 2600 5700; 3/8 100 4000 8800; 1/2 100 6800 15000; 5/8 100 10300 22600
    """,
    Material.WEBBING: "1-3/4 790 1750; 2 910 2000; 3 1360 3000; 4 1810 4000",
    Material.WIRE_ROPE: """
        1/4 640 1400; 5/16 950 2100; 3/8 1360 3000; 7/16 1860 4100; 1/2 2400 5300;
        5/8 3770 8300; 3/4 4940 10900; 7/8 7300 16100; 1 9480 20900
    """,
    Material.MANILA: "3/8 90 205; 7/16 120 265; 1/2 150 315; 5/8 210 465; 3/4 290 640; 1 480 1050",
    Material.POLYPROPYLENE: """
        3/8 180 400; 7/16 240 525; 1/2 280 625; 5/8 420 925; 3/4 580 1275; 1 950 2100
    """,
    Material.POLYESTER: """
        3/8 250 555; 7/16 340 750; 1/2 440 960; 5/8 680 1500; 3/4 850 1880; 1 1500 3300
    """,
    Material.NYLON: """
        3/8 130 278; 7/16 190 410; 1/2 240 525; 5/8 420 935; 3/4 640 1420; 1 1140 2520
    """,
    Material.DOUBLE_BRAIDED_NYLON: """
        3/8 150 336; 7/16 230 502; 1/2 300 655; 5/8 510 1130; 3/4 830 1840; 1 1470 3250
    """,
    Material.STEEL_STRAPPING: """
        1-1/4x0.029 540 1190; 1-1/4x0.031 540 1190; 1-1/4x0.035 540 1190;
        1-1/4x0.044 770 1690; 1-1/4x0.050 770 1690; 1-1/4x0.057 870 1925;
        2x0.044 1200 2650; 2x0.050 1200 2650
    """,
}
LINES = [
    (material, size, int(grade[0]) if grade else None, int(kilograms), int(pounds))
    for material, text in PRINTED.items()
    for size, *grade, kilograms, pounds in (line.split() for line in text.split(";"))
]
# The print rounds to 10 kg; the stronger chain grades are rounded further.
ROUNDING_KG = 5
ROUNDING_SHARE = Fraction(25, 1000)
DISAGREES = (Material.MANILA, "1/2 in")


@pytest.mark.parametrize(("material", "size", "grade", "kilograms", "pounds"), LINES)
def test_each_row_as_printed(material, size, grade, kilograms, pounds):
    row = find(material, read_size(size), grade)
    assert (row.wll(Units.METRIC), row.wll(Units.US)) == (kilograms, pounds)


def test_no_row_is_left_out():
    assert len(LINES) == len(list(rows()))


@pytest.fixture(scope="module")
def kilograms_in_a_pound():
    registry = pint.UnitRegistry(non_int_type=Fraction)
    return registry.Quantity(Fraction(1), "pound").to("kilogram").magnitude


@pytest.mark.parametrize("row", list(rows()), ids=lambda row: f"{row.material} {row.sizes[0]}")
def test_both_columns_agree_but_for_one_known_pair(row, kilograms_in_a_pound):
    """Manila 1/2 in is printed as 150 kg and 315 lb, and 315 lb are 142.9 kg."""
    exact = row.wll_lb * kilograms_in_a_pound
    agrees = abs(row.wll_kg - exact) <= max(ROUNDING_KG, ROUNDING_SHARE * exact)
    assert agrees is ((row.material, str(row.sizes[0])) != DISAGREES)
    if not agrees:
        assert (row.wll_kg, row.wll_lb, round(exact, 1)) == (150, 315, Fraction("142.9"))


def test_a_higher_grade_is_not_always_stronger():
    """Grade 80 is printed below grade 70 in 5/16 in, and has no 7/16 in."""
    size = read_size("5/16")
    assert find(Material.CHAIN, size, 80).wll_lb < find(Material.CHAIN, size, 70).wll_lb
    assert find(Material.CHAIN, read_size("7/16"), 80) is None
