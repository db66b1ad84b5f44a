"""Workbooks made to do harm, each a few lines; some are near the limits, some far beyond."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from itertools import pairwise

from loadplan.workbook import limits
from tests.fuzz.small_book import Parts, cell, packed, parts_of
from tests.workbook.build import SMALLEST

_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_CARGO = "xl/worksheets/sheet1.xml"
_END = b"</sheetData>"
_OLE = bytes.fromhex("D0CF11E0A1B11AE1")


def _day() -> Parts:
    return parts_of(SMALLEST)


def with_rows(rows: str) -> bytes:
    """The smallest day with more rows on Cargo."""
    parts = _day()
    parts[_CARGO] = parts[_CARGO].replace(_END, rows.encode() + _END)
    return packed(parts)


def with_part(name: str, content: bytes) -> bytes:
    """The smallest day with one more part, or another one."""
    return packed({**_day(), name: content})


def _with_texts(texts: str) -> bytes:
    parts = _day()
    kind = "application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml"
    parts["[Content_Types].xml"] = parts["[Content_Types].xml"].replace(
        b"</Types>",
        f'<Override PartName="/xl/sharedStrings.xml" ContentType="{kind}"/></Types>'.encode(),
    )
    parts["xl/sharedStrings.xml"] = f'<sst xmlns="{_MAIN}">{texts}</sst>'.encode()
    return packed(parts)


def _entities(definition: str, use: str) -> bytes:
    sheet = f'<?xml version="1.0"?><!DOCTYPE x [{definition}]><worksheet xmlns="{_MAIN}">'
    sheet += f'<sheetData><row><c t="inlineStr"><is><t>{use}</t></is></c></row></sheetData>'
    return with_part(_CARGO, f"{sheet}</worksheet>".encode())


def _laughs() -> bytes:
    names = "abcdefghij"
    steps = [f'<!ENTITY {name} "{("&" + before + ";") * 10}">' for before, name in pairwise(names)]
    return _entities('<!ENTITY a "ha">' + "".join(steps), "&j;")


def _macros(name: str, kind: str) -> bytes:
    parts = _day()
    parts[name] = b"code"
    parts["[Content_Types].xml"] = parts["[Content_Types].xml"].replace(
        b"sheet.main+xml", kind.encode()
    )
    return packed(parts)


def _article(*ids: str) -> str:
    values = (*ids, "tracked machine", 20000, 20)
    return f"<row>{''.join(cell(value) for value in values)}</row>"


def _doubled() -> bytes:
    """Two parts of one name: the first is the day, the second hostile."""
    made = io.BytesIO(packed(_day()))
    with zipfile.ZipFile(made, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(
            _CARGO, "<worksheet><sheetData>" + "<row/>" * 10 + "</sheetData></worksheet>"
        )
    return made.getvalue()


def _lying() -> bytes:
    """An archive whose directory says that a part of 200 MB unpacks to 100 bytes."""
    content = with_part("xl/media/image1.png", bytes(200 * 2**20))
    size = (200 * 2**20).to_bytes(4, "little")
    return content.replace(size, (100).to_bytes(4, "little"))


def _ziggurat() -> bytes:
    """A hundred directory entries that all point at one part of 120 MB."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in _day().items():
            archive.writestr(name, part)
        archive.writestr("xl/0.xml", b"<x>" + bytes(1) * (limits.MOST_UNPACKED_BYTES - 2**20))
        for number in range(1, 100):
            copied = zipfile.ZipInfo(f"xl/{number}.xml")
            for field in ("header_offset", "compress_type", "CRC", "compress_size", "file_size"):
                setattr(copied, field, getattr(archive.getinfo("xl/0.xml"), field))
            archive.filelist.append(copied)
            archive.NameToInfo[copied.filename] = copied
    return made.getvalue()


