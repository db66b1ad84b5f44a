"""The rows of a program of one article alone."""

from __future__ import annotations

from typing import Any

import numpy as np

from loadplan.plan.blocks import Block
from loadplan.plan.matrix import INFINITE, Matrix, matrix_of_rows

Array = np.ndarray[Any, np.dtype[Any]]


def at_most(block: Block) -> Array:
    """How many of each place of the menu a set can have."""
    found = np.full(len(block.menu.assemblies), float(block.room))
    for one in block.apart:
        found[one.first : one.end] = one.number
    return found


def most_of(block: Block, have: dict[int, int]) -> Array:
    """How many of each assembly what there is makes."""
    return made_of(block.menu.uses, have)


def made_of(uses: Array, have: dict[int, int]) -> Array:
    """How many times what there is makes up each row of ``uses``, by kind of gear."""
    stock = np.array([have[gear] for gear in range(uses.shape[1])], dtype=float)
    with np.errstate(divide="ignore", invalid="ignore"):
        each = np.where(uses > 0, stock // uses, INFINITE)
    return np.asarray(each.min(axis=1))


class Rows:
    """Rows over ``columns`` columns, added one by one."""

    def __init__(self, columns: int):
        self.columns = columns
        self.rows: list[Array] = []
        self.low: list[float] = []
        self.high: list[float] = []

    def add(
        self,
        weights: Array,
        *,
        low: float = -INFINITE,
        high: float = INFINITE,
        extra: tuple[int, float] | None = None,
    ) -> None:
        """A row of ``weights`` over the first columns and one more entry."""
        row = np.zeros(self.columns)
        row[: len(weights)] = weights
        if extra is not None:
            row[extra[0]] = extra[1]
        self.rows.append(row)
        self.low.append(low)
        self.high.append(high)

    def matrix(self, upper: Array, whole: Array) -> Matrix:
        """The rows as a problem; the first columns are ``whole`` where marked, all others too."""
        columns = np.concatenate((whole, np.ones(self.columns - len(whole), dtype=bool)))
        return matrix_of_rows(np.array(self.rows), self.low, self.high, upper, columns)
