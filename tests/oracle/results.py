"""The flat sheets of a results workbook as plain records."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from tests.oracle.cells import Cell, key, number, text
from tests.oracle.day import Day
from tests.oracle.workbook import Record, read_sheets

SHEETS = ("summary", "tie-downs", "pick list", "gear use", "checks")


@dataclass(kw_only=True)
class TieDown:
    """One row of ``Tie-downs``; gear ids and the position are case-folded."""

    row: Record
    load: str
    article: str
    position: str
    number: int
    member: str
    tensioner: str | None
    shackles: Counter[str]
    protectors: Counter[str]

    @property
    def where(self) -> str:
        """For messages."""
        r = self.row
        return f"{text(r['load'])}, {text(r['article'])}, {self.position} {self.number}"

    @property
    def pieces(self) -> Counter[str]:
        """Every piece taken."""
        found = Counter([self.member]) + self.shackles + self.protectors
        if self.tensioner:
            found[self.tensioner] += 1
        return found


@dataclass(kw_only=True)
class Results:
    """What the results workbook says."""

    summary: dict[str, Record]
    tie_downs: list[TieDown]
    pick_list: list[Record]
    gear_use: dict[str, Record]
    checks: list[Record]
    unread: list[str]

    @property
    def ready(self) -> list[str]:
        """Case-folded ids of the loads that go."""
        return [name for name, r in self.summary.items() if key(r["status"]) == "ready"]


def read_results(path: str | Path, day: Day) -> Results:
    """Reads the flat sheets; what cannot be understood is listed in ``unread``."""
    sheets = read_sheets(path)
    unread = [f"sheet {name} is missing" for name in SHEETS if name not in sheets]
    results = Results(
        summary={key(r["load"]): r for r in sheets.get("summary", [])},
        tie_downs=[],
        pick_list=sheets.get("pick list", []),
        gear_use={key(r["gear"]): r for r in sheets.get("gear use", [])},
        checks=sheets.get("checks", []),
        unread=unread,
    )
    for r in sheets.get("tie-downs", []):
        results.tie_downs.append(_tie_down(r, day, unread))
    return results


def _tie_down(r: Record, day: Day, unread: list[str]) -> TieDown:
    shackles: Counter[str] = Counter()
    protectors: Counter[str] = Counter()
    for name, pieces in _connectors(text(r["connectors"]), unread):
        kind = day.gear[name].kind if name in day.gear else ""
        if kind not in ("shackle", "edge protector"):
            unread.append(f"{name} among connectors is {kind or 'not in Gear'}")
        (shackles if kind == "shackle" else protectors)[name] += pieces
    tensioner = key(r["tensioner"])
    return TieDown(
        row=r,
        load=key(r["load"]),
        article=key(r["article"]),
        position=" ".join(key(r["position"]).split()),
        number=int(number(r["no"])),
        member=key(r["tension member"]),
        tensioner=tensioner if tensioner not in ("", "built in", "trailer winch") else None,
        shackles=shackles,
        protectors=protectors,
    )


def _connectors(written: str, unread: list[str]) -> Iterator[tuple[str, int]]:
    for part in filter(None, written.split("; ")):
        match = re.fullmatch(r"(\d+) x (.+)", part.strip())
        if match is None:
            unread.append(f"connectors cannot be read: {part!r}")
        else:
            yield match[2].casefold(), int(match[1])


def amount(cell: Cell) -> Fraction | None:
    """A numeric cell exactly; None where blank or words."""
    return number(cell) if isinstance(cell, (int, float)) and not isinstance(cell, bool) else None


def is_need(cell: Cell, exact: Fraction) -> bool:
    """Whether a cell shows ``exact``, or ``exact`` rounded up to a whole number."""
    shown = amount(cell)
    return shown is not None and (_near(shown, exact) or shown == -(-exact // 1))


def is_strength(cell: Cell, exact: Fraction) -> bool:
    """Whether a cell shows ``exact``, or ``exact`` rounded down to a whole number."""
    shown = amount(cell)
    return shown is not None and (_near(shown, exact) or shown == exact // 1)


def _near(shown: Fraction, exact: Fraction) -> bool:
    return abs(shown - exact) <= Fraction(1, 10**9) * max(1, abs(exact))
