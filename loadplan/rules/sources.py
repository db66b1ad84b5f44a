"""The catalogue of sources: every rule the program acts on, with section, edition and certainty.

What a source says is in our own words. Check the current text before relying on it.
"""

from __future__ import annotations

from loadplan.rules.cite import (
    CFR,
    EDITION,
    cfr,
    handbook,
    house_rule,
    practice,
    workbook,
)
from loadplan.rules.commodity_sources import COMMODITY_SOURCES, FRICTION_MAT
from loadplan.source import Certainty, Source
from loadplan.wll.rating_sources import (
    MARKED,
    NO_LOAD,
    NO_RATING,
    ONE_THIRD,
    STRAPPING_THIRD,
    WIRE_ROPE_THIRD,
)
from loadplan.wll.tables import Material, table

__all__ = ["CFR", "EDITION", "FRICTION_MAT", "catalogue", "house_rule", "workbook"]

_EDITION_2003 = "CFR of 2003, " + EDITION

CARGO = workbook("Cargo")
ADDED_WEIGHT = workbook("Added weight")
TRAILERS = workbook("Trailers")

DISTRIBUTED = cfr(
    "392.9(a)",
    "No driving unless cargo is distributed and secured, loose equipment is secured, and nothing "
    "blocks view, movement or exit.",
)
ON_THE_ROAD = cfr(
    "392.9(b)",
    "Check before driving, within the first 50 miles, then at the earliest of a change of duty "
    "status, 3 hours or 150 miles; tighten or add as needed.",
)
DEVICES = cfr("393.104(b)", "No damaged or weakened part in a tie-down.")
STRUCTURES = cfr(
    "393.104(c)", "Decks, structures and anchor points are strong enough and undamaged."
)
USE = cfr(
    "393.104(f)",
    "No knots; nothing comes loose or opens on the way; edge protection wherever a tie-down would "
    "be cut or worn.",
)
ROLLING = cfr(
    "393.106(c)(1)", "Articles likely to roll are held by chocks, wedges, a cradle or the like."
)
SIDE_BY_SIDE = cfr(
    "393.106(c)(2)", "Articles side by side under one tie-down touch or are kept apart."
)
AGGREGATE = cfr(
    "393.106(d)",
    "The working load limits of an article's tie-downs, credited by how each runs, add up to at "
    "least half its weight.",
)
CREDIT_DIRECT = cfr("393.106(d)(1)", "From the vehicle to the article: half the WLL counts.")
CREDIT_SAME_SIDE = cfr(
    "393.106(d)(2)", "Around the article and back to the same side: half the WLL counts."
)
CREDIT_OVER = cfr(
    "393.106(d)(3)", "Over the article to the other side of the vehicle: the whole WLL counts."
)
CREDIT_ROUND = cfr(
    "393.106(d)",
    "The three cases all begin at an anchor point of the vehicle; a ring or wrapper round the "
    "article only is none of them.",
)
LOWEST_PART = cfr(
    "393.108(a)",
    "A tie-down's WLL is the lowest of its parts, tensioner and anchor points included.",
)
COUNT = cfr(
    "393.110(b)",
    "Not blocked forward: one tie-down up to 5 ft (1.52 m) and 1,100 lb (500 kg); two if heavier "
    "or up to 10 ft (3.04 m); one more for each further 10 ft or part of it.",
)
COUNT_BLOCKED = cfr(
    "393.110(c)", "Blocked forward: one tie-down for each 10 ft (3.04 m) or part of it."
)
FRONT_AND_REAR = practice(
    "one tie-down at the front and one at the rear",
    "Where two or more hold an article at its ends or sides, both ends are held.",
)
RUB_RAILS = cfr(
    "393.104(f)", "Tie-downs inboard of rub rails: in the rule of 2002, rescinded in 2006."
)
ADJUSTABLE = cfr("393.112", "The driver can tighten every tie-down but steel strapping.")
FRONT_STRUCTURE = cfr(
    "393.114", "A front structure that cargo touches is high, wide and strong enough."
)
LIGHT_VEHICLE = cfr(
    "393.128",
    "Light vehicles up to 10,000 lb (4,536 kg): held at the front and at the rear, at least two "
    "tie-downs in all.",
)
HEAVY_SCOPE = cfr(
    "393.130(a)",
    "Machines on wheels or tracks of 10,000 lb (4,536 kg) or more; lighter ones may be secured "
    "under this section, 393.128 or the general rules.",
    _EDITION_2003,
)
ACCESSORIES = cfr(
    "393.130(b)(1)",
    "Accessory equipment is completely lowered and secured to the vehicle.",
    _EDITION_2003,
)
ARTICULATED = cfr(
    "393.130(b)(2)", "Articulated machines cannot articulate on the way.", _EDITION_2003
)
FOUR = cfr("393.130(c)(1)", "Machines on tracks or wheels: at least four tie-downs.", _EDITION_2003)
CORNERS = cfr(
    "393.130(c)(2)",
    "Each as close as practicable to the front and rear of the machine, or at mounting points "
    "made for it.",
    _EDITION_2003,
)
HEAVY_FLOOR = handbook("393.130", "Each tie-down on heavy machinery bears at least 5,000 lb.")
CALIFORNIA_VEHICLES = Source(
    document="California Vehicle Code",
    section="29004(a)(3)",
    edition="an officer's letter, " + EDITION,
    says="A vehicle carried on a trailer has at least four tie-downs.",
)
PARKING_BRAKE = handbook("393.130", "Set the parking brake of a machine carried.")
ANGLE = handbook("393.106", "A tie-down to the article works best under 45 degrees to the deck.")
ONE_PER_ACCESSORY = practice(
    "one tie-down for each accessory that no pin holds",
    "The regulation gives no number; hydraulics alone do not hold.",
)
ANCHOR_USE = practice(
    "anchor points used",
    "A tie-down to the article uses one anchor point, one around or over it two.",
)
WINCH_USE = practice(
    "winches used", "A winch strap takes one winch of its trailer for the whole trip."
)
BINDER_HANDLES = Source(
    document="British Columbia commercial licence manual",
    section="p. 111",
    edition=EDITION,
    says="Lock every binder handle.",
)
WIDTH = Source(
    document="23 CFR",
    section="658.15",
    edition="not read",
    certainty=Certainty.MEMORY,
    says="Vehicles on the national network are up to 102 in (2.6 m) wide without a permit.",
)
HEIGHT = practice(
    "overall height", "Most states allow 13 ft 6 in (4.11 m) without a permit; look it up."
)
BLOCKING_STRENGTH = handbook(
    "393.110",
    "The parts that block an article forward have working load limits of at least half its weight.",
)
ESTIMATE = practice(
    "estimated weights", "A load that passes narrowly on an estimated weight is weighed."
)


