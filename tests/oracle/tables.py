"""The published default working load limits, typed again from 49 CFR 393.108.

Each entry is (kg, lb). The tables for rope, and the largest sizes of strapping and wire rope, were
copied from memory and await a look at the printed page; they only check that two typings agree.
"""

from __future__ import annotations

from fractions import Fraction

CHAIN = {
    "30": {"1/4": (580, 1300), "5/16": (860, 1900), "3/8": (1200, 2650), "7/16": (1680, 3700),
           "1/2": (2030, 4500), "5/8": (3130, 6900)},
    "43": {"1/4": (1180, 2600), "5/16": (1770, 3900), "3/8": (2450, 5400), "7/16": (3270, 7200),
           "1/2": (4170, 9200), "5/8": (5910, 13000)},
    "70": {"1/4": (1430, 3150), "5/16": (2130, 4700), "3/8": (2990, 6600), "7/16": (3970, 8750),
           "1/2": (5130, 11300), "5/8": (7170, 15800)},
    "80": {"1/4": (1570, 3500), "5/16": (2000, 4500), "3/8": (3200, 7100), "1/2": (5400, 12000),
           "5/8": (8200, 18100)},
    "100": {"1/4": (1950, 4300), "5/16": (2600, 5700), "3/8": (4000, 8800), "1/2": (6800, 15000),
            "5/8": (10300, 22600)},
}  # fmt: skip
GRADES = {"": "30"} | {
    mark: grade
    for grade, marks in {
        "30": ("3", "30", "300"),
        "43": ("4", "43", "430"),
        "70": ("7", "70", "700"),
        "80": ("8", "80", "800"),
        "100": ("10", "100", "1000"),
    }.items()
    for mark in marks
}
WEBBING = {"7/4": (790, 1750), "2": (910, 2000), "3": (1360, 3000), "4": (1810, 4000)}
WIRE_ROPE = {
    "1/4": (640, 1400), "5/16": (950, 2100), "3/8": (1360, 3000), "7/16": (1860, 4100),
    "1/2": (2400, 5300), "5/8": (3770, 8300), "3/4": (4940, 10900), "7/8": (7300, 16100),
    "1": (9480, 20900),
}  # fmt: skip
ROPE = {
    "manila": {"3/8": (90, 205), "7/16": (120, 265), "1/2": (150, 315), "5/8": (210, 465),
               "3/4": (290, 640), "1": (480, 1050)},
    "polypropylene": {"3/8": (180, 400), "7/16": (240, 525), "1/2": (280, 625),
                      "5/8": (420, 925), "3/4": (580, 1275), "1": (950, 2100)},
    "polyester": {"3/8": (250, 555), "7/16": (340, 750), "1/2": (440, 960), "5/8": (680, 1500),
                  "3/4": (850, 1880), "1": (1500, 3300)},
    "nylon": {"3/8": (130, 278), "7/16": (190, 410), "1/2": (240, 525), "5/8": (420, 935),
              "3/4": (640, 1420), "1": (1140, 2520)},
    "double-braided nylon": {"3/8": (150, 336), "7/16": (230, 502), "1/2": (300, 655),
                             "5/8": (510, 1130), "3/4": (830, 1840), "1": (1470, 3250)},
}  # fmt: skip
STRAPPING = {
    ("5/4", "0.029"): (540, 1190), ("5/4", "0.031"): (540, 1190), ("5/4", "0.035"): (540, 1190),
    ("5/4", "0.044"): (770, 1690), ("5/4", "0.050"): (770, 1690), ("5/4", "0.057"): (870, 1925),
    ("2", "0.044"): (1200, 2650), ("2", "0.050"): (1200, 2650),
}  # fmt: skip
STRAPPING_MM = {
    ("31.7", "0.74"): (540, 1190), ("31.7", "0.79"): (540, 1190), ("31.7", "0.89"): (540, 1190),
    ("31.7", "1.12"): (770, 1690), ("31.7", "1.27"): (770, 1690), ("31.7", "1.5"): (870, 1925),
    ("50.8", "1.12"): (1200, 2650), ("50.8", "1.27"): (1200, 2650),
}  # fmt: skip


def look_up(
    kind: str, grade: str, size: tuple[str, Fraction, Fraction | None]
) -> tuple[int, int] | None:
    """The (kg, lb) default of a tension member, or None where no table has it."""
    unit, across, thick = size
    if kind == "steel strapping":
        table = STRAPPING if unit == "in" else STRAPPING_MM
        return {(Fraction(a), Fraction(t)): wll for (a, t), wll in table.items()}.get(
            (across, thick or Fraction(0))
        )
    if unit != "in" or thick is not None:
        return None
    if kind == "chain":
        rows = CHAIN.get(GRADES.get(_mark(grade), ""), {})
    elif kind == "wire rope":
        rows = WIRE_ROPE
    elif kind == "rope":
        rows = ROPE.get(grade.strip().casefold(), ROPE["polypropylene"])
    elif kind.endswith("strap"):
        rows = WEBBING
    else:
        rows = {}
    return {Fraction(s): wll for s, wll in rows.items()}.get(across)


def _mark(grade: str) -> str:
    mark = grade.strip().casefold()
    return mark.removeprefix("grade").removeprefix("g").strip()
