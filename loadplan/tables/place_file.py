"""Files put in place whole or not at all."""

from __future__ import annotations

import contextlib
import os
import tempfile
from pathlib import Path

from loadplan.problems import SaveFailed


def refuse_existing(path: Path, *, force: bool) -> None:
    """Raise ``SaveFailed`` where ``path`` is there already and may not be replaced."""
    if path.is_dir():
        raise SaveFailed(f"{path} is a folder. Name a file to write.")
    if path.exists() and not force:
        raise SaveFailed(
            f"{path} is there already and was left as it is. "
            "Choose another name, or add --force to replace it."
        )


def place_file(path: Path, content: bytes, *, force: bool = False) -> None:
    """Write ``content`` to ``path``: to a temporary file beside it first, then moved into place.

    The old file, if any, stays whole until the move. Raises ``SaveFailed`` with a remedy.
    """
    refuse_existing(path, force=force)
    if not path.parent.is_dir():
        raise SaveFailed(f"There is no folder {path.parent}. Make it, or name another place.")
    try:
        _write_and_move(path, content)
    except OSError as error:
        reason = error.strerror or str(error)
        raise SaveFailed(
            f"{path} could not be written: {reason}. Close it if it is open, make room, "
            "or name a place you may write to."
        ) from error


def _write_and_move(path: Path, content: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=".loadplan-", suffix=".tmp", dir=path.parent)
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        temporary.chmod(_mode(path))
        temporary.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            temporary.unlink()
        raise
    _sync_folder(path.parent)


def _mode(path: Path) -> int:
    """The permissions of the file replaced, else those a new file gets."""
    if path.exists():
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _sync_folder(folder: Path) -> None:
    """Make the move itself last through a power cut, where the system can do that."""
    with contextlib.suppress(OSError, AttributeError):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
