"""A check: one demand or piece of advice, judged."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """The three words a check can end with."""

    MET = "met"
    NOT_MET = "not met"
    ADVICE = "advice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One row of ``Checks``.

    ``need`` and ``have`` are printed text: needs rounded up, strengths rounded down; ``working``
    is the rule's own formula in words and numbers; ``source`` its citation. ``article`` is ""
    for a check of the whole load.
    """

    load: str
    article: str
    name: str
    need: str
    have: str
    unit: str
    verdict: Verdict
    working: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """What the independent check found: every check made, and every disagreement with the plan.

    ``disagreements`` are sentences; a plan with any of them must not be written.
    """

    checks: tuple[Check, ...]
    disagreements: tuple[str, ...]
