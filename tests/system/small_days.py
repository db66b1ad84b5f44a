"""Small days with everything in them: one to four loads, three to nine kinds of gear.

``small_day(seed)`` gives rows in the day workbook's format. Every day is one that a reader should
accept; whether its loads can go is another matter.
"""

from __future__ import annotations

import datetime
from collections import Counter
from random import Random

from tests.bench.sheet import Rows
from tests.system.small_fixed import fixed_rows
from tests.system.small_gear import gear

Row = dict[str, object]
MOMENTS = (6, 7, 8, 10, 12, 14, 16)
MACHINE = ("tracked machine", "wheeled machine", "articulated machine")
LB_TO_KG, FT_TO_M = 0.45359237, 0.3048


def small_day(seed: int) -> Rows:
    """The rows of one small day; the same seed gives the same rows."""
    random = Random(f"small {seed}")
    metric = random.random() < 0.25
    described = random.random() < 0.8
    loads = _loads(random)
    trailers = [_trailer(name, random) for name in _trailers(loads)]
    articles = [
        _article(f"a{len(loads) * n + k}", load, random)
        for n in range(2)
        for k, load in enumerate(loads)
        if n == 0 or random.random() < 0.3
    ]
    pieces = gear(
        random,
        strapped=any(row["Routing"] == "over" for row in articles),
        shackled=any(row["Shackles"] for row in articles),
        guarded=any(row["Sharp edges"] for row in articles) or random.random() < 0.1,
    )
    _kits(pieces, loads, random)
    rows: Rows = {"Cargo": articles, "Gear": pieces}
    rows["House rules"] = _house(random)
    if random.random() < 0.4:
        rows["Added weight"] = [
            {
                "Article": row["Article"],
                "What": "bucket",
                "Weight": random.choice((100, 250.5, 900)),
            }
            for row in articles
            if random.random() < 0.5
        ]
    if described:
        rows["Trailers"] = trailers
    if len(loads) > 1 or described or random.random() < 0.5:
        rows["Loads"] = loads
    if random.random() < 0.35:
        rows["Fixed"] = fixed_rows(rows, random)
    rows["Day"] = _settings(metric, random)
    _keep_in_bounds(rows)
    _disguise(rows, random)
    return {
        name: [_spell(row, metric, random) for row in sheet]
        for name, sheet in rows.items()
        if sheet
    }


def _loads(random: Random) -> list[Row]:
    rows: list[Row] = []
    busy: dict[str | None, list[tuple[int, int]]] = {}
    for number in range(random.choice((1, 2, 2, 3, 3, 4))):
        out, back = sorted(random.sample(MOMENTS, 2))
        names = [
            name
            for name in ("T1", "T2", "T3", "T4")
            if all(back <= o or b <= out for o, b in busy.get(name, []))
        ]
        trailer = random.choice(names[:2]) if random.random() < 0.95 else None
        busy.setdefault(trailer, []).append((out, back))
        rows.append(
            {
                "Load": f"L{number}",
                "Trailer": trailer,
                "Out": _moment(out, random),
                "Back": _moment(back, random),
                "Priority": random.choice((1, 1, 2, 3, None)),
            }
        )
    return rows


def _trailers(loads: list[Row]) -> list[str]:
    return sorted({str(row["Trailer"]) for row in loads if row["Trailer"]})


def _moment(hour: int, random: Random) -> object:
    if random.random() < 0.3:
        return f"{hour:02d}:00"
    return datetime.time(hour)


def _trailer(name: str, random: Random) -> Row:
    return {
        "Trailer": name,
        "Anchors": random.choice((None, None, 8, 10, 12, 16)),
        "Anchor WLL": random.choice((None, 4000, 5400, 6600, 10000)),
        "Winches": random.choice((None, 0, 1, 3, 4)),
    }


def _article(name: str, load: Row, random: Random) -> Row:
    kind = random.choice((*MACHINE, "light vehicle", "general", "general"))
    machine = kind in MACHINE
    section = random.choice((None, None, "heavy", "light vehicle", "general")) if machine else None
    if kind == "light vehicle":
        section = random.choice((None, None, "general"))
    free = kind == "general" or section == "general"
    routing = random.choice(
        (None, "over", "over", "same side", "direct") if free else (None, "direct", "same side")
    )
    if routing is None and kind == "general":
        routing = "over"
    few = routing == "over" or random.random() < 0.5
    weight = random.choice(
        (500, 1100, 1101, 2600, 4000, 5400, 9000.5) if few else (6000, 10000, 10400, 13000, 17200)
    )
    if section in ("light vehicle", "general") or kind == "light vehicle":
        weight = min(weight, 7000)
    accessories = (
        random.choice((None, None, "boom", "boom; bucket (pinned)", "boom, Bucket"))
        if machine
        else None
    )
    return {
        "Article": name,
        "Load": load["Load"],
        "Class": kind,
        "Weight": weight,
        "Weight from": random.choice((None, "scale", "estimate")),
        "Length": random.choice((4, 5, 5.1, 9.5, 10, 10.01, 12, 20, 20.5)),
        "Secured under": section,
        "Blocked forward": random.choice((None, None, "yes")),
        "Routing": routing,
        "Tie point WLL": random.choice((None, None, None, 3000, 5000, 6600)),
        "Accessories": accessories,
        "Reach": random.choice((None,) * 6 + (12, 16)),
        "Shackles": random.choice((None, None, None, 1, 2)),
        "Sharp edges": random.choice((None, None, None, "yes")),
        "Chain only": random.choice((None,) * 11 + ("yes",)),
    }


