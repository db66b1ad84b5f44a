"""Generated days of any size with options drawn at random."""

from __future__ import annotations

from random import Random

from tests.bench.generate import Options, generate_day
from tests.bench.sheet import Rows


def varied(loads: int, seed: int) -> Rows:
    """A generated day, loose or tight, with some of the generator's switches on."""
    random = Random(f"varied {loads} {seed}")
    house: dict[str, object] = {}
    for rule, value in (
        ("Accessory counts in aggregate", "yes"),
        ("Most per position", random.choice((1, 3))),
        ("Aggregate share", 0.6),
        ("Length count on machines", "no"),
        ("Straps on machines", "no"),
        ("Heavy from [lb]", 10000),
    ):
        if random.random() < 0.15:
            house[rule] = value
    return generate_day(
        Options(
            loads=loads,
            seed=seed,
            tight=random.random() < 0.5,
            reach=random.random() < 0.25,
            shackles=random.random() < 0.25,
            chain_only=random.random() < 0.25,
            blocked=random.random() < 0.25,
            metric=random.random() < 0.25,
            fractional=random.random() < 0.4,
            fixed=random.choice((0, 0, 2, 5)),
            least_wll=random.choice((None, None, None, 3000)),
            house=house,
        )
    )
