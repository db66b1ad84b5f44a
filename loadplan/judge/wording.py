"""How the judgement words places, numbers and workings."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil, floor

from loadplan.outcome.tie_down import TieDown
from loadplan.rules.requirement import Requirement, Step
from loadplan.text import plain

NOTHING = "-"
_MOST_PLACES = 6


def of_load(load: str) -> str:
    """``Load 7``: how a sentence about a whole load begins."""
    return f"Load {load}"


def of_article(load: str, article: str) -> str:
    """``Load 7, article EX-1``: how a sentence about an article begins."""
    return f"Load {load}, article {article}"


def of_tie_down(tie_down: TieDown) -> str:
    """``Load 7, article EX-1, front left, number 1``: how a sentence about a tie-down begins."""
    article = of_article(tie_down.load, tie_down.article)
    return f"{article}, {tie_down.position}, number {tie_down.number}"


def need_and_have(need: Fraction, have: Fraction, places: int = 0) -> tuple[str, str]:
    """``need`` rounded up and ``have`` rounded down, to ``places`` decimals.

    Where the exact need is met but the rounded pair would look as if it were not, more decimals
    are printed until it does not.
    """
    while places <= _MOST_PLACES:
        scale = 10**places
        asked = Fraction(ceil(need * scale), scale)
        there = Fraction(floor(have * scale), scale)
        if have < need or asked <= there:
            return plain(asked, places), plain(there, places)
        places += 1
    return plain(need, _MOST_PLACES), plain(have, _MOST_PLACES)


def working(requirement: Requirement, *more: str) -> str:
    """The steps of ``requirement`` as sentences, and ``more`` sentences behind them."""
    return sentences([*(_step(step) for step in requirement.steps), *more])


def sentences(parts: Iterable[str]) -> str:
    """``parts`` as sentences, one after another; empty parts are left out."""
    return " ".join(part if part.endswith(".") else f"{part}." for part in parts if part)


def _step(step: Step) -> str:
    if step.result.startswith(step.numbers):
        return f"{step.words}: {step.result}"
    equals = " = " if any(letter.isdigit() for letter in step.numbers) else "; "
    return f"{step.words}: {step.numbers}{equals}{step.result}"
