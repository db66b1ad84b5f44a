"""A conflict in words: everything of a small one, the first of a great one."""

from __future__ import annotations

from dataclasses import replace

from loadplan.day.load import Load
from loadplan.outcome.held import Conflict
from loadplan.shortfall.words import conflict_words
from tests.plan.build import binder, chain, day


def words(loads: int, kinds: int) -> str:
    out = [Load(id=f"L{n}", out=3600 * 6, back=3600 * 9) for n in range(loads)]
    gear = [chain("C0", 6600, 4), *(binder(f"B{n}", 6600, 4) for n in range(1, kinds))]
    one = replace(day(out, [], gear), loads=tuple(out))
    conflict = Conflict(
        loads=tuple(load.id for load in out),
        gear=tuple(row.id for row in gear),
        first=3600 * 6,
        last=3600 * 9,
        usable=8,
        lacking=(("C0", 1),),
        irreducible=True,
        least=True,
    )
    return conflict_words(one, conflict)


def test_few_are_named_in_full() -> None:
    told = words(8, 4)
    assert "Loads L0, L1, L2, L3, L4, L5, L6 and L7 between 06:00 and 09:00" in told
    assert told.count("binder for") == 3
    assert "8 are usable" in told


def test_of_many_the_first_and_how_many_more() -> None:
    told = words(9, 5)
    assert "Loads L0, L1, L2 and 6 more between" in told
    assert "need 9 pieces of C0, B1, B2, B3 and B4 together; 8 are usable" in told
