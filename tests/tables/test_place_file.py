"""Files are put in place whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from loadplan.problems import SaveFailed
from loadplan.tables.place_file import place_file


def test_a_new_file_is_written_and_nothing_else_left(tmp_path):
    place_file(tmp_path / "a.bin", b"new")
    assert [path.name for path in tmp_path.iterdir()] == ["a.bin"]
    assert (tmp_path / "a.bin").read_bytes() == b"new"


def test_an_existing_file_needs_force(tmp_path):
    path = tmp_path / "a.bin"
    path.write_bytes(b"old")
    with pytest.raises(SaveFailed) as caught:
        place_file(path, b"new")
    assert str(caught.value) == (
        f"{path} is there already and was left as it is. "
        "Choose another name, or add --force to replace it."
    )
    assert path.read_bytes() == b"old"
    place_file(path, b"new", force=True)
    assert path.read_bytes() == b"new"


def test_a_replaced_file_keeps_its_permissions(tmp_path):
    path = tmp_path / "a.bin"
    path.write_bytes(b"old")
    path.chmod(0o640)
    place_file(path, b"new", force=True)
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_folder_is_no_file(tmp_path):
    with pytest.raises(SaveFailed) as caught:
        place_file(tmp_path, b"new", force=True)
    assert str(caught.value) == f"{tmp_path} is a folder. Name a file to write."


def test_a_missing_folder_is_told(tmp_path):
    path = tmp_path / "none" / "a.bin"
    with pytest.raises(SaveFailed) as caught:
        place_file(path, b"new")
    assert str(caught.value) == (
        f"There is no folder {path.parent}. Make it, or name another place."
    )


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write to every folder")
def test_a_read_only_folder_is_told(tmp_path):
    tmp_path.chmod(0o555)
    path = tmp_path / "a.bin"
    try:
        with pytest.raises(SaveFailed) as caught:
            place_file(path, b"new")
    finally:
        tmp_path.chmod(0o755)
    assert str(caught.value).startswith(f"{path} could not be written: Permission denied. ")
    assert list(tmp_path.iterdir()) == []


def test_a_failed_move_leaves_the_old_file_and_no_other(tmp_path, monkeypatch):
    path = tmp_path / "a.bin"
    path.write_bytes(b"old")

    def refuse(self, target):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(SaveFailed) as caught:
        place_file(path, b"new", force=True)
    assert str(caught.value) == (
        f"{path} could not be written: Permission denied. Close it if it is open, make room, "
        "or name a place you may write to."
    )
    assert path.read_bytes() == b"old"
    assert [one.name for one in tmp_path.iterdir()] == ["a.bin"]


def test_an_interruption_leaves_nothing(tmp_path, monkeypatch):
    def stop(handle):
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stop)
    with pytest.raises(KeyboardInterrupt):
        place_file(tmp_path / "a.bin", b"new")
    assert list(tmp_path.iterdir()) == []


def test_the_content_is_flushed_to_disk_before_the_move(tmp_path, monkeypatch):
    seen = []
    fsync, replace = os.fsync, Path.replace
    monkeypatch.setattr(os, "fsync", lambda handle: (seen.append("fsync"), fsync(handle))[1])
    monkeypatch.setattr(
        Path, "replace", lambda self, target: (seen.append("move"), replace(self, target))[1]
    )
    place_file(tmp_path / "a.bin", b"new")
    assert seen[:2] == ["fsync", "move"]
