"""The native charts of the board: gear out against what there is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from loadplan.results import board_layout as at
from loadplan.results.board_clock import GearRow
from loadplan.results.board_tables import heading
from loadplan.results.flow import Flow
from loadplan.results.slots import Slots
from loadplan.results.styles import FONT, INK
from loadplan.tables.clean import clean

MOST_CHARTS = 12
_PER_ROW = 4
_HIGH = 178
_POINTS = 0.75
_ASIDE = 6
_DARK = "#2F5D8C"
_SMALL = {"name": FONT, "size": 8, "color": INK}
_TITLE = {"name": FONT, "size": 9, "bold": True, "color": INK}


def most_out_chart(flow: Flow, row: int, pixels: int, rows: Sequence[GearRow]) -> None:
    """Bars of most pieces out at once beside usable pieces, at the right of ``row``."""
    sheet = flow.sheet
    chart = sheet.styles.book.add_chart({"type": "column"})
    first, last = rows[0].row, rows[-1].row
    for name, column, look in (
        ("most out at once", 4, {"fill": {"color": _DARK}, "border": {"color": INK}}),
        ("usable", 3, {"fill": {"color": "#FFFFFF"}, "border": {"color": INK}}),
    ):
        chart.add_series(
            {
                "name": name,
                "categories": [sheet.name, first, 0, last, 0],
                "values": [sheet.name, first, column, last, column],
                "gap": 60,
                **look,
            }
        )
    chart.set_title({"name": "Gear use: most out at once beside usable", "name_font": _TITLE})
    _axes(chart)
    chart.set_legend({"position": "top", "font": _SMALL})
    size = {"width": sum(flow.widths[at.FIRST_SLOT :]) - 2 * _ASIDE, "height": pixels}
    chart.set_size(size)
    words = "Bars: for each kind of gear the most pieces out at once beside the usable pieces."
    sheet.page.insert_chart(row, at.FIRST_SLOT, chart, {"x_offset": _ASIDE, "description": words})


def over_time(flow: Flow, slots: Slots, top: int, rows: Sequence[GearRow]) -> None:
    """A small chart for each kind of gear: pieces out over the clock, and the usable ones.

    The kinds with the smallest share left come first; at most twelve are drawn.
    """
    if not rows:
        return
    scarce = sorted(rows, key=lambda one: (one.use.left / max(one.use.usable, 1), one.row))
    drawn = scarce[:MOST_CHARTS]
    words = "Gear out over the clock against what is usable (dashed), scarcest first"
    if len(rows) > len(drawn):
        words += f" (the {len(drawn)} scarcest of {len(rows)}; all are in the table above)"
    heading(flow, words)
    wide = (sum(flow.widths) - 4) // _PER_ROW
    for start in range(0, len(drawn), _PER_ROW):
        flow.may_break()
        row = flow.next(_HIGH * _POINTS)
        for place, one in enumerate(drawn[start : start + _PER_ROW]):
            chart = _clock_chart(flow, slots, top, one)
            chart.set_size({"width": wide - 8, "height": _HIGH - 6})
            use = one.use
            alt = (
                f"{clean(use.gear)}: at most {use.most} of {use.usable} usable pieces out at once."
            )
            options = {"x_offset": place * wide + 2, "y_offset": 3, "description": alt}
            flow.sheet.page.insert_chart(row, 0, chart, options)


def _clock_chart(flow: Flow, slots: Slots, top: int, one: GearRow) -> Any:
    """Columns without gaps for what is out, a dashed line for what is usable."""
    sheet, book, beside = flow.sheet, flow.sheet.styles.book, slots.count
    first, last = at.FIRST_SLOT, at.FIRST_SLOT + slots.count - 1
    times = [sheet.name, top, first + beside, top, last + beside]
    chart, line = book.add_chart({"type": "column"}), book.add_chart({"type": "line"})
    chart.add_series(
        {
            "name": "out",
            "categories": times,
            "values": [sheet.name, one.row, first, one.row, last],
            "gap": 0,
            "fill": {"color": _DARK},
            "border": {"none": True},
        }
    )
    line.add_series(
        {
            "name": "usable",
            "categories": times,
            "values": [sheet.name, one.row, first + beside, one.row, last + beside],
            "line": {"color": INK, "width": 2, "dash_type": "dash"},
        }
    )
    chart.combine(line)
    title = f"Gear {clean(one.use.gear)}: {one.use.most} of {one.use.usable} out"
    chart.set_title({"name": title, "name_font": _TITLE})
    _axes(chart, every=max(1, slots.count // 6))
    chart.set_legend({"none": True})
    return chart


def _axes(chart: Any, every: int = 1) -> None:
    chart.set_x_axis({"num_font": _SMALL, "interval_unit": every, "interval_tick": every})
    grid = {"visible": True, "line": {"color": "#D5DCE5", "width": 0.5}}
    chart.set_y_axis({"num_font": _SMALL, "min": 0, "major_gridlines": grid})
    chart.set_chartarea({"border": {"color": "#8896A8"}})
