"""Make the days of mixed cargo anew: ``python sample_jobs/commodities.py``.

The yard, its people, its cargo and its gear are invented, as in ``build.py``.
"""

from __future__ import annotations

import datetime
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

from build import Day, Row, write  # noqa: E402

_LOADS = ("Load", "Trailer", "Out", "Back", "Priority", "Driver", "Destination")


def _settings(units: str, rules: str) -> Sequence[Row]:
    return (
        ("Setting", "Value"),
        ("Yard", "Cold Saddle resort, lower yard"),
        ("Date", datetime.date(2026, 7, 15)),
        ("Units", units),
        ("Rules", rules),
    )


def _at(text: str) -> datetime.time:
    return datetime.time.fromisoformat(text)


def _cargo(mass: str, length: str) -> Row:
    return (
        "Article",
        "Load",
        "Class",
        "Description",
        f"Weight [{mass}]",
        "Weight from",
        f"Length [{length}]",
        "Accessories",
        "Details",
        "Group",
        "Group stands",
        "Chain only",
    )


def _gear(mass: str, length: str) -> Row:
    return (
        "Gear",
        "Kind",
        "Size",
        "Grade",
        f"Length [{length}]",
        f"WLL [{mass}]",
        "Fits",
        "Quantity",
    )


_CEMENT, _LUMBER, _PIPE = "cement on a pallet", "forms, banded", "culvert pipe, one tier"
_EXCAVATOR, _ROCK, _TRUCK = "small excavator", "rock for the weir", "utility truck"
_COIL, _LOGS, _OFFICE = "coil of roofing steel", "logs for the snow fence", "site office, furnished"
_SIDE = "side by side"

MIXED_CARGO: Day = {
    "Day": _settings("US", "US"),
    "Trailers": (
        ("Trailer", "Deck length [ft]", "Payload [lb]", "Anchors", "Anchor WLL [lb]"),
        ("T-1", 40, 44000, 24, 6600),
        ("T-2", 24, 20000, 18, 6600),
        ("T-3", 30, 20000, "", ""),
        ("T-4", 24, 22000, 12, ""),
        ("T-5", 24, 20000, "", ""),
    ),
    "House rules": (("Rule", "Value"), ("Light vehicle tie-downs", 4)),
    "Loads": (
        _LOADS,
        ("1", "T-1", _at("06:30"), _at("10:30"), 1, "Marit", "Pump house"),
        ("2", "T-2", _at("06:45"), _at("11:00"), 1, "Osk", "Weir below the tarn"),
        ("3", "T-3", _at("07:00"), _at("11:30"), 1, "Bram", "Chair 4, lower terminal"),
        ("4", "T-4", _at("07:15"), _at("12:00"), 2, "Ylva", "Bike trails, east"),
        ("5", "T-5", _at("07:30"), _at("12:30"), 2, "Corin", "Car park extension"),
    ),
    "Cargo": (
        _cargo("lb", "ft"),
        ("CEM-1", "1", "general", _CEMENT, 2400, "plate", 4, "", "", "CEM", _SIDE),
        ("CEM-2", "1", "general", _CEMENT, 2000, "plate", 4, "", "", "CEM", _SIDE),
        ("FORMS", "1", "dressed lumber", _LUMBER, 6200, "scale", 16, "", "tiers 1", "", ""),
        ("PIPE", "1", "concrete pipe", _PIPE, 5600, "plate", 8, "", "diameter 24 in", "", ""),
        ("EX-1", "2", "tracked machine", _EXCAVATOR, 8350, "plate", 15, "boom", "", "", "", "yes"),
        ("ROCK", "2", "boulder", _ROCK, 8000, "estimate", 5, "", "unstable base", "", ""),
        ("UT-1", "3", "light vehicle", _TRUCK, 5200, "plate", 17, "", "", "", ""),
        ("COIL", "3", "metal coil", _COIL, 6400, "plate", 4, "", "eye vertical", "", ""),
        ("LOGS", "4", "logs", _LOGS, 18000, "estimate", 14, "", "lengthwise; short", "", ""),
        ("NAILS", "4", "general", "crate of bolts", 900, "plate", 3, "", "", "", ""),
        (
            "OFFICE",
            "5",
            "intermodal container",
            _OFFICE,
            14000,
            "scale",
            20,
            "",
            "deck loaded",
            "",
            "",
        ),
    ),
    "Gear": (
        _gear("lb", "ft"),
        ("C12", "chain", "1/2", "70", 20, 11300, "", 3),
        ("B12", "ratchet binder", "", "", "", 13000, "1/2-5/8", 3),
        ("C38", "chain", "3/8", "70", 20, 6600, "", 28),
        ("B38", "lever binder", "", "", "", 5400, "5/16-3/8", 28),
        ("S4", "ratchet strap", "4", "", 30, 5400, "", 16),
    ),
}

CANADA_DAY: Day = {
    "Day": _settings("metric", "Canada"),
    "Loads": (
        _LOADS,
        ("1", "T-1", _at("06:30"), _at("10:30"), 1, "Marit", "Chair 4, tower 9"),
        ("2", "T-2", _at("06:45"), _at("11:00"), 1, "Osk", "Pump house"),
        ("3", "T-3", _at("07:00"), _at("11:30"), 2, "Bram", "Hut at the tarn"),
    ),
    "Cargo": (
        _cargo("kg", "m"),
        ("EX-2", "1", "tracked machine", _EXCAVATOR, 4510, "scale", 4.6, "boom", "", "", "", "yes"),
        ("CULVERT", "2", "general", "bundle of steel pipe", 1400, "plate", 6.096, "", "", "", ""),
        ("UT-1", "3", "light vehicle", _TRUCK, 2400, "plate", 5.2, "", "", "", ""),
    ),
    "Gear": (
        _gear("kg", "m"),
        ("C38", "chain", "3/8", "70", 6, 2990, "", 8),
        ("C38-U", "chain", "3/8", "", 6, "", "", 1),
        ("B38", "lever binder", "", "", "", 2450, "5/16-3/8", 9),
        ("S4", "ratchet strap", "4", "", 9, 2450, "", 6),
    ),
}

SAMPLES: Mapping[str, Day] = {"mixed_cargo": MIXED_CARGO, "canada_day": CANADA_DAY}


def build(folder: Path) -> None:
    """Write both day workbooks to ``folder``."""
    for name, day in SAMPLES.items():
        write(folder / f"{name}.xlsx", day)


if __name__ == "__main__":
    build(HERE)
