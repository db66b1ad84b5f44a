"""Generated days: the same seed and options give the same rows.

``python -m tests.bench.generate --loads 50 --seed 3 --tight OUT.xlsx``

It knows the day workbook's format and nothing of the program that reads it.
"""

from __future__ import annotations

import argparse
import datetime
import json
from pathlib import Path
from random import Random

from tests.bench.cargo import Item, added_rows, cargo
from tests.bench.options import Options
from tests.bench.quantities import gear_rows, peak
from tests.bench.sheet import Rows, write_workbook
from tests.bench.trips import trips

__all__ = ["Options", "generate", "generate_day", "write_workbook"]


def generate(loads: int, seed: int, tight: bool = False, **options: object) -> Rows:
    """The rows of each sheet of a day; ``options`` are those of :class:`Options`."""
    return generate_day(Options(loads=loads, seed=seed, tight=tight, **options))  # type: ignore[arg-type]


def generate_day(options: Options) -> Rows:
    """The rows of each sheet of a day."""
    random = Random(f"{options.seed}/{options.loads}/{options.tight}")
    turnaround = random.choice((0, 10, 15, 20, 30))
    loads, trailers = trips(options, random)
    made = cargo(options, loads, random)
    items = [item for item, _ in made]
    most = peak(items, loads, trailers, turnaround)
    rows: Rows = {
        "Day": _settings(options, turnaround),
        "Loads": loads,
        "Cargo": [row for _, row in made],
        "Added weight": added_rows(options, items, random),
        "Trailers": trailers,
        "Gear": gear_rows(most, trailers, options, random),
    }
    house = dict(options.house)
    if options.least_wll is not None:
        house[f"Least WLL each [{options.mass}]"] = options.weight(options.least_wll)
    if house:
        rows["House rules"] = [{"Rule": rule, "Value": value} for rule, value in house.items()]
    if options.fixed:
        rows["Fixed"] = _fixed(items, rows["Gear"], options, random)
    return rows


def _settings(options: Options, turnaround: int) -> list[dict[str, object]]:
    settings: dict[str, object] = {
        "Yard": "Generated yard",
        "Date": datetime.date(2026, 7, 14),
        "Units": "metric" if options.metric else "US",
        "Turnaround [min]": turnaround,
    }
    return [{"Setting": setting, "Value": value} for setting, value in settings.items()]


def _fixed(
    items: list[Item], gear: list[dict[str, object]], options: Options, random: Random
) -> list[dict[str, object]]:
    """Chains already on machine corners: never more of a kind in the whole day than are owned."""
    left = {
        str(row["Gear"]): int(str(row["Quantity"]))
        for row in gear
        if str(row["Gear"]) in ("CH-38-70L", "CH-50-70", "CH-38-70")
    }
    machines = [i for i in items if i.routing == "direct" and not i.strapped and not i.shackles]
    rows: list[dict[str, object]] = []
    for item in random.sample(machines, min(options.fixed, len(machines))):
        chain = next((name for name, pieces in left.items() if pieces > 0), None)
        if chain is None or options.reach:
            break
        left[chain] -= 1
        corner = random.choice(("front left", "rear right"))
        rows.append({"Load": item.load, "Article": item.id, "Position": corner, "Gear": chain})
    return rows


def main() -> None:
    """Writes one generated day."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--loads", type=int, required=True)
    parser.add_argument("--seed", type=int, required=True)
    parser.add_argument("--fixed", type=int, default=0)
    parser.add_argument("--least-wll", type=int)
    parser.add_argument("--house", type=json.loads, default={}, help='{"Aggregate share": 0.6}')
    switches = ("tight", "reach", "shackles", "chain_only", "blocked", "metric", "fractional")
    for switch in switches:
        parser.add_argument(f"--{switch.replace('_', '-')}", action="store_true")
    parser.add_argument("path", type=Path)
    given = vars(parser.parse_args())
    path = given.pop("path")
    write_workbook(generate_day(Options(**given)), path)


if __name__ == "__main__":
    main()
