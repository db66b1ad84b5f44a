"""Loads and trailers from their sheets, with the times of the day."""

from __future__ import annotations

import datetime

from loadplan.day.load import DAY_END, Load
from loadplan.day.row import Row
from loadplan.day.trailer import Trailer
from loadplan.problems import Code
from loadplan.workbook.draft import Draft, refer
from loadplan.workbook.limits import MOST_DAYS_AWAY
from loadplan.workbook.moments import DAY_SECONDS, Moment
from loadplan.workbook.names import fold
from loadplan.workbook.table import Record, Table

_TIMES = {"out": "Out", "back": "Back"}


def build_trailers(draft: Draft) -> None:
    """The trailers on their sheet or, without it, those that ``Loads`` names."""
    draft.trailers = [
        Trailer(**record.fields, row=record.row) for record in draft.table("Trailers").sound()
    ]
    if draft.has("Trailers"):
        return
    named: dict[str, Trailer] = {}
    for record in draft.table("Loads").records:
        name = record.fields.get("trailer")
        if name is not None and fold(name) not in named:
            named[fold(name)] = Trailer(id=name, row=record.row)
    draft.trailers = list(named.values())


def known_trailers(draft: Draft) -> dict[str, str]:
    """Every trailer id there is, by its folded form, those in rows with problems too."""
    if draft.has("Trailers"):
        return draft.table("Trailers").ids()
    return {fold(trailer.id): trailer.id for trailer in draft.trailers}


def build_loads(draft: Draft) -> None:
    """The loads on their sheet or, without it, an all-day load for each that ``Cargo`` names."""
    if not draft.has("Loads"):
        _loads_of_cargo(draft)
        return
    table = draft.table("Loads")
    trailers = known_trailers(draft)
    for record in table.records:
        if "trailer" in record.fields:
            refer(table, record, "trailer", "Trailer", trailers, "Trailers")
    midnight = _midnight(draft, table)
    for record in table.sound():
        times = {name: _seconds(table, record, name, midnight) for name in _TIMES}
        if record.sound:
            _add_load(draft, table, record, times)


def known_loads(draft: Draft) -> dict[str, str]:
    """Every load id there is, by its folded form, those in rows with problems too."""
    if draft.has("Loads"):
        return draft.table("Loads").ids()
    return {fold(load.id): load.id for load in draft.loads}


def _loads_of_cargo(draft: Draft) -> None:
    named: dict[str, Load] = {}
    for record in draft.table("Cargo").records:
        name = record.fields.get("load")
        if name is not None and fold(name) not in named:
            named[fold(name)] = Load(id=name, row=record.row)
    draft.loads = list(named.values())


def _midnight(draft: Draft, table: Table) -> datetime.date | None:
    """The date whose midnight the day's seconds count from; None where no time has a date.

    That is ``Date``. Without it every time must have a date, and the earliest is the day.
    """
    stated: datetime.date | None = draft.settings.get("date")
    if stated is not None:
        return stated
    moments = [
        (record, name, record.fields[name])
        for record in table.records
        for name in _TIMES
        if name in record.fields
    ]
    dates: list[datetime.date] = [
        moment.date for _, _, moment in moments if moment.date is not None
    ]
    if dates and len(dates) < len(moments):
        record, name, _ = next(one for one in moments if one[2].date is not None)
        table.reject(
            record,
            Code.DATE,
            _TIMES[name],
            f"{_TIMES[name]} has a date, other times have none, and Day gives no Date.",
            "Write Date on the sheet Day, or a date with every time.",
        )
        return min(dates)
    if dates:
        draft.settings["date"] = min(dates)
        return min(dates)
    return None


def _seconds(table: Table, record: Record, name: str, midnight: datetime.date | None) -> int | None:
    moment: Moment | None = record.fields.get(name)
    if moment is None:
        return None
    if moment.date is None or midnight is None:
        return moment.seconds
    days = (moment.date - midnight).days
    if abs(days) > MOST_DAYS_AWAY:
        table.reject(
            record,
            Code.DATE,
            _TIMES[name],
            f"{_TIMES[name]} is {moment.date}, {abs(days):,} days from the day's {midnight}.",
            f"It must be within {MOST_DAYS_AWAY} days.",
        )
    return days * DAY_SECONDS + moment.seconds


def _add_load(draft: Draft, table: Table, record: Record, times: dict[str, int | None]) -> None:
    out = 0 if times["out"] is None else times["out"]
    back = DAY_END if times["back"] is None else times["back"]
    if back <= out:
        where = "Out" if times["back"] is None else "Back"
        table.reject(
            record,
            Code.TIME_ORDER,
            where,
            f"Back ({_shown(record.row, back)}) is not after Out ({_shown(record.row, out)}).",
            "Write a later Back, with its date if it is after midnight: 2026-07-15 01:30.",
        )
        return
    given = {name: value for name, value in record.fields.items() if name not in _TIMES}
    draft.loads.append(Load(**given, out=out, back=back, row=record.row))


def _shown(row: Row, seconds: int) -> str:
    days, rest = divmod(seconds, DAY_SECONDS)
    if days == 1 and rest == 0:
        return "24:00"
    clock = f"{rest // 3600:02d}:{rest % 3600 // 60:02d}"
    return clock if days == 0 else f"{clock}, {days:+d} d"
