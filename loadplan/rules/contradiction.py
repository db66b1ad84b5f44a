"""A contradiction: a fact of the workbook that a section does not allow or cannot do without."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Contradiction:
    """A column of the article's row in ``Cargo``, and what is wrong there, with a remedy.

    ``text`` is the finding in one or more sentences and the remedy as the last.
    """

    column: str
    text: str
