"""A finding: one requirement held against what the plan has."""

from __future__ import annotations

from dataclasses import dataclass, replace

from loadplan.judge.wording import NOTHING, sentences, working
from loadplan.outcome.check import Check, Verdict
from loadplan.rules.requirement import CannotPlan, Requirement


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What a requirement needs, what there is, and whether that meets it.

    ``need`` and ``have`` are printed text; ``planned`` is a sentence that shows how ``have`` came
    about, "" where there is nothing to show. ``broken`` says in its own words what is wrong where
    "needs ..., and the plan has ..." would not.
    """

    requirement: Requirement
    need: str
    have: str
    unit: str = ""
    met: bool
    planned: str = ""
    broken: str = ""

    def held(self) -> Finding:
        """The same requirement where the load is held: nothing is planned, so nothing is met."""
        why = self.requirement.why if isinstance(self.requirement, CannotPlan) else ""
        planned = sentences([why, "The load is held"])
        return replace(self, have=NOTHING, met=False, planned=planned)

    def check(self, load: str, article: str) -> Check:
        """This finding as a row of checks."""
        return Check(
            load=load,
            article=article,
            name=self.requirement.name,
            need=self.need,
            have=self.have,
            unit=self.unit,
            verdict=Verdict.MET if self.met else Verdict.NOT_MET,
            working=working(self.requirement, self.planned),
            source=self.requirement.source.cite(),
        )

    def disagreement(self, where: str) -> str:
        """The sentence that says what is broken at ``where``."""
        unit = f" {self.unit}" if self.unit else ""
        what = self.broken or (
            f"{self.requirement.name} needs {self.need}{unit}, and the plan has {self.have}{unit}"
        )
        return f"{where}: {what} ({self.requirement.source.cite()})."
