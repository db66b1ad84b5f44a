"""``Details``: what a commodity section needs to know of an article, and how it is written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Details:
    """What ``Details`` says: a word per choice, a number per count, lengths in inches, flags."""

    choices: Mapping[str, str] = field(default_factory=dict)
    numbers: Mapping[str, Fraction] = field(default_factory=dict)
    flags: frozenset[str] = frozenset()

    def choice(self, name: str) -> str | None:
        """The word chosen for ``name``; None where nothing is said."""
        return self.choices.get(name)

    def number(self, name: str) -> Fraction | None:
        """The number given for ``name`` (a length in inches); None where nothing is said."""
        return self.numbers.get(name)

    def count(self, name: str, default: int = 1) -> int:
        """The whole number given for ``name``, or ``default`` where nothing is said."""
        return int(self.numbers.get(name, Fraction(default)))

    def has(self, flag: str) -> bool:
        """Whether ``flag`` stands in the cell."""
        return flag in self.flags


class Takes(Enum):
    """What a detail is written as."""

    WORD = "one of several words"
    COUNT = "a whole number"
    LENGTH = "a length with its unit"
    FLAG = "its own words, or nothing"


def _never(details: Details) -> bool:
    return False


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """One thing ``Details`` can say of a class.

    ``phrases`` are the ways to write it: per word chosen, or under the detail's own name.
    ``needed`` tells from the other details whether it must be given, ``what`` names it in the
    message that asks for it and ``write`` says what to write. ``among`` are the whole numbers
    allowed; () from ``least`` up to ``most``.
    """

    name: str
    takes: Takes
    phrases: Mapping[str, tuple[str, ...]]
    what: str
    write: str
    help: str
    needed: Callable[[Details], bool] = _never
    among: tuple[int, ...] = ()
    least: int = 1
    most: int = 20


def flag(name: str, help_: str, *others: str) -> Detail:
    """A detail that is said by its own words, or by ``others``."""
    return Detail(
        name=name,
        takes=Takes.FLAG,
        phrases={name: (name, *others)},
        what=name,
        write=name,
        help=help_,
    )


def number(name: str, help_: str, *others: str, least: int = 1, most: int = 20) -> Detail:
    """A detail that is a whole number beside its name, or beside one of ``others``."""
    return Detail(
        name=name,
        takes=Takes.COUNT,
        phrases={name: (name, *others)},
        what=f"the number of {name}",
        write=f"{name} and a number",
        help=help_,
        least=least,
        most=most,
    )
