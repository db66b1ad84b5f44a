"""What must hold of any day: more gear, another row order, another scale."""

import re
from fractions import Fraction
from pathlib import Path
from random import Random

import pytest

from tests.bench.generate import generate
from tests.bench.sheet import Rows
from tests.oracle.cells import text
from tests.oracle.day import read_day
from tests.system.running import Planned, plan
from tests.system.small_days import small_day

Row = dict[str, object]
SCALED = ("Weight", "WLL", "Breaking strength", "Anchor WLL", "Tie point WLL")


@pytest.mark.parametrize("seed", range(100, 112))
def test_more_gear_never_holds_more_loads(seed: int, tmp_path: Path) -> None:
    rows, random = small_day(seed), Random(seed)
    before = plan(rows, tmp_path, "before")
    chosen = random.choice(rows["Gear"])
    more = chosen | {"Quantity": int(str(chosen["Quantity"])) + random.choice((1, 4))}
    rows["Gear"] = [more if row is chosen else row for row in rows["Gear"]]
    after = plan(rows, tmp_path, "after")
    assert after.vector[:-3] >= before.vector[:-3]


@pytest.mark.parametrize("seed", range(200, 208))
def test_row_order_changes_nothing_on_small_days(seed: int, tmp_path: Path) -> None:
    _assert_same_tables(small_day(seed), seed, tmp_path)


@pytest.mark.parametrize("tight", [False, True])
def test_row_order_changes_nothing_on_a_whole_day(tight: bool, tmp_path: Path) -> None:
    _assert_same_tables(generate(5, 4, tight), 4, tmp_path)


def _assert_same_tables(rows: Rows, seed: int, folder: Path) -> None:
    as_given = plan(rows, folder, "given", "--time-limit", "300")
    mixed = {name: Random(seed).sample(sheet, len(sheet)) for name, sheet in rows.items()}
    shuffled = plan(mixed, folder, "shuffled", "--time-limit", "300")
    assert as_given.code == shuffled.code
    assert _tables(as_given) == _tables(shuffled)


def _tables(planned: Planned) -> dict[str, list[list[tuple[str, object]]]]:
    """The flat sheets, each with its rows sorted.

    ``Working`` and ``Notes`` are left out: they name articles and pieces in workbook order.
    """
    found = planned.results
    sheets = {
        "Summary": list(found.summary.values()),
        "Tie-downs": [one.row for one in found.tie_downs],
        "Pick list": found.pick_list,
        "Gear use": list(found.gear_use.values()),
        "Checks": found.checks,
    }
    return {
        name: sorted((sorted(_figures(row).items()) for row in rows), key=str)
        for name, rows in sheets.items()
    }


def _figures(row: Row) -> Row:
    return {heading: cell for heading, cell in row.items() if heading not in ("working", "notes")}


@pytest.mark.parametrize("seed", range(300, 312))
def test_scale_changes_nothing_but_the_strength(seed: int, tmp_path: Path) -> None:
    rows = _marked(small_day(seed), tmp_path)
    whole = plan(rows, tmp_path, "whole")
    half = plan(
        {name: [_halved(r) for r in sheet] for name, sheet in rows.items()}, tmp_path, "half"
    )
    assert half.vector[:-1] == whole.vector[:-1]
    assert half.vector[-1] == whole.vector[-1] / 2


def _marked(rows: Rows, folder: Path) -> Rows:
    """The same day with its strengths marked, and nothing that hangs on a weight of its own.

    Lengths are beyond 5 ft, where the count by length has no weight limb, and the section each
    machine is secured under is said, so that no limit in pounds decides it.
    """
    first = plan(rows, folder, "first")
    gear = read_day(first.path).gear
    for row in rows["Gear"]:
        rating = gear[text(row["Gear"]).casefold()].wll
        heading = next(h for h in row if h.startswith("WLL"))
        row[heading] = None if rating is None else _shown(rating)
        row[next(h for h in row if h.startswith("Breaking"))] = None
        if rating is None:
            row["Condition"] = None if row["Kind"] == "edge protector" else "scrap"
    for row in rows["Cargo"]:
        heading = next(h for h in row if h.startswith("Length"))
        row[heading] = max(6, float(str(row[heading]))) if not isinstance(row[heading], str) else 12
        if str(row["Class"]).endswith("machine") and row["Secured under"] is None:
            row["Secured under"] = "heavy"
    kept = ("Heavy from",)
    rows["House rules"] = [
        r for r in rows.get("House rules", []) if not str(r["Rule"]).startswith(kept)
    ]
    return {name: sheet for name, sheet in rows.items() if sheet}


def _shown(value: Fraction) -> object:
    return int(value) if value.denominator == 1 else round(float(value), 3)


def _halved(row: Row) -> Row:
    scaled = {h: _half(v) if h.split(" [")[0] in SCALED else v for h, v in row.items()}
    if str(row.get("Rule")).startswith("Least WLL each"):
        scaled["Value"] = _half(row["Value"])
    return scaled


def _half(value: object) -> object:
    if isinstance(value, str):
        return re.sub(r"[\d.,]+", lambda m: str(float(m[0].replace(",", "")) / 2), value, count=1)
    return value / 2 if isinstance(value, (int, float)) else value
