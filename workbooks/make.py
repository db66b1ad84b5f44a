"""Make the empty day workbooks and the column reference anew: ``python workbooks/make.py``."""

from __future__ import annotations

from pathlib import Path

from loadplan.day.units import Units
from loadplan.workbook.blank import write_blank
from loadplan.workbook.reference import columns_markdown

HERE = Path(__file__).parent


def make(folder: Path) -> None:
    """Write ``blank_US.xlsx``, ``blank_metric.xlsx`` and ``columns.md`` to ``folder``."""
    for units in Units:
        write_blank(folder / f"blank_{units.value}.xlsx", units, force=True)
    (folder / "columns.md").write_text(columns_markdown(), encoding="utf-8")


if __name__ == "__main__":
    make(HERE)
