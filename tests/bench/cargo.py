"""The cargo of a generated day: one to three articles a load, with what rides on them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random

from tests.bench.machines import CARGO, MACHINES, Pattern
from tests.bench.options import LB_TO_KG, Options

Row = dict[str, object]


@dataclass(frozen=True, kw_only=True)
class Item:
    """One article as generated, in pounds and feet, for the estimate of the day's need."""

    id: str
    load: str
    pattern: Pattern
    weight: int
    added: tuple[tuple[str, int], ...]
    length: float
    blocked: bool
    routing: str
    tie_point: int | None
    accessories: int
    shackles: int
    sharp: bool
    strapped: bool

    @property
    def carried(self) -> int:
        """The weight with everything on it."""
        return self.weight + sum(weight for _, weight in self.added)


def cargo(options: Options, loads: list[Row], random: Random) -> list[tuple[Item, Row]]:
    """Each article of the day with its row of ``Cargo``."""
    made = []
    machines = [p for p in MACHINES for _ in range(p.share)]
    general = [p for p in CARGO for _ in range(p.share)]
    for load in loads:
        for place in range(random.choice((1, 1, 1, 2, 2, 3))):
            patterns = general if random.random() < (0.12 if place == 0 else 0.4) else machines
            if place:
                patterns = [p for p in patterns if p.weight[0] < 10000]
            name = f"A{len(made) + 1:04d}"
            made.append(_article(name, str(load["Load"]), random.choice(patterns), options, random))
    return made


def added_rows(options: Options, items: list[Item], random: Random) -> list[Row]:
    """The rows of ``Added weight``."""
    del random
    heading = f"Weight [{options.mass}]"
    return [
        {"Article": item.id, "What": what, heading: options.weight(weight)}
        for item in items
        for what, weight in item.added
    ]


def _article(
    name: str, load: str, pattern: Pattern, options: Options, random: Random
) -> tuple[Item, Row]:
    added = tuple(
        (what, random.randrange(least, most, 10))
        for what, least, most in pattern.added
        if random.random() < 0.5
    )
    general = pattern.cargo_class == "general"
    routing = random.choice(("over", "over", "over", "same side", "direct")) if general else ""
    item = Item(
        id=name,
        load=load,
        pattern=pattern,
        weight=random.randrange(pattern.weight[0], pattern.weight[1], 50),
        added=added,
        length=round(random.uniform(*pattern.length), 1),
        blocked=options.blocked and random.random() < 0.4,
        routing=routing or ("same side" if random.random() < 0.06 else "direct"),
        tie_point=random.choice(pattern.tie_point),
        accessories=len(set(pattern.accessories) - set(pattern.pinned)),
        shackles=random.choice((0, 1, 2)) if options.shackles and not general else 0,
        sharp=random.random() < (0.5 if general else 0.15),
        strapped=general or (pattern.weight[1] < 9000 and random.random() < 0.5),
    )
    return item, _row(item, options, random)


def _row(item: Item, options: Options, random: Random) -> Row:
    pattern = item.pattern
    parts = [f"{part} (pinned)" if part in pattern.pinned else part for part in pattern.accessories]
    machine = pattern.cargo_class.endswith("machine")
    reach = options.reach and random.random() < 0.5
    return {
        "Article": item.id,
        "Load": item.load,
        "Class": pattern.cargo_class,
        "Description": pattern.name,
        f"Weight [{options.mass}]": _weight(item.weight, options, random),
        "Weight from": random.choice(("scale", "plate", "plate", "estimate", None)),
        f"Length [{options.length}]": _length(item.length, options, random),
        f"Width [{options.length}]": options.distance(pattern.width),
        f"Height [{options.length}]": options.distance(pattern.height),
        "Secured under": "heavy" if machine and random.random() < 0.2 else None,
        "Blocked forward": "yes" if item.blocked else None,
        "Routing": None if item.routing in ("direct", "over") and machine else item.routing,
        f"Tie point WLL [{options.mass}]": options.weight(item.tie_point),
        "Accessories": "; ".join(parts) or None,
        f"Reach [{options.length}]": options.distance(random.choice((12, 16, 20, 22)))
        if reach
        else None,
        "Shackles": item.shackles or None,
        "Sharp edges": "yes" if item.sharp else None,
        "Chain only": "yes" if options.chain_only and machine and random.random() < 0.3 else None,
    }


def _weight(pounds: int, options: Options, random: Random) -> object:
    if not options.fractional or random.random() < 0.5:
        return options.weight(pounds)
    if random.random() < 0.3:
        return f"{math.ceil(pounds * LB_TO_KG / 100) / 10} t"
    return f"{round(pounds * LB_TO_KG):,} kg" if not options.metric else f"{pounds:,} lb"


def _length(feet: float, options: Options, random: Random) -> object:
    if not options.fractional or random.random() < 0.6:
        return options.distance(feet)
    return f"{int(feet)}' {round(feet % 1 * 10)}\""
