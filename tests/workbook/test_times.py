"""Out and Back: every way to write a time, and every way to get it wrong."""

import datetime

import pytest

from tests.workbook.build import SMALLEST, read, rejected

DATE = [("Setting", "Value"), ("Date", datetime.date(2026, 7, 14))]
WRITE = "Write a time such as 06:30 or 6:30 PM, or a date and time such as 2026-07-14 06:30."


def loads(*rows, day=None):
    sheets = {"Loads": [("Load", "Trailer", "Out", "Back"), *rows]}
    return {**({"Day": day} if day else {}), **sheets, **SMALLEST}


@pytest.mark.parametrize(
    ("typed", "seconds"),
    [
        (datetime.time(6, 30), 23400),
        ("06:30", 23400),
        ("6:30", 23400),
        ("6:30 PM", 66600),
        ("12:05 a.m.", 300),
        ("06:30:15", 23415),
        (datetime.timedelta(hours=5, minutes=15), 18900),
        (datetime.datetime(2026, 7, 14, 6, 30), 23400),
        ("2026-07-14 06:30", 23400),
        ("2026-07-13T23:00", -3600),
        # A spreadsheet's day fraction is off by millionths of a second.
        (datetime.datetime(2026, 7, 14, 6, 29, 59, 999_990), 23400),
        (None, 0),
    ],
)
def test_ways_to_write_a_time(tmp_path, typed, seconds):
    assert read(tmp_path, loads(("L-1", None, typed, "23:59"), day=DATE)).loads[0].out == seconds


@pytest.mark.parametrize(
    ("typed", "seconds"),
    [("24:00", 86400), (datetime.timedelta(days=1), 86400), (None, 86400), ("00:01", 60)],
)
def test_the_end_of_the_day(tmp_path, typed, seconds):
    assert read(tmp_path, loads(("L-1", None, None, typed))).loads[0].back == seconds


@pytest.mark.parametrize(
    ("typed", "line"),
    [
        (0.25, "Out is 0.25, which is no time."),
        (6, "Out is 6, which is no time."),
        (True, "Out is TRUE, which is no time."),
        ("early", 'Out is "early".'),
        ("25:00", 'Out is "25:00".'),
        ("06:60", 'Out is "06:60".'),
        ("13:00 PM", 'Out is "13:00 PM".'),
        ("2026-02-30 06:00", 'Out is "2026-02-30 06:00", and there is no such date.'),
        ("7/14/2026 06:00", 'Out is "7/14/2026 06:00".'),
        (
            datetime.timedelta(hours=30),
            "Out is 1 day, 6:00:00, which is not within one day.",
        ),
    ],
)
def test_a_time_that_cannot_be_read(tmp_path, typed, line):
    assert rejected(tmp_path, loads(("L-1", None, typed, None), day=DATE)) == [
        f"'Loads'!C2  T01  {line} {WRITE}"
    ]


@pytest.mark.parametrize(
    ("out", "back", "cell", "found"),
    [
        ("11:00", "10:00", "D2", "Back (10:00) is not after Out (11:00)."),
        ("11:00", "11:00", "D2", "Back (11:00) is not after Out (11:00)."),
        ("24:00", None, "C2", "Back (24:00) is not after Out (24:00)."),
        (
            "2026-07-15 08:00",
            "07:00",
            "D2",
            "Back (07:00) is not after Out (08:00, +1 d).",
        ),
    ],
)
def test_back_at_or_before_out(tmp_path, out, back, cell, found):
    assert rejected(tmp_path, loads(("L-1", None, out, back), day=DATE)) == [
        f"'Loads'!{cell}  T02  {found} Write a later Back, with its date if it is after "
        "midnight: 2026-07-15 01:30."
    ]


