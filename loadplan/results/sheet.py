"""One worksheet to write on, by style names; text is never anything but text."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeAlias

from loadplan.results.styles import SIXTHS, Styles, decimals
from loadplan.tables.clean import clean

Number: TypeAlias = int | float | Fraction

# Styles with a number format of their own.
_OWN_FORMAT = ("percent", "half", "decimal", "slot")


@dataclass(frozen=True)
class Sheet:
    """A worksheet with the workbook's styles. Rows and columns count from 0."""

    name: str
    page: Any
    styles: Styles

    def text(self, row: int, column: int, text: str, style: str = "text") -> None:
        """Text; what begins with ``=``, ``+``, ``-`` or ``@`` stays text."""
        if text:
            self.page.write_string(row, column, clean(text), self.styles[style])
        else:
            self.page.write_blank(row, column, None, self.styles[style])

    def number(self, row: int, column: int, value: Number, style: str = "number") -> None:
        """A number, whole or as near as a float comes, with the decimals it has."""
        shown = plain_number(value)
        if "half" in style and round(shown, 4) != shown:
            self.page.write_number(row, column, shown, self.styles.get(style, SIXTHS))
            return
        if any(word in style for word in _OWN_FORMAT):
            self.page.write_number(row, column, shown, self.styles[style])
            return
        form = decimals(shown)
        style_ = self.styles[style] if form == "#,##0" else self.styles.get(style, form)
        self.page.write_number(row, column, shown, style_)

    def formula(
        self, row: int, column: int, formula: str, value: Number | str, style: str = "number"
    ) -> None:
        """A formula together with the value it has now."""
        stored = value if isinstance(value, str) else plain_number(value)
        form = self.styles[style]
        if style.endswith(("number", "bold")) and not isinstance(stored, str):
            shown = decimals(stored)
            form = form if shown == "#,##0" else self.styles.get(style, shown)
        self.page.write_formula(row, column, formula, form, stored)

    def blank(self, row: int, columns: Sequence[int], style: str) -> None:
        """Empty cells that have a style."""
        for column in columns:
            self.page.write_blank(row, column, None, self.styles[style])

    def across(self, row: int, first: int, last: int, text: str, style: str) -> None:
        """Text over several columns of a row (merged; not for tables)."""
        if first == last:
            self.text(row, first, text, style)
            return
        self.page.merge_range(row, first, row, last, "", self.styles[style])
        self.text(row, first, text, style)

    def link(self, row: int, column: int, target: str, text: str, style: str = "link") -> None:
        """A link to the top of the sheet ``target``."""
        quoted = target.replace("'", "''")
        self.page.write_url(
            row, column, f"internal:'{quoted}'!A1", self.styles[style], string=clean(text)
        )


def plain_number(value: Number) -> int | float:
    """``value`` as a spreadsheet holds it."""
    if isinstance(value, Fraction):
        return value.numerator if value.denominator == 1 else value.numerator / value.denominator
    return value
