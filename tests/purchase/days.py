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


def priced(seed: int, folder: Path) -> tuple[Day, oracle.Day, list[Offer]]:
    """The day of :func:`priced_rows` as each side reads it, and its offers."""
    rows, seen, offers = priced_rows(seed)
    write_workbook(rows, folder / "day.xlsx")
    write_workbook(seen, folder / "seen.xlsx")
    return read_day(folder / "day.xlsx"), oracle.read_day(folder / "seen.xlsx"), offers


def priced_rows(seed: int) -> tuple[Rows, Rows, list[Offer]]:
    """A small day with three prices at the most, and the same for the second opinion.

    That has no ``Prices``. Now and then one of the prices is of a kind that the cage does not have
    yet; the second opinion has it on ``Gear`` with no pieces.
    """
    random = Random(f"prices {seed}")
    rows = small_day(seed)
    good = [row for row in rows["Gear"] if not row.get("Condition")]
    chosen = random.sample(good, min(len(good), 3))
    if "Fixed" not in rows:
        for row in random.sample(chosen, min(len(chosen), 2)):
            row["Quantity"] = max(1, int(str(row["Quantity"])) // 2)
    prices: list[dict[str, object]] = [
        {"Gear": row["Gear"], "Price": random.choice(PRICES), "Most": random.randint(1, 3)}
        for row in chosen
    ]
    seen: Rows = {**rows, "Gear": list(rows["Gear"])}
    if random.random() < 0.5 and chosen[-1]["Kind"] != "retractable strap":
        new = {key: value for key, value in chosen[-1].items() if key not in _NOT_PRICED}
        prices[-1] = {**new, **prices[-1], "Gear": "New"}
        seen["Gear"].append({**new, "Gear": "New", "Quantity": 0})
    offers = [
        Offer(
            gear=str(row["Gear"]).strip().casefold(),
            price=Fraction(repr(row["Price"])),
            most=int(str(row["Most"])),
        )
        for row in prices
    ]
    return {**rows, "Prices": prices}, seen, offers
