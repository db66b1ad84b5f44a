"""How much gear a generated day gets: the peak need by a rough hand rule, times a factor."""

from __future__ import annotations

import math
from collections import Counter
from random import Random

from tests.bench.cage import CAGE, TIERS, Piece
from tests.bench.cargo import Item
from tests.bench.options import Options
from tests.bench.trips import minutes

Row = dict[str, object]
LOOSE, TIGHT = 1.6, 0.62
Need = Counter[tuple[str, int]]


def peak(items: list[Item], loads: list[Row], trailers: list[Row], turnaround: int) -> Need:
    """The most tie-downs of each (role, tier) out at one departure if every load went."""
    ratings = {
        row["Trailer"]: next((v for k, v in row.items() if k.startswith("Anchor WLL")), None)
        for row in trailers
    }
    needs: dict[object, Need] = {row["Load"]: Counter() for row in loads}
    anchor = {row["Load"]: ratings.get(row["Trailer"]) for row in loads}
    for item in items:
        needs[item.load] += article_need(item, anchor[item.load])
    most: Need = Counter()
    for moment in {minutes(row["Out"]) for row in loads}:
        out: Need = Counter()
        for row in loads:
            if minutes(row["Out"]) <= moment < minutes(row["Back"]) + turnaround:
                out.update(needs[row["Load"]])
        most |= out
    return most


def article_need(item: Item, anchor: object) -> Need:
    """What one article takes by the rough rule: the least tie-downs of one tier that hold it."""
    cap = min(float(str(anchor or 1e9)), float(item.tie_point or 1e9))
    credit = 1.0 if item.routing == "over" else 0.5
    fewest = 4 if item.pattern.cargo_class.endswith("machine") else 1
    fewest = max(fewest, 2 + math.ceil((item.length - 10) / 10)) if item.length > 5 else fewest
    tiers = TIERS[:2] if item.strapped else TIERS
    for count in range(fewest, 21):
        fit = [t for t in tiers if 2 * credit * count * min(t, cap) >= item.carried]
        if fit:
            break
    else:
        count, fit = 20, [tiers[-1]]
    need: Need = Counter({("strap" if item.strapped else "chain", fit[0]): count})
    need["chain", TIERS[0]] += item.accessories
    need["shackle", 6600 if fit[0] <= 6600 else 16000] += count * item.shackles
    if item.sharp and item.strapped:
        need["protector", 0] += count * (1 if item.routing == "direct" else 2)
    return need


def quantity(piece: Piece, most: Need, options: Options) -> int:
    """How many of ``piece`` the day is given."""
    factor = TIGHT if options.tight else LOOSE
    if piece.role == "few":
        return 2
    if piece.role == "chain":
        return max(2, round(factor * piece.share * _bought(piece.tier, most)))
    if piece.role == "binder":
        return max(2, round(0.97 * factor * piece.share * _binders(piece.tier, most)))
    least = 2 if piece.role != "protector" else 4
    return max(least, round(factor * piece.share * most[piece.role, piece.tier]))


def _bought(tier: int, most: Need) -> float:
    """Chains of a tier: a yard buys part of its light need one tier heavier."""
    moved = {3000: 0.2, 5400: 0.5}
    below = {5400: 3000, 6600: 5400}.get(tier, 0)
    return (1 - moved.get(tier, 0)) * most["chain", tier] + moved.get(below, 0) * most[
        "chain", below
    ]


def _binders(tier: int, most: Need) -> float:
    """Binders of a tier; nearly half the lightest chains are 3/8 in and need the next tier's."""
    if tier == TIERS[0]:
        return 0.55 * _bought(tier, most)
    return _bought(tier, most) + (0.45 * _bought(TIERS[0], most) if tier == TIERS[1] else 0)


def gear_rows(most: Need, trailers: list[Row], options: Options, random: Random) -> list[Row]:
    """The rows of ``Gear``: the cage, a scrap and a held piece, and a few kits."""
    rows = [_row(piece, quantity(piece, most, options), options) for piece in CAGE]
    chain = next(piece for piece in CAGE if piece.id == "CH-38-70")
    binder = next(piece for piece in CAGE if piece.id == "RB-M")
    rows.append(_row(chain, 3, options) | {"Gear": "CH-38-70X", "Condition": "scrap"})
    rows.append(_row(binder, 2, options) | {"Gear": "RB-MX", "Condition": "hold"})
    chosen = random.sample(trailers, min(len(trailers), max(1, min(3, len(trailers) // 6))))
    for number, trailer in enumerate(chosen, 1):
        kept = {"Kept on": trailer["Trailer"]}
        rows.append(_row(chain, 4, options) | kept | {"Gear": f"K{number}-CH"})
        rows.append(_row(binder, 4, options) | kept | {"Gear": f"K{number}-RB"})
    strap = _row(next(piece for piece in CAGE if piece.id == "RS-2"), 2, options)
    strap |= {"Kind": "retractable strap", "Kept on": chosen[0]["Trailer"]}
    return [*rows, strap | {"Gear": "K1-RT"}]


def _row(piece: Piece, pieces: int, options: Options) -> Row:
    return {
        "Gear": piece.id,
        "Kind": piece.kind,
        "Size": piece.size or None,
        "Grade": piece.grade or None,
        f"Length [{options.length}]": options.distance(piece.length),
        f"WLL [{options.mass}]": options.weight(piece.wll),
        f"Breaking strength [{options.mass}]": options.weight(piece.breaking),
        "Fits": piece.fits or None,
        "Quantity": pieces,
        "Condition": piece.condition or None,
        "Kept on": None,
        f"Mass [{options.mass}]": options.weight(piece.mass),
    }
