"""A page to draw on in one ink: lines, boxes and text with Pillow's own font."""

from __future__ import annotations

import io
import math
import unicodedata
from collections.abc import Sequence
from functools import cache, lru_cache
from itertools import pairwise
from typing import TypeAlias

from PIL import Image, ImageDraw, ImageFont

Point: TypeAlias = tuple[float, float]

DPI = 160
INK, GREY, PALE, PAPER = 0, 96, 222, 255
# Grey levels are tinted from this dark blue to white, so that one ink prints as grey.
_DARK = (16, 32, 56)
_LEVELS = 16


class Inks:
    """A white page of ``width`` x ``height`` dots, drawn in greys of one ink."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self._image = Image.new("L", (width, height), PAPER)
        self._draw = ImageDraw.Draw(self._image)

    def line(self, points: Sequence[Point], *, width: int = 2, ink: int = INK) -> None:
        """A line through ``points``."""
        self._draw.line([*points], fill=ink, width=width, joint="curve")

    def dashed(
        self, start: Point, end: Point, *, width: int = 2, ink: int = INK, dash: float = 12
    ) -> None:
        """A dashed straight line."""
        length = math.dist(start, end)
        if length == 0:
            return
        step = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        at = 0.0
        while at < length:
            to = min(at + dash, length)
            self._draw.line(
                [
                    (start[0] + step[0] * at, start[1] + step[1] * at),
                    (start[0] + step[0] * to, start[1] + step[1] * to),
                ],
                fill=ink,
                width=width,
            )
            at += dash * 1.7

    def box(
        self,
        left: float,
        top: float,
        right: float,
        bottom: float,
        *,
        fill: int | None = None,
        ink: int = INK,
        width: int = 2,
        dashed: bool = False,
    ) -> None:
        """A rectangle; ``dashed`` draws its outline broken."""
        if not dashed:
            self._draw.rectangle([left, top, right, bottom], fill=fill, outline=ink, width=width)
            return
        if fill is not None:
            self._draw.rectangle([left, top, right, bottom], fill=fill)
        corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
        for start, end in pairwise(corners):
            self.dashed(start, end, width=width, ink=ink)

    def shape(
        self, points: Sequence[Point], *, fill: int = PAPER, ink: int = INK, width: int = 2
    ) -> None:
        """A closed shape."""
        self._draw.polygon([*points], fill=fill, outline=ink, width=width)

    def disc(self, centre: Point, radius: float, *, fill: int = INK, ink: int = INK) -> None:
        """A disc around ``centre``."""
        x, y = centre
        self._draw.ellipse(
            [x - radius, y - radius, x + radius, y + radius], fill=fill, outline=ink, width=2
        )

    def text(
        self,
        at: Point,
        text: str,
        *,
        size: int = 20,
        anchor: str = "lm",
        ink: int = INK,
        bold: bool = False,
    ) -> None:
        """Text at ``at``; ``anchor`` is Pillow's, such as ``mm`` for the middle."""
        stamp, left, top = _stamp(drawable(text), size, anchor, bold)
        if stamp is not None:
            self._image.paste(ink, (round(at[0]) + left, round(at[1]) + top), stamp)

    def plate(self, at: Point, text: str, *, size: int = 20, bold: bool = False) -> None:
        """Text in the middle of ``at`` on a white plate, readable over lines."""
        half, high = text_width(text, size) / 2 + 5, size * 0.72
        x, y = at
        self._draw.rectangle([x - half, y - high, x + half, y + high], fill=PAPER)
        self.text(at, text, size=size, anchor="mm", bold=bold)

    def png(self) -> bytes:
        """The page as a small PNG with its resolution."""
        levels = [round(level / 255 * (_LEVELS - 1)) for level in range(256)]
        image = self._image.point(levels)
        image.putpalette(_palette())
        out = io.BytesIO()
        image.save(out, "PNG", bits=4, dpi=(DPI, DPI), compress_level=4)
        return out.getvalue()


def text_width(text: str, size: int) -> float:
    """Width of ``text`` in dots."""
    return _measured(drawable(text), size)


def fitted(text: str, size: int, width: float) -> str:
    """``text``, shortened with two dots at the end where it is wider than ``width`` dots."""
    if text_width(text, size) <= width:
        return text
    while text and text_width(text + "..", size) > width:
        text = text[:-1]
    return f"{text}.." if text else ""


@lru_cache(maxsize=4096)
def drawable(text: str) -> str:
    """``text`` in the characters the font has: accents are dropped, other scripts become ``?``."""
    plain = unicodedata.normalize("NFKD", text.replace("×", "x"))
    kept = (char for char in plain if not unicodedata.combining(char))
    return "".join(char if " " <= char <= "~" else "?" for char in kept)


@lru_cache(maxsize=4096)
def _measured(text: str, size: int) -> float:
    return float(_font(size).getlength(text))


@lru_cache(maxsize=2048)
def _stamp(text: str, size: int, anchor: str, bold: bool) -> tuple[Image.Image | None, int, int]:
    """``text`` as a mask, and where its corner is from the anchor; the same words come often."""
    font = _font(size)
    left, top, right, bottom = (round(edge) for edge in font.getbbox(text, anchor=anchor))
    if right <= left or bottom <= top:
        return None, 0, 0
    image = Image.new("L", (right - left + 2, bottom - top + 1), 0)
    draw = ImageDraw.Draw(image)
    for aside in (0, 1) if bold else (0,):
        draw.text((aside - left, -top), text, fill=255, font=font, anchor=anchor)
    return image, left, top


@cache
def _font(size: int) -> ImageFont.FreeTypeFont:
    font = ImageFont.load_default(size)
    assert isinstance(font, ImageFont.FreeTypeFont)
    return font


def _palette() -> list[int]:
    shades = [level / (_LEVELS - 1) for level in range(_LEVELS)]
    return [round(dark + (255 - dark) * shade) for shade in shades for dark in _DARK]
