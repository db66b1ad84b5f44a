"""Names compared as people mean them, and values shown as they were typed."""

from __future__ import annotations

import datetime
import difflib
import unicodedata
from collections.abc import Iterable

_LONGEST_SHOWN = 60
_MOST_SEARCHED = 500


def fold(text: str) -> str:
    """``text`` for comparing ids: trimmed and case-folded."""
    text = text.strip()
    return text.lower() if text.isascii() else unicodedata.normalize("NFC", text).casefold()


def fold_words(text: str) -> str:
    """``text`` for comparing headings, sheets and words: folded, runs of spaces as one."""
    return fold(" ".join(text.split()))


def suggest(name: str, known: Iterable[str]) -> str | None:
    """The one of ``known`` that ``name`` most looks like, or None if none is near.

    Among very many names none is looked for: it would take too long and help too little.
    """
    known = tuple(known)
    if len(known) > _MOST_SEARCHED:
        return None
    by_fold = {fold_words(one): one for one in known}
    found = difflib.get_close_matches(fold_words(name), by_fold, n=1, cutoff=0.7)
    return by_fold[found[0]] if found else None


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """``Did you mean Gear? `` with a space behind it, or ""."""
    near = suggest(name, known)
    return f"Did you mean {near}? " if near else ""


def shown(value: object) -> str:
    """A cell's value as a message shows it: text in quotes, the rest bare."""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, str):
        text = value if len(value) <= _LONGEST_SHOWN else value[: _LONGEST_SHOWN - 3] + "..."
        return f'"{text}"'
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return str(int(value))
    if isinstance(value, datetime.datetime):
        midnight = value.time() == datetime.time()
        return value.date().isoformat() if midnight else value.isoformat(sep=" ")
    return str(value)
