"""Make the sample day workbooks anew: ``python sample_jobs/build.py``.

The yard, its people, its machines and its gear are invented. Weights and sizes are of the order
that such machines and pieces have.
"""

from __future__ import annotations

import datetime
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

from openpyxl import Workbook
from openpyxl.styles import Font

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

from fourteen import FOURTEEN  # noqa: E402

Row = Sequence[object]
Day = Mapping[str, Sequence[Row]]

_LOADS = ("Load", "Trailer", "Out", "Back", "Priority", "Driver", "Destination")
_CARGO = (
    "Article",
    "Load",
    "Class",
    "Description",
    "Weight [lb]",
    "Weight from",
    "Length [ft]",
    "Accessories",
    "Chain only",
)
_GEAR = ("Gear", "Kind", "Size", "Grade", "Length [ft]", "WLL [lb]", "Fits", "Quantity")


def _settings(yard: str, turnaround: int = 0) -> Sequence[Row]:
    return (
        ("Setting", "Value"),
        ("Yard", yard),
        ("Date", datetime.date(2026, 7, 14)),
        ("Units", "US"),
        ("Rules", "US"),
        ("Turnaround [min]", turnaround),
    )


def _at(text: str) -> datetime.time:
    return datetime.time.fromisoformat(text)


def _machine(article: str, load: str, kind: str, what: str, weight: int, more: Row) -> Row:
    length, accessories = more
    return (article, load, kind, what, weight, "plate", length, accessories, "yes")


CHAIN_516 = ("C516", "chain", "5/16", "70", 16, 4700, "")
CHAIN_38 = ("C38", "chain", "3/8", "70", 20, 6600, "")
LEVER = ("B38", "lever binder", "", "", "", 5400, "5/16-3/8")
STRAP = ("S2", "ratchet strap", "2", "", 27, 3333, "")

SMALL_DAY: Day = {
    "Day": _settings("Cold Saddle resort, lower yard"),
    "Loads": (
        _LOADS,
        ("1", "T-1", _at("06:30"), _at("10:30"), 1, "Marit", "Chair 4, lower terminal"),
        ("2", "T-2", _at("06:45"), _at("11:00"), 1, "Osk", "Pump house"),
        ("3", "T-3", _at("07:30"), _at("12:00"), 1, "Bram", "Hut at the tarn"),
    ),
    "Cargo": (
        _CARGO,
        _machine(
            "EX-1", "1", "tracked machine", "small excavator", 8000, (15, "boom; blade (pinned)")
        ),
        _machine("SK-1", "2", "wheeled machine", "skid steer", 7500, (10, "bucket")),
        ("TILES", "3", "general", "roof tiles on a pallet", 2200, "plate", 4, "", ""),
        ("CULVERT", "3", "general", "bundle of culvert pipe", 3000, "plate", 20, "", ""),
    ),
    "Added weight": (
        ("Article", "What", "Weight [lb]"),
        ("EX-1", "trenching bucket", 350),
        ("SK-1", "rock bucket", 500),
    ),
    "Gear": (_GEAR, (*CHAIN_516, 12), (*CHAIN_38, 8), (*LEVER, 16), (*STRAP, 7)),
}

_PRICES = ("Gear", "Kind", "Size", "Grade", "Length [ft]", "WLL [lb]", "Fits", "Price", "Most")
_POINTS = 12000

SHORT_CAGE: Day = {
    "Day": _settings("Cold Saddle resort, lower yard"),
    "Loads": (
        _LOADS,
        ("A", "T-1", _at("06:00"), _at("11:00"), 1, "Marit", "Chair 4, lower terminal"),
        ("B", "T-2", _at("06:15"), _at("11:30"), 1, "Osk", "Chair 4, tower 9"),
        ("C", "T-3", _at("06:30"), _at("12:00"), 1, "Bram", "Pump house"),
        ("D", "T-4", _at("07:00"), _at("12:30"), 2, "Ylva", "Car park extension"),
        ("E", "T-5", _at("07:30"), _at("13:00"), 3, "Corin", "Hut at the tarn"),
        ("F", "T-6", _at("08:00"), _at("23:30"), 3, "Runa", "Ring road, night shift"),
    ),
    "Cargo": (
        (*_CARGO, "Tie point WLL [lb]", "Reach [ft]"),
        (
            *_machine("EX-1", "A", "tracked machine", "small excavator", 8000, (15, "boom")),
            _POINTS,
        ),
        (
            *_machine("EX-2", "B", "tracked machine", "small excavator", 8150, (15, "boom")),
            _POINTS,
        ),
        (
            *_machine("EX-30", "C", "tracked machine", "excavator", 30400, (28, "boom")),
            *(_POINTS, 24),
        ),
        (*_machine("BH-1", "D", "wheeled machine", "backhoe", 16200, (19, "hoe")), _POINTS),
        ("TILES", "E", "general", "roof tiles on a pallet", 2200, "plate", 4, "", ""),
        (*_machine("RL-6", "F", "wheeled machine", "road roller", 31000, (20, "")), *(_POINTS, 24)),
    ),
    "Trailers": (
        ("Trailer", "Anchor WLL [lb]"),
        *((f"T-{number}", "" if number == 5 else _POINTS) for number in range(1, 7)),
    ),
    "Gear": (
        (*_GEAR, "Condition", "Kept on"),
        (*CHAIN_38, 20),
        ("C12", "chain", "1/2", "70", 25, 11300, "", 4),
        (*LEVER, 12),
        ("B38-H", *LEVER[1:], 6, "hold"),
        ("RB12", "ratchet binder", "", "", "", 9200, "1/2", 4),
        (*STRAP, 2, "", "T-5"),
    ),
    "Prices": (
        _PRICES,
        ("C38", "", "", "", "", "", "", "61 USD", 6),
        ("B38", "", "", "", "", "", "", "34 USD", 10),
    ),
    "House rules": (("Rule", "Value"), ("Unrated points", "hold")),
}

