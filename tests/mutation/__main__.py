"""Mutation testing: ``python -m tests.mutation --log FILE [--part K/N] [--again FILE] [rules ..]``

Makes every mutant (``operators``) of the packages named, or every N-th from the K-th on, and runs
the tests of rules, wll and judge and those of printed figures against it (``kill``). FILE gets a
line for each mutant; the survivors and the share killed are printed at the end. Needs ``fork``.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.mutation.kill import KILLED, SURVIVED, Collected, imported_anew
from tests.mutation.operators import Mutant, mutants

ROOT = Path(__file__).parents[2]
TESTS = ["tests/rules", "tests/wll", "tests/judge", "tests/validation"]
TESTS += ["tests/workbook/test_section_facts.py"]
AT_IMPORT = "at import"


@dataclass(frozen=True)
class Which:
    """Which mutants to try: every ``every``-th from the ``first`` on, or the places ``only``."""

    first: int
    every: int
    only: frozenset[str] | None

    def takes(self, number: int, where: str) -> bool:
        """Whether the ``number``-th mutant is tried."""
        if self.only is not None:
            return where in self.only
        return number % self.every == self.first % self.every


def main() -> int:
    """1 where less than 90 % of a package's mutants were killed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("packages", nargs="*", default=["rules", "wll", "judge"])
    parser.add_argument("--part", default="1/1", help="K/N: every N-th mutant from the K-th on")
    parser.add_argument("--again", type=Path, help="the survivors in this FILE of an earlier run")
    parser.add_argument("--log", type=Path, required=True)
    given = parser.parse_args()
    first, every = (int(number) for number in given.part.split("/"))
    which = Which(first, every, _survivors(given.again))
    given.log.write_text("")
    functions, imports = given.log, given.log.with_suffix(".import")
    _in_a_fork(lambda: _put_in(given.packages, which, functions))
    left = {line for line in _lines(functions) if line.startswith(AT_IMPORT)}
    with imports.open("w") as log:
        for name, path, mutant in chosen(given.packages, which):
            where = place(path, mutant)
            if f"{AT_IMPORT} {where}" in left:
                own = f"tests/{name.split('.')[1]}"
                tests = [own, *(one for one in TESTS if one != own)]
                print(imported_anew(name, path, mutant, tests), where, file=log, flush=True)
    lines = [*(line for line in _lines(functions) if line not in left), *_lines(imports)]
    return _tell(given.packages, lines)


def chosen(packages: list[str], which: Which) -> Iterator[tuple[str, Path, Mutant]]:
    """Module name, file and mutant of every mutant asked for."""
    number = 0
    for package in packages:
        for path in sorted((ROOT / "loadplan" / package).rglob("*.py")):
            name = ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
            for mutant in mutants(path.read_text(encoding="utf-8")):
                number += 1
                if which.takes(number, place(path, mutant)):
                    yield name, path, mutant


def place(path: Path, mutant: Mutant) -> str:
    """``loadplan/wll/piece.py:12:4 Lt -> LtE``."""
    return f"{path.relative_to(ROOT)}:{mutant.line}:{mutant.column} {mutant.what}"


def _survivors(log: Path | None) -> frozenset[str] | None:
    """The places of the survivors in an earlier run's file."""
    if log is None:
        return None
    killed = (line.split(" ", 1) for line in _lines(log))
    return frozenset(place for verdict, place in killed if verdict == SURVIVED)


def _put_in(packages: list[str], which: Which, log: Path) -> None:
    def each(collected: Collected) -> None:
        with log.open("a") as out:
            for _, path, mutant in chosen(packages, which):
                verdict = collected.verdict(str(path), mutant) or AT_IMPORT
                print(verdict, place(path, mutant), file=out, flush=True)

    files = {
        str(path) for package in packages for path in (ROOT / "loadplan" / package).rglob("*.py")
    }
    pytest.main(["-n", "0", "-p", "no:cacheprovider", *TESTS], [Collected(files, each)])


def _in_a_fork(work: object) -> None:
    """So that this process never imports the package itself."""
    child = os.fork()
    if child == 0:
        try:
            work()  # type: ignore[operator]
        finally:
            os._exit(0)
    os.waitpid(child, 0)


def _lines(path: Path) -> list[str]:
    return path.read_text().splitlines()


def _tell(packages: list[str], lines: list[str]) -> int:
    print("\n".join(sorted(line for line in lines if not line.startswith(KILLED))))
    low = False
    for package in packages:
        mine = [line for line in lines if f" loadplan/{package}/" in line]
        killed = sum(line.startswith(KILLED) for line in mine)
        print(f"{package}: {killed:,} of {len(mine):,} killed")
        low = low or killed < 0.9 * len(mine)
    return int(low)


if __name__ == "__main__":
    sys.exit(main())
