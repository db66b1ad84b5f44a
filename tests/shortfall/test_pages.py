"""The sample day with a short cage through the command line: pages, sheets, and what is printed."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from tests.cli_runs import Command, Ran

SAMPLE = Path(__file__).parents[2] / "sample_jobs" / "short_cage.xlsx"
D_WHY = (
    "Loads A, B, C and D between 06:00 and 12:30 need 20 pieces of B38 (lever binder for "
    "5/16 in and 3/8 in chain) and C12 (1/2 in chain) together; 16 are usable."
)
D_SHORT = "lever binder for 5/16 in and 3/8 in chain, 5,400 lb or more (such as B38)"


@pytest.fixture
def ran(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Ran:
    command = Command(capsys)
    return command("plan", SAMPLE, "-o", tmp_path / "out.xlsx", "--csv", tmp_path / "csv")


def texts(sheet: openpyxl.worksheet.worksheet.Worksheet) -> list[list[str]]:
    rows = ([str(cell) for cell in row if cell is not None] for row in sheet.values)
    return [row for row in rows if row]


def test_the_whole_sample(ran: Ran, tmp_path: Path) -> None:
    assert ran.code == 4
    assert ran.out[1:4] == [
        f"  held: D is short of 4 x {D_SHORT} (BH-1); cheapest way out, repair: Inspect and pass "
        "4 x B38-H, now on hold, as good (4 pieces to pass)",
        "  held: E is short of any gear that could do it (TILES); cheapest way out, policy: "
        "Plan without the house rule Unrated points (then: warn) (no money; the yard's own rule)",
        "  held: F is short of 4 x 1/2 in chain, 11,300 lb or more (such as C12) (RL-6); 4 x "
        "ratchet binder for 1/2 in chain, 9,200 lb or more (such as RB12) (RL-6); cheapest way "
        "out, swap: Send load F (priority 3) in place of load C (priority 1) (one load)",
    ]
    book = openpyxl.load_workbook(tmp_path / "out.xlsx")
    assert book.sheetnames[:4] == ["Board", "Summary", "Shortfall", "Ways out"]
    rows = list(book["Shortfall"].values)
    assert rows[1] == (
        *("D", "BH-1", D_SHORT, 4, D_WHY),
        "Inspect and pass 4 x B38-H, now on hold, as good. (4 pieces to pass)",
    )
    assert [row[:2] for row in rows[1:]] == [
        *(("D", "BH-1"), ("E", "TILES"), ("F", "RL-6"), ("F", "RL-6"))
    ]
    page = texts(book["Ways out"])
    at = page.index(["Load D"])
    assert page[at + 1 : at + 8] == [
        [f"Its gear is out elsewhere. {D_WHY}"],
        ["Out between", "Loads that cannot all go", "Pieces", "Gear"],
        [
            "06:00 - 12:30",
            "A, B, C and D (without any one of them the rest can go)",
            "20 needed, 16 usable",
            "B38 and C12 (2 kinds)",
        ],
        ["Way out", "What to do", "Price", "What it changes elsewhere"],
        [
            "repair",
            "Inspect and pass 4 x B38-H, now on hold, as good.",
            "4 pieces to pass",
            "Every other load that is ready stays ready.",
        ],
        [
            "delay",
            "Let load D leave at 11:00 instead of 07:00, back 16:30 instead of 12:30.",
            "240 minutes",
            "Every other load that is ready stays ready; trailer T-4 and Ylva back at 16:30.",
        ],
        [
            "purchase",
            "Buy 4 x B38 (lever binder for 5/16 in and 3/8 in chain) at 34 USD.",
            "136 USD",
            "Every other load that is ready stays ready.",
        ],
    ]
    ways = {row[0] for row in page}
    assert {"repair", "delay", "purchase", "policy", "swap"} <= ways
    sheets = {name: "\n".join(map(str, texts(book[name]))) for name in book.sheetnames}
    assert D_WHY in sheets["Load D"]
    for load in "ABC":
        for word in ("Way out", "Short of", "cannot all go", "held"):
            assert word not in sheets[f"Load {load}"]
    assert "136 USD" not in (tmp_path / "csv" / "Shortfall.csv").read_text("utf-8-sig")
    assert D_WHY in (tmp_path / "csv" / "Shortfall.csv").read_text("utf-8-sig")
