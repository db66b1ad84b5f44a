"""The profile of a day: its rule set with the readings that its house rules choose."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Routing
from loadplan.day.day import Day, RuleSet
from loadplan.day.house import AtThreshold, HouseRules
from loadplan.day.units import Units
from loadplan.rules.limits import LIMITS, Limits, limits_of

_FOOT = Fraction("0.3048")
_POUND = Fraction("0.45359237")
HALF = Fraction(1, 2)
ONE = Fraction(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """What a rule set is: the document, the edition read, and what binds where."""

    rules: RuleSet
    document: str
    read: str
    note: str


US_EDITION = Edition(
    rules=RuleSet.US,
    document="49 CFR 392.9 and 393.100 to 393.136",
    read="stored copies read in November 2026; 393.130 in the CFR of 2003; the live text was not "
    "opened",
    note="Binds interstate carriers; states and permits may ask more. Check the current text.",
)
CANADA_EDITION = Edition(
    rules=RuleSet.CANADA,
    document="NSC Standard 10",
    read="edition of June 2013; its contents page and the sections that provinces quote, read in "
    "November 2026; the rest by the official handbook drawn from the same model",
    note="A model: it binds only as a province adopts it, and adoption differs by province "
    "(Alberta, British Columbia, Ontario and Nova Scotia by reference, Newfoundland as its own "
    "regulation; the vehicles it covers begin at 4,500 kg or 5,000 kg). Check the current text "
    "and the province's.",
)
EDITIONS = {RuleSet.US: US_EDITION, RuleSet.CANADA: CANADA_EDITION}


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A rule set, the units of the day and the readings chosen.

    In Canada the metric limits hold whatever the units of the day: the measured value is
    converted exactly, never the limit.
    """

    rules: RuleSet = RuleSet.US
    units: Units = Units.US
    house: HouseRules

    @property
    def edition(self) -> Edition:
        """Document, edition and adoption of the rule set."""
        return EDITIONS[self.rules]

    @property
    def canada(self) -> bool:
        """Whether the rule set is the Canadian one."""
        return self.rules is RuleSet.CANADA

    @property
    def limits(self) -> Limits:
        """The limits, in the units of :attr:`measured_in`."""
        return limits_of(self.rules, self.units)

    @property
    def printed(self) -> Limits:
        """The limits as printed in the day's own units: for strengths, which gear is marked in."""
        return LIMITS[self.units]

    @property
    def measured_in(self) -> Units:
        """The units that lengths and weights are compared with limits in."""
        return Units.METRIC if self.canada else self.units

    def length(self, value: Fraction) -> Fraction:
        """``value`` of the day as it is compared with limits."""
        return value if self.measured_in is self.units else value * _FOOT

    def mass(self, value: Fraction) -> Fraction:
        """``value`` of the day as it is compared with limits."""
        return value if self.measured_in is self.units else value * _POUND

    def credit(self, routing: Routing) -> Fraction:
        """The share of its WLL with which a tie-down so routed counts.

        49 CFR 393.106(d): one half to the article or back to the same side, the whole over it.
        NSC Standard 10 s. 10: one half for each end on an anchor point, so the whole of one that
        comes back to the same side; one half is kept for direct ones unless the house says more.
        """
        if routing is Routing.DIRECT:
            return HALF if self.house.direct_credit is None else self.house.direct_credit
        if routing is Routing.SAME_SIDE:
            own = ONE if self.canada else HALF
            return own if self.house.same_side_credit is None else self.house.same_side_credit
        return ONE if routing is Routing.OVER else Fraction(0)

    def must_be_heavy(self, weight: Fraction) -> bool:
        """Whether a machine of ``weight`` may only be secured as heavy machinery.

        In the US from 10,000 lb up (393.130(a)), in Canada above 4,500 kg. The house may read a
        machine of exactly the US limit as light.
        """
        measured, limit = self.mass(weight), self.limits.heavy
        at_limit = not self.canada and self.house.at_threshold is AtThreshold.HEAVY
        return measured > limit or (at_limit and measured == limit)

    def is_heavy(self, weight: Fraction) -> bool:
        """Whether a machine of ``weight`` is secured as heavy unless its row says otherwise."""
        lighter = self.mass(self.house.heavy_from) < self.limits.heavy
        return self.must_be_heavy(weight) or (lighter and weight >= self.house.heavy_from)

    def may_be_light(self, weight: Fraction) -> bool:
        """Whether 393.128 (s. 88) reaches up to ``weight``."""
        return self.mass(weight) <= self.limits.heavy

    @property
    def heavy_floor(self) -> Fraction | None:
        """The least WLL of each tie-down on heavy machines: on in Canada, off in the US."""
        on = self.canada if self.house.heavy_floor is None else self.house.heavy_floor
        return self.printed.commodity if on else None


def profile(day: Day) -> Profile:
    """The profile of ``day``."""
    return Profile(rules=day.rules, units=day.units, house=day.house)
