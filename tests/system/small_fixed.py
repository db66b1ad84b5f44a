"""Pieces that are already on, such that every row is one a reader should accept."""

from __future__ import annotations

from collections import Counter
from random import Random

Row = dict[str, object]
PLACES = ("front left", "front right", "rear left", "rear right", "mid left", "mid right")
STRAPS = ("ratchet strap", "retractable strap", "winch strap")
TABLES = {"chain", "ratchet strap", "retractable strap", "winch strap", "wire rope", "rope"}


def fixed_rows(rows: dict[str, list[Row]], random: Random) -> list[Row]:
    """One to three tie-downs begun, each with some of its pieces."""
    left = Counter({row["Gear"]: int(str(row["Quantity"])) for row in rows["Gear"]})
    trailer = {row["Load"]: row["Trailer"] for row in rows.get("Loads", [])}
    good = [
        row for row in rows["Gear"] if not row["Condition"] and row["Kind"] != "steel strapping"
    ]
    made: list[Row] = []
    for _ in range(random.choice((1, 1, 2, 3))):
        article = random.choice(rows["Cargo"])
        home = trailer.get(article["Load"])
        mine = [row for row in good if row["Kept on"] in (None, home)]
        places = [f"over {n}" for n in (1, 2, 7)] if article["Routing"] == "over" else [*PLACES]
        unpinned = article["Accessories"] == "boom"
        place = random.choice([*places, "boom"] if unpinned else places)
        if any((r["Article"], r["Position"]) == (article["Article"], place) for r in made):
            continue
        for row in _begun(article, place, mine, left, random):
            left[row["Gear"]] -= 1
            made.append(
                {
                    "Load": article["Load"],
                    "Article": article["Article"],
                    "Position": place,
                    "No": random.choice((None, 1)),
                    "Gear": row["Gear"],
                }
            )
    return made


def _begun(
    article: Row, place: str, mine: list[Row], left: Counter[object], random: Random
) -> list[Row]:
    """A member, or a binder, or both where they fit; now and then a shackle or a protector."""
    accessory = place == "boom"
    members = [row for row in mine if left[row["Gear"]] > 0 and _may(article, accessory, row)]
    binders = [
        row
        for row in mine
        if left[row["Gear"]] > 0 and str(row["Kind"]).endswith("binder") and row["Fits"]
    ]
    chosen: list[Row] = []
    if members and random.random() < 0.75:
        chosen.append(random.choice(members))
    pairs = [b for b in binders if not chosen or _fit(chosen[0], b)]
    if pairs and random.random() < 0.5:
        chosen.append(random.choice(pairs))
    shackles = [row for row in mine if row["Kind"] == "shackle" and left[row["Gear"]] > 0]
    if shackles and article["Shackles"] and not accessory and random.random() < 0.5:
        chosen.append(random.choice(shackles))
    guards = [row for row in mine if row["Kind"] == "edge protector" and left[row["Gear"]] > 0]
    webbing = chosen and chosen[0]["Kind"] in STRAPS
    if guards and webbing and article["Sharp edges"] and not accessory and random.random() < 0.5:
        chosen.append(random.choice(guards))
    return chosen


def _may(article: Row, accessory: bool, row: Row) -> bool:
    """Whether the member is rated for sure and nothing in the article's row forbids it."""
    if row["Kind"] not in TABLES or row["Kind"] == "winch strap" or row["WLL"] is None:
        return False
    if accessory:
        return True
    if article["Chain only"] and row["Kind"] != "chain":
        return False
    reach, length = article["Reach"], row["Length"]
    return reach is None or (length is not None and float(str(length)) >= float(str(reach)) + 1)


def _fit(member: Row, binder: Row) -> bool:
    size = {"10 mm": "3/8"}.get(str(member["Size"]), str(member["Size"]))
    takes = {"5/16-3/8": ("5/16", "3/8"), "3/8, 1/2": ("3/8", "1/2")}.get(
        str(binder["Fits"]), (str(binder["Fits"]),)
    )
    return member["Kind"] == "chain" and size in takes
