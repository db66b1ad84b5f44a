"""``python -m tests.oracle DAY.xlsx RESULTS.xlsx``: every disagreement, and the vectors."""

from __future__ import annotations

import argparse
import sys

from tests.oracle.day import read_day
from tests.oracle.optimum import optimum
from tests.oracle.recheck import recheck, vector
from tests.oracle.results import read_results


def main() -> int:
    """0 where nothing is wrong and no better plan is known; 1 otherwise."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("day")
    parser.add_argument("results")
    parser.add_argument("--time-limit", type=float, default=300)
    parser.add_argument("--no-optimum", action="store_true")
    given = parser.parse_args()
    wrong = recheck(given.day, given.results)
    for fault in wrong:
        print(fault)
    print(f"{len(wrong)} disagreements")
    if given.no_optimum:
        return int(bool(wrong))
    day = read_day(given.day)
    plan = vector(day, read_results(given.results, day))
    best = optimum(day, given.time_limit)
    worse = False
    for value, stage in zip(plan, best.stages, strict=False):
        better = value != stage.value
        print(
            f"{stage.name}: plan {float(value):,.2f}, optimum {float(stage.value):,.2f}"
            f" (bound {stage.bound:,.2f}, {'proved' if stage.proved else 'not proved'})"
        )
        if better:
            worse = stage.proved
            break
    return int(bool(wrong) or worse)


if __name__ == "__main__":
    sys.exit(main())