def _kits(pieces: list[Row], loads: list[Row], random: Random) -> None:
    """Some rows become a kit; a retractable strap is always one."""
    names = _trailers(loads) or ["T9"]
    for row in pieces:
        if row["Kind"] == "ratchet strap" and random.random() < 0.15:
            row["Kind"] = "retractable strap"
        if row["Kind"] == "retractable strap" or random.random() < 0.08:
            row["Kept on"] = random.choice(names)


def _house(random: Random) -> list[Row]:
    rules: dict[str, object] = {}
    for rule, values, chance in (
        ("Most per position", (1, 3), 0.3),
        ("Aggregate share", (0.6, 0.5, 0.75), 0.2),
        ("Accessory counts in aggregate", ("yes",), 0.2),
        ("Unrated points", ("hold", "warn"), 0.08),
        ("Length count on machines", ("no",), 0.25),
        ("Straps on machines", ("no",), 0.12),
        ("Least WLL each", (2500, 4000), 0.15),
        ("Heavy from", (5000, 7000, 9000), 0.2),
    ):
        if random.random() < chance:
            rules[rule] = random.choice(values)
    return [{"Rule": rule, "Value": value} for rule, value in rules.items()]


def _settings(metric: bool, random: Random) -> list[Row]:
    settings: dict[str, object] = {
        "Units": "metric" if metric else "US",
        "Turnaround [min]": random.choice((None, 0, 30, 60, 120)),
    }
    if random.random() < 0.5:
        settings["Date"] = datetime.date(2026, 7, 14)
    return [{"Setting": name, "Value": value} for name, value in settings.items()]


def _disguise(rows: Rows, random: Random) -> None:
    """Ids in other letters, times with a date, blank times, and a load without cargo."""
    settings = {row["Setting"]: row["Value"] for row in rows["Day"]}
    for name, heading in (("Cargo", "Load"), ("Fixed", "Gear"), ("Gear", "Kept on")):
        for row in rows.get(name, []):
            if row[heading] is not None and random.random() < 0.1:
                row[heading] = f" {str(row[heading]).swapcase()} "
    for row in rows.get("Loads", []):
        for heading in ("Out", "Back"):
            moment = row[heading]
            if "Date" in settings and isinstance(moment, datetime.time) and random.random() < 0.2:
                row[heading] = datetime.datetime.combine(datetime.date(2026, 7, 14), moment)
    if "Loads" in rows and random.random() < 0.1:
        empty = dict.fromkeys(rows["Loads"][0]) | {"Load": 7, "Priority": random.choice((1, 4))}
        rows["Loads"].insert(0, empty)


def _keep_in_bounds(rows: Rows) -> None:
    """Light vehicles and machines under other sections stay below the weight those allow."""
    added: Counter[object] = Counter()
    for row in rows.get("Added weight", []):
        added[row["Article"]] += float(str(row["Weight"]))
    for row in rows["Cargo"]:
        carried = float(str(row["Weight"])) + added[row["Article"]]
        light = row["Class"] == "light vehicle" or row["Secured under"] in (
            "light vehicle",
            "general",
        )
        house = {r["Rule"]: r["Value"] for r in rows["House rules"]}
        default = row["Class"] in MACHINE and row["Secured under"] is None
        light |= default and carried < float(str(house.get("Heavy from", 0)))
        if light and carried >= 10000:
            row["Weight"] = 6000


def _spell(row: Row, metric: bool, random: Random) -> Row:
    """Units into headings, and now and then another unit into a cell."""
    spelled: Row = {}
    for heading, value in row.items():
        if heading == "Rule" and value in ("Least WLL each", "Heavy from"):
            spelled["Rule"] = f"{value} [{'kg' if metric else 'lb'}]"
            spelled["Value"] = _mass(float(str(row["Value"])), metric, random)
            return spelled
        if heading in ("Weight", "WLL", "Breaking strength", "Anchor WLL", "Tie point WLL"):
            cell = None if value is None else _mass(float(str(value)), metric, random)
            spelled[f"{heading} [{'kg' if metric else 'lb'}]"] = cell
        elif heading in ("Length", "Reach"):
            feet = None if value is None else float(str(value))
            spelled[f"{heading} [{'m' if metric else 'ft'}]"] = _distance(feet, metric, random)
        else:
            spelled[heading] = value
    return spelled


def _mass(pounds: float, metric: bool, random: Random) -> object:
    if random.random() < 0.06:
        return f"{pounds:,.1f} lb" if metric else f"{round(pounds * LB_TO_KG):,} kg"
    if random.random() < 0.03:
        return f"{round(pounds * LB_TO_KG / 1000, 2)} t"
    return round(pounds * LB_TO_KG) if metric else pounds


def _distance(feet: float | None, metric: bool, random: Random) -> object:
    if feet is None:
        return None
    if random.random() < 0.1:
        return f"{int(feet)}' {round(feet % 1 * 12)}\""
    if not metric:
        return feet
    return {5.0: 1.52, 10.0: 3.04}.get(feet, round(feet * FT_TO_M, 2))
