"""Which steps from line to line a call takes in some of the package's files."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from types import FrameType
from typing import Any

import loadplan

PACKAGE = Path(loadplan.__file__).parent
READER = ("workbook/", "day/", "rules/", "units.py", "numerals.py", "problems.py")
Arc = tuple[int, int, int]


class Arcs:
    """Collects the arcs of what runs inside ``with``; only in the reader's files."""

    def __init__(self) -> None:
        self.found: set[Arc] = set()
        self._numbers: dict[str, int] = {}

    def __enter__(self) -> Arcs:
        self.found = set()
        sys.settrace(self._call)
        return self

    def __exit__(self, *_: object) -> None:
        sys.settrace(None)

    def _call(self, frame: FrameType, event: str, _: object) -> Callable[..., Any] | None:
        number = self._number(frame.f_code.co_filename)
        if not number:
            return None
        found, last = self.found, 0

        def line(frame: FrameType, event: str, _: object) -> Callable[..., Any]:
            nonlocal last
            if event == "line":
                here = frame.f_lineno
                found.add((number, last, here))
                last = here
            return line

        return line

    def _number(self, name: str) -> int:
        if name not in self._numbers:
            path = Path(name)
            inside = path.is_relative_to(PACKAGE) and path.relative_to(
                PACKAGE
            ).as_posix().startswith(READER)
            self._numbers[name] = len(self._numbers) + 1 if inside else 0
        return self._numbers[name]
