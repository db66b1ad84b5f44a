"""The day as the workbook has it, in exact fractions; ids are compared case-folded."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

from tests.oracle.cells import Cell, Size, fits, key, quantity, seconds, size, text, yes
from tests.oracle.rating import rate
from tests.oracle.workbook import Record, read_sheets

DAY_END = 86400


@dataclass(kw_only=True)
class Gear:
    """One kind of piece; ``wll`` None is unknown, ``kept_on`` None the cage."""

    id: str
    kind: str
    size: Size | None
    length: Fraction | None
    wll: Fraction | None
    fits: frozenset[Size]
    owned: int
    usable: int
    kept_on: str | None


@dataclass(kw_only=True)
class Trailer:
    """What a trailer offers; None is not given or unrated."""

    anchors: int | None = None
    anchor_wll: Fraction | None = None
    winches: int = 0


@dataclass(kw_only=True)
class Article:
    """One article with everything riding on it in ``weight``."""

    id: str
    load: str
    kind: str
    weight: Fraction
    length: Fraction | None
    section: str
    routing: str
    blocked: bool
    tie_point: Fraction | None
    accessories: tuple[str, ...]
    reach: Fraction | None
    shackles: int
    sharp: bool
    chain_only: bool

    @property
    def machine(self) -> bool:
        """Whether it is of a machine class."""
        return self.kind.endswith("machine")


@dataclass(kw_only=True)
class Load:
    """One trip; ``trailer`` is its id, or None."""

    id: str
    trailer: str | None
    out: int
    back: int
    priority: int
    articles: list[Article] = field(default_factory=list)


@dataclass(kw_only=True)
class Fixed:
    """The pieces of one tie-down that are already on."""

    load: str
    article: str
    position: str
    number: int
    pieces: list[str]


@dataclass(kw_only=True)
class Day:
    """Everything in the workbook. Loads, trailers and gear by their case-folded id."""

    metric: bool
    turnaround: int
    midnight: datetime.datetime | None
    house: dict[str, tuple[Cell, str]]
    loads: dict[str, Load]
    trailers: dict[str, Trailer]
    gear: dict[str, Gear]
    fixed: list[Fixed]

    @property
    def mass(self) -> str:
        """The day's unit of weights and strengths."""
        return "kg" if self.metric else "lb"

    def trailer(self, load: Load) -> Trailer:
        """The trailer of a load; one that is not described offers anchors of no known rating."""
        return self.trailers.get(load.trailer or "", Trailer())

    def until(self, load: Load, gear: Gear) -> int:
        """When a piece sent out on ``load`` is free again."""
        return load.back + (self.turnaround if gear.kept_on is None else 0)

    def rule(self, name: str, default: bool) -> bool:
        """A yes/no house rule."""
        return yes(self.house.get(name, (None, ""))[0], default)

    def rule_number(self, name: str, default: str) -> Fraction:
        """A house rule as a plain number."""
        return Fraction(text(self.house.get(name, (None, ""))[0]) or default)

    def rule_weight(self, name: str) -> Fraction:
        """A house rule in the day's unit of weight; 0 where there is none."""
        cell, unit = self.house.get(name, (None, ""))
        return quantity(cell, unit or self.mass, self.mass) or Fraction(0)


def read_day(path: str | Path) -> Day:
    """Reads a day workbook that is known to be right."""
    sheets = read_sheets(path)
    settings = {key(r["setting"]).split("[")[0].strip(): r["value"] for r in sheets.get("day", [])}
    metric = key(settings.get("units")) == "metric"
    house = {
        " ".join(rule.split("[")[0].split()): (r["value"], rule.partition("[")[2].rstrip("] "))
        for r in sheets.get("house rules", [])
        for rule in [key(r["rule"])]
    }
    day = Day(
        metric=metric,
        turnaround=60 * int(text(settings.get("turnaround")) or 0),
        midnight=_midnight(settings.get("date"), sheets.get("loads", [])),
        house=house,
        loads={},
        trailers={},
        gear={},
        fixed=[],
    )
    _read_loads(day, sheets)
    _read_cargo(day, sheets)
    for r in sheets.get("trailers", []):
        day.trailers[key(r["trailer"])] = Trailer(
            anchors=_count(r.get("anchors"), None),
            anchor_wll=_quantity(r, "anchor wll", day.mass),
            winches=_count(r.get("winches"), 0) or 0,
        )
    for r in sheets["gear"]:
        day.gear[key(r["gear"])] = _gear(r, day)
    _read_fixed(day, sheets)
    return day


