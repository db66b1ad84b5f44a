"""Reasons and missing pieces in the yard's words."""

from __future__ import annotations

from loadplan.day.day import Day
from loadplan.day.gear import BINDERS, Gear
from loadplan.outcome.held import Conflict
from loadplan.text import mass_down, names
from loadplan.wll.piece import rate_in

_MOST_LOADS, _MOST_KINDS = 8, 4  # named in full


def piece_words(day: Day, gear: Gear) -> str:
    """The missing piece: ``lever binder for 3/8 in chain, 5,400 lb or more (such as B38)``."""
    text = kind_words(gear)
    wll = rate_in(day, gear).wll
    if wll is not None:
        text += f", {mass_down(wll, day.units)} or more"
    return f"{text} (such as {gear.id})"


def kind_words(gear: Gear) -> str:
    """``lever binder for 3/8 in chain``, ``3/8 in chain``."""
    text = gear.kind.value
    if gear.kind in BINDERS and gear.fits:
        return f"{text} for {' and '.join(str(size) for size in gear.fits)} chain"
    return text if gear.size is None else f"{gear.size} {text}"


def conflict_words(day: Day, one: Conflict) -> str:
    """``Loads 3, 7 and 9 between 06:30 and 11:00 need 14 pieces of B38 (lever binder ...)``."""
    kinds = [day.gear_by_id[kind] for kind in one.gear]
    few = len(kinds) <= _MOST_KINDS
    words = names([f"{gear.id} ({kind_words(gear)})" if few else gear.id for gear in kinds])
    pieces = "piece" if one.need == 1 else "pieces"
    need = f"{one.need:,}" if one.least else f"more than {one.usable:,}"
    together = " together" if len(kinds) > 1 else ""
    usable = f"{one.usable:,} {'is' if one.usable == 1 else 'are'} usable"
    alone = len(one.loads) == 1
    who = f"Load {one.loads[0]} alone" if alone else f"Loads {_some(one.loads)}"
    between = f"between {day.clock(one.first)} and {day.clock(one.last)}"
    return (
        f"{who} {between} {'needs' if alone else 'need'} {need} {pieces} of {words}{together}; "
        f"{usable}{_on_others(day, one)}."
    )


def _some(loads: tuple[str, ...]) -> str:
    """The names of a few loads, of many the first and how many more; the conflict lists all."""
    if len(loads) <= _MOST_LOADS:
        return names(loads)
    return f"{', '.join(loads[:3])} and {len(loads) - 3} more"


def _on_others(day: Day, one: Conflict) -> str:
    """Pieces that ``Fixed`` keeps on loads outside the conflict while it lasts."""
    loads = [
        load.id
        for load in day.loads
        if load.id not in one.loads
        and load.out < one.last + day.turnaround
        and one.first < load.back + day.turnaround
    ]
    on = [p.load for p in day.fixed if p.gear in one.gear and p.load in loads]
    where = names(list(dict.fromkeys(on)))
    return f", {len(on):,} of them already on load {where}" if on else ""


def not_sure(one: Conflict) -> str:
    """What is not proved of a conflict, "" where all is."""
    if one.irreducible and one.least:
        return ""
    return (
        "Not proved in the time: that no load or kind of gear named here can be left out, or that "
        "no smaller number of pieces would do."
    )
