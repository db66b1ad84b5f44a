"""Runs killed, disks full, folders read-only, gone or in use: old results stay, nothing strays."""

from __future__ import annotations

import os
import resource
import shutil
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from loadplan.results.pdf import find_office
from tests.cli_runs import Command, a_plan, day_file
from tests.saving.kill_runs import NEW, OLD, OLD_CONTENT, killed_after, standing

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="POSIX signals and limits")
ROOT = os.geteuid() == 0 if hasattr(os, "geteuid") else False
PRUDENCE = "Close it if it is open, make room, or name a place you may write to."


@pytest.fixture
def command(capsys):
    return Command(capsys)


def left(folder: Path) -> list[str]:
    """Everything in ``folder`` and below, hidden files too."""
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*"))


@pytest.mark.parametrize("seconds", [0.05, 0.5, 0.9, 1.2])
def test_a_killed_run_leaves_the_old_results_or_the_new(tmp_path, seconds):
    assert killed_after(tmp_path, seconds) in (OLD, NEW)


def test_a_part_of_the_results_would_be_noticed(tmp_path):
    path = tmp_path / "day.results.xlsx"
    path.write_bytes(b"PK\x03\x04 and no more")
    with pytest.raises(Exception, match="not a zip file"):
        standing(path)


def limited(folder: Path, *options: str, most: int) -> subprocess.CompletedProcess[str]:
    """Plan the smallest day where no file may grow beyond ``most`` bytes, as on a full disk."""
    day = day_file(folder)

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    run = [sys.executable, "-m", "loadplan", "plan", str(day), "--force", *options]
    return subprocess.run(
        run, preexec_fn=limit, capture_output=True, text=True, check=False, timeout=120
    )


def test_no_room_for_the_results(tmp_path):
    results = tmp_path / "day.results.xlsx"
    results.write_bytes(OLD_CONTENT)
    ran = limited(tmp_path, most=4096)
    assert (ran.returncode, ran.stdout) == (6, "")
    assert ran.stderr == f"{results} could not be written: File too large. {PRUDENCE}\n"
    assert left(tmp_path) == ["day.results.xlsx", "day.xlsx"]
    assert standing(results) == OLD


def test_no_room_for_the_results_beside_csv_files(tmp_path):
    folder = tmp_path / "csv"
    ran = limited(tmp_path, "--csv", str(folder), most=16384)
    assert (ran.returncode, ran.stdout) == (6, "")
    assert ran.stderr.endswith(f"could not be written: File too large. {PRUDENCE}\n")
    assert left(tmp_path) == ["day.xlsx"]


@pytest.fixture
def small_disk(tmp_path):
    """A file system of 64 KiB with half of it taken."""
    place = tmp_path / "disk"
    place.mkdir()
    mounted = shutil.which("mount") and subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(place)],
        check=False,
        capture_output=True,
    )
    if not mounted or mounted.returncode:
        pytest.skip("A small file system cannot be mounted without being root.")
    yield place
    subprocess.run(["umount", "-l", str(place)], check=True)


def test_a_full_disk(small_disk, command):
    day = day_file(small_disk)
    (small_disk / "fill").write_bytes(bytes(40 * 1024))
    ran = command("plan", day)
    assert (ran.code, ran.out) == (6, [])
    results = small_disk / "day.results.xlsx"
    assert ran.err == [f"{results} could not be written: No space left on device. {PRUDENCE}"]
    assert left(small_disk) == ["day.xlsx", "fill"]


def test_a_full_disk_for_the_csv_files(small_disk, command, tmp_path):
    day = day_file(tmp_path)
    (small_disk / "fill").write_bytes(bytes(60 * 1024))
    ran = command("plan", day, "--csv", small_disk / "csv")
    assert (ran.code, ran.out) == (6, [])
    assert "No space left on device" in ran.err[0]
    assert left(small_disk) == ["fill"]
    assert not (tmp_path / "day.results.xlsx").exists()


def test_a_disk_that_may_only_be_read(small_disk, command):
    day = day_file(small_disk)
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    ran = command("plan", day)
    assert (ran.code, ran.out) == (6, [])
    results = small_disk / "day.results.xlsx"
    assert ran.err == [f"{results} could not be written: Read-only file system. {PRUDENCE}"]
    assert left(small_disk) == ["day.xlsx"]


@pytest.mark.skipif(ROOT, reason="root may write anywhere")
def test_a_folder_that_may_not_be_written_to(tmp_path, command):
    day = day_file(tmp_path)
    tmp_path.chmod(stat.S_IRUSR | stat.S_IXUSR)
    try:
        ran = command("plan", day)
    finally:
        tmp_path.chmod(stat.S_IRWXU)
    assert (ran.code, ran.out) == (6, [])
    results = tmp_path / "day.results.xlsx"
    assert ran.err == [f"{results} could not be written: Permission denied. {PRUDENCE}"]
    assert left(tmp_path) == ["day.xlsx"]


@pytest.mark.parametrize(
    ("error", "why"),
    [
        (PermissionError(13, "Permission denied"), "Permission denied"),
        (PermissionError(13, "The process cannot access the file: it is in use"), "The process"),
        (OSError(5, "Input/output error"), "Input/output error"),
        (OSError(30, "Read-only file system"), "Read-only file system"),
    ],
)
def test_a_move_that_fails_leaves_the_old_results(tmp_path, command, monkeypatch, error, why):
    def replace(self: Path, target: Path) -> None:
        raise error

    day, results = day_file(tmp_path), tmp_path / "day.results.xlsx"
    results.write_bytes(OLD_CONTENT)
    monkeypatch.setattr(Path, "replace", replace)
    ran = command("plan", day, "--force")
    assert (ran.code, ran.out) == (6, [])
    assert ran.err == [f"{results} could not be written: {error.strerror}. {PRUDENCE}"]
    assert why in ran.err[0]
    assert left(tmp_path) == ["day.results.xlsx", "day.xlsx"]
    assert standing(results) == OLD


def test_the_folder_goes_away_while_the_day_is_planned(tmp_path, command, monkeypatch):
    folder = tmp_path / "out"
    folder.mkdir()
    results = folder / "r.xlsx"

    def plan_day(day, **_):
        shutil.rmtree(folder)
        return a_plan(day)

    monkeypatch.setattr("loadplan.api.plan_day", plan_day)
    monkeypatch.setattr(
        "loadplan.results.save.results_bytes", lambda *_, **__: b"new results", raising=True
    )
    ran = command("plan", day_file(tmp_path), "-o", results)
    assert (ran.code, ran.out) == (6, [])
    assert ran.err == [f"There is no folder {folder}. Make it, or name another place."]
    assert left(tmp_path) == ["day.xlsx"]


@pytest.mark.skipif(find_office() is None, reason="LibreOffice is not installed")
def test_the_folder_goes_away_before_the_pdf(tmp_path, command, monkeypatch):
    folder = tmp_path / "out"
    folder.mkdir()

    def plan_day(day, **_):
        shutil.rmtree(folder)
        return a_plan(day)

    monkeypatch.setattr("loadplan.api.plan_day", plan_day)
    ran = command("plan", day_file(tmp_path), "-o", folder / "r.xlsx", "--pdf")
    assert (ran.code, ran.out) == (6, [])
    assert ran.err == [
        f"{folder / 'r.pdf'} could not be written: No such file or directory. "
        "Check the folder and its free space."
    ]
    assert left(tmp_path) == ["day.xlsx"]
