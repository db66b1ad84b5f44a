"""Small days for the planner's tests."""

from __future__ import annotations

from fractions import Fraction
from random import Random

from loadplan.day.article import Article, CargoClass
from loadplan.day.day import Day
from loadplan.day.gear import Gear, Kind
from loadplan.day.load import Load
from loadplan.day.size import Size, read_size

THREE_EIGHTHS = read_size("3/8")
assert isinstance(THREE_EIGHTHS, Size)


def chain(name: str, wll: int | Fraction, quantity: int) -> Gear:
    """Chain of 3/8 in with a marked WLL."""
    return Gear(id=name, kind=Kind.CHAIN, size=THREE_EIGHTHS, wll=Fraction(wll), quantity=quantity)


def binder(name: str, wll: int | Fraction, quantity: int) -> Gear:
    """Lever binder for 3/8 in chain with a marked WLL."""
    return Gear(
        id=name, kind=Kind.LEVER_BINDER, fits=(THREE_EIGHTHS,), wll=Fraction(wll), quantity=quantity
    )


def shackle(name: str, wll: int, quantity: int) -> Gear:
    """A kind of shackle with a marked WLL."""
    return Gear(id=name, kind=Kind.SHACKLE, wll=Fraction(wll), quantity=quantity)


def gear_with_shackles(random: Random, fewest: int, most: int, tie_downs: int) -> list[Gear]:
    """Two chains and two binders of ``fewest`` to ``most`` pieces, and three kinds of shackle.

    Of each of these up to ``tie_downs`` tie-downs with two can be made.
    """
    gear = [
        chain(f"c{n}", random.choice((3900, 5400, 6600)), random.randint(fewest, most))
        for n in (0, 1)
    ]
    gear += [
        binder(f"b{n}", random.choice((3300, 5400, 9200)), random.randint(fewest, most))
        for n in (0, 1)
    ]
    return gear + [
        shackle(f"s{n}", random.choice((2000, 4000, 6500, 9500)), 2 * random.randint(1, tie_downs))
        for n in range(3)
    ]


def machine(name: str, load: str, weight: int, length: int = 10) -> Article:
    """A tracked machine of so many pounds and feet."""
    return Article(
        id=name,
        load=load,
        cargo_class=CargoClass.TRACKED_MACHINE,
        weight=Fraction(weight),
        length=Fraction(length),
    )


def day(loads: list[Load], articles: list[Article], gear: list[Gear], turnaround: int = 0) -> Day:
    """A US day."""
    return Day(
        loads=tuple(loads), articles=tuple(articles), gear=tuple(gear), turnaround=turnaround
    )
