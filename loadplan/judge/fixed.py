"""Gear that is already on: it stays where the day workbook says it is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from loadplan.day.day import Day
from loadplan.judge.wording import of_article
from loadplan.outcome.tie_down import TieDown

Place = tuple[str, str, str, int]
_NONE: frozenset[int] = frozenset()


@dataclass(frozen=True)
class FixedGear:
    """The fixed gear of a day by place: load, article, position, number."""

    day: Day

    @cached_property
    def by_place(self) -> Mapping[Place, Counter[str]]:
        """Pieces of each kind of gear at each place."""
        found: dict[Place, Counter[str]] = {}
        for piece in self.day.fixed:
            place = (piece.load, piece.article, piece.position, piece.number)
            found.setdefault(place, Counter())[piece.gear] += 1
        return found

    @cached_property
    def _numbers(self) -> Mapping[tuple[str, str], frozenset[int]]:
        found: dict[tuple[str, str], set[int]] = {}
        for _, article, position, number in self.by_place:
            found.setdefault((article, position), set()).add(number)
        return {place: frozenset(numbers) for place, numbers in found.items()}

    def numbers(self, article: str, position: str) -> frozenset[int]:
        """The numbers at ``position`` of ``article`` at which gear is fixed."""
        return self._numbers.get((article, position), _NONE)

    def moved(self, ready: Iterable[str], tie_downs: Iterable[TieDown]) -> Iterator[str]:
        """A sentence for every fixed piece that the plan of a ready load does not leave there."""
        planned: dict[Place, Counter[str]] = {}
        for tied in tie_downs:
            place = (tied.load, tied.article, tied.position, tied.number)
            planned.setdefault(place, Counter(tied.pieces()))
        going = set(ready)
        for place, pieces in self.by_place.items():
            load, article, position, number = place
            if load not in going:
                continue
            have = planned.get(place, Counter())
            for gear, fixed in pieces.items():
                if have[gear] < fixed:
                    yield (
                        f"{of_article(load, article)}, {position}, number {number}: "
                        f"{fixed} x {gear} is fixed there, and the plan has {have[gear]}."
                    )
