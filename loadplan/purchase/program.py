"""The integer program of a purchase: the day's complete program, and pieces bought.

Notation as in :mod:`loadplan.plan.constraints`, and x_o pieces bought of offer o. Every pool row is
Σ pieces out at the moment − Σ_{o of the kind} x_o ≤ pieces usable − pieces on by ``Fixed``.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np

from loadplan.day.day import Day
from loadplan.day.gear import Gear, Price
from loadplan.plan.cliques import cliques
from loadplan.plan.matrix import INFINITE, Matrix, matrix_of
from loadplan.plan.program import Program, build
from loadplan.plan.sets import Sets, sets_of
from loadplan.purchase.owned import gear_ids, with_pieces

Array = np.ndarray[Any, np.dtype[Any]]
_PAIR = 2  # of a kind of shackle or edge protector, one tie-down takes this many at the most
Terms = tuple[Array, Array]  # columns and their weights
Row = tuple[Array, Array, float]  # the same, and what they come to at the most


@dataclass(frozen=True, eq=False)
class PurchaseProgram:
    """The program as arrays: columns ``ready`` per load of ``sets``, ``bought`` per offer.

    ``names`` is the id that the pieces of each offer have in the program's gear. ``own`` is the
    matrix without the pool rows, ``takes`` the columns that take pieces of each kind, by load, and
    how many.
    """

    day: Day
    offers: tuple[Price, ...]
    names: tuple[str, ...]
    sets: Sets
    own: Matrix
    takes: dict[str, dict[str, Terms]]
    ready: Array
    bought: Array

    @cached_property
    def matrix(self) -> Matrix:
        """The whole program."""
        return _with(self.own, list(_pool_rows(self)))

    def at_times_of(self, day: Day) -> PurchaseProgram:
        """The program of ``day``, which differs from this one's in the times of its trips only."""
        return replace(self, day=day)


def purchase_program(day: Day, loads: Iterable[str], offers: Sequence[Price]) -> PurchaseProgram:
    """The program of ``day`` in which only ``loads`` may go and ``offers`` may be bought."""
    wanted = set(loads)
    offers = tuple(offer for offer in offers if offer.most is None or offer.most > 0)
    market = with_pieces(day, [(offer, min(offer.most or _PAIR, _PAIR)) for offer in offers])
    sets = replace(sets_of(market, wanted), plenty=True)
    # Tier patterns raise the bound of a day's stages; here they made every answer slower.
    program = build(sets, complete=True, pairs=False, patterns=False)
    variables = program.variables
    columns = len(variables.all)
    place = {variable: at for at, variable in enumerate(variables.all)}
    most = [_useful(sets) if offer.most is None else float(offer.most) for offer in offers]
    return PurchaseProgram(
        day=day,
        offers=offers,
        names=tuple(gear_ids(day, offers)),
        sets=sets,
        own=_with_offers(matrix_of(program.problem, variables.all), most),
        takes=_takes(program, place),
        ready=np.array([place[variable] for variable in variables.ready], dtype=np.int64),
        bought=columns + np.arange(len(offers)),
    )


def _useful(sets: Sets) -> float:
    """No plan takes more pieces of one kind than this."""
    return float(_PAIR * sum(article.most() for load in sets.loads for article in load.articles))


def _takes(program: Program, place: dict[Any, int]) -> dict[str, dict[str, Terms]]:
    """Per kind of gear and load, the columns that take pieces of it and how many."""
    found: dict[str, dict[str, list[tuple[int, int]]]] = defaultdict(lambda: defaultdict(list))
    name = [one.load.id for one in program.sets.loads]
    for activity in program.variables.activities:
        for gear, pieces in activity.uses:
            found[gear][name[activity.load]].append((place[activity.variable], pieces))
    for load, protectors in enumerate(program.variables.protectors):
        for gear, variable in protectors.items():
            found[gear][name[load]].append((place[variable], 1))
    return {
        gear: {load: _arrays(terms) for load, terms in users.items()}
        for gear, users in found.items()
    }


def _pool_rows(program: PurchaseProgram) -> Iterator[Row]:
    """The limits per kind of gear and moment; of a kit, per load of its trailer.

    As arrays: of a thousand loads they have nine million entries.
    """
    day = program.day
    moments, spans = cliques([(load.out, load.back + day.turnaround) for load in day.loads])
    span_of = {load.id: span for load, span in zip(day.loads, spans, strict=True)}
    out_at = [_out_at(span_of, moment) for moment in range(len(moments))]
    for gear in program.sets.gear:
        users = program.takes.get(gear.id, {})
        more = _arrays([(column, -1) for column in _columns(program, gear.id)])
        usable = _usable(day, gear)
        on = [piece.load for piece in day.fixed if piece.gear == gear.id]
        for group in [[load] for load in users] if gear.kept_on is not None else out_at:
            parts = [users[load] for load in group if load in users]
            if parts:
                places, values = zip(*parts, more, strict=True)
                most = float(usable - sum(1 for load in on if load in group))
                yield np.concatenate(places), np.concatenate(values), most


def _columns(program: PurchaseProgram, gear: str) -> list[int]:
    """The columns that add to a kind of gear, by the id it has in the market."""
    pairs = zip(program.names, program.bought.tolist(), strict=True)
    return [column for name, column in pairs if name == gear]


def _arrays(terms: Sequence[tuple[int, int]]) -> Terms:
    places, values = [at for at, _ in terms], [value for _, value in terms]
    return np.array(places, dtype=np.int32), np.array(values, dtype=float)


def _out_at(span_of: dict[str, tuple[int, int]], moment: int) -> list[str]:
    return [load for load, (first, last) in span_of.items() if first <= moment <= last]


def _usable(day: Day, gear: Gear) -> int:
    owned = day.gear_by_id.get(gear.id)
    return 0 if owned is None else owned.usable


def _with_offers(matrix: Matrix, most: list[float]) -> Matrix:
    """``matrix`` with a whole column per offer behind its own."""
    return replace(
        matrix,
        lower=np.concatenate((matrix.lower, np.zeros(len(most)))),
        upper=np.concatenate((matrix.upper, most)),
        whole=np.concatenate((matrix.whole, np.ones(len(most), dtype=bool))),
    )


def _with(matrix: Matrix, rows: Sequence[Row]) -> Matrix:
    """``matrix`` with the pool rows behind its own."""
    ends = np.cumsum([len(places) for places, _, _ in rows], dtype=np.int64)
    start = matrix.starts[-1]
    places = [matrix.places, *(places for places, _, _ in rows)]
    return replace(
        matrix,
        row_lower=np.concatenate((matrix.row_lower, np.full(len(rows), -INFINITE))),
        row_upper=np.concatenate((matrix.row_upper, [side for _, _, side in rows])),
        starts=np.concatenate((matrix.starts, start + ends)).astype(np.int32),
        places=np.concatenate(places).astype(np.int32),
        coefficients=np.concatenate((matrix.coefficients, *(values for _, values, _ in rows))),
    )
