"""How sources are made: one maker per certainty."""

from __future__ import annotations

from loadplan.source import Certainty, Source

CFR = "49 CFR"
EDITION = "read 2026-11, stored copy"
HANDBOOK_EDITION = "federal driver's handbook, 2003 era"
MEMORY_EDITION = "from memory 2026-11, not read"


def cfr(section: str, says: str, edition: str = EDITION) -> Source:
    """A line of the federal regulation that was read."""
    return Source(document=CFR, section=section, edition=edition, says=says)


def handbook(section: str, says: str) -> Source:
    """A line read in the official handbook only."""
    return Source(
        document=CFR,
        section=section,
        edition=HANDBOOK_EDITION,
        certainty=Certainty.HANDBOOK,
        says=says,
    )


def memory(section: str, says: str) -> Source:
    """A line of the federal regulation that is from memory."""
    return Source(
        document=CFR,
        section=section,
        edition=MEMORY_EDITION,
        certainty=Certainty.MEMORY,
        says=says,
    )


def practice(section: str, says: str) -> Source:
    """Something the trade does, without a source."""
    return Source(
        document="trade practice",
        section=section,
        edition="",
        certainty=Certainty.PRACTICE,
        says=says,
    )


def workbook(sheet: str) -> Source:
    """A figure that the day workbook itself gives on ``sheet``."""
    return Source(
        document="day workbook", section=f"'{sheet}'", edition="", certainty=Certainty.INPUT
    )


def house_rule(name: str) -> Source:
    """A limit or reading set by the house rule ``name``."""
    return Source(document="house rule", section=name, edition="", certainty=Certainty.INPUT)
