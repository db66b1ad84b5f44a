"""Cells that hold text, words or sizes."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import Any

from loadplan.day.size import read_fits, read_size
from loadplan.problems import Code
from loadplan.units import Misread
from loadplan.workbook.column import Column
from loadplan.workbook.limits import MOST_ID
from loadplan.workbook.names import did_you_mean, fold_words, shown

_YES = frozenset({"yes", "y", "true"})
_NO = frozenset({"no", "n", "false"})
TIMES = (datetime.date, datetime.time, datetime.timedelta)


def as_text(cell: Any) -> str:
    """An id, mark or note: text as typed but trimmed, whole numbers without a decimal point."""
    if isinstance(cell, str):
        return cell.strip()
    if isinstance(cell, bool):
        raise Misread(Code.WRONG_TYPE, "Write text.")
    if isinstance(cell, TIMES):
        raise Misread(
            Code.WRONG_TYPE, "Format the column as text and type it again.", ", a date or time"
        )
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell)


def read_id(cell: Any) -> str:
    """An id: text that is not too long for one."""
    text = as_text(cell)
    if len(text) > MOST_ID:
        raise Misread(Code.TOO_LONG, f"Keep it within {MOST_ID} characters.")
    return text


def read_note(cell: Any) -> str:
    """A note, which may be anything."""
    if isinstance(cell, TIMES):
        return shown(cell)
    return ("yes" if cell else "no") if isinstance(cell, bool) else as_text(cell)


def read_word(cell: Any, column: Column) -> Any:
    """One of the words of ``column``, whatever its case and spacing, or another name of it."""
    text = as_text(cell)
    found = {fold_words(word): word for word in column.words}.get(fold_words(text))
    if found is None and column.named is not None:
        found = column.named(text)
    if found is None:
        raise _not_a_word(text, column.words)
    return found


def read_reading(cell: Any, column: Column) -> Any:
    """The value that the word in a cell stands for; numbers may be written as numbers too."""
    if set(column.readings) == {"yes", "no"}:
        return column.readings["yes" if read_yes_no(cell) else "no"]
    if isinstance(cell, int | float) and not isinstance(cell, bool):
        for value in column.readings.values():
            if not isinstance(value, bool | str) and value == cell:
                return value
    text = as_text(cell)
    found = {fold_words(word): value for word, value in column.readings.items()}
    if fold_words(text) not in found:
        raise _not_a_word(text, tuple(column.readings))
    return found[fold_words(text)]


def _not_a_word(text: str, words: Sequence[str]) -> Misread:
    choice = ", ".join(words)
    one_of = f"It must be one of: {choice}." if len(words) > 1 else f"It must be {choice}."
    return Misread(Code.NOT_A_WORD, did_you_mean(text, words) + one_of)


def read_yes_no(cell: Any) -> bool:
    """Yes or no, in full or by letter, or as TRUE and FALSE."""
    if isinstance(cell, bool):
        return cell
    word = fold_words(as_text(cell))
    if word not in _YES | _NO:
        raise Misread(Code.NOT_A_WORD, "Write yes or no.")
    return word in _YES


def text_for_size(cell: Any) -> str:
    """The text of a size, range or mark; a date is what a spreadsheet makes of 3/8."""
    if isinstance(cell, TIMES):
        raise Misread(
            Code.WRONG_TYPE,
            "Format the column as text and type it again, such as 3/8.",
            ", a date: the spreadsheet took the size for one",
        )
    return as_text(cell)


def size_and_text(cell: Any) -> tuple[Any, str]:
    """The size, None where it cannot be read, and the text as typed."""
    text = text_for_size(cell)
    return read_size(text), text


def sizes_it_fits(cell: Any) -> Any:
    """The chain sizes a tensioner takes."""
    found = read_fits(text_for_size(cell))
    if found is None:
        raise Misread(Code.SIZE, "Write the chain sizes it takes, such as 5/16-3/8 or 3/8, 1/2.")
    return found
