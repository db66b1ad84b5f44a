"""A workbook as text: cell, value, number format and style, then links, merges and print set-up."""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterator

import openpyxl
from openpyxl.cell.cell import Cell, MergedCell
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from loadplan.results.styles import look, names

_ALIGN = {None: "", "general": "", "bottom": "", "vcenter": "center"}


def opened(content: bytes, *, values: bool = False) -> Workbook:
    """The workbook in ``content``: formulas, or the values stored with them."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return openpyxl.load_workbook(io.BytesIO(content), data_only=values)


def dump_sheet(formulas: Worksheet, values: Worksheet) -> str:
    """Everything a reader of the sheet can see or print, line by line."""
    return "\n".join([*_print(formulas), *_cells(formulas, values), ""])


def _print(sheet: Worksheet) -> Iterator[str]:
    setup, properties = sheet.page_setup, sheet.sheet_properties.pageSetUpPr
    fit = properties is not None and properties.fitToPage
    pages = f"{setup.fitToWidth or 1} x {setup.fitToHeight}" if fit else f"{setup.scale} %"
    yield f"sheet {sheet.title}: paper {setup.paperSize}, {setup.orientation}, {pages}"
    yield f"footer: {sheet.oddFooter.left.text} | {sheet.oddFooter.center.text} | " + str(
        sheet.oddFooter.right.text
    )
    yield f"printed: {sheet.print_area}; repeated: {sheet.print_title_rows}; frozen: " + str(
        sheet.freeze_panes
    )
    tables = [f"{table.name} {table.ref}" for table in sheet.tables.values()]
    yield f"tables: {', '.join(tables) or 'none'}"
    yield f"merged: {' '.join(sorted(str(area) for area in sheet.merged_cells.ranges)) or 'none'}"


def _cells(formulas: Worksheet, values: Worksheet) -> Iterator[str]:
    for row in formulas.iter_rows():
        for cell in row:
            if isinstance(cell, MergedCell) or cell.value is None:
                continue
            value = values[cell.coordinate].value
            text = f"{cell.value!r}"
            if cell.data_type == "f":
                text += f" = {value!r}"
            if cell.hyperlink is not None:
                text += f" -> {cell.hyperlink.location or cell.hyperlink.target}"
            yield f"{cell.coordinate} | {text} | {cell.number_format} | {style_of(cell)}"


def style_of(cell: Cell) -> str:
    """The name of the first style that looks like this cell, else its looks."""
    found = _signature(cell)
    return _NAMES.get(found, repr(found))


def _signature(cell: Cell) -> tuple[object, ...]:
    font, fill, place, border = cell.font, cell.fill, cell.alignment, cell.border
    return (
        font.size,
        bool(font.bold),
        _colour(font.color),
        _colour(fill.fgColor) if fill.fill_type == "solid" else "",
        bool(font.underline),
        bool(place.wrap_text),
        _ALIGN.get(place.horizontal, place.horizontal),
        _ALIGN.get(place.vertical, place.vertical),
        int(place.indent or 0),
        *(bool(side is not None and side.style) for side in (border.top, border.bottom)),
        *(bool(side is not None and side.style) for side in (border.left, border.right)),
    )


def _colour(colour: object) -> str:
    text = getattr(colour, "rgb", None)
    return text[-6:].upper() if isinstance(text, str) else ""


def _wanted(name: str) -> tuple[object, ...]:
    """The signature that a style asks for."""
    asked = look(name)
    box = bool(asked.get("border"))
    return (
        float(str(asked["font_size"])),
        bool(asked.get("bold")),
        str(asked.get("font_color", "")).lstrip("#").upper(),
        str(asked.get("bg_color", "")).lstrip("#").upper(),
        bool(asked.get("underline")),
        bool(asked.get("text_wrap")),
        _ALIGN.get(asked.get("align"), asked.get("align", "")),
        _ALIGN.get(asked.get("valign"), asked.get("valign", "")),
        int(str(asked.get("indent", 0))),
        *(box or bool(asked.get(side)) for side in ("top", "bottom", "left", "right")),
    )


def _by_signature() -> dict[tuple[object, ...], str]:
    found: dict[tuple[object, ...], str] = {}
    for name in names():
        for style in (name, f"{name} group"):
            found.setdefault(_wanted(style), style)
    return found


_NAMES = _by_signature()
