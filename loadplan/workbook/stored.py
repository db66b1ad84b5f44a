"""What a sheet stores beside its values: formulas without a stored value, numbers that are none.

A second look at a sheet's XML, paid for only where it holds a formula or cannot be read.
"""

from __future__ import annotations

import re
import zipfile
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import IO
from xml.etree import ElementTree

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_FORMULA = re.compile(rb"<(?:[\w.-]+:)?f[\s/>]")
_NUMBER = re.compile(r"\s*[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?\s*")
_ADDRESS = re.compile(r"([A-Z]{1,3})([0-9]{1,7})")
_BLOCK = 2**20
Events = Iterator[tuple[str, ElementTree.Element]]


def lost_formulas(path: Path, part: str) -> frozenset[tuple[int, int]]:
    """Cells, as (row, column) from 1, that hold a formula and no value it once gave.

    A formula that gave an empty text has stored that, and is not among them.
    """
    with zipfile.ZipFile(path) as archive:
        if not _has_formula(archive, part):
            return frozenset()
        return frozenset(
            place
            for place, cell in _cells(archive, part, _checked_already)
            if cell.find(f"{_MAIN}f") is not None
            and not cell.findtext(f"{_MAIN}v")
            and not (cell.get("t") == "str" and cell.find(f"{_MAIN}v") is not None)
        )


def bad_numbers(path: Path, part: str) -> list[tuple[int, int]]:
    """Cells, as (row, column) from 1, stored as a number whose text is no number."""
    with zipfile.ZipFile(path) as archive:
        return [
            place
            for place, cell in _cells(archive, part, _checking)
            if cell.get("t", "n") == "n"
            and not _NUMBER.fullmatch(cell.findtext(f"{_MAIN}v") or "0")
        ]


@cache
def column_letter(column: int) -> str:
    """``A`` for 1, ``AA`` for 27."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def column_number(letters: str) -> int:
    """1 for ``A``, 27 for ``AA``."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


def _has_formula(archive: zipfile.ZipFile, part: str) -> bool:
    tail = b""
    with archive.open(part) as source:
        while block := source.read(_BLOCK):
            if _FORMULA.search(tail + block):
                return True
            tail = block[-64:]
    return False


def _checked_already(source: IO[bytes]) -> Events:
    """The sheet has just been read by a parser that refuses entities; the fast one will do."""
    return ElementTree.iterparse(source, events=("start", "end"))


def _checking(source: IO[bytes]) -> Events:
    from defusedxml.ElementTree import iterparse

    events: Events = iterparse(source, events=("start", "end"))
    return events


def _cells(
    archive: zipfile.ZipFile, part: str, parse: Callable[[IO[bytes]], Events]
) -> Iterator[tuple[tuple[int, int], ElementTree.Element]]:
    """Each cell of a sheet with its place; cells and rows without an address follow on."""
    row = column = 0
    with archive.open(part) as source:
        for event, element in parse(source):
            if element.tag == f"{_MAIN}row":
                if event == "start":
                    row, column = int(float(element.get("r", row + 1))), 0
                else:
                    element.clear()
            elif event == "end" and element.tag == f"{_MAIN}c":
                match = _ADDRESS.fullmatch(element.get("r", ""))
                column = column_number(match[1]) if match else column + 1
                yield (int(match[2]) if match else row, column), element
