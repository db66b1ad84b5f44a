"""The example of the empty day workbook: one invented load, in either unit system."""

from __future__ import annotations

from collections.abc import Sequence

from loadplan.day.units import Units

Table = tuple[str, Sequence[Sequence[object]]]

_CARGO = (
    ("EX-7", "L-1", "tracked machine", "small excavator", (11500, 5200), "scale", (17, 5.2)),
    ("PAL-3", "L-1", "general", "roof tiles on a pallet", (2200, 1000), "plate", (4, 1.2)),
)
_ACCESSORIES = ("boom; blade (pinned)", "")
_GEAR = (
    ("C38", "chain", "3/8", "70", (20, 6), (6600, 3000), "", 12),
    ("B38", "ratchet binder", "", "", "", (5400, 2450), "5/16-3/8", 12),
    ("S2", "ratchet strap", "2", "", (27, 8), (3333, 1512), "", 6),
)


def example_tables(units: Units) -> tuple[Table, Table]:
    """``Cargo`` and ``Gear`` of a small day, headings first."""
    at = 0 if units is Units.US else 1
    mass, length = f"[{units.mass}]", f"[{units.length}]"
    cargo = [
        [_in(cell, at) for cell in row] + [accessories]
        for row, accessories in zip(_CARGO, _ACCESSORIES, strict=True)
    ]
    gear = [[_in(cell, at) for cell in row] for row in _GEAR]
    cargo_headings = (
        "Article",
        "Load",
        "Class",
        "Description",
        f"Weight {mass}",
        "Weight from",
        f"Length {length}",
        "Accessories",
    )
    gear_headings = (
        "Gear",
        "Kind",
        "Size",
        "Grade",
        f"Length {length}",
        f"WLL {mass}",
        "Fits",
        "Quantity",
    )
    return ("Cargo", [cargo_headings, *cargo]), ("Gear", [gear_headings, *gear])


def _in(cell: object, at: int) -> object:
    return cell[at] if isinstance(cell, tuple) else cell