US_SOURCES = (
    *(DISTRIBUTED, ON_THE_ROAD, DEVICES, STRUCTURES, USE, ROLLING, SIDE_BY_SIDE, AGGREGATE),
    *(CREDIT_DIRECT, CREDIT_SAME_SIDE, CREDIT_OVER, CREDIT_ROUND, LOWEST_PART, MARKED, NO_RATING),
    *(NO_LOAD, COUNT, COUNT_BLOCKED, ADJUSTABLE, RUB_RAILS, FRONT_STRUCTURE, LIGHT_VEHICLE),
    *(HEAVY_SCOPE, ACCESSORIES, ARTICULATED, FOUR, CORNERS, HEAVY_FLOOR, PARKING_BRAKE, ANGLE),
    BLOCKING_STRENGTH,
    *COMMODITY_SOURCES,
)
STATE_SOURCES = (CALIFORNIA_VEHICLES,)
PRACTICE_SOURCES = (
    *(ONE_THIRD, WIRE_ROPE_THIRD, STRAPPING_THIRD, FRONT_AND_REAR, ONE_PER_ACCESSORY),
    *(ANCHOR_USE, WINCH_USE, BINDER_HANDLES, HEIGHT, WIDTH, ESTIMATE),
)


def catalogue() -> tuple[Source, ...]:
    """Every source of the US rule set in a fixed order: rules, ratings, default tables, advice."""
    tables = dict.fromkeys(row.source for material in Material for row in table(material))
    return (*US_SOURCES, *tables, *STATE_SOURCES, *PRACTICE_SOURCES)
