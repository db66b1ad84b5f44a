"""``loadplan buy``: what it prints, what it writes, and how it ends."""

from pathlib import Path

import openpyxl
import pytest

from tests.cli_runs import Command
from tests.workbook.build import SMALLEST, save

SAMPLE = Path(__file__).parents[1] / "sample_jobs" / "buy_or_wait.xlsx"
PRICES = ("Gear", "Kind", "Price", "Most")

# Formats of the results that openpyxl does not carry over.
pytestmark = pytest.mark.filterwarnings("ignore::UserWarning:openpyxl")


@pytest.fixture
def loadplan(capsys):
    return Command(capsys)


def with_prices(folder, *rows, headings=PRICES, **sheets):
    return save(folder / "day.xlsx", {**SMALLEST, "Prices": [headings, *rows], **sheets})


def rows_of(book, sheet):
    headings, *rows = book[sheet].iter_rows(values_only=True)
    return [dict(zip(headings, row, strict=True)) for row in rows]


@pytest.fixture(scope="module")
def sample(tmp_path_factory):
    """The sample bought for within 150: exit code and results."""
    from loadplan.cli import run

    path = tmp_path_factory.mktemp("buy") / "out.xlsx"
    code = run(["buy", str(SAMPLE), "-o", str(path), "--budget", "150"])
    return code, openpyxl.load_workbook(path)


def test_every_load_ready_at_the_least_cost(tmp_path, loadplan):
    out = tmp_path / "out.xlsx"
    ran = loadplan("buy", SAMPLE, "-o", out)
    assert (ran.code, ran.err) == (0, [])
    assert ran.out == [
        "Buy 10 pieces for 298 USD: 6 of 6 loads ready, 4 without buying.",
        "  6 x B38 at 34 USD: 204 USD (lever binder, WLL 5,400 lb, for chain of 5/16 in and "
        "3/8 in)",
        "  4 x S2 at 23.50 USD: 94 USD (ratchet strap 2, 27 ft, WLL 3,333 lb)",
        "Proved: no purchase from Prices with which as many loads are ready, priority by "
        "priority, costs less, and none of this cost has fewer pieces.",
        "Tie-downs: 33, proved least",
        "Mixed sets: 0, proved least",
        "Rated strength issued: 343,998 lb, proved least",
        "Every stage is proved: no plan for this day is better in this order.",
        "This is the plan with 10 pieces bought for 298 USD; see the sheet What to buy.",
        f"Written: {out}",
    ]
    book = openpyxl.load_workbook(out)
    assert book.sheetnames[:3] == ["What to buy", "Purchase", "Board"]
    assert [row["Owned"] for row in rows_of(book, "Gear use") if row["Gear"] == "B38"] == [23]


def test_a_budget_buys_the_most_urgent_loads(sample):
    code, book = sample
    assert code == 4
    assert book.sheetnames[:4] == ["What to buy", "Purchase", "Curve", "Board"]
    held = [row["Load"] for row in rows_of(book, "Summary") if row["Status"] == "held"]
    assert held == ["N5"]
    assert rows_of(book, "Purchase") == [
        {
            "Gear": gear,
            "Kind": kind,
            "Size": size,
            "Grade": None,
            "Length [ft]": length,
            "WLL [lb]": wll,
            "Breaking strength [lb]": None,
            "Fits": fits,
            "In the cage already": "yes",
            "Pieces": pieces,
            "Price [USD]": price,
            "Cost [USD]": cost,
        }
        for gear, kind, size, length, wll, fits, pieces, price, cost in [
            ("B38", "lever binder", None, None, 5400, "5/16 in, 3/8 in", 1, 34, 34),
            ("S2", "ratchet strap", "2", 27, 3333, None, 4, 23.5, 94),
        ]
    ]


def test_the_curve_as_a_table(sample):
    _, book = sample
    # Each row: cost, ready at priorities 1, 2, 3, pieces, chosen, what to buy, held.
    points = [
        (0, (2, 2, 0), 0, "no", "nothing", "N4, N5"),
        (104.5, (2, 2, 1), 4, "no", "1 x B38; 3 x S2", "N4"),
        (128, (2, 3, 0), 5, "yes", "1 x B38; 4 x S2", "N5"),
        (298, (2, 3, 1), 10, "no", "6 x B38; 4 x S2", None),
    ]
    assert rows_of(book, "Curve") == [
        {
            "Cost [USD]": cost,
            "Loads ready": sum(ready),
            "Loads held": 6 - sum(ready),
            "Ready at priority 1": ready[0],
            "Ready at priority 2": ready[1],
            "Ready at priority 3": ready[2],
            "Pieces": pieces,
            "Proved": "yes",
            "Within budget": "yes" if cost <= 150 else "no",
            "Chosen": chosen,
            "Buy": buy,
            "Held": held,
        }
        for cost, ready, pieces, chosen, buy, held in points
    ]


