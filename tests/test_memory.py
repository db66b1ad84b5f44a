"""Large blocks that are freed go back to the system where glibc is there to ask."""

from __future__ import annotations

import os
import platform
import subprocess
import sys
from types import SimpleNamespace

import pytest

from loadplan import memory

GLIBC = platform.libc_ver()[0] == "glibc"
# Blocks of 1 to 20 MB freed in turn: by itself the library would keep the later ones.
GROWS = """
import sys
from loadplan.memory import give_back_large_blocks

def pages():
    with open("/proc/self/statm") as told:
        return int(told.read().split()[1])

if sys.argv[1] == "ask":
    assert give_back_large_blocks()
kept = []
for size in range(1, 21):
    block = bytearray(b"x" * (size << 20))
    kept.append(bytes(1000))
    del block
before = pages()
blocks = [bytearray(b"x" * (1 << 20)) for _ in range(64)]
kept.append(bytes(100_000))
last = bytearray(b"x" * 1000)
del blocks
print(pages() - before)
"""


@pytest.mark.skipif(not GLIBC or not os.path.exists("/proc/self/statm"), reason="not glibc")
def test_what_is_freed_is_given_back() -> None:
    ran = subprocess.run(
        [sys.executable, "-c", GROWS, "ask"], capture_output=True, text=True, check=True
    )
    assert int(ran.stdout) < 1000


@pytest.mark.parametrize("error", [OSError, AttributeError, TypeError])
def test_without_that_library_nothing_changes(
    error: type[Exception], monkeypatch: pytest.MonkeyPatch
) -> None:
    def missing(name: None) -> None:
        raise error

    monkeypatch.setattr(memory, "ctypes", SimpleNamespace(CDLL=missing))
    assert memory.give_back_large_blocks() is False
