"""Many small days: ``python -m tests.system.soak --from 0 --to 2000 [--keep FOLDER]``.

``--generated 8`` takes generated days of eight loads instead, with options drawn at random.

Prints each disagreement with its number; days that disagree stay in FOLDER.
"""

from __future__ import annotations

import argparse
import contextlib
import io
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from tests.system.running import disagreements, plan
from tests.system.small_days import small_day
from tests.system.varied import varied


def main() -> int:
    """1 where any day disagrees."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--from", dest="first", type=int, default=0)
    parser.add_argument("--to", dest="last", type=int, default=2000)
    parser.add_argument("--keep", type=Path)
    parser.add_argument("--generated", type=int, metavar="LOADS")
    parser.add_argument("--seconds", type=float, default=60, help="for each optimum")
    given = parser.parse_args()
    folder = given.keep or Path(tempfile.mkdtemp(prefix="soak"))
    folder.mkdir(parents=True, exist_ok=True)
    told: Counter[str] = Counter()
    started, bad = time.monotonic(), 0
    for seed in range(given.first, given.last):
        quiet = io.StringIO()
        with contextlib.redirect_stdout(quiet), contextlib.redirect_stderr(quiet):
            rows = varied(given.generated, seed) if given.generated else small_day(seed)
            planned = plan(rows, folder, f"seed_{seed}")
            wrong = disagreements(
                planned,
                given.seconds,
                lambda text: told.update([text]),
                every_plan=not given.generated,
            )
        told[f"exit {planned.code}"] += 1
        for line in wrong:
            print(f"seed {seed}: {line}", flush=True)
        if wrong:
            bad += 1
            print("\n".join(f"    {line}" for line in quiet.getvalue().splitlines()[-4:]))
        else:
            planned.path.unlink()
            planned.results_path.unlink(missing_ok=True)
    print(f"{given.last - given.first} days, {bad} disagree, {time.monotonic() - started:.0f} s")
    print(", ".join(f"{text}: {number}" for text, number in sorted(told.items())))
    return int(bool(bad))


if __name__ == "__main__":
    sys.exit(main())