def test_the_readme_shows_the_curve(sample):
    _, book = sample
    readme = (SAMPLE.parents[1] / "README.md").read_text(encoding="utf-8").splitlines()
    for row in rows_of(book, "Curve"):
        cost = f"{row['Cost [USD]']:.2f}".removesuffix(".00")
        held = row["Held"] or "none"
        assert f"| {cost} USD | {row['Loads ready']} of 6 | {held} | {row['Buy']} |" in readme


def test_the_page_has_a_chart_and_the_reason(sample):
    _, book = sample
    page = book["What to buy"]
    texts = [str(cell) for row in page.iter_rows(values_only=True) for cell in row if cell]
    assert "Buy 5 pieces for 128 USD: 5 of 6 loads ready, 4 without buying" in texts
    assert (
        "HELD: load N5. With the loads that go it takes a purchase of 298 USD; "
        "the budget is 150 USD."
    ) in texts
    assert len(page._charts) == 1


def test_nothing_to_buy(tmp_path, loadplan):
    ran = loadplan("buy", with_prices(tmp_path, ("CH-1", None, 40, None)))
    assert ran.code == 0
    assert ran.out[0] == "Buy nothing: 1 of 1 load ready."


@pytest.mark.parametrize("prices", [None, [PRICES]])
def test_no_prices(tmp_path, loadplan, prices):
    sheets = dict(SMALLEST) if prices is None else {**SMALLEST, "Prices": prices}
    ran = loadplan("buy", save(tmp_path / "day.xlsx", sheets))
    assert ran.code == 3
    assert ran.err == [
        "'Prices'  S06  There are no prices, so nothing can be bought. "
        "Write on the sheet Prices what can be had, one row for each kind of piece.",
        "1 problem. Nothing was planned or written.",
    ]
    assert not (tmp_path / "day.results.xlsx").exists()


@pytest.mark.parametrize(
    ("budget", "message"),
    [
        ("0", "Error: Invalid value for '--budget': It must be more than 0."),
        (
            "much",
            "Error: Invalid value for '--budget': much is not an amount such as 250 or 250.00 USD.",
        ),
        (
            "7.99",
            "Error: A budget of $7.99 buys nothing: the cheapest piece on Prices costs $8. "
            "Give that much or more.",
        ),
        ("50 EUR", "Error: The budget is in EUR, and the prices are in $."),
    ],
)
def test_a_budget_that_cannot_be_used(tmp_path, loadplan, budget, message):
    day = with_prices(tmp_path, ("CH-1", None, "$40", None), (None, "shackle", "$8", None),
                      (None, "edge protector", "$1", 0))  # fmt: skip
    ran = loadplan("buy", day, "--budget", budget)
    assert ran.code == 2
    assert ran.err[-1] == message
    assert not (tmp_path / "day.results.xlsx").exists()


def test_results_that_are_there_already(tmp_path, loadplan):
    day = with_prices(tmp_path, ("CH-1", None, 40, None))
    (tmp_path / "day.results.xlsx").write_text("mine")
    ran = loadplan("buy", day)
    assert ran.code == 2
    assert (tmp_path / "day.results.xlsx").read_text() == "mine"
    assert loadplan("buy", day, "--force").code == 0


def test_a_load_that_no_purchase_gets_ready(tmp_path, loadplan):
    # 18,000 lb at 2,700 lb each: seven tie-downs; of chains and binders there are four.
    headings, chain, binder = SMALLEST["Gear"]
    gear = [headings, (*chain[:-1], 4), (*binder[:-1], 4)]
    day = with_prices(tmp_path, ("LB-1", None, "30 USD", None), Gear=gear)
    ran = loadplan("buy", day)
    assert ran.code == 4
    assert ran.out[:2] == [
        "Buy nothing: 0 of 1 load ready.",
        "  held: L-1. On its own it lacks 3 x CH-1, even with everything on Prices bought.",
    ]
    assert (tmp_path / "day.results.xlsx").exists()


def test_the_time_limit_before_anything_is_found(tmp_path, monkeypatch, loadplan):
    from loadplan.plan.clock import OutOfTimeError

    def out_of_time(*_):
        raise OutOfTimeError

    monkeypatch.setattr("loadplan.buy.settle", out_of_time)
    ran = loadplan("buy", with_prices(tmp_path, ("CH-1", None, 40, None)))
    assert ran.code == 5
    assert ran.out[:3] == [
        "Buy nothing: 1 of 1 load ready.",
        "Not proved: a purchase that gets more loads ready is not ruled out.",
        "The time limit came before a purchase was found: the plan is of what the cage has. "
        "Give it longer with --time-limit.",
    ]
    assert (tmp_path / "day.results.xlsx").exists()


def test_problems_of_the_workbook_come_first(tmp_path, loadplan):
    ran = loadplan("buy", with_prices(tmp_path, ("CH-1", None, -40, 1.5)), "--budget", "10")
    assert ran.code == 3
    assert ran.err == [
        "'Prices'!C2  V01  Price is -40. It must be more than 0.",
        "'Prices'!D2  V01  Most is 1.5. It must be a whole number, 0 or more.",
        "2 problems. Nothing was planned or written.",
    ]
