"""The chart of the curve: loads ready for each amount of money, as steps."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any, TypeAlias

from loadplan.purchase.bought import Bought
from loadplan.results.flow import Flow
from loadplan.results.styles import FONT, INK

_HIGH = 300
_POINTS = 0.75
_DARK, _STOP = "#2F5D8C", "#8E1B1B"
_SMALL = {"name": FONT, "size": 9, "color": INK}
_TITLE = {"name": FONT, "size": 10, "bold": True, "color": INK}
_Pairs: TypeAlias = Sequence[tuple[Fraction, int]]


def curve_chart(flow: Flow, bought: Bought) -> None:
    """Steps from one point to the next, the points themselves, and the budget as a line.

    The figures it is drawn from stand beside the page, outside what is printed.
    """
    assert bought.curve is not None
    sheet = flow.sheet
    points = [(point.purchase.cost, point.loads) for point in bought.curve.points]
    total = len(bought.day.loads)
    flow.may_break()
    flow.next(8)
    row = flow.next(_HIGH * _POINTS)
    beside = len(flow.widths) + 1
    chart = sheet.styles.book.add_chart({"type": "scatter", "subtype": "straight"})
    line = {"color": _DARK, "width": 2}
    marker = {"type": "circle", "size": 7, "fill": {"color": _DARK}, "border": {"color": INK}}
    _series(flow, chart, beside, "loads ready", _steps(points, _furthest(bought)), line=line)
    _series(flow, chart, beside + 2, "a purchase", points, line={"none": True}, marker=marker)
    if bought.budget is not None:
        wall = [(bought.budget, 0), (bought.budget, total)]
        dashes = {"color": _STOP, "width": 1.5, "dash_type": "dash"}
        _series(flow, chart, beside + 4, "budget", wall, line=dashes)
    _dress(chart, bought.currency, total)
    chart.set_size({"width": sum(flow.widths) - 8, "height": _HIGH - 8})
    first, last = bought.curve.points[0], bought.curve.points[-1]
    words = f"Steps: loads ready from {first.loads} with nothing bought to {last.loads} of {total}."
    sheet.page.insert_chart(row, 0, chart, {"x_offset": 4, "y_offset": 4, "description": words})


def _dress(chart: Any, currency: str, total: int) -> None:
    """Title, axes, legend and frame."""
    chart.set_title({"name": "Loads ready for the money", "name_font": _TITLE})
    money = f"Cost [{currency}]" if currency else "Cost"
    chart.set_x_axis({"name": money, "name_font": _SMALL, "num_font": _SMALL, "min": 0})
    grid = {"visible": True, "line": {"color": "#D5DCE5", "width": 0.5}}
    axis = {"name": "Loads ready", "min": 0, "max": total, "major_unit": _unit(total)}
    chart.set_y_axis({**axis, "name_font": _SMALL, "num_font": _SMALL, "major_gridlines": grid})
    chart.set_legend({"position": "bottom", "font": _SMALL})
    chart.set_chartarea({"border": {"color": "#8896A8"}})


def _series(flow: Flow, chart: Any, column: int, name: str, pairs: _Pairs, **look: object) -> None:
    sheet = flow.sheet
    sheet.text(0, column, f"{name}: cost", "muted")
    sheet.text(0, column + 1, f"{name}: loads", "muted")
    for row, (cost, loads) in enumerate(pairs, start=1):
        sheet.number(row, column, cost, "muted")
        sheet.number(row, column + 1, loads, "muted")
    chart.add_series(
        {
            "name": name,
            "categories": [sheet.name, 1, column, len(pairs), column],
            "values": [sheet.name, 1, column + 1, len(pairs), column + 1],
            "marker": {"type": "none"},
            **look,
        }
    )


def _furthest(bought: Bought) -> Fraction:
    """Where the last step ends: a little behind the last point and the budget."""
    assert bought.curve is not None
    last = bought.curve.points[-1].purchase.cost
    return max(last, bought.budget or Fraction(0)) * Fraction(11, 10) or Fraction(1)


def _steps(points: _Pairs, end: Fraction) -> list[tuple[Fraction, int]]:
    found: list[tuple[Fraction, int]] = []
    for cost, loads in points:
        if found:
            found.append((cost, found[-1][1]))
        found.append((cost, loads))
    return [*found, (end, found[-1][1])]


def _unit(total: int) -> int:
    return max(1, -(-total // 10))
