"""The plan that a purchase program's solution shows: which loads go, with which tie-downs."""

from __future__ import annotations

from dataclasses import replace

from loadplan.outcome.tie_down import Shown
from loadplan.plan.blocks import Arrays
from loadplan.plan.clock import Clock
from loadplan.plan.complete_search import CompleteSearch
from loadplan.plan.decode import decode
from loadplan.plan.master import Master
from loadplan.plan.program import build
from loadplan.purchase.program import Array, PurchaseProgram


def reader_of(program: PurchaseProgram, clock: Clock) -> CompleteSearch:
    """What reads the solutions of ``program``; it takes as long to make as the program itself."""
    # Gear on by Fixed is in the slots; what it takes from the pools is in the program's rows.
    sets = replace(program.sets, day=replace(program.sets.day, fixed=()))
    master = Master(Arrays(sets), build(sets, complete=False), clock)
    return CompleteSearch.of(master, patterns=False, pairs=False)


def plan_of(reader: CompleteSearch, values: Array) -> Shown:
    """The loads ready in ``values`` and their tie-downs, in workbook order, not judged."""
    return decode(reader.master, reader.translate(values))