def test_dates_without_the_setting_make_the_earliest_the_day(tmp_path):
    sheets = loads(
        ("L-1", None, "2026-07-15 06:00", "2026-07-15 09:00"),
        ("L-2", None, "2026-07-14 06:00", "2026-07-14 09:00"),
    )
    day = read(tmp_path, sheets)
    assert day.date == datetime.date(2026, 7, 14)
    assert [load.out for load in day.loads] == [108000, 21600]


def test_dates_and_times_of_day_do_not_mix_without_the_setting(tmp_path):
    sheets = loads(("L-1", None, "06:00", "2026-07-15 09:00"))
    assert rejected(tmp_path, sheets) == [
        "'Loads'!D2  T04  Back has a date, other times have none, and Day gives no Date. "
        "Write Date on the sheet Day, or a date with every time."
    ]


def test_a_date_far_from_the_day(tmp_path):
    sheets = loads(("L-1", None, datetime.datetime(1999, 12, 31, 6, 0), None), day=DATE)
    assert rejected(tmp_path, sheets) == [
        "'Loads'!C2  T04  Out is 1999-12-31, 9,692 days from the day's 2026-07-14. "
        "It must be within 366 days."
    ]


@pytest.mark.parametrize("typed", ["14.7.2026", 46217, "soon"])
def test_a_date_that_cannot_be_read(tmp_path, typed):
    shown = f'"{typed}"' if isinstance(typed, str) else typed
    assert rejected(tmp_path, {"Day": [("Setting", "Value"), ("Date", typed)], **SMALLEST}) == [
        f"'Day'!B2  T04  Date is {shown}. Write a date such as 2026-07-14."
    ]


def test_one_trailer_on_two_loads_at_once(tmp_path):
    sheets = loads(
        ("L-1", "T-1", "10:00", "12:00"),
        ("L-2", "t-1", "06:00", "10:01"),
        ("L-3", "T-1", "12:00", "13:00"),
        ("L-4", None, "06:00", "13:00"),
    )
    assert rejected(tmp_path, sheets) == [
        "'Loads'!B2  T03  Trailer T-1 is on load L-2 from 06:00 to 10:01, and this load leaves "
        "at 10:00. Change the trailer or the times."
    ]


def test_a_trailer_goes_again_at_the_second_it_is_back(tmp_path):
    sheets = loads(("L-1", "T-1", "06:00", "10:00"), ("L-2", "T-1", "10:00", "12:00"))
    assert len(read(tmp_path, sheets).loads) == 2


def test_a_long_trip_overlaps_all_that_leave_within_it(tmp_path):
    sheets = loads(
        ("L-1", "T-1", "06:00", "18:00"),
        ("L-2", "T-1", "07:00", "08:00"),
        ("L-3", "T-1", "09:00", "10:00"),
    )
    assert rejected(tmp_path, sheets) == [
        f"'Loads'!B{row}  T03  Trailer T-1 is on load L-1 from 06:00 to 18:00, and this load "
        f"leaves at {leaves}. Change the trailer or the times."
        for row, leaves in ((3, "07:00"), (4, "09:00"))
    ]


@pytest.mark.parametrize(
    "typed", [datetime.date(2026, 7, 14), "2026-07-14", " 2026-07-14 00:00 ", "2026-07-14T00:00:00"]
)
def test_ways_to_write_the_date(tmp_path, typed):
    sheets = {"Day": [("Setting", "Value"), ("Date", typed)], **SMALLEST}
    assert read(tmp_path, sheets).date == datetime.date(2026, 7, 14)


@pytest.mark.parametrize("typed", ["2026-02-30", datetime.datetime(2026, 7, 14, 6, 30)])
def test_a_date_that_is_none(tmp_path, typed):
    shown = f'"{typed}"' if isinstance(typed, str) else typed
    assert rejected(tmp_path, {"Day": [("Setting", "Value"), ("Date", typed)], **SMALLEST}) == [
        f"'Day'!B2  T04  Date is {shown}. Write a date such as 2026-07-14."
    ]
