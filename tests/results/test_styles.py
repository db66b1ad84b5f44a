"""Every style can be read: contrast by the relative luminance of WCAG 2."""

from __future__ import annotations

import pytest

from loadplan.results.styles import decimals, look, names


def _luminance(colour):
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio of two colours."""
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_black_on_white_is_21():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


@pytest.mark.parametrize("name", names())
def test_text_stands_out_from_its_fill(name):
    asked = look(name)
    assert contrast(asked["font_color"], asked.get("bg_color", "#FFFFFF")) >= 4.5


@pytest.mark.parametrize("name", names())
def test_no_type_is_smaller_than_7_points(name):
    assert look(name)["font_size"] >= 7


def test_states_differ_in_black_and_white():
    # Printed grey, held is far darker than ready and advice.
    fills = {name: look(f"cell {name}")["bg_color"] for name in ("ready", "held", "advice")}
    assert contrast(fills["ready"], fills["held"]) > 4.5
    assert contrast(fills["advice"], fills["held"]) > 4.5


@pytest.mark.parametrize(
    ("value", "form"),
    [
        (5, "#,##0"),
        (5.5, "#,##0.0"),
        (0.25, "#,##0.00"),
        (0.125, "#,##0.000"),
        (1 / 3, "#,##0.000"),
    ],
)
def test_decimals(value, form):
    assert decimals(value) == form
