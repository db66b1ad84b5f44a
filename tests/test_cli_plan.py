"""``loadplan plan``: what it prints, where it writes, and how it ends."""

from fractions import Fraction

import pytest

from loadplan.outcome.progress import Progress
from loadplan.outcome.stage import Stage
from loadplan.problems import JudgementDisagrees, SaveFailed, SolverFailed
from loadplan.terminal import stage_value
from tests.cli_runs import Command, a_plan, a_terminal, day_file, failing, planned
from tests.workbook.build import SMALLEST, gear_with, save


@pytest.fixture
def loadplan(capsys):
    return Command(capsys)


def test_every_load_ready_and_proved(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch)
    day = day_file(tmp_path)
    ran = loadplan("plan", day)
    assert ran.code == 0
    assert ran.out == [
        "1 load: 1 ready, 0 held.",
        "Tie-downs: 6, proved least",
        "Mixed sets: 0, proved least",
        "Strength issued: 72,000 lb, proved least",
        "Every stage is proved: no plan for this day is better in this order.",
        f"Written: {tmp_path / 'day.results.xlsx'}",
    ]
    assert ran.err == []
    assert (tmp_path / "day.results.xlsx").read_text() == "results"


def test_a_held_load_with_what_it_is_short_of(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch, ready=False)
    ran = loadplan("plan", day_file(tmp_path))
    assert ran.code == 4
    assert ran.out[:2] == [
        "1 load: 0 ready, 1 held.",
        "  held: L-1 is short of 2 x lever binder for 3/8 in chain, 5,400 lb or more (EX-1)",
    ]


def test_something_not_proved(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch, ready=False, proved=False)
    ran = loadplan("plan", day_file(tmp_path))
    assert ran.code == 5
    assert ran.out[4:7] == [
        "Strength issued: 72,000 lb, not proved; it cannot be less than 70,000 lb",
        "Not everything is proved; see the lines above and the sheet Board.",
        "The time limit of 60 s was reached.",
    ]


def test_a_stage_at_its_bound_after_one_that_is_not_proved():
    late = Stage(name="strength", value=Fraction(5), bound=Fraction(5), proved=False, unit="lb")
    assert stage_value(late) == (
        "5 lb, the least there can be with what comes before, which is not proved"
    )
    ready = Stage(name="ready", value=Fraction(2), bound=Fraction(2), proved=False, greatest=True)
    assert stage_value(ready).startswith("2, the most there can be")


def test_verbose_prints_each_stage(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch, proved=False)
    ran = loadplan("plan", day_file(tmp_path), "--verbose")
    assert ran.out[:4] == [
        "  loads ready at priority 1: value 1, bound 1, gap 0, proved, 0.00 s",
        "  tie-downs: value 6, bound 6, gap 0, proved, 0.00 s",
        "  mixed sets: value 0, bound 0, gap 0, proved, 0.00 s",
        "  strength issued: value 72,000 lb, bound 70,000 lb, gap 2,000 lb, not proved, 0.00 s",
    ]


def test_warnings_go_to_stderr(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch)
    ran = loadplan("plan", save(tmp_path / "day.xlsx", {**SMALLEST, "Scratch": [("x",)]}))
    assert ran.err == ["Warning: 'Scratch'  The sheet is not known and was left out."]


@pytest.mark.parametrize(("typed", "seconds"), [("90", 90), ("0.5", 0.5), ("2 min", 120)])
def test_the_time_limit_is_handed_on(tmp_path, monkeypatch, loadplan, typed, seconds):
    calls = planned(monkeypatch)
    assert loadplan("plan", day_file(tmp_path), "--time-limit", typed).code == 0
    assert calls == [{"time_limit": seconds, "progress": None}]


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("nan", "nan is not a number of seconds."),
        ("soon", "soon is not a number of seconds."),
        ("0", "It must be more than 0 and 86,400 s or less."),
        ("86401", "It must be more than 0 and 86,400 s or less."),
    ],
)
def test_a_time_limit_that_is_none(tmp_path, loadplan, typed, message):
    ran = loadplan("plan", day_file(tmp_path), "--time-limit", typed)
    assert ran.code == 2
    assert ran.err[-1] == f"Error: Invalid value for '--time-limit': {message}"


