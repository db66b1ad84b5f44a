"""Laying out: which tie-down of a set goes to which position of its article."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from loadplan.plan.sets import ArticleSets, PositionClass
from loadplan.rules.positions import CORNERS


def lay_out(article: ArticleSets, place: PositionClass, tie_downs: int) -> list[tuple[str, int]]:
    """Position and number for each of ``tie_downs`` new tie-downs at the positions of ``place``.

    What the counts ask for comes first, then each corner once, second places at the corners, the
    middle. Left and right are kept even. Numbers begun by fixed gear are left to it.
    """
    begun = [(slot.position, slot.number) for slot in article.slots if not slot.accessory]
    taken = dict.fromkeys(article.demand.positions, 0)
    for position, _ in begun:
        taken[position] += 1
    found: list[str] = []
    for position in _asked_for(article, place, taken):
        if len(found) == tie_downs:
            # What is asked for beyond these stands at positions of another class.
            break
        found.append(position)
        taken[position] += 1
    while len(found) < tie_downs:
        position = _next(article, place.positions, taken)
        found.append(position)
        taken[position] += 1
    order = {position: at for at, position in enumerate(article.demand.positions)}
    return _numbered(sorted(found, key=lambda position: order[position]), begun)


def _asked_for(article: ArticleSets, place: PositionClass, taken: dict[str, int]) -> Iterable[str]:
    """Positions that the counts ask for, each as soon as what went before is laid out."""
    counts = sorted(article.demand.counts, key=lambda one: len(one.positions or taken))
    for count in counts:
        positions = count.positions or tuple(taken)
        while sum(count.worth(at) * taken[at] for at in positions) < count.at_least:
            room = [at for at in positions if at in place.positions and _room(article, at, taken)]
            if not room:
                break
            yield _next(article, room, taken)


def _next(article: ArticleSets, positions: Sequence[str], taken: dict[str, int]) -> str:
    """The next position to fill among ``positions``."""
    free = [position for position in positions if _room(article, position, taken)]
    lean = {side: sum(n for at, n in taken.items() if at.endswith(side)) for side in _SIDES}
    return min(free, key=lambda at: (_round(article, at, taken[at]), lean.get(_side(at), 0)))


def _round(article: ArticleSets, position: str, taken: int) -> int:
    """Corners once, corners twice, the middle, corners again; other positions as they come."""
    most = _most(article, position)
    if position in CORNERS:
        return taken if taken < 2 else most + taken
    return 2 + taken if position.startswith("mid ") else taken


def _room(article: ArticleSets, position: str, taken: dict[str, int]) -> bool:
    return taken[position] < _most(article, position)


def _most(article: ArticleSets, position: str) -> int:
    one = article.demand.set_of(position)
    return 0 if one is None else one.most_at_each


_SIDES = ("left", "right")


def _side(position: str) -> str:
    return next((side for side in _SIDES if position.endswith(side)), "")


def _numbered(positions: Sequence[str], begun: list[tuple[str, int]]) -> list[tuple[str, int]]:
    used = set(begun)
    found: list[tuple[str, int]] = []
    for position in positions:
        number = 1
        while (position, number) in used:
            number += 1
        used.add((position, number))
        found.append((position, number))
    return found
