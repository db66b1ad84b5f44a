"""What a workbook's XML would cost to read, counted on its bytes before any of it is parsed.

In UTF-8, the only encoding let through, every element stands as its own ``<name`` in the bytes,
so the counts are never too low. (Comments can make them too high.)
"""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from typing import IO

from loadplan.workbook import limits

_MARKUP = re.compile(rb"\A(?:\xef\xbb\xbf|\xff\xfe|\xfe\xff)?[\s\x00]*<")
_ENCODING = re.compile(rb"\A[^>]{0,200}?encoding\s*=\s*[\"']([A-Za-z0-9._-]+)")
_UTF_8 = frozenset({b"utf-8", b"utf8", b"us-ascii", b"ascii"})
# Written any other way, an element counts among the others.
_ENDS = (b" ", b">", b"/")
_BLOCK = 8 * limits.LONGEST_PIECE


class Unfit(Exception):  # noqa: N818
    """A part is of a kind that no workbook needs; the message says which."""


@dataclass(slots=True)
class Weight:
    """Elements of all parts so far; ``inner`` are the values within cells and shared texts."""

    cells: int = 0
    rows: int = 0
    strings: int = 0
    inner: int = 0
    other: int = 0
    long_piece: bool = False

    def add(self, block: bytes) -> None:
        """Count the elements that begin in ``block``, and look for a piece that is too long.

        A parser looks at an unfinished tag again with every block it is fed: a tag of many
        megabytes would take hours.
        """
        opened = block.count(b"<") - block.count(b"</")
        cells, rows, strings = _count(block, b"c"), _count(block, b"row"), _count(block, b"si")
        inner = sum(_count(block, name) for name in (b"v", b"f", b"is", b"t"))
        self.cells += cells
        self.rows += rows
        self.strings += strings
        self.inner += inner
        self.other += max(0, opened - cells - rows - strings - inner)
        piece = limits.LONGEST_PIECE
        for start in range(0, len(block) - piece + 1, piece):
            if block.find(b">", start, start + piece) < 0:
                self.long_piece = True

    def excess(self) -> str:
        """What there is too much of, as a sentence; "" where nothing is."""
        for have, most, what in (
            (self.cells, limits.MOST_CELLS, "cells, blank formatted ones counted"),
            (self.rows, limits.MOST_ROWS, "rows, blank formatted ones counted"),
            (self.strings, limits.MOST_STRINGS, "texts"),
            (self.other, limits.MOST_OTHER_ELEMENTS, "styles, rules and other elements"),
        ):
            if have > most:
                return f"The workbook has over {most:,} {what}."
        if self.inner > 2 * self.cells + self.strings + limits.MOST_OTHER_ELEMENTS:
            return "The cells of the workbook hold more than one value each."
        return "A tag or text in the workbook is far too long." if self.long_piece else ""


def _count(block: bytes, name: bytes) -> int:
    return sum(block.count(b"<" + name + end) for end in _ENDS)


def weigh(archive: zipfile.ZipFile) -> str:
    """What is too much in ``archive``, as a sentence; "" where nothing is.

    Stops at the first excess. Raises :class:`Unfit`.
    """
    weight = Weight()
    for part in archive.infolist():
        with archive.open(part) as source:
            for at, block in enumerate(_blocks(source)):
                # Whatever a part is called, a parser takes it only if it begins like this.
                if at == 0 and not _MARKUP.match(block):
                    break
                _check(block, first=at == 0)
                weight.add(block)
                if excess := weight.excess():
                    return excess
    return ""


def _blocks(source: IO[bytes]) -> Iterator[bytes]:
    """The bytes of a part in blocks that end where an element begins, so that none is cut."""
    rest = b""
    while more := source.read(_BLOCK):
        block = rest + more
        cut = block.rfind(b"<")
        cut = cut if cut > 0 else len(block)
        rest = block[cut:]
        yield block[:cut]
    if rest:
        yield rest


def _check(block: bytes, first: bool) -> None:
    encoding = _ENCODING.match(block) if first else None
    if b"\x00" in block or (encoding and encoding[1].lower() not in _UTF_8):
        raise Unfit("it is not written in UTF-8")
    if b"<!DOCTYPE" in block:
        raise Unfit("it defines a document type")