def test_a_rejected_workbook(tmp_path, loadplan):
    ran = loadplan("plan", save(tmp_path / "day.xlsx", gear_with("Quantity", -2)))
    assert ran.code == 3
    assert ran.out == []
    assert ran.err == [
        "'Gear'!H2  V01  Quantity is -2. It must be a whole number, 0 or more.",
        "1 problem. Nothing was planned or written.",
    ]
    assert [path.name for path in tmp_path.iterdir()] == ["day.xlsx"]


def test_no_such_file(tmp_path, loadplan):
    ran = loadplan("plan", tmp_path / "nope.xlsx")
    assert ran.code == 2
    assert ran.err == [f"There is no file {tmp_path / 'nope.xlsx'}. Check the name and the folder."]


def test_results_that_are_there_need_force(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch)
    day, results = day_file(tmp_path), tmp_path / "day.results.xlsx"
    results.write_text("old")
    ran = loadplan("plan", day)
    assert ran.code == 2
    assert ran.err[-1] == (
        f"Error: {results} is there already. Add --force to replace it, or give another name."
    )
    assert results.read_text() == "old"
    assert loadplan("plan", day, "--force").code == 0
    assert results.read_text() == "results"


@pytest.mark.parametrize("name", ["day.xlsx", "./day.xlsx", "link.xlsx"])
def test_the_day_workbook_is_never_the_results(tmp_path, monkeypatch, loadplan, name):
    planned(monkeypatch)
    day = day_file(tmp_path)
    (tmp_path / "link.xlsx").symlink_to(day)
    before = day.read_bytes()
    ran = loadplan("plan", day, "-o", tmp_path / name, "--force")
    assert ran.code == 2
    assert ran.err[-1] == (
        "Error: The results would replace the day workbook. Give another name with -o."
    )
    assert day.read_bytes() == before


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("plan.pdf", "{} does not end in .xlsx. Give it a name that does."),
        ("gone/plan.xlsx", "There is no folder {}. Make it first."),
    ],
)
def test_a_place_that_will_not_do_is_told_before_planning(
    tmp_path, monkeypatch, loadplan, name, message
):
    calls = planned(monkeypatch)
    path = tmp_path / name
    ran = loadplan("plan", day_file(tmp_path), "-o", path)
    assert ran.code == 2
    shown = path.parent if "folder" in message else path
    assert ran.err[-1] == "Error: " + message.format(shown)
    assert calls == []


def test_csv_beside_the_results(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch, ready=False)
    folder = tmp_path / "tables"
    day = day_file(tmp_path)
    ran = loadplan("plan", day, "--csv", folder)
    assert ran.out[-2:] == [f"Written: {tmp_path / 'day.results.xlsx'}", f"Written: {folder}"]
    names = {path.name for path in folder.iterdir()}
    assert {"Summary.csv", "Shortfall.csv", "Tie-downs.csv", "Checks.csv"} <= names
    assert all(name.endswith(".csv") for name in names)
    summary = (folder / "Summary.csv").read_text(encoding="utf-8-sig").splitlines()
    assert summary[0].startswith("Load,Trailer,Out,Back,Priority,Status")
    ran = loadplan("plan", day, "--csv", folder, "-o", tmp_path / "again.xlsx")
    assert ran.code == 2
    assert ran.err[-1] == (
        f"Error: There are CSV files in {folder} already. Add --force to replace them, or give "
        "another folder."
    )


def test_no_csv_is_left_where_the_results_could_not_be_written(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch, ready=False)

    def write_results(plan, path, *, force):
        raise SaveFailed("The disk is full. Make room.")

    monkeypatch.setattr("loadplan.api.write_results", write_results)
    folder = tmp_path / "tables"
    ran = loadplan("plan", day_file(tmp_path), "--csv", folder)
    assert (ran.code, ran.err) == (6, ["The disk is full. Make room."])
    assert not folder.exists()


