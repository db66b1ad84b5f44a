"""Measure hostile workbooks: ``python -m tests.hostile [--only WORD]``.

``loadplan check`` runs on each in a process of its own. Prints exit code, seconds of processor
time, the most memory it held, and its first line; ends with 1 where
one took over 10 s, over 512 MB, or crashed.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
from multiprocessing import get_context
from pathlib import Path

from tests.hostile.files import FILES

MOST_SECONDS, MOST_MEGABYTES = 10.0, 512.0
EXPECTED = (0, 3)


def main() -> int:
    """1 where a limit was passed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--only", default="")
    given = parser.parse_args()
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        for name in FILES:
            if given.only in name:
                # Made in a fork: what the maker holds would count as the command's own.
                with get_context("fork").Pool(1) as maker:
                    maker.apply(_make, (name, Path(folder)))
                bad += not measured(name, Path(folder))
    return int(bool(bad))


def _make(name: str, folder: Path) -> None:
    (folder / "day.xlsx").write_bytes(FILES[name]())


def measured(name: str, folder: Path) -> bool:
    """Whether the file was refused or read within the limits."""
    path, printed = folder / "day.xlsx", folder / "printed"
    with printed.open("wb") as out:
        run = subprocess.Popen(
            [sys.executable, "-m", "loadplan", "check", str(path)],
            stdout=out,
            stderr=subprocess.STDOUT,
        )
        _, status, usage = os.wait4(run.pid, 0)
        run.returncode = os.waitstatus_to_exitcode(status)
    seconds, megabytes = usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024
    lines = printed.read_text("utf-8", "replace").splitlines() or [""]
    good = run.returncode in EXPECTED and seconds <= MOST_SECONDS and megabytes <= MOST_MEGABYTES
    mark = " " if good else "!"
    print(
        f"{mark} {name}: exit {run.returncode}, {seconds:.1f} s, {megabytes:.0f} MB, "
        f"{len(lines):,} lines: {lines[0][:150]}",
        flush=True,
    )
    return good


if __name__ == "__main__":
    sys.exit(main())
