"""Where the labels of tie-downs stand beside the deck, so that none covers another."""

from __future__ import annotations

from collections.abc import Sequence

from loadplan.results.deck.inks import text_width

SIZE = 18
RADIUS = 15.0
_WIDEST = 132.0
_APART = 8.0


def label_width(lines: Sequence[str]) -> float:
    """How wide a label with these lines is, its number included."""
    return min(_WIDEST, max([2 * RADIUS + 2, *(text_width(line, SIZE) for line in lines)]))


def spread(
    wanted: Sequence[float], widths: Sequence[float], left: float, right: float
) -> list[float]:
    """Middles near ``wanted`` (rising) of labels of ``widths`` that do not touch.

    They stay within ``left`` and ``right`` as long as there is room for all of them.
    """
    at: list[float] = []
    edge = left
    for middle, width in zip(wanted, widths, strict=True):
        at.append(max(middle, edge + width / 2))
        edge = at[-1] + width / 2 + _APART
    edge = right
    for place in range(len(at) - 1, -1, -1):
        at[place] = min(at[place], edge - widths[place] / 2)
        edge = at[place] - widths[place] / 2 - _APART
    return at


def room(widths: Sequence[float]) -> float:
    """How much width these labels need side by side."""
    return sum(widths) + _APART * max(0, len(widths) - 1)
