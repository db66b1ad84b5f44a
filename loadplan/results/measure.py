"""How many lines a text takes in a cell: row heights have to be set, no program works them out."""

from __future__ import annotations

from functools import lru_cache
from math import ceil

# Advance widths of the pages' font in thousandths of its size, by the characters that have them.
_THOUSANDTHS = {
    191: "'",
    222: "ijl",
    260: "|",
    278: " !,./:;I[\\]ft",
    333: "()-`r{}",
    389: '"*',
    469: "^",
    500: "Jcksvxyz",
    556: "#$0123456789?L_abdeghnopqu",
    584: "+<=>~",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1015: "@",
}
_WIDTHS = {char: width / 1000 for width, chars in _THOUSANDTHS.items() for char in chars}
_OTHER = 0.75
_BOLD = 1.07
_PIXELS_PER_POINT = 4 / 3
_PADDING = 6


@lru_cache(maxsize=16384)
def pixels(text: str, size: float, bold: bool = False) -> float:
    """How wide ``text`` is at ``size`` points, at 96 dots per inch."""
    ems = sum(_WIDTHS.get(char, _OTHER) for char in text)
    return ems * size * _PIXELS_PER_POINT * (_BOLD if bold else 1.0)


@lru_cache(maxsize=16384)
def lines(text: str, width: float, size: float, bold: bool = False) -> int:
    """How many lines ``text`` takes when wrapped at ``width`` pixels."""
    room = max(width - _PADDING, 10) * 0.98
    space = pixels(" ", size, bold)
    count, at = 1, 0.0
    for word in text.split(" "):
        long = pixels(word, size, bold)
        if at and at + space + long > room:
            count, at = count + 1, 0.0
        if long > room:
            count += ceil(long / room) - 1
            long %= room
        at += long + (space if at else 0.0)
    return count


def height(lines_: int, size: float) -> float:
    """Row height in points for that many lines of ``size``."""
    return round(lines_ * size * 1.17 + 1.8, 1)


def fitted(text: str, width: float, size: float) -> str:
    """``text``, shortened at the end where one line of ``width`` pixels does not hold it."""
    if pixels(text, size) <= width:
        return text
    while text and pixels(f"{text} ...", size) > width:
        text = text[:-1]
    return f"{text.rstrip(' ,;')} ..."
