"""Warnings: what the plan will leave aside, and why."""

from __future__ import annotations

from collections.abc import Iterator

from loadplan.day.day import Day
from loadplan.day.gear import BINDERS, Gear, Kind
from loadplan.wll.piece import rate_in
from loadplan.workbook.table import place_of


def unplanned_warnings(day: Day) -> Iterator[str]:
    """Loads without cargo, and good gear, owned or on offer, that can never be planned."""
    for load in day.loads:
        if not day.articles_by_load[load.id]:
            yield (
                f"{place_of(load.row, 'Load')}  Load {load.id} has no cargo; "
                "it is ready with no tie-downs."
            )
    out = {load.trailer for load in day.loads}
    new = (price.specification for price in day.prices)
    for gear in (*day.gear, *(one for one in new if one.id not in day.gear_by_id)):
        if gear.usable:
            column, why = _why_not(day, gear, out)
            if why:
                yield f"{place_of(gear.row, column)}  {gear.id} is not planned: {why}."


def _why_not(day: Day, gear: Gear, out: set[str | None]) -> tuple[str, str]:
    rating = rate_in(day, gear)
    if not rating.usable:
        return "WLL", f"its WLL is unknown ({rating.reason})"
    if gear.kind is Kind.CHAIN and gear.size is None:
        return "Size", "without Size no binder is known to fit it"
    if gear.kind in BINDERS and not gear.fits:
        return "Fits", "without Fits no chain is known to fit it"
    if gear.kept_on is not None and gear.kept_on not in out:
        return "Kept on", f"trailer {gear.kept_on}, on which it is kept, is on no load"
    return "", ""
