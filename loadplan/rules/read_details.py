"""Reading ``Details``: words into choices, numbers and flags, and what is wrong with them.

Phrases are separated by semicolons, commas or new lines, or simply follow each other. Within a
phrase the order of the words does not matter: ``eye vertical`` is ``vertical eye``, ``3 walls`` is
``walls 3``. A length carries its own unit.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache

from loadplan.day.article import Article, CargoClass
from loadplan.rules.canada import cite_in
from loadplan.rules.commodities.table import COMMODITIES
from loadplan.rules.contradiction import Contradiction
from loadplan.rules.detail_words import measure, number, phrases, tokens, whole
from loadplan.rules.details import Detail, Details, Takes
from loadplan.rules.profile import Profile
from loadplan.text import names

_LONGEST = 8
_Found = tuple[Detail, str | Fraction | None]


@dataclass(slots=True)
class _Draft:
    """What was read so far, with what is wrong."""

    choices: dict[str, str] = field(default_factory=dict)
    numbers: dict[str, Fraction] = field(default_factory=dict)
    flags: set[str] = field(default_factory=set)
    wrong: list[str] = field(default_factory=list)


def details_of(article: Article) -> Details:
    """What ``Details`` of ``article`` says, as far as it can be read; nothing of other classes."""
    return _read(article.cargo_class, article.details)[0]


def detail_problems(article: Article, profile: Profile) -> Iterator[Contradiction]:
    """Words that mean nothing, numbers that cannot be, and what the class needs and lacks."""
    details, wrong = _read(article.cargo_class, article.details)
    for text in wrong:
        yield Contradiction(column="Details", text=text)
    for one in _table(article.cargo_class):
        given = one.name in details.choices or one.name in details.numbers
        if not given and not wrong and one.needed(details):
            cite = cite_in(profile, COMMODITIES[article.cargo_class].section)
            text = f"Details lacks {one.what}, needed by {cite}. Write {one.write}."
            yield Contradiction(column="Details", text=text)


def _table(kind: CargoClass) -> tuple[Detail, ...]:
    return COMMODITIES[kind].details if kind in COMMODITIES else ()


@cache
def _read(kind: CargoClass, details: str) -> tuple[Details, tuple[str, ...]]:
    """What ``details`` says of an article of class ``kind``, and what is wrong with it."""
    draft = _Draft()
    table = _table(kind)
    for text in phrases(details) if table else ():
        left: list[str] = []
        for found, window in _segments(tokens(text), table):
            if found is None:
                left += window
            else:
                _take(draft, found, window)
        if left:
            draft.wrong.append(
                f'Details says "{text}", and a row of class {kind.value} has no '
                f'"{" ".join(left)}". '
                f"Write {'; '.join(one.write for one in table)}."
            )
    read = Details(draft.choices, draft.numbers, frozenset(draft.flags))
    return read, tuple(draft.wrong)


def _segments(
    found: list[str], table: tuple[Detail, ...]
) -> Iterator[tuple[_Found | None, list[str]]]:
    """The tokens of one phrase cut from the left into the longest windows that mean something."""
    place = 0
    while place < len(found):
        for size in range(min(_LONGEST, len(found) - place), 0, -1):
            window = found[place : place + size]
            meaning = _meaning(window, table)
            if meaning is not None:
                yield meaning, window
                place += size
                break
        else:
            yield None, [found[place]]
            place += 1


def _meaning(window: list[str], table: tuple[Detail, ...]) -> _Found | None:
    for one in table:
        for word, written in one.phrases.items():
            if one.takes in (Takes.WORD, Takes.FLAG):
                if _same(window, written):
                    return one, word
            elif one.takes is Takes.COUNT:
                numbers = [token for token in window if number(token) is not None]
                rest = [token for token in window if number(token) is None]
                if len(numbers) == 1 and _same(rest, written):
                    return one, numbers[0]
            elif (length := measure(window)) is not None and _same(length[1], written):
                return one, length[0]
    return None


@cache
def _folded(phrase: str) -> list[str]:
    return sorted(tokens(phrase))


def _same(found: Sequence[str], written: tuple[str, ...]) -> bool:
    return any(sorted(found) == _folded(phrase) for phrase in written)


def _take(draft: _Draft, found: _Found, window: list[str]) -> None:
    one, value = found
    if one.takes is Takes.FLAG:
        draft.flags.add(one.name)
    elif one.takes is Takes.WORD:
        before = draft.choices.setdefault(one.name, str(value))
        if before != value:
            draft.wrong.append(
                f"Details says {one.what} twice, {before} and {value}. Write {one.write}."
            )
    elif one.takes is Takes.COUNT:
        _take_number(draft, one, str(value))
    elif not isinstance(value, Fraction):
        draft.wrong.append(
            f'Details gives {one.what} as "{" ".join(window)}", without a unit. Write {one.write}.'
        )
    elif value <= 0:
        draft.wrong.append(f"Details gives {one.what} as 0. Write {one.write}.")
    else:
        _set(draft, one, value)


def _take_number(draft: _Draft, one: Detail, text: str) -> None:
    value = whole(text)
    allowed = one.among or range(one.least, one.most + 1)
    if value is None or value not in allowed:
        what = names([str(number) for number in one.among], "or")
        must = what if one.among else f"a whole number from {one.least} to {one.most}"
        draft.wrong.append(f"Details says {one.name} {text}. It must be {must}.")
        return
    _set(draft, one, Fraction(value))


def _set(draft: _Draft, one: Detail, value: Fraction) -> None:
    if draft.numbers.setdefault(one.name, value) != value:
        draft.wrong.append(f"Details gives {one.what} twice. Write it once.")
