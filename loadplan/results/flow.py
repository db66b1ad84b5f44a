"""Rows written from the top down, with the height they take on paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

from loadplan.results.measure import height, lines
from loadplan.results.sheet import Sheet

# Left of the texts in the second column of pairs.
_GUTTER = 9
Styled: TypeAlias = tuple[str, str]


class Flow:
    """A sheet filled row by row; it knows each column's width and adds up the heights.

    ``starts`` are rows at which a new page may begin, ``sections`` those of them that a section
    begins with.
    """

    def __init__(self, sheet: Sheet, widths: tuple[int, ...]) -> None:
        self.sheet, self.widths = sheet, widths
        self.row, self.points, self._kept = 0, 0.0, False
        self.starts: list[tuple[int, float]] = []
        self.sections: set[int] = set()
        for column, width in enumerate(widths):
            sheet.page.set_column_pixels(column, column, width)

    def next(self, points: float) -> int:
        """A new row of ``points`` height; its number from 0."""
        row = self.row
        self.sheet.page.set_row(row, points)
        self.row += 1
        self.points += points
        return row

    def several(self, count: int, points: float) -> int:
        """``count`` new rows of ``points`` height each; the number of the first."""
        first = self.row
        for _ in range(count):
            self.next(points)
        return first

    def may_break(self, *, section: bool = False) -> None:
        """A new page may begin at the next row, unless it is kept with what stands above.

        It begins more gladly where a whole ``section`` does.
        """
        if self._kept:
            self._kept = False
            return
        self.starts.append((self.row, self.points))
        if section:
            self.sections.add(self.row)

    def keep_next(self) -> None:
        """The next place where a new page may begin is none: a heading keeps its first row."""
        self._kept = True

    def width(self, first: int, last: int) -> int:
        """Width of the columns from ``first`` to ``last`` together, in pixels."""
        return sum(self.widths[first : last + 1])

    def paragraph(
        self, text: str, style: str, *, size: float = 9, first: int = 0, last: int | None = None
    ) -> int:
        """A row of wrapped text over the columns, as high as it needs; its number."""
        end = len(self.widths) - 1 if last is None else last
        bold = "bold" in style or "banner" in style
        row = self.next(height(lines(text, self.width(first, end), size, bold), size))
        self.sheet.across(row, first, end, text, style)
        return row

    def pairs(self, texts: Sequence[Styled], split: int, *, size: float = 8) -> None:
        """Texts side by side, two to a row: up to column ``split`` and behind it.

        Those that take as many lines stand together, which saves paper; otherwise the order stays.
        """
        spans = ((0, split), (split + 1, len(self.widths) - 1))
        width = min(self.width(*span) for span in spans) - _GUTTER
        taken = [lines(text, width, size, style != "small wrap") for text, style in texts]
        order = sorted(range(len(texts)), key=taken.__getitem__)
        for at in range(0, len(order), 2):
            both = order[at : at + 2]
            row = self.next(height(max(taken[place] for place in both), size))
            for place, span, gutter in zip(both, spans, ("", " aside"), strict=False):
                text, style = texts[place]
                self.sheet.across(row, *span, text, f"{style}{gutter}")
