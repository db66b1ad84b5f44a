"""Small days with prices, for the program and for the second opinion alike."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from random import Random

from loadplan.day.day import Day
from loadplan.workbook.read import read_day
from tests.bench.sheet import Rows, write_workbook
from tests.oracle import day as oracle
from tests.oracle.purchases import Offer
from tests.system.small_days import small_day

PRICES = (1.5, 2, 2.5, 3, 4, 6, 10)
_NOT_PRICED = ("Quantity", "Condition", "Kept on")


def priced(seed: int, folder: Path, most: int = 3) -> tuple[Day, oracle.Day, list[Offer]]:
    """A small day with three prices at the most, as each side reads it.

    Now and then one of the prices is of a kind that the cage does not have yet.
    """
    random = Random(f"prices {seed}")
    rows = small_day(seed)
    good = [row for row in rows["Gear"] if not row.get("Condition")]
    chosen = random.sample(good, min(len(good), 3))
    if "Fixed" not in rows:
        for row in random.sample(chosen, min(len(chosen), 2)):
            row["Quantity"] = max(1, int(str(row["Quantity"])) // 2)
    prices: list[dict[str, object]] = [
        {"Gear": row["Gear"], "Price": random.choice(PRICES), "Most": random.randint(1, most)}
        for row in chosen
    ]
    seen_by_oracle: Rows = {**rows, "Gear": list(rows["Gear"])}
    if random.random() < 0.5 and chosen[-1]["Kind"] != "retractable strap":
        new = {key: value for key, value in chosen[-1].items() if key not in _NOT_PRICED}
        prices[-1] = {**new, **prices[-1], "Gear": "New"}
        seen_by_oracle["Gear"].append({**new, "Gear": "New", "Quantity": 0})
    write_workbook({**rows, "Prices": prices}, folder / "day.xlsx")
    write_workbook(seen_by_oracle, folder / "seen.xlsx")
    offers = [
        Offer(
            gear=str(row["Gear"]).strip().casefold(),
            price=Fraction(repr(row["Price"])),
            most=int(str(row["Most"])),
        )
        for row in prices
    ]
    return read_day(folder / "day.xlsx"), oracle.read_day(folder / "seen.xlsx"), offers
