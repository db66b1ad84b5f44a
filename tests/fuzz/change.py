"""Ways to change a workbook: its cells, its rows, its XML, its archive."""

from __future__ import annotations

import ast
import random
import re
from functools import cache

from tests.fuzz.arcs import PACKAGE
from tests.fuzz.small_book import Parts, cell, packed

_CELL = re.compile(rb"<c[ />].*?</c>|<c(?: [^>]*)?/>", re.S)
_ROW = re.compile(rb"<row[ />].*?</row>|<row(?: [^>]*)?/>", re.S)
_PIECE = re.compile(rb'"([^"<]*)"|>([^<]+)<')
_ODD = (
    *(
        "",
        " ",
        "0",
        "-0",
        "-1",
        "1e999",
        "NaN",
        "9" * 400,
        "1/0",
        "3 1/0",
        "1,000",
        "1,5",
        "1.000,5",
    ),
    *("12' 6\"", "3/8", "5/16-3/8", "3/8-5/16", "1/2, 3/8,", "½", "24:00", "25:00", "6:30 PM"),
    *("2026-02-30", "2026-07-14 06:30", "=1+1", "#REF!", "TRUE", "\u202e007", "\x00", "𝟙𝟚", "٣"),
    *("a;a", "boom (pinned)", "(pinned)", "; ;", "x" * 3000, "İ", "ß", "5 t", "5 ft 3", "-5 kg"),
)
_RAW = (
    *(b"", b"0", b"-1", b"1e999", b"NaN", b"A1", b"ZZZ1", b"s", b"d", b"e", b"b", b"inlineStr"),
    *(b"&amp;", b"&#x1;", b"&#xD800;", b"9" * 5000, b"\xff\xfe", b"rId1", b"../../x", b"str", b"n"),
)
_CELLS = (
    *("<c><f>1+1</f></c>", "<c><f>1+1</f><v>2</v></c>", '<c t="str"><f>A1</f><v></v></c>'),
    *('<c t="e"><v>#DIV/0!</v></c>', '<c t="b"><v>1</v></c>', '<c t="d"><v>2026-07-14</v></c>'),
    *('<c t="s"><v>0</v></c>', "<c><v>1E400</v></c>", "<c><v>45000.5</v></c>", '<c r="C1"/>'),
)


@cache
def words() -> tuple[str, ...]:
    """What the reader itself compares with: the short texts in its source."""
    found: set[str] = set()
    for folder in ("workbook", "day", "rules", "rules/commodities"):
        for path in (PACKAGE / folder).glob("*.py"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Constant) and isinstance(node.value, str):
                    found.add(node.value)
    return tuple(sorted(word for word in found if 0 < len(word) <= 40))


def changed(parts: Parts, other: Parts, pick: random.Random) -> bytes:
    """An archive of ``parts`` with one to five changes, some of them taken from ``other``."""
    parts = dict(parts)
    for _ in range(pick.choice((1, 1, 2, 3, 5))):
        sheets = sorted(name for name in parts if "worksheets/" in name) or sorted(parts)
        name = pick.choice(sheets)
        part = parts[name]
        how = pick.randrange(12)
        if how < 5:
            parts[name] = _put(part, _CELL, _value(pick), pick)
        elif how == 5:
            parts[name] = _moved(part, pick)
        elif how == 6 and (pieces := list(_CELL.finditer(part))):
            parts[name] = _put(part, _CELL, pick.choice(pieces)[0], pick)
        elif how == 7:
            parts[name] = other.get(name, part)
        elif how == 8 and len(parts) > 1 and pick.random() < 0.3:
            del parts[pick.choice(sorted(parts))]
        elif how in (9, 10):
            anywhere = pick.choice(sorted(parts))
            parts[anywhere] = _piece(parts[anywhere], pick)
        else:
            parts[name] = _bytes(part, pick)
    content = packed(parts)
    return _bytes(content, pick) if pick.random() < 0.03 else content


def _value(pick: random.Random) -> bytes:
    how = pick.randrange(8)
    if how < 4:
        return cell(pick.choice(words())).encode("utf-8", "replace")
    if how == 4:
        return cell(
            pick.choice((0, 1, -1, 2, 0.1, 1e300, 10_000, 4_536, 1e-9, None, True))
        ).encode()
    if how == 5:
        return pick.choice(_CELLS).encode()
    return cell(pick.choice(_ODD)).encode("utf-8", "replace")


def _put(part: bytes, pattern: re.Pattern[bytes], new: bytes, pick: random.Random) -> bytes:
    """``part`` with one match of ``pattern`` replaced."""
    places = list(pattern.finditer(part))
    if not places:
        return part
    place = pick.choice(places)
    return part[: place.start()] + new + part[place.end() :]


def _moved(part: bytes, pick: random.Random) -> bytes:
    """``part`` with a row doubled, dropped, or put in another's place."""
    rows = [place[0] for place in _ROW.finditer(part)]
    if not rows:
        return part
    return _put(part, _ROW, pick.choice((b"", pick.choice(rows), pick.choice(rows) * 2)), pick)


def _piece(part: bytes, pick: random.Random) -> bytes:
    """``part`` with the value of one attribute, or one text, replaced."""
    pieces = list(_PIECE.finditer(part))
    if not pieces:
        return part
    piece = pick.choice(pieces)
    group = 1 if piece[1] is not None else 2
    word = pick.choice(words()).replace("&", "&amp;").replace("<", "&lt;").encode()
    new = pick.choice((pick.choice(_RAW), word, pick.choice(pieces)[group] or b""))
    return part[: piece.start(group)] + new + part[piece.end(group) :]


def _bytes(part: bytes, pick: random.Random) -> bytes:
    """``part`` with a byte changed, some cut out, or some put in."""
    if not part:
        return part
    at, size = pick.randrange(len(part)), pick.choice((0, 1, 1, 4, 100))
    return part[:at] + pick.randbytes(pick.randrange(4)) + part[at + size :]
