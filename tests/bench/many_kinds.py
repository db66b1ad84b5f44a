"""Generated days of another sort: little of each of many kinds of gear, all equally common.

``python -m tests.bench.many_kinds --loads 14 --seed 1 --factor 0.75 OUT.xlsx``

Nearly every tie-down of a set comes from another kind, so an article can choose among far more
sets than on the days of :mod:`tests.bench.generate`. Sizes and strengths are round figures of the
trade (common practice, no source).
"""

from __future__ import annotations

import argparse
from pathlib import Path
from random import Random

from tests.bench.sheet import Rows, write_workbook
from tests.bench.trips import clock

Row = dict[str, object]
CHAINS = (
    ("1/4", "30", 1300),
    ("1/4", "43", 2600),
    ("1/4", "70", 3150),
    ("5/16", "30", 1900),
    ("5/16", "43", 3900),
    ("5/16", "70", 4700),
    ("5/16", "80", 4500),
    ("3/8", "30", 2650),
    ("3/8", "43", 5400),
    ("3/8", "70", 6600),
    ("3/8", "80", 7100),
    ("3/8", "100", 8800),
    ("1/2", "43", 9200),
    ("1/2", "70", 11300),
    ("1/2", "80", 12000),
    ("1/2", "100", 15000),
)
BINDERS = (
    ("lever binder", "1/4-5/16", 2200),
    ("ratchet binder", "1/4-5/16", 2600),
    ("lever binder", "5/16-3/8", 4000),
    ("lever binder", "5/16-3/8", 5400),
    ("ratchet binder", "5/16-3/8", 6600),
    ("lever binder", "3/8-1/2", 9200),
    ("ratchet binder", "3/8-1/2", 9200),
    ("ratchet binder", "3/8-1/2", 13000),
)
SHACKLES = (("3/8", 2000), ("1/2", 4000), ("5/8", 6500), ("3/4", 9500))
CLASSES = ("tracked machine", "wheeled machine", "articulated machine")
_OUT_AT_ONCE = 0.45  # share of the loads, by a rough rule


def many_kinds(
    loads: int, seed: int, factor: float, anchors: bool = False, *, shackles: bool = False
) -> Rows:
    """The rows of each sheet; ``factor`` is the cage against a rough need.

    ``anchors`` gives some trailers weak anchor points; with ``shackles`` half the machines take one
    or two to each tie-down, of which the cage has few.
    """
    random = Random(f"many kinds/{seed}/{loads}/{factor}/{anchors}")
    names = [f"L{number:03d}" for number in range(1, loads + 1)]
    cargo = [_machine(name, at, random) for name in names for at in range(random.choice((1, 1, 2)))]
    need = sum(4 + bool(row["Accessories"]) for row in cargo)
    for row in cargo if shackles else ():
        row["Shackles"] = random.choice((None, None, 1, 2))
    rows = _day(names, cargo, anchors, need * _OUT_AT_ONCE * factor, random)
    if shackles:
        pieces = 4 * sum(int(str(row["Shackles"] or 0)) for row in cargo)
        rows["Gear"] += _shackles(pieces * _OUT_AT_ONCE * factor, random)
    return rows


def _day(names: list[str], cargo: list[Row], anchors: bool, pieces: float, random: Random) -> Rows:
    return {
        "Day": [{"Setting": "Turnaround [min]", "Value": random.choice((0, 15, 30))}],
        "Loads": [_load(name, random) for name in names],
        "Cargo": cargo,
        "Trailers": [_trailer(name, anchors, random) for name in names],
        "Gear": _gear(pieces, random),
    }


def _load(name: str, random: Random) -> Row:
    out = random.randrange(300, 900, 5)
    back = min(1400, out + random.randrange(60, 420, 5))
    priority = random.choice((1, 1, 2, 3))
    return {
        "Load": name,
        "Trailer": f"T-{name}",
        "Out": clock(out),
        "Back": clock(back),
        "Priority": priority,
    }


def _machine(load: str, number: int, random: Random) -> Row:
    return {
        "Article": f"{load}-{number}",
        "Load": load,
        "Class": random.choice(CLASSES),
        "Weight [lb]": random.randrange(4000, 46000, 10),
        "Length [ft]": random.choice((8, 10, 12, 16, 20, 26)),
        "Accessories": random.choice((None, None, "boom", "boom; bucket")),
    }


def _trailer(load: str, anchors: bool, random: Random) -> Row:
    rating = random.choice((None, 5000, 6600, 8000, 12000)) if anchors else None
    points = random.choice((12, 16, 20))
    return {"Trailer": f"T-{load}", "Anchors": points, "Anchor WLL [lb]": rating}


def _gear(pieces: float, random: Random) -> list[Row]:
    rows: list[Row] = []
    for number, (size, grade, wll) in enumerate(CHAINS):
        quantity = max(1, round(pieces / len(CHAINS) * random.uniform(0.4, 1.6)))
        chain = {"Gear": f"C{number}", "Kind": "chain", "Size": size, "Grade": grade}
        rows.append({**chain, "Length [ft]": 20, "WLL [lb]": wll, "Quantity": quantity})
    for number, (kind, fits, wll) in enumerate(BINDERS):
        quantity = max(1, round(1.2 * pieces / len(BINDERS) * random.uniform(0.4, 1.6)))
        binder = {"Gear": f"B{number}", "Kind": kind, "Fits": fits}
        rows.append({**binder, "WLL [lb]": wll, "Quantity": quantity})
    return rows


def _shackles(pieces: float, random: Random) -> list[Row]:
    rows: list[Row] = []
    for number, (size, wll) in enumerate(SHACKLES):
        quantity = max(1, round(1.5 * pieces / len(SHACKLES) * random.uniform(0.4, 1.6)))
        shackle = {"Gear": f"S{number}", "Kind": "shackle", "Size": size}
        rows.append({**shackle, "WLL [lb]": wll, "Quantity": quantity})
    return rows


def main() -> None:
    """Writes one such day."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--loads", type=int, required=True)
    parser.add_argument("--seed", type=int, required=True)
    parser.add_argument("--factor", type=float, default=0.75)
    parser.add_argument("--anchors", action="store_true")
    parser.add_argument("--shackles", action="store_true")
    parser.add_argument("path", type=Path)
    given = parser.parse_args()
    rows = many_kinds(given.loads, given.seed, given.factor, given.anchors, shackles=given.shackles)
    write_workbook(rows, given.path)


if __name__ == "__main__":
    main()