FILES: dict[str, Callable[[], bytes]] = {
    "a part of nothing but noughts": lambda: with_part("xl/a.png", bytes(900 * 2**20)),
    "a directory that lies about a size": _lying,
    "one part under a hundred names": _ziggurat,
    "nested entities": _laughs,
    "one long entity used often": lambda: _entities(f'<!ENTITY a "{"a" * 50000}">', "&a;" * 20000),
    "an entity from a file": lambda: _entities('<!ENTITY a SYSTEM "file:///etc/passwd">', "&a;"),
    "an entity from the network": lambda: _entities('<!ENTITY a SYSTEM "http://[::1]/">', "&a;"),
    "a dimension of the whole grid": lambda: packed(
        {
            n: p.replace(b"<sheetData>", b'<dimension ref="A1:XFD1048576"/><sheetData>')
            for n, p in _day().items()
        }
    ),
    "100,000 blank formatted rows": lambda: with_rows('<row><c s="0"/></row>' * 100_000),
    "199,000 blank formatted rows": lambda: with_rows('<row><c s="0"/><c s="0"/></row>' * 199_000),
    "399,000 short texts": lambda: with_rows(
        ("<row>" + '<c t="inlineStr"><is><t>x</t></is></c>' * 500 + "</row>") * 798
    ),
    "399,000 numbers": lambda: with_rows(("<row>" + "<c><v>1</v></c>" * 500 + "</row>") * 798),
    "20,000 articles": lambda: with_rows(
        "".join(_article(f"E{number}", f"L{number}") for number in range(20_000))
    ),
    "20,000 articles, every cell wrong": lambda: with_rows(
        ("<row>" + '<c t="inlineStr"><is><t>=?</t></is></c>' * 5 + "</row>") * 20_000
    ),
    "one row to the last column, 300 times": lambda: with_rows(
        "".join(f'<row r="{n}"><c r="XFD{n}"><v>1</v></c></row>' for n in range(3, 303))
    ),
    "a cell in the last row": lambda: with_rows('<row r="1048576"><c><v>1</v></c></row>'),
    "rows that go back": lambda: with_rows('<row r="9"><c/></row><row r="1"><c/></row>' * 5000),
    "a formula of 8,000 brackets": lambda: with_rows(
        f"<row><c><f>{'(' * 8000}1{')' * 8000}</f></c></row>"
    ),
    "100,000 elements within each other": lambda: with_rows("<x>" * 90_000 + "</x>" * 90_000),
    "a million elements within each other": lambda: with_rows("<x>" * 10**6 + "</x>" * 10**6),
    "399,000 shared texts": lambda: _with_texts("<si><t>some text or other</t></si>" * 399_000),
    "3,000 shared texts of 32,767 characters": lambda: _with_texts(
        f"<si><t>{'x' * 32767}</t></si>" * 3000
    ),
    "a shared text of 100 MB": lambda: _with_texts(f"<si><t>{'x' * 100 * 2**20}</t></si>"),
    "a tag of 100 MB": lambda: with_rows(f'<row a="{"x" * 100 * 2**20}"/>'),
    "99,000 styles": lambda: with_part(
        "xl/styles.xml",
        f'<styleSheet xmlns="{_MAIN}"><cellXfs>{"<xf/>" * 99_000}</cellXfs></styleSheet>'.encode(),
    ),
    "macros": lambda: _macros("xl/vbaProject.bin", "sheet.main+xml"),
    "macros under another name": lambda: _macros("xl/x.bin", "x.vbaProject+xml"),
    "a workbook typed as one with macros": lambda: _macros(
        "xl/a.bin", "sheet.macroEnabled.main+xml"
    ),
    "macros of the oldest kind": lambda: with_part(
        "xl/macrosheets/sheet1.xml", f'<macrosheet xmlns="{_MAIN}"/>'.encode()
    ),
    "encrypted": lambda: _OLE + bytes(10_000),
    "a link to another file": lambda: with_part(
        "xl/externalLinks/externalLink1.xml", f'<externalLink xmlns="{_MAIN}"/>'.encode()
    ),
    "a part named outside the archive": lambda: with_part("../../../outside/x.xml", b"<x/>"),
    "two parts of one name": _doubled,
    "2,001 parts": lambda: packed({**_day(), **{f"xl/{n}.xml": b"<x/>" for n in range(2_001)}}),
    "half an archive": lambda: packed(_day())[:1500],
    "an archive in an archive": lambda: packed({"day.xlsx": packed(_day())}),
    "a sheet that is its own workbook": lambda: packed(
        {n: p.replace(b"worksheets/sheet1.xml", b"workbook.xml") for n, p in _day().items()}
    ),
    "every sheet the same part": lambda: packed(
        {
            n: p.replace(b"worksheets/sheet2.xml", b"worksheets/sheet1.xml")
            for n, p in _day().items()
        }
    ),
}
