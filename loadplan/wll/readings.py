"""The readings under which gear is rated: the rule set's own, and those the house chooses."""

from __future__ import annotations

from dataclasses import dataclass

from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules, TableFigures, UnmarkedHardware, WireRopeFigure
from loadplan.day.units import Units
from loadplan.wll.tables import OtherPrint, TableRow, other_print


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """What stands in for a maker's mark.

    ``unmarked_is_zero``: nothing does, but for the grade mark of a chain (Canada).
    ``lowest_grade_hardware``: binders and shackles count as the lowest grade of their size.
    ``prints``: whose figure is used where prints of the default tables differ.
    """

    unmarked_is_zero: bool = False
    lowest_grade_hardware: bool = False
    prints: tuple[OtherPrint, ...] = ()

    def print_of(self, row: TableRow, units: Units) -> TableRow:
        """``row`` as the chosen print has it; unchanged where that has no figure in ``units``."""
        for chosen in self.prints:
            other = other_print(row, chosen, units)
            if other is not None:
                return other
        return row


US_READINGS = Readings()


def readings_of(rules: RuleSet, house: HouseRules) -> Readings:
    """The readings of a day: those of its rule set and its house rules."""
    prints = []
    if house.table_figures is TableFigures.STATE_MANUAL:
        prints.append(OtherPrint.STATE_MANUAL)
    if house.wire_rope_figure is WireRopeFigure.QUARTER:
        prints.append(OtherPrint.QUARTER_OF_STRENGTH)
    return Readings(
        unmarked_is_zero=rules is RuleSet.CANADA,
        lowest_grade_hardware=house.unmarked_hardware is UnmarkedHardware.LOWEST_GRADE,
        prints=tuple(prints),
    )
