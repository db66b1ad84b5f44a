"""Pieces already on, against what is owned and the winches a trailer has."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from loadplan.day.day import Day
from loadplan.day.gear import FixedPiece, Kind
from loadplan.problems import Code, Problem
from loadplan.text import count
from loadplan.workbook.table import row_problem

_REMEDY = "Correct the row, Quantity on Gear, or the times on Loads."


def pool_problems(day: Day) -> Iterator[Problem]:
    """Gear fixed more often at once than there is, and more winch straps than winches."""
    by_gear: dict[str, list[FixedPiece]] = defaultdict(list)
    straps: dict[str, list[FixedPiece]] = defaultdict(list)
    for piece in day.fixed:
        by_gear[piece.gear].append(piece)
        if day.gear_by_id[piece.gear].kind is Kind.WINCH_STRAP:
            straps[piece.load].append(piece)
    for pieces in by_gear.values():
        yield from _gear_problems(day, pieces)
    for load, pieces in straps.items():
        yield from _winch_problems(day, load, pieces)


def _gear_problems(day: Day, pieces: list[FixedPiece]) -> Iterator[Problem]:
    """The first moment at which more pieces are out than there are; its last row is at fault.

    At one moment what comes back is counted before what goes out.
    """
    gear = day.gear_by_id[pieces[0].gear]
    moves: list[tuple[int, int, FixedPiece]] = []
    for piece in pieces:
        load = day.load_by_id[piece.load]
        moves += [(load.out, 1, piece), (day.free_again(load, gear), -1, piece)]
    out = 0
    for moment, change, piece in sorted(moves, key=lambda move: move[:2]):
        out += change
        if out > gear.quantity:
            yield row_problem(
                piece.row,
                Code.FIXED_COUNT,
                "Gear",
                f"{count(out, 'piece')} of {gear.id} would be out at {day.clock(moment)}, "
                f"and there {'is' if gear.quantity == 1 else 'are'} {gear.quantity:,}.",
                _REMEDY,
            )
            return


def _winch_problems(day: Day, load: str, straps: list[FixedPiece]) -> Iterator[Problem]:
    trailer = day.trailer_of(day.load_by_id[load])
    winches = trailer.winches if trailer else 0
    if len(straps) > winches:
        yield row_problem(
            straps[winches].row,
            Code.FIXED_COUNT,
            "Gear",
            f"{count(len(straps), 'winch strap')} on load {load} and "
            f"{count(winches, 'winch', 'winches')} on its trailer.",
            "Correct the row, or Winches on Trailers.",
        )
