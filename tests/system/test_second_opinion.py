"""The second opinion itself: it must notice, and its optimum must be one."""

from fractions import Fraction
from pathlib import Path

import openpyxl
import pytest

from tests.bench.sheet import write_workbook
from tests.oracle.brute import brute
from tests.oracle.day import read_day
from tests.oracle.optimum import optimum
from tests.oracle.recheck import recheck
from tests.oracle.rules import length_count
from tests.system.running import Planned, plan
from tests.system.small_days import small_day


@pytest.mark.parametrize(
    ("length", "weight", "blocked", "count"),
    [
        ("5", 1100, False, 1),  # 49 CFR 393.110(b)(1)
        ("5", 1101, False, 2),  # (b)(2)(i)
        ("5.01", 1, False, 2),  # (b)(2)(ii)
        ("10", 40000, False, 2),
        ("10.01", 1, False, 3),  # (b)(3): two, and one for each further 10 ft or part of it
        ("20", 1, False, 3),
        ("20.01", 1, False, 4),
        ("10", 40000, True, 1),  # (c): one for each 10 ft or part of it
        ("10.01", 1, True, 2),
        ("20", 1, True, 2),
    ],
)
def test_count_by_length(length: str, weight: int, blocked: bool, count: int) -> None:
    assert length_count(Fraction(length), Fraction(weight), blocked, metric=False) == count


@pytest.mark.parametrize("seed", [1, 4, 9, 16, 26, 36, 49])
def test_optimum_is_the_best_of_every_plan(seed: int, tmp_path: Path) -> None:
    write_workbook(small_day(seed), tmp_path / "day.xlsx")
    day = read_day(tmp_path / "day.xlsx")
    best = optimum(day, time_limit=60)
    assert best.proved
    assert best.values == brute(day)


# Formats of the results that openpyxl does not carry over.
pytestmark = pytest.mark.filterwarnings("ignore::UserWarning:openpyxl")


def tiny() -> dict[str, list[dict[str, object]]]:
    """An excavator and, after it is back, planks: 10 chains and binders, 8 and 6 straps."""
    common = {"Kind": "chain", "Size": "3/8", "Grade": "70", "Fits": None}
    return {
        "Loads": [
            {"Load": "1", "Trailer": "T", "Out": "06:00", "Back": "10:00"},
            {"Load": "2", "Trailer": "T", "Out": "10:00", "Back": "12:00"},
        ],
        "Trailers": [{"Trailer": "T", "Anchors": 20, "Anchor WLL [lb]": 6000, "Winches": 4}],
        "Cargo": [
            {
                "Article": "EX",
                "Load": "1",
                "Class": "tracked machine",
                "Weight [lb]": 21000,
                "Length [ft]": 18,
                "Accessories": "boom",
                "Sharp edges": None,
            },
            {
                "Article": "PL",
                "Load": "2",
                "Class": "general",
                "Weight [lb]": 5000,
                "Length [ft]": 16,
                "Sharp edges": "yes",
            },
        ],
        "Gear": [
            common | {"Gear": "CH", "Quantity": 10, "WLL [lb]": None},
            common
            | {
                "Gear": "LB",
                "Kind": "lever binder",
                "Fits": "3/8",
                "WLL [lb]": 5400,
                "Quantity": 10,
            },
            common
            | {"Gear": "RS", "Kind": "ratchet strap", "Size": "2", "WLL [lb]": 3000, "Quantity": 6},
            common | {"Gear": "EP", "Kind": "edge protector", "WLL [lb]": None, "Quantity": 8},
        ],
    }


def test_the_tiny_day_by_hand(tmp_path: Path) -> None:
    # EX: 10,500 lb needed; direct, half of 5,400 each: four chains give 10,800. Its boom needs
    # one more: a strap alone is the least strength. PL: 16 ft asks for 2 + 1 = 3 tie-downs, and
    # 2,500 lb: three straps with two protectors each.
    write_workbook(tiny(), tmp_path / "day.xlsx")
    day = read_day(tmp_path / "day.xlsx")
    strength = 4 * (6600 + 5400) + 3000 + 3 * 3000
    assert optimum(day, 60).values == [2, 8, 0, strength] == brute(day)


