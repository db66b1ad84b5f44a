"""Positions: where tie-downs go on an article, in the order they are filled."""

from __future__ import annotations

from loadplan.day.article import Routing

FRONT = ("front left", "front right")
REAR = ("rear left", "rear right")
CORNERS = FRONT + REAR
MIDDLE = ("mid left", "mid right")
LEFT = ("front left", "rear left", "mid left")
RIGHT = ("front right", "rear right", "mid right")
BY_DIRECTION = {"front": FRONT, "rear": REAR, "left": LEFT, "right": RIGHT}
OVER = tuple(f"over {number}" for number in range(1, 21))
NAMED = frozenset(CORNERS + MIDDLE + OVER)


def main_positions(routing: Routing) -> tuple[str, ...]:
    """The positions of the main tie-downs of an article so routed, in filling order."""
    return OVER if routing is Routing.OVER else CORNERS + MIDDLE


def most_at_each(routing: Routing, most_per_position: int) -> int:
    """How many tie-downs one position takes: one over the cargo, else as the house rule says."""
    return 1 if routing is Routing.OVER else most_per_position
