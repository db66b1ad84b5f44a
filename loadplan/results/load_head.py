"""The top of a load sheet: does it go, and the trip in one line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loadplan.day.day import Day
from loadplan.day.load import Load
from loadplan.results import load_layout as at
from loadplan.results.flow import Flow
from loadplan.results.measure import height, lines
from loadplan.results.words import CHANGED, READY

_SPANS = ((0, 2), (3, 3), (4, 5), (6, 7), (8, 10), (11, 12))


@dataclass(frozen=True, slots=True)
class Banner:
    """The first line of a ready load, made to follow the verdicts once they are written."""

    flow: Flow

    def live(self, verdicts: Sequence[tuple[str, bool]]) -> None:
        """READY as long as every verdict (its cell, and whether it is met now) is ``met``."""
        if not verdicts:
            return
        tests = ",".join(f'{address}="met"' for address, _ in verdicts)
        now = READY if all(met for _, met in verdicts) else CHANGED
        formula = f'=IF(AND({tests}),"{READY}","{CHANGED}")'
        self.flow.sheet.formula(0, 0, formula, now, "ready banner")
        self.flow.sheet.page.conditional_format(
            0,
            0,
            0,
            at.LAST,
            {
                "type": "formula",
                "criteria": f"=NOT(AND({tests}))",
                "format": self.flow.sheet.styles["held banner"],
            },
        )


def banner(flow: Flow, held: str) -> Banner:
    """The status in words; ``held`` is what the load is short of, empty for a ready load."""
    text = f"HELD - does not go: short of {held}" if held else READY
    size = 16 if len(text) < 80 else 12
    style = "ready banner" if not held else "held banner" if size == 16 else "held banner long"
    count = lines(text, flow.width(0, at.LAST), size, True)
    row = flow.next(height(count, size) + 6)
    flow.sheet.across(row, 0, at.LAST, text, style)
    return Banner(flow)


def head(flow: Flow, day: Day, load: Load, *, links: bool) -> tuple[int, float]:
    """Load, trailer, driver, times, destination and date; then the notes.

    Answers with the last row that belongs on every page, and how many points it takes to there.
    """
    date = "" if day.date is None else day.date.isoformat()
    who = ", ".join(word for word in (load.trailer or "no trailer", load.driver) if word)
    fields = (
        ("Load", load.id),
        ("Trailer, driver", who),
        ("Out", day.clock(load.out)),
        ("Back", day.clock(load.back)),
        ("Destination", load.destination),
        ("Date", date),
    )
    top = flow.next(11)
    counts = [
        lines(value, flow.width(*span), 11, True)
        for (_, value), span in zip(fields, _SPANS, strict=True)
    ]
    below = flow.next(height(max(counts), 11))
    for (name, value), span in zip(fields, _SPANS, strict=True):
        flow.sheet.across(top, *span, name, "field name")
        flow.sheet.across(below, *span, value, "field")
    ends = (below, flow.points)
    notes = [day.yard, f"priority {load.priority}", load.notes]
    row = flow.paragraph(
        "   |   ".join(note for note in notes if note), "small wrap", size=8, last=9
    )
    if links:
        flow.sheet.link(row, at.WEAKEST, "Board", "to the board")
        flow.sheet.link(row, at.CREDITED, "Summary", "Summary")
    return ends