def test_a_pdf_without_the_program_that_makes_it(tmp_path, monkeypatch, loadplan):
    calls = planned(monkeypatch)
    monkeypatch.setattr("loadplan.results.pdf.find_office", lambda: None)
    ran = loadplan("plan", day_file(tmp_path), "--pdf")
    assert ran.code == 2
    assert ran.err[-1].startswith("Error: --pdf needs LibreOffice, which is not installed here.")
    assert calls == []


def test_a_pdf_beside_the_results(tmp_path, monkeypatch, loadplan):
    planned(monkeypatch)
    monkeypatch.setattr("loadplan.results.pdf.find_office", lambda: "office")
    monkeypatch.setattr("loadplan.results.pdf.save_pdf", lambda plan, path: path.write_text("pdf"))
    ran = loadplan("plan", day_file(tmp_path), "--pdf")
    assert ran.out[-1] == f"Written: {tmp_path / 'day.results.pdf'}"
    assert (tmp_path / "day.results.pdf").read_text() == "pdf"


@pytest.mark.parametrize(
    ("error", "lines"),
    [
        (SolverFailed("The solver stopped without an answer."), None),
        (JudgementDisagrees(["L-1 is short."]), None),
        (SaveFailed("No room."), None),
    ],
)
def test_failures_end_with_six_and_write_nothing(tmp_path, monkeypatch, loadplan, error, lines):
    failing(monkeypatch, error)
    ran = loadplan("plan", day_file(tmp_path))
    assert (ran.code, ran.out) == (6, [])
    assert ran.err == str(error).splitlines()
    assert [path.name for path in tmp_path.iterdir()] == ["day.xlsx"]


def test_interrupted(tmp_path, monkeypatch, loadplan):
    failing(monkeypatch, KeyboardInterrupt())
    ran = loadplan("plan", day_file(tmp_path))
    assert (ran.code, ran.err) == (130, ["Interrupted. Nothing was written."])


def test_a_crash_is_one_line(tmp_path, monkeypatch, loadplan):
    failing(monkeypatch, ZeroDivisionError("deep\ndown"))
    ran = loadplan("plan", day_file(tmp_path))
    assert ran.code == 1
    assert ran.err == [
        "loadplan 0.1.0 crashed (ZeroDivisionError: deep down). Run the command again with "
        "--debug and send what it prints, with the day workbook, to whoever keeps this program "
        "for you."
    ]


@pytest.mark.parametrize("where", ["before", "behind"])
def test_debug_prints_the_trace(tmp_path, monkeypatch, loadplan, where):
    failing(monkeypatch, ZeroDivisionError("deep"))
    day = day_file(tmp_path)
    arguments = ("--debug", "plan", day) if where == "before" else ("plan", day, "--debug")
    ran = loadplan(*arguments)
    assert ran.code == 1
    assert ran.err[0].endswith(
        "Send this, with the day workbook, to whoever keeps this program for you."
    )
    assert ran.err[1] == "Traceback (most recent call last):"
    assert ran.err[-2:] == ["ZeroDivisionError: deep", ""] or "ZeroDivisionError: deep" in ran.err


def test_ids_cannot_play_with_the_terminal(tmp_path, monkeypatch, loadplan):
    cargo = [("Article", "Load", "Class", "Weight [lb]", "Length [ft]")]
    cargo.append(("A", "L\u202e1\u200d\u00e9", "general", 500, 4))
    planned(monkeypatch, ready=False)
    ran = loadplan("plan", save(tmp_path / "day.xlsx", {**SMALLEST, "Cargo": cargo}))
    assert ran.out[1].startswith("  held: L\\u202e1\u200d\u00e9 is short of 2 x ")


def test_a_moving_line_only_on_a_terminal(tmp_path, monkeypatch, loadplan):
    def plan_day(day, *, time_limit, progress):
        if progress is not None:
            progress(Progress(stage="tie-downs", best=52.0, bound=None, seconds=3.4))
        return a_plan(day)

    planned(monkeypatch)
    monkeypatch.setattr("loadplan.api.plan_day", plan_day)
    day = day_file(tmp_path)
    assert loadplan("plan", day).err == []
    a_terminal(monkeypatch)
    err = "".join(loadplan("plan", day, "--force").err)
    assert err.strip().startswith("\x1b[2Ktie-downs: best 52, bound none yet, 3 s")
    assert err.endswith("\x1b[2K")
