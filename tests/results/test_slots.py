"""The clock of the day cut into slots."""

from __future__ import annotations

from dataclasses import replace

from loadplan.day.load import Load
from loadplan.results.slots import Slots, slots_of
from tests.results.build import DAY, HOUR


def test_half_hours_from_the_first_departure_to_the_last_return():
    # 06:00 to 12:00 is 12 half hours.
    assert slots_of(DAY) == Slots(start=6 * HOUR, step=HOUR // 2, count=12)


def test_gear_that_is_free_later_lengthens_the_clock():
    assert slots_of(DAY, [13 * HOUR]).count == 14


def test_a_long_day_has_longer_slots():
    # Three days from 06:00: 72 hours; 2 h slots would be 36, too many for three digits in each.
    day = replace(DAY, loads=(Load(id="1", out=6 * HOUR, back=78 * HOUR),), articles=(), fixed=())
    assert slots_of(day) == Slots(start=6 * HOUR, step=3 * HOUR, count=24)


def test_months_still_fit():
    day = replace(DAY, loads=(Load(id="1", out=0, back=90 * 24 * HOUR),), articles=(), fixed=())
    slots = slots_of(day)
    assert slots.count <= 28
    assert slots.begins(slots.count) >= 90 * 24 * HOUR


def test_a_trip_touches_the_slots_it_has_a_part_in():
    slots = Slots(start=0, step=100, count=5)
    assert list(slots.touched(150, 300)) == [1, 2]
    assert list(slots.touched(150, 301)) == [1, 2, 3]
    assert list(slots.touched(-50, 900)) == [0, 1, 2, 3, 4]


def test_the_highest_value_within_each_slot():
    slots = Slots(start=0, step=100, count=4)
    # 3 out from 50, 5 from 120, 1 from 150, 0 from 300.
    assert slots.highest([(50, 3), (120, 5), (150, 1), (300, 0)]) == [3, 5, 1, 0]
