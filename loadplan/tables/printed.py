"""Tables on the terminal: as text to read, as one CSV, as JSON."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterator, Mapping

from loadplan.tables.clean import clean
from loadplan.tables.csv import csv_text
from loadplan.tables.table import Cell, Table, number
from loadplan.text import plain

_GAP = "  "
_NARROWEST, _LONGEST_WORD, _STEPS = 7, 14, 12


def as_text(tables: Mapping[str, Table], width: int) -> Iterator[str]:
    """Each table under its name, cells wrapped so that lines fit in ``width``."""
    for place, (name, table) in enumerate(tables.items()):
        if place:
            yield ""
        yield name
        yield "-" * len(name)
        yield from _lines(table, width) if table.rows else ("none",)


def as_csv(tables: Mapping[str, Table]) -> Iterator[str]:
    """All tables as one: its first column names the table, the others are all their headings."""
    headings = list(dict.fromkeys(one for table in tables.values() for one in table.headings))
    rows: list[tuple[Cell, ...]] = []
    for name, table in tables.items():
        for row in table.rows:
            cells = dict(zip(table.headings, row, strict=True))
            rows.append((name, *(cells.get(heading) for heading in headings)))
    joined = Table(headings=("Table", *headings), rows=tuple(rows))
    yield from csv_text(joined).split("\r\n")[:-1]


def as_json(tables: Mapping[str, Table]) -> Iterator[str]:
    """An object with a list for each table, and in it an object for each row."""
    found = {
        name: [
            {heading: number(cell) for heading, cell in zip(table.headings, row, strict=True)}
            for row in table.rows
        ]
        for name, table in tables.items()
    }
    yield from json.dumps(found, indent=2, ensure_ascii=False).split("\n")


def _lines(table: Table, width: int) -> Iterator[str]:
    rows = [table.headings, *(tuple(_shown(cell) for cell in row) for row in table.rows)]
    widths = _widths(rows, width)
    ruled = tuple("-" * wide for wide in widths)
    for row in (rows[0], ruled, *rows[1:]):
        cells = [
            textwrap.wrap(cell, wide, break_on_hyphens=False) or [""]
            for cell, wide in zip(row, widths, strict=True)
        ]
        for at in range(max(map(len, cells))):
            parts = [cell[at] if at < len(cell) else "" for cell in cells]
            padded = (part.ljust(wide) for part, wide in zip(parts, widths, strict=True))
            yield _GAP.join(padded).rstrip()


def _widths(rows: list[tuple[str, ...]], width: int) -> list[int]:
    """As wide as the longest cell; then columns give way where that costs the fewest lines."""
    columns = [[len(cell) for cell in column] for column in zip(*rows, strict=True)]
    least = [max(_NARROWEST, *map(_longest_word, column)) for column in zip(*rows, strict=True)]
    widths = [max(1, *lengths) for lengths in columns]
    least = [min(pair) for pair in zip(least, widths, strict=True)]
    room = width - len(_GAP) * (len(widths) - 1)
    while (excess := sum(widths) - room) > 0:
        step = max(1, excess // _STEPS)
        open_ = [at for at, wide in enumerate(widths) if wide - step >= least[at]]
        if not open_:
            break
        widths[min(open_, key=lambda at: _lines_then(columns, widths, at, step))] -= step
    return widths


def _lines_then(columns: list[list[int]], widths: list[int], at: int, step: int) -> tuple[int, int]:
    """About how many lines there are with column ``at`` narrower; the widest one first on ties."""
    then = [wide - step if place == at else wide for place, wide in enumerate(widths)]
    lines = sum(
        max(-(-length // wide) for length, wide in zip(row, then, strict=True))
        for row in zip(*columns, strict=True)
    )
    return lines, -widths[at]


def _longest_word(cell: str) -> int:
    return min(_LONGEST_WORD, max(map(len, cell.split()), default=0))


def _shown(cell: Cell) -> str:
    if cell is None:
        return ""
    return clean(cell) if isinstance(cell, str) else plain(cell)
