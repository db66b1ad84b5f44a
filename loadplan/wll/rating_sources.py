"""Where the rating of a piece comes from: marking, table, one third, or nothing."""

from __future__ import annotations

from loadplan.source import Certainty, Source
from loadplan.wll.tables import DOCUMENT

_EDITION = "read 2026-11, stored copy"
_CANADIAN = "June 2013, quoted by provinces, " + _EDITION
MARKED = Source(
    document=DOCUMENT,
    section="393.108(b)",
    edition=_EDITION,
    says="The maker's marking is used; where it differs from a table, the marking wins.",
)
ONE_THIRD = Source(
    document="trade practice",
    section="WLL is one third of breaking strength",
    edition="",
    certainty=Certainty.PRACTICE,
    says="To the nearest whole unit, as makers mark it: 5,000 gives 1,667; a half rounds down.",
)
WIRE_ROPE_THIRD = Source(
    document="trade practice",
    section="WLL of wire rope outside the table is one third of breaking strength",
    edition="",
    certainty=Certainty.PRACTICE,
    says="49 CFR 393.108(e)(1) takes one quarter of the nominal strength of unmarked wire rope. "
    "Where that is to hold, write the quarter under WLL.",
)
STRAPPING_THIRD = Source(
    document="trade practice",
    section="WLL of steel strapping outside the table is one third of breaking strength",
    edition="",
    certainty=Certainty.PRACTICE,
    says="A footnote of 49 CFR 393.104(e), from memory, takes one quarter of the breaking strength "
    "of unmarked steel strapping. Where that is to hold, write the quarter under WLL.",
)
NO_RATING = Source(
    document=DOCUMENT,
    section="393.108(a)",
    edition=_EDITION,
    says="A tie-down is as strong as its weakest component; no table covers this piece.",
)
UNMARKED_IS_ZERO = Source(
    document="NSC Standard 10",
    section="s. 11(4)",
    edition=_CANADIAN,
    says="A tie-down or component that its maker has not marked with a WLL is not used: no default "
    "table and no share of a breaking strength stands in for the mark.",
)
MARKED_IN_CANADA = Source(
    document="NSC Standard 10",
    section="s. 11(1)",
    edition=_CANADIAN,
    says="The WLL that the maker has marked; a rating of the whole assembly covers its parts.",
)
GRADE_MARKED = Source(
    document="NSC Standard 10",
    section="s. 11(3)",
    edition=_CANADIAN,
    says="Chain marked with its grade takes the table's WLL for grade and size (Part 4).",
)
LOWEST_GRADE = Source(
    document="British Columbia commercial licence manual",
    section="binders and hooks",
    edition=_EDITION,
    says="Hardware that is not clearly marked or tagged is taken as the lowest grade of its size.",
)
NO_LOAD = Source(
    document=DOCUMENT,
    section="393.104(f)",
    edition=_EDITION,
    says="Edge protectors resist abrasion, cutting and crushing; they do not carry the tie-down.",
)
