"""What a held load is short of, and the pieces that are already on it."""

from __future__ import annotations

from collections.abc import Sequence

from loadplan.day.day import Day
from loadplan.outcome.shortage import Shortage
from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines

_ARTICLE, _WAY = ("Article", 0, 2), ("Cheapest way out", 10, 12)
_WITH_WHY = (_ARTICLE, ("Short of", 3, 5), ("Why", 6, 9), _WAY)
_WITHOUT = (_ARTICLE, ("Short of", 3, 9), _WAY)


def shortage_rows(flow: Flow, shortages: Sequence[Shortage], *, why: bool) -> None:
    """One row for each thing the load is short of; ``why`` where nothing below tells it."""
    spans = _WITH_WHY if why else _WITHOUT
    row = flow.next(14)
    for name, first, last in spans:
        flow.sheet.across(row, first, last, name, "head")
    for one in shortages:
        pieces = "" if one.pieces is None else f"{one.pieces} x "
        reason = [one.why] if why else []
        texts = (one.article or "whole load", f"{pieces}{one.short_of}", *reason, one.way_out)
        counts = [
            lines(text, flow.width(first, last), 9)
            for text, (_, first, last) in zip(texts, spans, strict=True)
        ]
        row = flow.next(height(max(counts), 9))
        for text, (_, first, last) in zip(texts, spans, strict=True):
            flow.sheet.across(row, first, last, text, "cell wrap")


def fixed_rows(flow: Flow, day: Day, load: str) -> None:
    """The pieces that the ``Fixed`` sheet puts on the load; nothing where there are none."""
    pieces = [piece for piece in day.fixed if piece.load == load]
    if not pieces:
        return
    row = flow.next(15)
    flow.sheet.across(row, 0, at.LAST, "Already on, from the sheet Fixed", "heading")
    lines_ = [
        f"{piece.article}, {piece.position}, number {piece.number}: "
        f"{day.gear_by_id[piece.gear].kind.value} {piece.gear}"
        for piece in pieces
    ]
    flow.pairs([(line, "small wrap") for line in lines_], at.SPLIT)
