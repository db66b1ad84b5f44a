"""Fuzz the reader: ``python -m tests.fuzz --minutes 30 --found FOLDER [--seed N] [--keep]``.

Workbooks that take a new step from line to line in the reader are kept and changed further. What
the reader makes a day of is also planned, judged and written now and then. Anything but a day or a
rejection is a find: its workbook and its trace go to FOLDER. ``--keep`` puts the smallest set of
workbooks that takes every step found into ``tests/data/fuzz/``, at most ``MOST_KEPT`` of them;
the tests read those again.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
import traceback
from pathlib import Path

from loadplan.api import plan_day
from loadplan.day.day import Day
from loadplan.problems import WorkbookRejected
from loadplan.results.workbook import results_bytes
from loadplan.workbook.read import read_day
from tests.fuzz.arcs import PACKAGE, Arc, Arcs
from tests.fuzz.change import changed
from tests.fuzz.small_book import packed, parts_of, sheets_in, unpacked
from tests.workbook.build import SMALLEST
from tests.workbook.test_whole_day import SHEETS

ROOT = PACKAGE.parent
CORPUS = ROOT / "tests" / "data" / "fuzz"
MOST_KEPT = 60
SLOW = 10.0
PLANNED = 0.02


class Fuzzer:
    """The kept workbooks with the arcs each takes, those of them that are days, and the finds."""

    def __init__(self, found: Path, seed: int) -> None:
        self.kept: list[tuple[bytes, frozenset[Arc]]] = []
        self.sound: list[tuple[bytes, frozenset[Arc]]] = []
        self.seen: set[Arc] = set()
        self.runs = self.days = self.planned = 0
        self.finds: dict[str, int] = {}
        self._found, self._pick, self._arcs = found, random.Random(seed), Arcs()
        self._path = found / "running.xlsx"

    def start(self) -> None:
        """Read what to begin with: small days, the samples, and the workbooks kept before."""
        samples = sorted((ROOT / "sample_jobs").glob("*_day.xlsx"))
        first = [packed(parts_of(SMALLEST)), packed(parts_of(SHEETS))]
        first += [packed(parts_of(sheets_in(path))) for path in samples]
        first += [path.read_bytes() for path in sorted(CORPUS.glob("*.xlsx"))]
        for content in first:
            self.try_one(content)

    def step(self) -> None:
        """Change one kept workbook and read it."""
        pools = (self.kept, self.kept[-30:], self.sound, self.sound)
        one, other = self._pick.choice(self._pick.choice(pools))[0], self._pick.choice(self.kept)[0]
        try:
            parts, others = unpacked(one), unpacked(other)
        except Exception:
            return  # Kept for the way its archive is broken; nothing in it to change.
        self.try_one(changed(parts, others, self._pick))

    def try_one(self, content: bytes) -> None:
        """Read ``content``; keep it if it took a new arc, report it if it broke anything."""
        self.runs += 1
        self._path.write_bytes(content)
        begun = time.process_time()
        day: Day | None = None
        try:
            with self._arcs:
                day = self._read()
        except Exception:
            self._find(content, traceback.format_exc())
        if time.process_time() - begun > SLOW:
            self._find(content, f"slow: {time.process_time() - begun:.0f} s")
        new = self._arcs.found - self.seen
        if new:
            self.seen |= new
            self.kept.append((content, frozenset(self._arcs.found)))
            if day is not None:
                self.sound.append(self.kept[-1])
        if day is not None:
            self.days += 1
            if new or self._pick.random() < PLANNED:
                self._plan(content, day)

    def _read(self) -> Day | None:
        try:
            return read_day(self._path)
        except WorkbookRejected as rejected:
            if (
                not all(one.found and one.remedy for one in rejected.problems)
                or not rejected.problems
            ):
                raise ValueError("a rejection that says nothing") from rejected
            return None

    def _plan(self, content: bytes, day: Day) -> None:
        self.planned += 1
        try:
            results_bytes(plan_day(day, time_limit=2))
        except Exception:
            self._find(content, traceback.format_exc())

    def _find(self, content: bytes, trace: str) -> None:
        key = "\n".join(trace.splitlines()[-4:])
        self.finds[key] = self.finds.get(key, 0) + 1
        if self.finds[key] == 1:
            number = len(self.finds)
            (self._found / f"find_{number}.xlsx").write_bytes(content)
            (self._found / f"find_{number}.txt").write_text(trace, encoding="utf-8")
            print(f"find {number}:\n{trace}", flush=True)

    def smallest(self) -> list[bytes]:
        """Few workbooks that together take most of the arcs, greedily, the best first."""
        left, chosen = set(self.seen), []
        rest = list(self.kept)
        while left and rest and len(chosen) < MOST_KEPT:
            best = max(rest, key=lambda one: (len(one[1] & left), -len(one[0])))
            if not best[1] & left:
                break
            chosen.append(best[0])
            left -= best[1]
            rest.remove(best)
        return chosen


def main() -> int:
    """1 where anything was found."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--minutes", type=float, default=30)
    parser.add_argument("--found", type=Path, required=True)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", action="store_true")
    given = parser.parse_args()
    given.found.mkdir(parents=True, exist_ok=True)
    fuzzer = Fuzzer(given.found, given.seed)
    fuzzer.start()
    end, told = time.monotonic() + 60 * given.minutes, 0.0
    while time.monotonic() < end:
        fuzzer.step()
        if time.monotonic() - told > 60:
            told = time.monotonic()
            _tell(fuzzer)
    _tell(fuzzer)
    if given.keep:
        CORPUS.mkdir(parents=True, exist_ok=True)
        for old in CORPUS.glob("*.xlsx"):
            old.unlink()
        for number, content in enumerate(fuzzer.smallest(), start=1):
            (CORPUS / f"{number:02}.xlsx").write_bytes(content)
    return int(bool(fuzzer.finds))


def _tell(fuzzer: Fuzzer) -> None:
    print(
        f"{fuzzer.runs:,} workbooks, {fuzzer.days:,} of them days, {fuzzer.planned:,} planned; "
        f"{len(fuzzer.seen):,} steps, {len(fuzzer.kept):,} kept, {len(fuzzer.finds)} finds",
        flush=True,
    )


if __name__ == "__main__":
    sys.exit(main())