TWO_TRIPS: Day = {
    "Day": _settings("Cold Saddle resort, lower yard", turnaround=30),
    "Loads": (
        _LOADS,
        ("am-1", "T-1", _at("06:30"), _at("11:30"), 1, "Marit", "Chair 4, lower terminal"),
        ("am-2", "T-2", _at("07:00"), _at("11:00"), 1, "Osk", "Pump house"),
        ("pm-1", "T-1", _at("12:00"), _at("16:00"), 1, "Marit", "Hut at the tarn"),
        ("pm-2", "T-2", _at("12:15"), _at("16:30"), 1, "Osk", "Car park extension"),
    ),
    "Cargo": (
        _CARGO,
        _machine("EX-1", "am-1", "tracked machine", "small excavator", 8000, (15, "boom")),
        _machine("SK-1", "am-2", "wheeled machine", "skid steer", 7500, (10, "bucket")),
        _machine("EX-2", "pm-1", "tracked machine", "small excavator", 8150, (15, "boom")),
        _machine("SK-2", "pm-2", "wheeled machine", "skid steer", 8200, (10, "bucket")),
    ),
    "Gear": (_GEAR, (*CHAIN_38, 10), (*LEVER, 10)),
}

BUY_OR_WAIT: Day = {
    "Day": _settings("Cold Saddle resort, lower yard", turnaround=30),
    "Loads": (
        _LOADS,
        ("N1", "T-1", _at("06:00"), _at("10:30"), 1, "Marit", "Chair 4, lower terminal"),
        ("N2", "T-2", _at("06:15"), _at("12:00"), 1, "Osk", "Chair 4, tower 9"),
        ("N3", "T-3", _at("06:30"), _at("12:00"), 2, "Bram", "Pump house"),
        ("N4", "T-4", _at("07:00"), _at("12:30"), 2, "Ylva", "Car park extension"),
        ("N5", "T-5", _at("07:30"), _at("13:00"), 3, "Corin", "Hut at the tarn"),
        ("N6", "T-1", _at("13:00"), _at("16:30"), 2, "Marit", "Trail crew, upper meadow"),
    ),
    "Cargo": (
        _CARGO,
        _machine("EX-1", "N1", "tracked machine", "small excavator", 8000, (15, "boom")),
        _machine("EX-30", "N2", "tracked machine", "excavator", 30400, (28, "boom")),
        _machine("SK-1", "N3", "wheeled machine", "skid steer", 7500, (10, "bucket")),
        _machine("BH-1", "N4", "wheeled machine", "backhoe", 16200, (19, "hoe; loader bucket")),
        _machine("DU-1", "N5", "tracked machine", "crawler dumper", 7000, (11, "skip")),
        _machine("EX-2", "N6", "tracked machine", "small excavator", 8150, (15, "boom")),
    ),
    "Gear": (_GEAR, (*CHAIN_38, 25), (*LEVER, 17), (*STRAP, 1)),
    "Prices": (
        _PRICES,
        ("C38", "", "", "", "", "", "", "61 USD", 6),
        ("B38", "", "", "", "", "", "", "34 USD", ""),
        ("S2", "", "", "", "", "", "", "23.50 USD", 4),
        ("", "chain", "1/2", "70", 25, 11300, "", "118 USD", 6),
        ("", "ratchet binder", "", "", "", 9200, "3/8-1/2", "79 USD", 6),
    ),
}

SAMPLES: Mapping[str, Day] = {
    "small_day": SMALL_DAY,
    "fourteen_trailers": FOURTEEN,
    "short_cage": SHORT_CAGE,
    "two_trips": TWO_TRIPS,
    "buy_or_wait": BUY_OR_WAIT,
}


def build(folder: Path) -> None:
    """Write every sample day workbook to ``folder``."""
    for name, day in SAMPLES.items():
        write(folder / f"{name}.xlsx", day)


def write(path: Path, day: Day) -> None:
    """Write the day workbook ``day`` to ``path``."""
    book = Workbook()
    book.remove(book.worksheets[0])
    for title, rows in day.items():
        _fill(book, title, rows)
    book.save(path)


def _fill(book: Workbook, title: str, rows: Sequence[Row]) -> None:
    sheet = book.create_sheet(title)
    sheet.freeze_panes = "A2"
    for at, row in enumerate(rows, start=1):
        for column, value in enumerate(row, start=1):
            if value == "":
                continue
            cell = sheet.cell(row=at, column=column, value=value)
            if at == 1:
                cell.font = Font(bold=True)
            elif isinstance(value, str):
                # Text, so that a spreadsheet does not turn the size 3/8 into a date.
                cell.number_format = "@"
            elif isinstance(value, datetime.time):
                cell.number_format = "hh:mm"
    for cells in sheet.columns:
        width = max(len(str(cell.value or "")) for cell in cells)
        sheet.column_dimensions[cells[0].column_letter].width = min(width, 40) + 2


if __name__ == "__main__":
    build(HERE)
