"""Workbooks with nothing in them but what a reader needs: a few hundred bytes a sheet."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

import openpyxl

_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml"
Parts = dict[str, bytes]


def parts_of(sheets: Mapping[str, Sequence[Sequence[Any]]]) -> Parts:
    """The parts of a workbook with ``sheets``; texts stand in their cells."""
    names = {f"sheet{at}": name for at, name in enumerate(sheets, start=1)}
    tabs = "".join(
        f'<sheet name="{escape(name)}" sheetId="{at}" r:id="rId{at}"/>'
        for at, name in enumerate(sheets, start=1)
    )
    links = "".join(
        f'<Relationship Id="rId{at}" Type="{_OFFICE}/worksheet" Target="worksheets/sheet{at}.xml"/>'
        for at in range(1, len(sheets) + 1)
    )
    kinds = "".join(
        f'<Override PartName="/xl/worksheets/{part}.xml" ContentType="{_TYPE}.worksheet+xml"/>'
        for part in names
    )
    texts = {
        "[Content_Types].xml": f'<Types xmlns="{_PACKAGE}/content-types"><Default Extension="rels"'
        f' ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override '
        f'PartName="/xl/workbook.xml" ContentType="{_TYPE}.sheet.main+xml"/>{kinds}</Types>',
        "_rels/.rels": f'<Relationships xmlns="{_PACKAGE}/relationships"><Relationship Id="rId1" '
        f'Type="{_OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<workbook xmlns="{_MAIN}" xmlns:r="{_OFFICE}"><sheets>{tabs}</sheets>'
        "</workbook>",
        "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{_PACKAGE}/relationships">{links}'
        "</Relationships>",
    }
    for part, name in names.items():
        rows = "".join(_row(row) for row in sheets[name])
        texts[f"xl/worksheets/{part}.xml"] = (
            f'<worksheet xmlns="{_MAIN}"><sheetData>{rows}</sheetData></worksheet>'
        )
    return {name: text.encode() for name, text in texts.items()}


def cell(value: Any) -> str:
    """One cell with its value."""
    if value is None:
        return "<c/>"
    if isinstance(value, bool):
        return f'<c t="b"><v>{int(value)}</v></c>'
    if isinstance(value, (int, float)):
        return f"<c><v>{value!r}</v></c>"
    return f'<c t="inlineStr"><is><t xml:space="preserve">{escape(str(value))}</t></is></c>'


def _row(values: Sequence[Any]) -> str:
    return f"<row>{''.join(cell(value) for value in values)}</row>"


def packed(parts: Parts) -> bytes:
    """The archive of ``parts``."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in parts.items():
            info = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            archive.writestr(info, part, zipfile.ZIP_DEFLATED)
    return made.getvalue()


def unpacked(content: bytes) -> Parts:
    """The parts of an archive."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def sheets_in(path: Path) -> dict[str, list[tuple[Any, ...]]]:
    """The values of a workbook, sheet by sheet."""
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book.worksheets}
