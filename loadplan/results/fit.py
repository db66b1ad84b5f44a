"""How a sheet goes on paper: on one page while its type stays readable, else page by page.

Pages of several begin where a part of the sheet begins. Programs that fit a sheet to a width by
themselves ignore page breaks, so there the scale is set instead.
"""

from __future__ import annotations

from loadplan.day.units import Units
from loadplan.results.flow import Flow

# Paper less margins, in points, upright: Letter and A4.
_UPRIGHT = {Units.US: (561.0, 724.0), Units.METRIC: (544.0, 774.0)}
_ON_ITS_SIDE = {Units.US: (741.0, 544.0), Units.METRIC: (790.0, 528.0)}
_POINTS_PER_PIXEL = 0.75
_SMALLEST = 0.635
# Programs differ a little in how wide a column prints.
_SPARE = 0.9
_WELL_FILLED = 0.5


def fit(flow: Flow, units: Units, head: tuple[int, float]) -> None:
    """An upright sheet: one page, or as many as needed with its head on each.

    ``head`` is the last row of the head, and how many points it takes.
    """
    wide, tall = _UPRIGHT[units]
    flow.sheet.page.center_horizontally()
    _print_all(flow)
    if flow.points * _SMALLEST <= tall:
        flow.sheet.page.fit_to_pages(1, 1)
        return
    flow.sheet.page.repeat_rows(0, head[0])
    _in_pages(flow, wide, tall, head[1])


def fit_wide(flow: Flow, units: Units) -> None:
    """A sheet on its side, as wide as the paper and as many pages as needed."""
    _print_all(flow)
    _in_pages(flow, *_ON_ITS_SIDE[units])


def _print_all(flow: Flow) -> None:
    flow.sheet.page.print_area(0, 0, flow.row - 1, len(flow.widths) - 1)


def _in_pages(flow: Flow, wide: float, tall: float, head: float = 0.0) -> None:
    scale = min(1.0, wide / (sum(flow.widths) * _POINTS_PER_PIXEL) * _SPARE)
    flow.sheet.page.set_print_scale(int(scale * 100))
    flow.sheet.page.set_h_pagebreaks(breaks(flow, tall / scale, head))


def breaks(flow: Flow, tall: float, head: float = 0.0) -> list[int]:
    """Rows before which a new page begins, so that each page is at most ``tall`` points high.

    A page ends where a section ends if that leaves at least half of it filled. From the second
    page on the ``head`` is repeated.
    """
    found: list[int] = []
    page_starts, section = 0.0, (0, 0.0)
    ends = [points for _, points in flow.starts[1:]] + [flow.points]
    for (row, points), end in zip(flow.starts, ends, strict=True):
        if row in flow.sections:
            section = (row, points)
        if end - page_starts > tall and points > page_starts + (head if found else 0.0):
            whole = section[1] - page_starts >= tall * _WELL_FILLED
            at = section if whole and end - section[1] <= tall else (row, points)
            found.append(at[0])
            page_starts = at[1] - head
    return found
