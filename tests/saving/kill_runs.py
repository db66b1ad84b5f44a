"""Kill whole runs: ``python -m tests.saving.kill_runs [--runs 50] [--seed 1]``.

Each run replaces old results, with CSV files beside them, and is killed (SIGKILL) at a random
moment of the time a whole run takes. The results must be the old or the new, whole; CSV files too.
"""

from __future__ import annotations

import argparse
import random
import shutil
import subprocess
import sys
import tempfile
import time
import zipfile
from collections import Counter
from pathlib import Path

SAMPLE = Path(__file__).parents[2] / "sample_jobs" / "small_day.xlsx"
OLD, NEW, NONE = "old", "new", "none"
OLD_CONTENT = b"the old results"


def command(folder: Path) -> list[str]:
    """A run in ``folder`` that replaces what is there."""
    results = ["-o", str(folder / "day.results.xlsx"), "--csv", str(folder / "csv"), "--force"]
    return [sys.executable, "-m", "loadplan", "plan", str(folder / "day.xlsx"), *results]


def prepare(folder: Path) -> None:
    """A day with old results in ``folder``."""
    shutil.copy(SAMPLE, folder / "day.xlsx")
    (folder / "csv").mkdir()
    for path in (folder / "day.results.xlsx", folder / "csv" / "Summary.csv"):
        path.write_bytes(OLD_CONTENT)


def whole_run(folder: Path) -> float:
    """Seconds that a run takes from start to end."""
    prepare(folder)
    begun = time.monotonic()
    subprocess.run(command(folder), check=True, capture_output=True)
    return time.monotonic() - begun


def killed_after(folder: Path, seconds: float) -> str:
    """Kill a run after ``seconds``; whether the old results stand there then or the new."""
    prepare(folder)
    with subprocess.Popen(
        command(folder), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as run:
        time.sleep(seconds)
        run.kill()
    day = (folder / "day.xlsx").read_bytes()
    if day != SAMPLE.read_bytes():
        raise AssertionError("the day workbook was touched")
    summary = (folder / "csv" / "Summary.csv").read_bytes()
    if summary != OLD_CONTENT and not (
        summary.startswith(b"\xef\xbb\xbfLoad,") and b"\r\n" in summary
    ):
        raise AssertionError("a part of a CSV file")
    return standing(folder / "day.results.xlsx")


def standing(results: Path) -> str:
    """Old or new; a part of either is an error."""
    if results.read_bytes() == OLD_CONTENT:
        return OLD
    with zipfile.ZipFile(results) as archive:
        if archive.testzip() is not None or "xl/workbook.xml" not in archive.namelist():
            raise AssertionError("a part of the results")
    return NEW


def main() -> int:
    """1 where a run left a part of its results."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--runs", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    pick = random.Random(given.seed)
    with tempfile.TemporaryDirectory() as folder:
        seconds = whole_run(Path(folder))
    found: Counter[str] = Counter()
    for _ in range(given.runs):
        with tempfile.TemporaryDirectory() as folder:
            # Half of the kills late, where files are put in place.
            moment = pick.choice((pick.uniform(0, 1.2), pick.uniform(0.75, 1.05))) * seconds
            try:
                found[killed_after(Path(folder), moment)] += 1
            except (AssertionError, OSError, zipfile.BadZipFile) as error:
                print(f"killed after {moment:.2f} s: {error!r}")
                found["damaged"] += 1
    print(f"A whole run takes {seconds:.1f} s. {given.runs} killed: {dict(found)}")
    return int(bool(found["damaged"]))


if __name__ == "__main__":
    sys.exit(main())
