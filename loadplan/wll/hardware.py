"""Binders and shackles without a WLL, taken as the lowest grade of their size."""

from __future__ import annotations

from loadplan.day.gear import BINDERS, Gear, Kind
from loadplan.wll.tables import Material, TableRow, find

_LOWEST_GRADE = 30


def lowest_grade_row(gear: Gear) -> TableRow | None:
    """The chain row of the lowest grade for the size of ``gear``; None where it has none.

    Only binders and shackles follow chain sizes. A binder goes by its own size or, without one,
    by the smallest of the chain sizes it takes.
    """
    if gear.kind not in BINDERS and gear.kind is not Kind.SHACKLE:
        return None
    sizes = (gear.size,) if gear.size is not None else gear.fits
    found = [find(Material.CHAIN, size, _LOWEST_GRADE) for size in sizes]
    if not found or None in found:
        return None
    return min((row for row in found if row is not None), key=lambda row: row.wll_lb)
