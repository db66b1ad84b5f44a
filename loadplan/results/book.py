"""A new, empty workbook: its options, its font, its properties."""

from __future__ import annotations

import io
from typing import Any

import xlsxwriter

from loadplan.results.styles import FONT
from loadplan.tables.clean import clean

_OPTIONS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    # Arial, or a font as wide as Arial, is everywhere, so that columns print as wide as planned.
    "default_format_properties": {"font_name": FONT, "font_size": 10, "font_scheme": "none"},
}


def new_book(out: io.BytesIO, title: str, subject: str) -> Any:
    """A workbook that is written to ``out`` when it is closed."""
    book = xlsxwriter.Workbook(out, _OPTIONS)
    book.set_properties({"title": clean(title), "subject": clean(subject)})
    book.set_calc_mode("auto")
    return book
