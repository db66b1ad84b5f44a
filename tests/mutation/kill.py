"""Runs the tests against each mutant, in a process of its own forked from collected tests.

The tests are collected once, and run once with the lines noted that each reaches. A mutant of a
function is put into a fork by replacing the function's code; then the tests that reach its line
run, the quickest first, until one fails. A mutant of what runs at import (tables, defaults) cannot
be put in so: it is imported anew, in a fork from before the collection.
"""

from __future__ import annotations

import ast
import functools
import gc
import os
import sys
import time
import types
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.mutation.operators import Mutant

KILLED, SURVIVED = "killed", "survived"


class Lines:
    """Notes which lines of ``files`` run between ``start`` and ``stop``."""

    def __init__(self, files: set[str]) -> None:
        self._files = files
        self._reached: set[tuple[str, int]] = set()

    def start(self) -> None:
        """Begin with nothing reached."""
        self._reached = set()
        sys.settrace(self._call)

    def stop(self) -> set[tuple[str, int]]:
        """The lines reached."""
        sys.settrace(None)
        return self._reached

    def _call(self, frame: types.FrameType, event: str, _: Any) -> Callable[..., Any] | None:
        if frame.f_code.co_filename not in self._files:
            return None
        name, reached = frame.f_code.co_filename, self._reached

        def line(frame: types.FrameType, event: str, _: Any) -> Callable[..., Any]:
            reached.add((name, frame.f_lineno))
            return line

        return line


class Collected:
    """A pytest plugin that runs nothing as usual but gives each mutant its tests."""

    def __init__(self, files: set[str], then: Callable[[Collected], None]) -> None:
        self._lines, self._then = Lines(files), then
        self._items: list[pytest.Item] = []
        self._reaching: dict[tuple[str, int], list[int]] = {}
        self._seconds: dict[int, float] = {}
        self._failed = False

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run every test once, noting lines; then hand over."""
        self._items = session.items
        for number, item in enumerate(self._items):
            _forget()
            self._lines.start()
            begun = time.monotonic()
            self._run(item)
            self._seconds[number] = time.monotonic() - begun
            for line in self._lines.stop():
                self._reaching.setdefault(line, []).append(number)
            if self._failed:
                sys.exit(f"{item.nodeid} fails without any mutant.")
        self._then(self)
        return True

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note that a test failed."""
        self._failed = self._failed or report.failed

    def _run(self, item: pytest.Item) -> None:
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=None)

    def verdict(self, path: str, mutant: Mutant) -> str | None:
        """What became of ``mutant``; None where it is of what runs at import."""
        code = compile(mutant.tree, path, "exec")
        new = _functions(code)
        old = [one for one in gc.get_objects() if isinstance(one, types.FunctionType)]
        places = [
            (one, new[one.__code__.co_qualname, one.__code__.co_firstlineno])
            for one in old
            if one.__code__.co_filename == path
            and (one.__code__.co_qualname, one.__code__.co_firstlineno) in new
        ]
        places = [(one, code) for one, code in places if not _alike(one.__code__, code)]
        if not places:
            return None
        tests = sorted(self._reaching.get((path, mutant.line), []), key=self._seconds.__getitem__)
        if not tests:  # A line within a longer statement: whatever reaches its function.
            first = min(code.co_firstlineno for _, code in places)
            last = max(line for _, code in places for *_, line in code.co_lines() if line)
            near = {n for at in range(first, last + 1) for n in self._reaching.get((path, at), [])}
            tests = sorted(near, key=self._seconds.__getitem__)
        if not tests:
            return None
        limit = 20 + 3 * sum(self._seconds[number] for number in tests)
        return forked(lambda: self._child(places, tests), limit)

    def _child(
        self, places: list[tuple[types.FunctionType, types.CodeType]], tests: list[int]
    ) -> bool:
        for function, code in places:
            function.__code__ = code
        _forget()
        for number in tests:
            self._run(self._items[number])
            if self._failed:
                return True
        return False


def forked(work: Callable[[], bool], limit: float) -> str:
    """``work`` in a fork; a fork that breaks or takes longer than ``limit`` seconds is a kill."""
    child = os.fork()
    if child == 0:
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        try:
            os._exit(int(work()))
        except BaseException:
            os._exit(2)
    end = time.monotonic() + limit
    while time.monotonic() < end:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return SURVIVED if os.waitstatus_to_exitcode(status) == 0 else KILLED
        time.sleep(0.005)
    os.kill(child, 9)
    os.waitpid(child, 0)
    return KILLED


def imported_anew(module: str, path: Path, mutant: Mutant, tests: list[str]) -> str:
    """Run ``tests`` in a fork where ``module`` is the mutant from its import on."""

    def work() -> bool:
        sys.meta_path.insert(0, _Finder(module, path, mutant.tree))
        # Hypothesis's plugin was loaded before; all else is as in a new process.
        return pytest.main(["-x", "-n", "0", "-p", "no:cacheprovider", *tests]) != 0

    return forked(work, 300)


class _Finder:
    """Finds one module, and gives it the mutant's code."""

    def __init__(self, module: str, path: Path, tree: ast.Module) -> None:
        self._module, self._path, self._tree = module, path, tree

    def find_spec(self, name: str, path: object = None, target: object = None) -> Any:
        """The spec of the mutant's module."""
        from importlib.util import spec_from_file_location

        if name != self._module:
            return None
        inits = self._path.name == "__init__.py"
        places = [str(self._path.parent)] if inits else None
        return spec_from_file_location(
            name,
            self._path,
            loader=self,
            submodule_search_locations=places,  # type: ignore[arg-type]
        )

    def create_module(self, spec: object) -> None:
        """The usual module."""

    def exec_module(self, module: types.ModuleType) -> None:
        """Run the mutant."""
        exec(compile(self._tree, str(self._path), "exec"), module.__dict__)


def _forget() -> None:
    """Empty the package's caches, so that what is cached is worked out anew."""
    for one in gc.get_objects():
        if isinstance(one, functools._lru_cache_wrapper) and one.__module__.startswith("loadplan"):
            one.cache_clear()


def _functions(code: types.CodeType) -> dict[tuple[str, int], types.CodeType]:
    """Every function's code in ``code``, by name and first line."""
    found: dict[tuple[str, int], types.CodeType] = {}
    for one in _inner(code):
        found[one.co_qualname, one.co_firstlineno] = one
    return found


def _inner(code: types.CodeType) -> Iterator[types.CodeType]:
    for one in code.co_consts:
        if isinstance(one, types.CodeType):
            yield one
            yield from _inner(one)


def _alike(one: types.CodeType, other: types.CodeType) -> bool:
    """Whether two codes do the same: equal but for what they hold of their own kind."""
    return one == other