CHANGES: list[tuple[str, str, str, object]] = [
    ("Summary", "Status", "1", "held"),
    ("Summary", "Weight [lb]", "1", 20999),
    ("Summary", "AWLL needed [lb]", "2", 2499),
    ("Summary", "AWLL planned [lb]", "1", 10801),
    ("Summary", "Margin", "1", 0.5),
    ("Summary", "Tie-downs", "2", 4),
    ("Tie-downs", "Position", "front right", "mid left"),
    ("Tie-downs", "Position", "front right", "front left"),
    ("Tie-downs", "Tension member", "front left", "RS"),
    ("Tie-downs", "Tension member", "front left", "ch?"),
    ("Tie-downs", "Tensioner", "front left", None),
    ("Tie-downs", "Tensioner", "front left", "CH"),
    ("Tie-downs", "Connectors", "over 2", "1 x EP"),
    ("Tie-downs", "Connectors", "front left", "1 x EP"),
    ("Tie-downs", "Connectors", "over 2", "two EP"),
    ("Tie-downs", "Member WLL [lb]", "front left", 4700),
    ("Tie-downs", "Anchor WLL [lb]", "front left", "unrated"),
    ("Tie-downs", "Tie-down WLL [lb]", "front left", 6000),
    ("Tie-downs", "Weakest part", "front left", "anchor point"),
    ("Tie-downs", "Credit", "front left", 1),
    ("Tie-downs", "Credited WLL [lb]", "over 2", 1500),
    ("Tie-downs", "Counts in aggregate", "boom", "yes"),
    ("Tie-downs", "Routing", "over 2", "direct"),
    ("Tie-downs", "No", "front left", 2),
    ("Tie-downs", "Load", "front left", "2"),
    ("Pick list", "Pieces", "CH", 5),
    ("Pick list", "From", "CH", "kit"),
    ("Pick list", "Out", "CH", "06:30"),
    ("Gear use", "Most out at once", "CH", 3),
    ("Gear use", "Left then", "CH", 5),
    ("Gear use", "Owned", "EP", 9),
    ("Gear use", "When", "EP", "06:00"),
    ("Checks", "Verdict", "EX", "not met"),
]


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Planned:
    return plan(tiny(), tmp_path_factory.mktemp("tiny"))


def test_the_results_of_the_tiny_day_are_right(planned: Planned) -> None:
    assert planned.code == 0
    assert recheck(planned.path, planned.results_path) == []


@pytest.mark.parametrize(("sheet", "heading", "where", "value"), CHANGES)
def test_a_changed_cell_is_noticed(
    planned: Planned, tmp_path: Path, sheet: str, heading: str, where: str, value: object
) -> None:
    book = openpyxl.load_workbook(planned.results_path)
    headings = [cell.value for cell in book[sheet][1]]
    row = next(r for r in book[sheet].iter_rows(min_row=2) if where in [c.value for c in r])
    cell = row[headings.index(heading)]
    assert cell.value != value
    cell.value = value
    book.save(tmp_path / "changed.xlsx")
    assert recheck(planned.path, tmp_path / "changed.xlsx")


@pytest.mark.parametrize("sheet", ["Tie-downs", "Pick list", "Gear use", "Summary"])
def test_a_missing_row_is_noticed(planned: Planned, tmp_path: Path, sheet: str) -> None:
    book = openpyxl.load_workbook(planned.results_path)
    book[sheet].delete_rows(2)
    book.save(tmp_path / "changed.xlsx")
    assert recheck(planned.path, tmp_path / "changed.xlsx")


@pytest.mark.parametrize(
    ("sheet", "row", "heading", "value"),
    [
        ("Gear", 0, "Quantity", 3),
        ("Gear", 1, "Condition", "hold"),
        ("Gear", 1, "Fits", "1/2"),
        ("Gear", 1, "WLL [lb]", 5200),
        ("Gear", 2, "Kept on", "T9"),
        ("Gear", 3, "Quantity", 5),
        ("Trailers", 0, "Anchors", 4),
        ("Trailers", 0, "Anchor WLL [lb]", 5200),
        ("Cargo", 0, "Weight [lb]", 21601),
        ("Cargo", 0, "Shackles", 1),
        ("Cargo", 0, "Accessories", "boom; bucket"),
        ("Cargo", 0, "Tie point WLL [lb]", 5200),
        ("Cargo", 0, "Reach [ft]", 12),
        ("Cargo", 0, "Length [ft]", 40),
        ("Cargo", 1, "Length [ft]", 21),
        ("Cargo", 1, "Chain only", "yes"),
        ("Cargo", 1, "Sharp edges", None),
        ("Loads", 1, "Priority", 2),
    ],
)
def test_a_plan_of_another_day_is_noticed(
    planned: Planned, tmp_path: Path, sheet: str, row: int, heading: str, value: object
) -> None:
    rows = tiny()
    rows[sheet][row][heading] = value
    write_workbook(rows, tmp_path / "other.xlsx")
    assert recheck(tmp_path / "other.xlsx", planned.results_path)
