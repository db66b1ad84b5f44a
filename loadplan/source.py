"""Where a figure or a rule comes from, and how sure we are of it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Certainty(StrEnum):
    """How a figure or wording was obtained; printed beside it wherever it surfaces."""

    READ = "read"
    HANDBOOK = "from the official handbook, not the regulation text read"
    MEMORY = "memory"
    PRACTICE = "common practice, no source"
    INPUT = "day workbook"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A citation: the document, the section in it, the edition read, and the certainty."""

    document: str
    section: str
    edition: str
    certainty: Certainty = Certainty.READ
    says: str = ""

    def cite(self) -> str:
        """The short form printed beside a figure, e.g. ``49 CFR 393.106(d)``.

        Common practice is named by what it says, for it has no document.
        """
        if self.certainty is Certainty.PRACTICE:
            return f"{self.section} ({self.certainty.value})"
        text = f"{self.document} {self.section}".strip()
        if self.certainty in (Certainty.READ, Certainty.INPUT):
            return text
        return f"{text} ({self.certainty.value})"
