"""A switch: one disputed point of the rules, its readings, and what each of them rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from loadplan.day.day import RuleSet
from loadplan.day.house import HouseRules

HANDBOOK = "from the official handbook"
NO_SOURCE = "common practice, no source"
SECOND_HAND = "an official quoted second-hand"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One way to read a disputed point: the word in the workbook and what speaks for it.

    ``value`` is what :class:`~loadplan.day.house.HouseRules` holds for it; ``certainty`` says how
    the ground was come by, in words.
    """

    word: str
    value: Any
    rests_on: str
    certainty: str = "read"


@dataclass(frozen=True, slots=True, kw_only=True)
class Switch:
    """One line of ``House rules`` that chooses between readings.

    ``field`` names it in :class:`~loadplan.day.house.HouseRules`. ``canada`` is the word taken by
    default in Canada, "" where it is the same as in the US; ``us`` that in the US.
    """

    name: str
    field: str
    asks: str
    readings: tuple[Reading, ...]
    us: str
    canada: str = ""

    @property
    def words(self) -> Mapping[str, Any]:
        """Every word that may stand in ``Value``, with the value it stands for."""
        return {reading.word: reading.value for reading in self.readings}

    def default(self, rules: RuleSet) -> Reading:
        """The reading taken where the workbook does not name one."""
        word = self.canada if rules is RuleSet.CANADA and self.canada else self.us
        return self._named(word)

    def taken(self, house: HouseRules, rules: RuleSet) -> Reading | None:
        """The reading that ``house`` takes under ``rules``; None where its value is no reading."""
        value = getattr(house, self.field)
        if value is None:
            return self.default(rules)
        return next((reading for reading in self.readings if reading.value == value), None)

    def others(self, house: HouseRules, rules: RuleSet) -> tuple[Reading, ...]:
        """The readings that ``house`` does not take."""
        taken = self.taken(house, rules)
        return tuple(reading for reading in self.readings if reading is not taken)

    def read_as(self, house: HouseRules, reading: Reading) -> HouseRules:
        """``house`` with this point read as ``reading``."""
        changes: dict[str, Any] = {self.field: reading.value}
        return replace(house, **changes)

    def _named(self, word: str) -> Reading:
        return next(reading for reading in self.readings if reading.word == word)


def yes(rests_on: str, certainty: str = "read") -> Reading:
    """The reading that says yes."""
    return Reading(word="yes", value=True, rests_on=rests_on, certainty=certainty)


def no(rests_on: str, certainty: str = "read") -> Reading:
    """The reading that says no."""
    return Reading(word="no", value=False, rests_on=rests_on, certainty=certainty)
