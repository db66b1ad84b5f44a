"""How the empty day workbook looks and prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from loadplan.day.units import Units

if TYPE_CHECKING:
    from openpyxl.comments import Comment
    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

_INK = "FF1B2A34"
_PAPER = "FFFFFFFF"
_NEEDED = "FF1F4E5F"
_OPTIONAL = "FFDCE6EA"
_FIELD = "FFFFFBEB"
_LINE = "FFB8C4CA"
_LETTER, _A4 = 1, 9
# In characters of column width, at full size.
_LANDSCAPE_WIDTH, _PORTRAIT_WIDTH = 95, 65


def add_styles(book: Workbook) -> None:
    """The named styles: headings, names, fields to fill in, and the words of Read me."""
    from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Side

    def fill(colour: str) -> PatternFill:
        return PatternFill(fill_type="solid", start_color=colour, end_color=colour)

    thin = Side(style="thin", color=_LINE)
    box = Border(left=thin, right=thin, top=thin, bottom=thin)
    middle = Alignment(vertical="center", wrap_text=True)
    top = Alignment(horizontal="left", vertical="top", wrap_text=True)
    plain = Font(name="Calibri", size=11, color=_INK)
    bold = Font(name="Calibri", size=11, bold=True, color=_INK)
    for style in (
        NamedStyle(
            name="Needed heading",
            font=Font(name="Calibri", size=11, bold=True, color=_PAPER),
            fill=fill(_NEEDED),
            border=box,
            alignment=middle,
        ),
        NamedStyle(name="Heading", font=bold, fill=fill(_OPTIONAL), border=box, alignment=middle),
        NamedStyle(name="Name", font=bold, border=box, alignment=middle),
        NamedStyle(name="Field", font=plain, fill=fill(_FIELD), border=box),
        NamedStyle(name="Text field", font=plain, fill=fill(_FIELD), border=box, number_format="@"),
        NamedStyle(name="Words", font=plain, border=box, alignment=top),
        NamedStyle(name="Line", font=plain, alignment=Alignment(vertical="top")),
        NamedStyle(name="Page title", font=Font(name="Calibri", size=16, bold=True, color=_INK)),
        NamedStyle(
            name="Section title", font=Font(name="Calibri", size=13, bold=True, color=_NEEDED)
        ),
    ):
        book.add_named_style(style)


def note(text: str) -> Comment:
    """A note on a heading, large enough for its text."""
    from openpyxl.comments import Comment

    lines = sum(1 + len(line) // 40 for line in text.splitlines())
    return Comment(text, "loadplan", width=300, height=30 + 18 * lines)


def page(sheet: Worksheet, units: Units, *, landscape: bool) -> None:
    """Frozen headings, and a print set-up: one page wide, the heading row on every page."""
    sheet.freeze_panes = "A2"
    sheet.print_title_rows = "1:1"
    print_page(sheet, units, landscape=landscape)


def print_page(sheet: Worksheet, units: Units, *, landscape: bool) -> None:
    """At most one page wide, on Letter paper in US days and A4 in metric ones, pages numbered."""
    from openpyxl.worksheet.properties import PageSetupProperties

    sheet.page_setup.orientation = "landscape" if landscape else "portrait"
    sheet.page_setup.paperSize = _LETTER if units is Units.US else _A4
    width = sum(column.width for column in sheet.column_dimensions.values())
    if width > (_LANDSCAPE_WIDTH if landscape else _PORTRAIT_WIDTH):
        # Only then: some programs would blow a narrow sheet up to the width of the page.
        sheet.page_setup.fitToWidth = 1
        sheet.page_setup.fitToHeight = 0
        sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    footer: Any = sheet.oddFooter
    footer.left.text = "&A"
    footer.right.text = "Page &P of &N"
