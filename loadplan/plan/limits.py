"""Limits on gear: what the pools keep at each moment, as rows of the master added when needed.

Kit gear is limited per load of its trailer. A rounded limit holds for whole columns only: where a
pool keeps q pieces for columns that take u each, they also keep Σ ⌊u / k⌋ x ≤ ⌊q / k⌋ for every
whole k. With 7 binders, two sets of four cannot be made.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

import numpy as np

from loadplan.plan.blocks import Pools
from loadplan.plan.traits import Traits

Array = np.ndarray[Any, np.dtype[Any]]
AtMost = tuple[Array, Array, float]  # columns, their weights, and what they come to at the most
_SLACK = 1e-6
_WORTH = 0.01  # a rounded limit broken by less is not worth a row
_DIVISORS = range(2, 8)


class Limits:
    """The limits that have rows so far: by (moment, gear), (load, gear), (moment, gear, divisor).

    ``at_most`` appends rows Σ weights x ≤ most and answers with the number of the first.
    """

    def __init__(self, pools: Pools, at_most: Callable[[Sequence[AtMost]], int]):
        self.pools, self._at_most = pools, at_most
        self.pool: dict[tuple[int, int], int] = {}
        self.kit: dict[tuple[int, int], int] = {}
        self.rounded: dict[tuple[int, int, int], int] = {}
        # What was asked about columns since the last limit was added.
        self._rows: dict[tuple[int, int], list[int]] = {}
        self._rounded: dict[int, list[tuple[int, int, int]]] = {}

    def spread(self, traits: Traits, moments: int, share: float) -> list[AtMost]:
        """Limits at so many moments over the day, less a share of the pieces; and of every kit."""
        pools, rows = self.pools, []
        usable = pools.usable - np.rint(share * pools.usable)
        number = len(pools.moments)
        for moment in sorted({(2 * at + 1) * number // (2 * moments) for at in range(moments)}):
            for gear in np.nonzero(~pools.kit)[0]:
                most = float(usable[moment, gear])
                rows.append(self._row(traits.uses[:, gear], moment, traits, most))
        rows += self._kit_rows(_marked(np.broadcast_to(pools.kit, pools.kit_usable.shape)), traits)
        return rows

    def keep_all(self, traits: Traits, upper: Array) -> None:
        """Add every limit that columns up to ``upper`` could break."""
        pools, every = self.pools, np.arange(len(upper))
        taken, out = self._taken(traits, every, upper, 1)
        over = (out > pools.usable) & ~pools.kit
        self._keep([at for at in _marked(over) if at not in self.pool], traits)
        kit_over = (taken > pools.kit_usable) & pools.kit
        self._keep_kits(_marked(kit_over), traits)

    def keep_broken(self, traits: Traits, values: Array) -> bool:
        """Add the limits that ``values`` breaks; answers whether there were any."""
        pools = self.pools
        going = np.nonzero(np.abs(values) > _SLACK / 10)[0]
        taken, out = self._taken(traits, going, values, 1)
        over = (out > pools.usable + _SLACK) & ~pools.kit
        kit_over = (taken > pools.kit_usable + _SLACK) & pools.kit
        self._keep(_worst(out - pools.usable, over), traits)
        self._keep_kits(_marked(kit_over), traits)
        return bool(over.any() or kit_over.any())

    def round_broken(self, traits: Traits, values: Array) -> bool:
        """Add the rounded limits that ``values`` breaks; answers whether there were any."""
        going = np.nonzero(values > _SLACK)[0]
        pools, found = self.pools, False
        for divisor in _DIVISORS:
            _, out = self._taken(traits, going, values, divisor)
            limit = pools.usable // divisor
            for moment, gear in _worst(out - limit, (out > limit + _WORTH) & ~pools.kit):
                if (moment, gear, divisor) in self.rounded:
                    continue
                weights = traits.uses[:, gear] // divisor
                row = self._row(weights, moment, traits, float(limit[moment, gear]))
                self.rounded[moment, gear, divisor] = self._at_most([row])
                self._rounded.clear()
                found = True
        return found

    def taken(self, traits: Traits, values: Array) -> tuple[Array, Array]:
        """Pieces of each kind of gear that ``values`` take, per load and out at each moment."""
        return self._taken(traits, np.nonzero(values)[0], values, 1)

    def gear_prices(self, prices: Array) -> Array:
        """What one piece of each kind of gear costs each load (loads x gear), none below nought."""
        pools = self.pools
        at = np.zeros((len(pools.moments) + 1, pools.usable.shape[1]))
        for (moment, gear), row in self.pool.items():
            at[moment + 1, gear] = -prices[row]
        total = np.cumsum(at, axis=0)
        found = total[pools.last + 1] - total[pools.first]
        for (load, gear), row in self.kit.items():
            found[load, gear] -= prices[row]
        return np.asarray(np.maximum(found, 0.0))

    def round_prices(self, prices: Array) -> dict[int, dict[tuple[int, int], float]]:
        """Per load, what each ⌊u / k⌋ of each kind of gear costs under the rounded limits."""
        pools = self.pools
        found: dict[int, dict[tuple[int, int], float]] = {}
        for (moment, gear, divisor), row in self.rounded.items():
            price = -float(prices[row])
            if price > _SLACK:
                for load in np.nonzero((pools.first <= moment) & (pools.last >= moment))[0]:
                    here = found.setdefault(int(load), {})
                    here[gear, divisor] = here.get((gear, divisor), 0.0) + price
        return found

    def entries(self, uses: Array, load: int) -> Iterator[tuple[int, float]]:
        """The rows that a column of ``load`` stands in that takes ``uses``, and with what."""
        for gear in uses.nonzero()[0].tolist():
            pieces = float(uses[gear])
            for row in self._rows_of(load, gear):
                yield row, pieces
        for row, gear, divisor in self._rounded_of(load):
            share = int(uses[gear]) // divisor
            if share:
                yield row, float(share)

    def _rows_of(self, load: int, gear: int) -> list[int]:
        """The rows that limit a kind of gear on a load, or while it is out."""
        if (load, gear) not in self._rows:
            moments = range(int(self.pools.first[load]), int(self.pools.last[load]) + 1)
            found = [self.kit.get((load, gear)), *(self.pool.get((at, gear)) for at in moments)]
            self._rows[load, gear] = [row for row in found if row is not None]
        return self._rows[load, gear]

    def _rounded_of(self, load: int) -> list[tuple[int, int, int]]:
        """The rounded limits while a load is out: row, kind of gear and divisor."""
        if load not in self._rounded:
            first, last = int(self.pools.first[load]), int(self.pools.last[load])
            self._rounded[load] = [
                (row, gear, divisor)
                for (at, gear, divisor), row in self.rounded.items()
                if first <= at <= last
            ]
        return self._rounded[load]

    def gear_of_rows(self) -> dict[int, int]:
        """The kind of gear that each row limits."""
        found: dict[int, int] = {}
        for rows in (self.pool, self.kit, self.rounded):
            found |= {row: key[1] for key, row in rows.items()}
        return found

    def _taken(
        self, traits: Traits, going: Array, values: Array, divisor: int
    ) -> tuple[Array, Array]:
        """⌊pieces / divisor⌋ taken of each kind of gear: per load, and out at each moment."""
        pools = self.pools
        taken = np.zeros((len(pools.first), pools.usable.shape[1]))
        share = traits.uses[going] // divisor
        np.add.at(taken, traits.load[going], values[going, None] * share)
        change = np.zeros((len(pools.moments) + 1, taken.shape[1]))
        np.add.at(change, pools.first, taken)
        np.subtract.at(change, pools.last + 1, taken)
        return taken, np.cumsum(change, axis=0)[:-1]

    def _keep(self, places: Sequence[tuple[int, int]], traits: Traits) -> None:
        """Add the limits at these (moment, gear)."""
        usable, uses = self.pools.usable, traits.uses
        rows = [self._row(uses[:, g], m, traits, float(usable[m, g])) for m, g in places]
        self.pool |= self._numbered(places, rows)

    def _keep_kits(self, places: Sequence[tuple[int, int]], traits: Traits) -> None:
        """Add the limits on a kit's pieces for these (load, gear) of its trailer, each once."""
        new = [at for at in places if at not in self.kit]
        self.kit |= self._numbered(new, self._kit_rows(new, traits))

    def _kit_rows(self, places: Sequence[tuple[int, int]], traits: Traits) -> list[AtMost]:
        """The limits on a kit's pieces for these (load, gear)."""
        usable, uses = self.pools.kit_usable, traits.uses
        by_load: dict[int, tuple[Array, Array]] = {}
        rows = []
        for load, gear in places:
            if gear not in by_load:
                (columns,) = np.nonzero(uses[:, gear])
                columns = columns[np.argsort(traits.load[columns], kind="stable")]
                by_load[gear] = columns, traits.load[columns]
            columns, loads = by_load[gear]
            columns = columns[slice(*np.searchsorted(loads, (load, load + 1)))]
            rows.append((columns, uses[columns, gear].astype(float), float(usable[load, gear])))
        return rows

    def _numbered(
        self, places: Sequence[tuple[int, int]], rows: Sequence[AtMost]
    ) -> dict[tuple[int, int], int]:
        """Append ``rows``; the number of each by its place."""
        first = self._at_most(rows) if rows else 0
        self._rows.clear()
        return {at: first + number for number, at in enumerate(places)}

    def _row(self, weights: Array, moment: int, traits: Traits, most: float) -> AtMost:
        """What the loads out at ``moment`` take by ``weights`` per column, ``most`` at the most."""
        (columns,) = np.nonzero(weights)
        out = (self.pools.first <= moment) & (self.pools.last >= moment)
        columns = columns[out[traits.load[columns]]]
        return columns, weights[columns].astype(float), most


def _marked(marks: Array) -> list[tuple[int, int]]:
    """Row and column of each mark."""
    rows, columns = np.nonzero(marks)
    return list(zip(rows.tolist(), columns.tolist(), strict=True))


def _worst(excess: Array, over: Array) -> list[tuple[int, int]]:
    """Of each kind of gear, the broken moments that stand out: each the worst of its run."""
    found: list[tuple[int, int]] = []
    for gear in np.nonzero(over.any(axis=0))[0]:
        moments = np.nonzero(over[:, gear])[0]
        for run in np.split(moments, np.nonzero(np.diff(moments) > 1)[0] + 1):
            found.append((int(run[np.argmax(excess[run, gear])]), int(gear)))
    return found
