"""The Canadian rule set: NSC Standard 10 in place of the sections of the US rule.

Both are drawn from one model regulation. A requirement is made from the US section and its
sources are exchanged here: for sections that provinces quote by what was read, for the rest by
the part of the standard they stand in, known from the official handbook only.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from loadplan.day.day import Day, RuleSet
from loadplan.rules import sources as us
from loadplan.rules.cite import CFR, HANDBOOK_EDITION, MEMORY_EDITION
from loadplan.rules.profile import Profile
from loadplan.rules.requirement import Requirement, Step
from loadplan.source import Certainty, Source

DOCUMENT = "NSC Standard 10"
_READ = "June 2013, quoted by provinces, read 2026-11, stored copy"
_ON_THE_WAY = "Part 1, inspection"
_PARTS = {
    "392.9": _ON_THE_WAY,
    "393.104": "Part 1, securement systems",
    "393.106": "Part 1, securement systems",
    "393.108": "s. 21",
    "393.110": "s. 22",
    "393.112": "Part 1, tie-downs",
    "393.114": "Part 1, front end structures",
    "393.116": "Part 2, logs",
    "393.118": "Part 2, dressed lumber",
    "393.120": "Part 2, metal coils",
    "393.122": "Part 2, paper rolls",
    "393.124": "Part 2, concrete pipe",
    "393.126": "Part 2, intermodal containers",
    "393.128": "s. 88",
    "393.130": "s. 89",
    "393.132": "Part 2, flattened vehicles",
    "393.134": "Part 2, roll-on/roll-off containers",
    "393.136": "Part 2, boulders",
}


def _read(section: str, says: str) -> Source:
    return Source(document=DOCUMENT, section=section, edition=_READ, says=says)


def _by_handbook(section: str, says: str) -> Source:
    return Source(
        document=DOCUMENT,
        section=section,
        edition=HANDBOOK_EDITION,
        certainty=Certainty.HANDBOOK,
        says=says,
    )


def _by_memory(section: str, says: str) -> Source:
    return Source(
        document=DOCUMENT,
        section=section,
        edition=MEMORY_EDITION,
        certainty=Certainty.MEMORY,
        says=says,
    )


AGGREGATE = _read(
    "s. 10",
    "Half the WLL counts for each end section of a tie-down that is attached to an anchor point; "
    "the sum is at least half the weight of the article or group.",
)
COUNT = _read(
    "s. 22",
    "Not blocked forward: one tie-down up to 1.52 m and 500 kg; two if heavier or up to 3.04 m; "
    "one more for each further 3.04 m or part of it. Blocked: one for each 3.04 m or part of it.",
)
LIGHT_VEHICLE = _read(
    "s. 88",
    "Light vehicles up to 4,500 kg: held at the front and at the rear, at least two tie-downs in "
    'all, "despite section 22".',
)
HEAVY_SCOPE = _read("s. 89(1)", "Heavy vehicles, equipment and machinery above 4,500 kg.")
ACCESSORIES = _by_memory("s. 89(2)", "Accessory equipment is lowered and secured to the vehicle.")
FLOOR = _by_handbook(
    "s. 89", "Each tie-down on heavy machinery bears at least 2,268 kg (5,000 lb)."
)
EDGES = _read("s. 20", "Edge protection wherever a tie-down would be cut or worn.")
FRICTION_MAT = _read(
    "s. 12(9)", "Since June 2013 a friction mat counts only with its resistance marked on it."
)
BLOCKING = _by_handbook(
    "blocking against forward movement",
    "The parts that block an article forward have working load limits of at least half its weight.",
)
RUB_RAILS = _read("rub rails", "Tie-downs stay inboard of the rub rails where practicable.")
ON_THE_ROAD = _by_memory(
    _ON_THE_WAY,
    "Check before driving, within the first 80 km, then at the earliest of a change of duty "
    "status, 3 hours or 240 km.",
)
COIL_ROWS = _read("Part 2, metal coils", "Transverse rows of coils were added in June 2013.")
LOG_TENSIONING = _read(
    "Part 2, logs", "Logs crosswise: automatic tensioning devices are required since 2010."
)
WIDTH = Source(
    document="interprovincial memorandum on vehicle weights and dimensions",
    section="overall width",
    edition=MEMORY_EDITION,
    certainty=Certainty.MEMORY,
    says="Vehicles and their loads are up to 2.6 m wide without a permit.",
)
HEIGHT = Source(
    document="interprovincial memorandum on vehicle weights and dimensions",
    section="overall height",
    edition=MEMORY_EDITION,
    certainty=Certainty.MEMORY,
    says="Vehicles and their loads are up to 4.15 m high without a permit; 4.11 m (13 ft 6 in) is "
    "taken here, which holds in both countries.",
)
_INSTEAD = {
    us.AGGREGATE: AGGREGATE,
    us.CREDIT_DIRECT: AGGREGATE,
    us.CREDIT_SAME_SIDE: AGGREGATE,
    us.CREDIT_OVER: AGGREGATE,
    us.CREDIT_ROUND: AGGREGATE,
    us.COUNT: COUNT,
    us.COUNT_BLOCKED: COUNT,
    us.LIGHT_VEHICLE: LIGHT_VEHICLE,
    us.HEAVY_SCOPE: HEAVY_SCOPE,
    us.HEAVY_FLOOR: FLOOR,
    us.ACCESSORIES: ACCESSORIES,
    us.USE: EDGES,
    us.FRICTION_MAT: FRICTION_MAT,
    us.BLOCKING_STRENGTH: BLOCKING,
    us.RUB_RAILS: RUB_RAILS,
    us.ON_THE_ROAD: ON_THE_ROAD,
    us.WIDTH: WIDTH,
    us.HEIGHT: HEIGHT,
}
CANADIAN_SOURCES = (
    *dict.fromkeys(_INSTEAD.values()),
    *(COIL_ROWS, LOG_TENSIONING),
)
Asked = TypeVar("Asked", bound=Requirement)


def canadian(source: Source) -> Source:
    """What stands in NSC Standard 10 for ``source``; unchanged where it is not the US rule's."""
    if source in _INSTEAD:
        return _INSTEAD[source]
    part = _PARTS.get(source.section.split("(")[0].split()[0]) if source.document == CFR else None
    if part is None:
        return source
    if source.certainty is Certainty.MEMORY:
        return _by_memory(part, source.says)
    return _by_handbook(part, source.says)


def cite_in(profile: Profile, source: Source) -> str:
    """How ``source`` is cited under the rule set of ``profile``."""
    return (canadian(source) if profile.canada else source).cite()


def in_rules(day: Day, source: Source) -> Source:
    """``source`` as the rule set of ``day`` has it."""
    return canadian(source) if day.rules is RuleSet.CANADA else source


def in_canada(asked: Asked) -> Asked:
    """``asked`` with every source exchanged for the Canadian one."""
    steps = tuple(_step(step) for step in asked.steps)
    return replace(asked, source=canadian(asked.source), steps=steps)


def _step(step: Step) -> Step:
    return replace(step, source=canadian(step.source))
