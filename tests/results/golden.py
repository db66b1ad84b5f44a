"""The golden dumps of the small plan's results.

``python -m tests.results.golden`` writes them anew; read the difference before keeping it.
"""

from __future__ import annotations

from pathlib import Path

from loadplan.results.workbook import results_bytes
from tests.results.build import plan_of
from tests.results.dump import dump_sheet, opened

FOLDER = Path(__file__).parent.parent / "data" / "results"


def dumps() -> dict[str, str]:
    """The dump of every sheet of the small plan's results, by sheet name."""
    content = results_bytes(plan_of())
    formulas, values = opened(content), opened(content, values=True)
    return {sheet.title: dump_sheet(sheet, values[sheet.title]) for sheet in formulas}


def path_of(sheet: str) -> Path:
    """Where the golden dump of a sheet is kept."""
    return FOLDER / f"{sheet.replace(' ', '_').lower()}.txt"


def main() -> None:
    """Write every dump."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, text in dumps().items():
        path_of(name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
