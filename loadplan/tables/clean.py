"""Text made fit for a cell: no control characters, no lone surrogates, not too long."""

from __future__ import annotations

import re

LONGEST = 32_767
# Anything XML cannot hold or that would break a line where none belongs.
_SPACES = re.compile(r"[\t\r\n\v\f\u0085\u2028\u2029]+")
_UNFIT = re.compile(r"[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def clean(text: str) -> str:
    """``text`` for one cell; what cannot be shown becomes the replacement character."""
    if text.isascii() and text.isprintable():
        return text[:LONGEST]
    text = _UNFIT.sub("\ufffd", _SPACES.sub(" ", text))
    return text if len(text) <= LONGEST else text[: LONGEST - 1] + "…"
