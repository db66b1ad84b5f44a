"""The named styles of the results workbook: every look a cell can have, by one name each.

Contrast of text on its fill is 4.5:1 or more everywhere, and no meaning rests on colour alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

FONT = "Arial"
INK = "#132238"
MUTED = "#4A5568"
WHITE = "#FFFFFF"
LINE = "#8896A8"
HEAD = "#DCE4EE"
BAND = "#EEF2F7"
INPUT = "#FFF8E1"
GO, GO_INK = "#D9F0DF", "#0F4A22"
STOP = "#8E1B1B"
CARE, CARE_INK = "#FFE9B8", "#5A3A00"
HALVES, SIXTHS = '[=0.5]"1/2";General', '[=0.5]"1/2";0.0000'
WHOLE = "#,##0"
# Beyond ten times what is needed the figure says no more.
PERCENT = '[>=10]">1,000%";[>=1]0%;0.0%'
COUNT = "0;-0;;@"
_DECIMALS = ("#,##0", "#,##0.0", "#,##0.00", "#,##0.000")

Properties = Mapping[str, object]

_CELL: Properties = {"border": 1, "border_color": LINE, "valign": "vcenter"}
_LEFT: Properties = {"align": "left", "indent": 1}
_RIGHT: Properties = {"align": "right", "indent": 1}
_WRAP: Properties = {"text_wrap": True, "valign": "top"}
# In the second of two columns of texts, with a gutter before it.
_ASIDE: Properties = {"align": "left", "indent": 1}
_ADVICE: Properties = {"bold": True, "font_size": 8, "font_color": CARE_INK, **_WRAP}
_NOT_MET: Properties = {"bold": True, "font_size": 8, "font_color": STOP, **_WRAP}
_LOOKS: dict[str, Properties] = {
    "text": {},
    "small": {"font_size": 8},
    "small wrap": {"font_size": 8, **_WRAP},
    "wrap": _WRAP,
    "muted": {"font_color": MUTED},
    "muted low": {"font_color": MUTED, "valign": "bottom"},
    "muted small": {"font_color": MUTED, "font_size": 7.5, **_WRAP},
    "small wrap aside": {"font_size": 8, **_WRAP, **_ASIDE},
    "bold": {"bold": True},
    "bold wrap": {"bold": True, **_WRAP},
    "bold low": {"bold": True, "valign": "bottom"},
    "wrap mid": {"text_wrap": True, "valign": "vcenter"},
    "field name": {"font_size": 7.5, "font_color": MUTED, "top": 1, "top_color": LINE},
    "field": {"font_size": 11, "bold": True, "text_wrap": True, "valign": "top"},
    "title": {"font_size": 18, "bold": True, "valign": "vcenter"},
    "heading": {
        "font_size": 11,
        "bold": True,
        "valign": "vcenter",
        "bottom": 2,
        "bottom_color": INK,
    },
    "band": {"bold": True, "bg_color": BAND, "valign": "vcenter", "top": 2, "top_color": INK},
    "link": {"font_color": "#0B4F8A", "underline": 1},
    "head": {"bold": True, "bg_color": HEAD, "text_wrap": True, **_CELL},
    "head open": {"bg_color": HEAD, "top": 1, "bottom": 1, "bottom_color": LINE, "top_color": LINE},
    "head small": {"bold": True, "font_size": 8, "bg_color": HEAD, "text_wrap": True, **_CELL},
    "cell": {**_CELL, **_LEFT},
    "cell wrap": {**_CELL, "text_wrap": True, **_LEFT},
    "cell bold": {**_CELL, "bold": True, **_LEFT},
    "cell bold wrap": {**_CELL, "bold": True, "text_wrap": True, **_LEFT},
    "cell mid bold": {**_CELL, "bold": True, "align": "center"},
    "label": _LEFT,
    "label mid": {**_LEFT, "valign": "vcenter"},
    "label small": {**_LEFT, "font_size": 7.5, "valign": "vcenter"},
    "cite": {**_LEFT, "font_size": 7.5, "font_color": MUTED, "valign": "vcenter"},
    "cell mid": {**_CELL, "align": "center"},
    "cell number": {**_CELL, "num_format": WHOLE, "align": "right"},
    "cell number bold": {**_CELL, "num_format": WHOLE, "bold": True, "align": "right"},
    "cell percent": {**_CELL, "num_format": PERCENT},
    "cell decimal": {**_CELL, "num_format": "0.00"},
    "cell link": {**_CELL, "font_color": "#0B4F8A", "underline": 1},
    "cell half": {**_CELL, "num_format": HALVES, "align": "center"},
    "input number": {**_CELL, "num_format": WHOLE, "bg_color": INPUT, "align": "right"},
    "input half": {**_CELL, "num_format": HALVES, "bg_color": INPUT, "align": "center"},
    "number": {"num_format": WHOLE, **_RIGHT},
    "percent": {"num_format": PERCENT, **_RIGHT},
    "half": {"num_format": HALVES, **_RIGHT},
    "state ready": {"bold": True, "bg_color": GO, "font_color": GO_INK},
    "state held": {"bold": True, "bg_color": STOP, "font_color": WHITE},
    "state met": {},
    "state advice": {"bold": True, "bg_color": CARE, "font_color": CARE_INK},
    "ready banner": {"font_size": 16, "bold": True, "bg_color": GO, "font_color": GO_INK},
    "held banner": {"font_size": 16, "bold": True, "bg_color": STOP, "font_color": WHITE},
    "held banner long": {"font_size": 12, "bold": True, "bg_color": STOP, "font_color": WHITE},
    "care banner": {"font_size": 12, "bold": True, "bg_color": CARE, "font_color": CARE_INK},
    "cell ready": {**_CELL, "bold": True, "bg_color": GO, "font_color": GO_INK},
    "cell held": {**_CELL, "bold": True, "bg_color": STOP, "font_color": WHITE},
    "cell met": {**_CELL, "bold": True, "align": "center"},
    "cell advice": {**_CELL, "bold": True, "bg_color": CARE, "font_color": CARE_INK},
    "advice wrap": _ADVICE,
    "not met wrap": _NOT_MET,
    "advice wrap aside": {**_ADVICE, **_ASIDE},
    "not met wrap aside": {**_NOT_MET, **_ASIDE},
    "rule": {"bottom": 1, "bottom_color": INK},
    "not met line": {"bold": True, "font_color": STOP, **_WRAP},
    "band number": {
        "bold": True,
        "bg_color": BAND,
        "num_format": WHOLE,
        **_RIGHT,
        "top": 2,
        "top_color": INK,
        "valign": "vcenter",
    },
    "slot start": {
        "bg_color": "#2F5D8C",
        "font_color": WHITE,
        "font_size": 8,
        "bold": True,
        "left": 2,
        "left_color": WHITE,
    },
    "slot out": {"bg_color": "#2F5D8C", "font_color": WHITE, "font_size": 8, "bold": True},
    "slot free": {"bg_color": "#F4F6F9", "border": 1, "border_color": "#D5DCE5", "font_size": 8},
    "slot head": {"font_size": 8, "bold": True, "left": 1, "left_color": LINE},
    "slot count": {
        "font_size": 8,
        "align": "center",
        "shrink": True,
        "border": 1,
        "border_color": "#D5DCE5",
        "num_format": COUNT,
    },
    "slot all out": {
        "font_size": 8,
        "align": "center",
        "shrink": True,
        "bold": True,
        "bg_color": STOP,
        "font_color": WHITE,
        "border": 1,
        "border_color": "#D5DCE5",
    },
}
_BANNERS: Properties = {"valign": "vcenter", "text_wrap": True, "border": 2, "border_color": INK}
_GROUP = " group"
_BASE: Properties = {"font_name": FONT, "font_size": 9, "font_color": INK, "valign": "top"}


def look(name: str) -> dict[str, object]:
    """The properties of the style ``name``; `` group`` behind it draws a line above."""
    plain = name.removesuffix(_GROUP)
    banner = _BANNERS if "banner" in name else {}
    group = {"top": 2, "top_color": INK} if name.endswith(_GROUP) else {}
    return {**_BASE, **banner, **_LOOKS[plain], **group}


def names() -> tuple[str, ...]:
    """Every style name."""
    return tuple(_LOOKS)


@dataclass(frozen=True)
class Styles:
    """The styles of one workbook, each made once, when first asked for."""

    book: Any
    _made: dict[tuple[str, str], Any] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Any:
        """The format of style ``name``."""
        return self.get(name)

    def get(self, name: str, num_format: str = "") -> Any:
        """The format of style ``name``, with another number format if one is given."""
        key = (name, num_format)
        if key not in self._made:
            properties = look(name)
            if num_format:
                properties["num_format"] = num_format
            self._made[key] = self.book.add_format(properties)
        return self._made[key]


def decimals(value: float) -> str:
    """A number format that shows ``value`` whole where it is whole, else up to three decimals."""
    for places, form in enumerate(_DECIMALS):
        if round(value, places) == value:
            return form
    return _DECIMALS[-1]