def _midnight(date: Cell, loads: list[Record]) -> datetime.datetime | None:
    if isinstance(date, str) and date.strip():
        date = datetime.datetime.fromisoformat(date.strip())
    if isinstance(date, datetime.datetime):
        return date.replace(hour=0, minute=0, second=0, microsecond=0)
    moments = [r.get(c) for r in loads for c in ("out", "back")]
    dates = [m for m in moments if isinstance(m, datetime.datetime)]
    return min(dates).replace(hour=0, minute=0, second=0, microsecond=0) if dates else None


def _read_loads(day: Day, sheets: dict[str, list[Record]]) -> None:
    for r in sheets.get("loads", []):
        day.loads[key(r["load"])] = Load(
            id=text(r["load"]),
            trailer=key(r.get("trailer")) or None,
            out=seconds(r.get("out"), day.midnight, 0),
            back=seconds(r.get("back"), day.midnight, DAY_END),
            priority=_count(r.get("priority"), 1) or 1,
        )
    if "loads" not in sheets:
        for r in sheets["cargo"]:
            day.loads.setdefault(
                key(r["load"]),
                Load(id=text(r["load"]), trailer=None, out=0, back=DAY_END, priority=1),
            )


def _read_cargo(day: Day, sheets: dict[str, list[Record]]) -> None:
    added: dict[str, Fraction] = {}
    for r in sheets.get("added weight", []):
        weight = _quantity(r, "weight", day.mass) or Fraction(0)
        added[key(r["article"])] = added.get(key(r["article"]), Fraction(0)) + weight
    heavy_from = day.rule_weight("heavy from")
    for r in sheets["cargo"]:
        weight = (_quantity(r, "weight", day.mass) or 0) + added.get(key(r["article"]), Fraction(0))
        kind = key(r["class"])
        section = key(r.get("secured under")) or kind
        if section.endswith("machine"):
            section = "heavy" if weight >= heavy_from else "light vehicle"
        parts = [p.strip() for p in re.split("[;,\n]", text(r.get("accessories"))) if p.strip()]
        article = Article(
            id=text(r["article"]),
            load=key(r["load"]),
            kind=kind,
            weight=Fraction(weight),
            length=_quantity(r, "length", "m" if day.metric else "ft"),
            section=section,
            routing=key(r.get("routing")) or ("over" if kind == "general" else "direct"),
            blocked=yes(r.get("blocked forward")),
            tie_point=_quantity(r, "tie point wll", day.mass),
            accessories=tuple(p for p in parts if not p.casefold().endswith("(pinned)")),
            reach=_quantity(r, "reach", "m" if day.metric else "ft"),
            shackles=_count(r.get("shackles"), 0) or 0,
            sharp=yes(r.get("sharp edges")),
            chain_only=yes(r.get("chain only")),
        )
        day.loads[article.load].articles.append(article)


def _gear(r: Record, day: Day) -> Gear:
    kind, owned = key(r["kind"]), _count(r.get("quantity"), 1) or 0
    return Gear(
        id=text(r["gear"]),
        kind=kind,
        size=size(r.get("size")),
        length=_quantity(r, "length", "m" if day.metric else "ft"),
        wll=rate(
            kind,
            text(r.get("grade")),
            size(r.get("size")),
            _quantity(r, "wll", day.mass),
            _quantity(r, "breaking strength", day.mass),
            day.metric,
        ),
        fits=fits(r.get("fits")),
        owned=owned,
        usable=owned if key(r.get("condition")) in ("", "good") else 0,
        kept_on=key(r.get("kept on")) or None,
    )


def _read_fixed(day: Day, sheets: dict[str, list[Record]]) -> None:
    found: dict[tuple[str, str, str, int], Fixed] = {}
    for r in sheets.get("fixed", []):
        position = " ".join(key(r["position"]).split())
        place = (key(r["load"]), key(r["article"]), position, _count(r.get("no"), 1) or 1)
        one = found.setdefault(
            place,
            Fixed(load=place[0], article=place[1], position=position, number=place[3], pieces=[]),
        )
        one.pieces.append(key(r["gear"]))
    day.fixed = list(found.values())


def _count(cell: Cell, default: int | None) -> int | None:
    return int(Fraction(text(cell))) if text(cell) else default


def _quantity(r: Record, name: str, wanted: str) -> Fraction | None:
    return quantity(r.get(name), r.units.get(name, wanted), wanted)
