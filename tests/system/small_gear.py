"""Gear of the small days: a handful of kinds that fit one another now and then."""

from __future__ import annotations

from random import Random

Row = dict[str, object]
CHAINS = (("5/16", "70", 4700), ("3/8", "G70", None), ("3/8", "", None), ("10 mm", "80", 7100),
          ("1/2", "43", 9200), ("3/8", "120", 8000), ("3/8", "Grade 100", None))  # fmt: skip
BINDERS = (("lever binder", "5/16-3/8", 5400), ("ratchet binder", "5/16-3/8", 6600),
           ("ratchet binder", "3/8, 1/2", 9200), ("lever binder", "3/8", 2600),
           ("ratchet binder", "1/2", 13000), ("lever binder", "", 5000))  # fmt: skip
STRAPS = (("ratchet strap", "2", 3333), ("ratchet strap", "4 in", 5400),
          ("ratchet strap", "2", None), ("ratchet strap", "3", None),
          ("steel strapping", "2 x 0.044", None))  # fmt: skip
CORDS = (("wire rope", "1/2", ""), ("rope", "5/8", "polyester"), ("rope", "1", "jute"))


def gear(random: Random, strapped: bool, shackled: bool, guarded: bool) -> list[Row]:
    """Between three and about nine kinds, most of them useful to one another."""
    rows: list[Row] = []
    for size, grade, wll in random.sample(CHAINS, random.choice((1, 2, 2, 3))):
        rows.append(
            _row("chain", random, size, grade, wll, length=random.choice((10, 16, 20, None)))
        )
    for kind, fits, wll in random.sample(BINDERS[:5], random.choice((1, 2, 2, 3))):
        rows.append(_row(kind, random, wll=wll) | {"Fits": fits or None})
    if random.random() < 0.1:
        rows.append(_row("lever binder", random, wll=5000))
    if strapped or random.random() < 0.3:
        for kind, size, wll in random.sample(STRAPS, random.choice((1, 1, 2))):
            rows.append(_row(kind, random, size, wll=wll, length=random.choice((20, 27, 30))))
        if random.random() < 0.5:
            rows.append(
                _row("winch strap", random, "4", wll=random.choice((5400, None)), length=30)
            )
    if random.random() < 0.2:
        kind, size, made_of = random.choice(CORDS)
        rows.append(_row(kind, random, size, made_of, length=20))
        rows.append(_row("turnbuckle", random, wll=random.choice((2000, 5200))))
    if shackled:
        for wll in random.sample((3000, 6500, 9500), random.choice((1, 2))):
            rows.append(_row("shackle", random, "3/4", wll=wll))
    if guarded:
        for _ in range(random.choice((1, 1, 2))):
            rows.append(_row("edge protector", random))
    if random.random() < 0.15:
        rows.append(_row("ratchet strap", random, "1", wll=None))  # in no table: unknown
    if random.random() < 0.15:
        rows.append(rows[0] | {"Condition": random.choice(("scrap", "hold"))})
    return [row | {"Gear": f"{'Gg'[n % 2]}-{n}"} for n, row in enumerate(rows)]


def _row(
    kind: str,
    random: Random,
    size: str = "",
    grade: str = "",
    wll: int | None = None,
    length: int | None = None,
) -> Row:
    weak = kind.endswith("strap") and wll is None and random.random() < 0.5
    return {
        "Gear": None,
        "Kind": kind,
        "Size": size or None,
        "Grade": grade or None,
        "Length": length,
        "WLL": wll,
        "Breaking strength": random.choice((5000, 10000, 16001)) if weak else None,
        "Fits": None,
        "Quantity": random.choice((1, 2, 3, 4, 5, 6, 8, 10, 14, 20)),
        "Condition": None,
        "Kept on": None,
    }
