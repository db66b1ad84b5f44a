"""Whether an article's tie-downs stand where they may, numbered and filled in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count, islice

from loadplan.judge.case import ArticleCase
from loadplan.judge.fixed import FixedGear
from loadplan.judge.wording import of_article, of_tie_down
from loadplan.rules.positions import CORNERS, MIDDLE, OVER
from loadplan.rules.requirement import PositionSet
from loadplan.text import names

_ROUNDS_BEFORE_MIDDLE = 2


@dataclass(frozen=True, kw_only=True)
class _Standing:
    """How many main tie-downs stand at each position of an article, and how many are fixed."""

    where: str
    all: Counter[str]
    fixed: Counter[str]

    def free(self, position: str) -> bool:
        """Whether a tie-down stands there that was not already on."""
        return self.all[position] > self.fixed[position]


def misplaced(case: ArticleCase, fixed: FixedGear) -> Iterator[str]:
    """A sentence for every tie-down at a wrong place, number or turn.

    Where gear is fixed, its tie-downs stand as fixed and only the others follow the order.
    """
    where = of_article(case.load.id, case.article.id)
    yield from _unknown_places(case)
    numbers: dict[str, list[int]] = {}
    for tie_down in case.tie_downs:
        numbers.setdefault(tie_down.position, []).append(tie_down.number)
    for position, given in numbers.items():
        begun = fixed.numbers(case.article.id, position)
        yield from _numbers(f"{where}, {position}", given, begun)
    standing = _Standing(
        where=where,
        all=Counter(tie_down.position for tie_down in case.main),
        fixed=Counter(
            tie_down.position
            for tie_down in case.main
            if tie_down.number in fixed.numbers(case.article.id, tie_down.position)
        ),
    )
    for one in case.demand.position_sets:
        yield from _too_many(standing, one)
        yield from _corners(standing, one)
        yield from _middle(standing, one)
        yield from _over(standing, one)


def _unknown_places(case: ArticleCase) -> Iterator[str]:
    unpinned = {asked.accessory for asked in case.demand.accessories}
    pinned = {accessory.name for accessory in case.article.accessories if accessory.pinned}
    for tie_down in case.tie_downs:
        allowed = unpinned if tie_down.accessory else set(case.demand.positions)
        if tie_down.accessory and tie_down.position in pinned:
            yield f"{of_tie_down(tie_down)}: the accessory is pinned and takes no tie-down."
        elif tie_down.position not in allowed:
            what = "an unpinned accessory" if tie_down.accessory else "a position"
            yield f"{of_tie_down(tie_down)}: that is not {what} of the article."


def _numbers(where: str, given: list[int], fixed: frozenset[int]) -> Iterator[str]:
    """Numbers at one place are all different and, but for fixed ones, run from 1."""
    different = set(given)
    if len(different) < len(given):
        twice = sorted(number for number, times in Counter(given).items() if times > 1)
        yield f"{where}: number {names([str(number) for number in twice])} is given twice."
        return
    free = sorted(different - fixed)
    lowest = list(islice((number for number in count(1) if number not in fixed), len(free)))
    if free != lowest:
        found = names([str(number) for number in sorted(different)])
        yield f"{where}: tie-downs are numbered {found}, and must be numbered from 1 up."


def _too_many(standing: _Standing, places: PositionSet) -> Iterator[str]:
    most = places.most_at_each
    for position in places.positions:
        number = standing.all[position]
        if number > most:
            yield f"{standing.where}, {position}: {number} tie-downs stand there, and {most} may."


def _corners(standing: _Standing, places: PositionSet) -> Iterator[str]:
    """Each corner once before any takes a second, and so on."""
    corners = [position for position in places.positions if position in CORNERS]
    for position in filter(standing.free, corners):
        emptiest = min(corners, key=lambda corner: standing.all[corner])
        if standing.all[emptiest] < standing.all[position] - 1:
            yield (
                f"{standing.where}: {position} has {standing.all[position]} tie-downs while "
                f"{emptiest} has {standing.all[emptiest]}; "
                "each corner is filled once before any is filled again."
            )


def _middle(standing: _Standing, places: PositionSet) -> Iterator[str]:
    """The middle is used when the first and second places at the corners are full."""
    least = min(_ROUNDS_BEFORE_MIDDLE, places.most_at_each)
    corners = [position for position in places.positions if position in CORNERS]
    short = [corner for corner in corners if standing.all[corner] < least]
    for position in places.positions:
        if position in MIDDLE and standing.free(position) and short:
            yield (
                f"{standing.where}: {position} is used while {short[0]} has "
                f"{standing.all[short[0]]} of {least} tie-downs; "
                "the corners are filled before the middle."
            )


def _over(standing: _Standing, places: PositionSet) -> Iterator[str]:
    """Places over the article are filled from the first one on."""
    skipped = ""
    for position in places.positions:
        if position not in OVER:
            continue
        if not standing.all[position]:
            skipped = skipped or position
        elif skipped and standing.free(position):
            yield (
                f"{standing.where}: {position} is used while {skipped} is not; "
                "they are filled in order."
            )
