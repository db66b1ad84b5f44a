"""The default tables as data: complete, in both columns, each row with its source."""

from fractions import Fraction

import pytest

from loadplan.day.size import Size, read_size
from loadplan.day.units import Units
from loadplan.source import Certainty
from loadplan.wll.tables import Material, find, rows, table

ROWS = {
    Material.CHAIN: 28,
    Material.WEBBING: 4,
    Material.WIRE_ROPE: 9,
    Material.MANILA: 6,
    Material.POLYPROPYLENE: 6,
    Material.POLYESTER: 6,
    Material.NYLON: 6,
    Material.DOUBLE_BRAIDED_NYLON: 6,
    Material.STEEL_STRAPPING: 8,
}


@pytest.mark.parametrize("material", Material)
def test_each_table_has_its_rows_and_no_two_alike(material):
    keys = [(size, row.grade) for row in table(material) for size in row.sizes]
    assert len(table(material)) == ROWS[material]
    assert len(set(keys)) == len(keys)


@pytest.mark.parametrize("row", list(rows()), ids=lambda row: f"{row.material} {row.sizes[0]}")
def test_each_row_is_found_by_every_size_and_carries_its_source(row):
    for size in row.sizes:
        assert find(row.material, size, row.grade) == row
    assert row.wll(Units.US) == row.wll_lb
    assert row.wll(Units.METRIC) == row.wll_kg
    assert isinstance(row.wll(Units.US), Fraction)
    assert row.source.section == f"393.108 table, {row.material}"
    read = row.source.certainty is Certainty.READ
    assert row.source.edition == (
        "read 2026-11, stored copy" if read else "from memory 2026-11, not read"
    )


def test_memory_is_said_wherever_a_row_is_from_memory():
    assert find(Material.POLYESTER, read_size("1/2")).source.cite() == (
        "49 CFR 393.108 table, polyester (memory)"
    )
    assert find(Material.CHAIN, read_size("3/8"), 70).source.cite() == (
        "49 CFR 393.108 table, chain"
    )
    from_memory = {row.material for row in rows() if row.source.certainty is Certainty.MEMORY}
    assert from_memory == {
        Material.WIRE_ROPE,
        Material.POLYPROPYLENE,
        Material.POLYESTER,
        Material.NYLON,
        Material.DOUBLE_BRAIDED_NYLON,
        Material.STEEL_STRAPPING,
    }


@pytest.mark.parametrize(
    ("material", "typed", "grade", "pounds"),
    [
        (Material.CHAIN, "10 mm", 70, 6600),
        (Material.CHAIN, "0.375", 70, 6600),
        (Material.WEBBING, "4 in", None, 4000),
        (Material.WEBBING, "45 mm", None, 1750),
        (Material.WIRE_ROPE, "20 mm", None, 10900),
        (Material.STEEL_STRAPPING, "1-1/4 x 0.050", None, 1690),
        (Material.STEEL_STRAPPING, "1 1/4 x .05", None, 1690),
        (Material.STEEL_STRAPPING, "31.7 x 1.27 mm", None, 1690),
        (Material.STEEL_STRAPPING, "50.8 x 1.12 mm", None, 2650),
    ],
)
def test_a_size_is_found_however_it_is_written(material, typed, grade, pounds):
    assert find(material, read_size(typed), grade).wll_lb == pounds


@pytest.mark.parametrize(
    ("material", "size", "grade"),
    [
        (Material.CHAIN, Size(Fraction(7, 16)), 80),
        (Material.CHAIN, Size(Fraction(9, 32)), 70),
        (Material.CHAIN, Size(Fraction(3, 8)), None),
        (Material.WEBBING, Size(Fraction(5, 2)), None),
        (Material.WEBBING, None, None),
        (Material.STEEL_STRAPPING, Size(Fraction(5, 4)), None),
    ],
)
def test_nothing_is_read_between_rows(material, size, grade):
    assert find(material, size, grade) is None
