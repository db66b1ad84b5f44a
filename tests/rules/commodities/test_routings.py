"""Which ways to run a tie-down each section leaves open; any other is told at its cell."""

import pytest

from loadplan.day.article import CargoClass, Routing
from tests.rules.build import article, asked, problems

OVER, DIRECT, SAME = Routing.OVER, Routing.DIRECT, Routing.SAME_SIDE
OPEN = [
    (CargoClass.LOGS, "lengthwise; short", {OVER}),
    (CargoClass.DRESSED_LUMBER, "tiers 1", {OVER}),
    (CargoClass.METAL_COIL, "eye vertical", {OVER}),
    (CargoClass.METAL_COIL, "eye lengthwise; option 1", {OVER}),
    (CargoClass.METAL_COIL, "eye lengthwise; option 2", {OVER, SAME}),
    (CargoClass.METAL_COIL, "eye crosswise", {OVER}),
    (CargoClass.INTERMODAL_CONTAINER, "deck empty", {DIRECT, SAME, OVER}),
    (CargoClass.INTERMODAL_CONTAINER, "deck loaded", {DIRECT}),
    (CargoClass.BOULDER, "unstable base", {DIRECT}),
    (CargoClass.BOULDER, "stable base", {OVER}),
]


@pytest.mark.parametrize(("cargo", "details", "open_ways"), OPEN)
@pytest.mark.parametrize("routing", [OVER, DIRECT, SAME])
def test_only_these_ways_are_open(cargo, details, open_ways, routing):
    columns = [column for column, _ in problems(article(cargo, details=details, routing=routing))]
    assert ("Routing" in columns) is (routing not in open_ways)
    assert set(columns) <= {"Routing"}


@pytest.mark.parametrize(("blocked", "section"), [(True, "393.110(c)"), (False, "393.110(b)")])
def test_the_section_of_general_cargo_hangs_on_what_blocks_it(blocked, section):
    found = asked(article(CargoClass.GENERAL, length=8, blocked_forward=blocked))
    assert found.section.section == section
