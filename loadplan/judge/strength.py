"""The credited strength of an article's tie-downs, summed exactly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

from loadplan.judge.case import ArticleCase
from loadplan.judge.finding import Finding
from loadplan.judge.wording import need_and_have
from loadplan.rules.requirement import StrengthRequirement
from loadplan.text import down, plain


def strength(case: ArticleCase, asked: StrengthRequirement) -> Finding:
    """``asked`` against the sum over the tie-downs of credit x WLL."""
    parts = list(_credited(case, asked))
    have = _total(parts)
    need, text = need_and_have(asked.need, have)
    return Finding(
        requirement=asked,
        need=need,
        have=text,
        unit=case.day.units.mass,
        met=have >= asked.need,
        planned=_sum(parts, have, case.day.units.mass),
    )


def planned_strength(case: ArticleCase, asked: StrengthRequirement) -> Fraction:
    """What the tie-downs of ``case`` put against ``asked``, in the day's mass unit."""
    return _total(_credited(case, asked))


def _total(parts: Iterable[tuple[Fraction, Fraction]]) -> Fraction:
    return sum((credit * wll for credit, wll in parts), Fraction(0))


def _credited(case: ArticleCase, asked: StrengthRequirement) -> Iterator[tuple[Fraction, Fraction]]:
    """Credit and WLL of every tie-down that counts toward ``asked``.

    A tie-down whose WLL is not known counts with nothing.
    """
    accessories = {one.accessory for one in case.demand.accessories}
    for tie_down in case.tie_downs:
        if tie_down.accessory:
            counts = tie_down.position in accessories
            credit = asked.accessory_credit
        else:
            places = case.demand.positions if asked.positions is None else asked.positions
            counts = tie_down.position in places
            credit = asked.credit_of(tie_down.routing)
        wll = case.wll(tie_down)
        if counts and credit and wll is not None:
            yield credit, wll


def _sum(parts: list[tuple[Fraction, Fraction]], have: Fraction, unit: str) -> str:
    """``Planned: 2 x 1/2 x 6,600 + 2 x 1/2 x 4,700 = 11,300 lb``."""
    if not parts:
        return "Planned: nothing that counts"
    terms = (
        f"{number} x {credit} x {plain(wll)}" if credit != 1 else f"{number} x {plain(wll)}"
        for (credit, wll), number in Counter(parts).items()
    )
    return f"Planned: {' + '.join(terms)} = {down(have)} {unit}"
