"""Times as typed on ``Loads``: a time of day, or a date and a time."""

from __future__ import annotations

import datetime
import re
from typing import NamedTuple

from loadplan.problems import Code
from loadplan.units import Misread

DAY_SECONDS = 24 * 3600
_CLOCK = re.compile(r"([0-9]{1,2}):([0-9]{2})(?::([0-9]{2}))?(?:\s*([ap])\.?m\.?)?", re.IGNORECASE)
_DATE_AND_CLOCK = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})(?:\s*T\s*|\s+)(.+)", re.IGNORECASE)
_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})(?:[T ]00:00(?::00)?)?")
_REMEDY = "Write a time such as 06:30 or 6:30 PM, or a date and time such as 2026-07-14 06:30."


class Moment(NamedTuple):
    """Whole seconds from midnight, of ``date`` or, where that is None, of the day."""

    seconds: int
    date: datetime.date | None = None


def read_moment(value: object) -> Moment:
    """The moment a cell holds; raises :class:`~loadplan.units.Misread`."""
    if isinstance(value, datetime.datetime):
        return _rounded(value)
    if isinstance(value, datetime.time):
        return Moment(_clock(value.hour, value.minute, value.second, value.microsecond))
    if isinstance(value, datetime.timedelta):
        seconds = round(value.total_seconds())
        if not 0 <= seconds <= DAY_SECONDS:
            raise Misread(Code.TIME, _REMEDY, ", which is not within one day")
        return Moment(seconds)
    if isinstance(value, str):
        return _read_text(value.strip())
    if isinstance(value, datetime.date):
        raise Misread(Code.TIME, _REMEDY, ", a date without a time")
    raise Misread(Code.TIME, _REMEDY, ", which is no time")


def read_date(value: object) -> datetime.date:
    """The date a cell holds; raises :class:`~loadplan.units.Misread`."""
    if isinstance(value, datetime.datetime) and value.time() == datetime.time():
        return value.date()
    if isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
        return value
    match = _DATE.fullmatch(value.strip()) if isinstance(value, str) else None
    if match:
        try:
            return datetime.date(int(match[1]), int(match[2]), int(match[3]))
        except ValueError:
            pass
    raise Misread(Code.DATE, "Write a date such as 2026-07-14.")


def _read_text(text: str) -> Moment:
    match = _DATE_AND_CLOCK.fullmatch(text)
    if match is None:
        return Moment(_read_clock(text))
    try:
        date = datetime.date(int(match[1]), int(match[2]), int(match[3]))
    except ValueError:
        raise Misread(Code.TIME, _REMEDY, ", and there is no such date") from None
    return Moment(_read_clock(match[4]), date)


def _read_clock(text: str) -> int:
    match = _CLOCK.fullmatch(text)
    if match is None:
        raise Misread(Code.TIME, _REMEDY)
    hour, minute, second = int(match[1]), int(match[2]), int(match[3] or 0)
    half = (match[4] or "").lower()
    if half and not 1 <= hour <= 12:
        raise Misread(Code.TIME, _REMEDY)
    if half:
        hour = hour % 12 + (12 if half == "p" else 0)
    seconds = _clock(hour, minute, second)
    if minute > 59 or second > 59 or seconds > DAY_SECONDS:
        raise Misread(Code.TIME, _REMEDY)
    return seconds


def _rounded(value: datetime.datetime) -> Moment:
    seconds = _clock(value.hour, value.minute, value.second, value.microsecond)
    return Moment(seconds, value.date())


def _clock(hour: int, minute: int, second: int, microsecond: int = 0) -> int:
    """Whole seconds, to the nearest: a spreadsheet's day fractions are off by millionths."""
    return hour * 3600 + minute * 60 + second + (microsecond >= 500_000)
