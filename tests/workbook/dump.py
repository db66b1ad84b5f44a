"""What is in a workbook, as text: cells with their format, notes, rules, print set-up."""

from __future__ import annotations

from typing import Any


def dump(book: Any) -> list[str]:
    """One line per thing of note, sheet by sheet."""
    lines = [f"title {book.properties.title}"]
    for sheet in book.worksheets:
        setup = sheet.page_setup
        lines.append(
            f"sheet {sheet.title} freeze {sheet.freeze_panes} paper {setup.paperSize} "
            f"{setup.orientation} fit {sheet.sheet_properties.pageSetUpPr.fitToPage} "
            f"titles {sheet.print_title_rows} footer {sheet.oddFooter.right.text} "
            f"breaks {[one.id for one in sheet.row_breaks.brk]}"
        )
        for letter, column in sorted(sheet.column_dimensions.items()):
            lines.append(f"  column {letter} width {column.width} {column.number_format}")
        for rule in sorted(sheet.data_validations.dataValidation, key=lambda one: str(one.sqref)):
            lines.append(
                f"  rule {rule.sqref} {rule.type} {rule.formula1} {rule.formula2} "
                f"blocks {rule.showErrorMessage} {rule.errorStyle} {rule.error}"
            )
        for row in sheet.iter_rows():
            for cell in row:
                if cell.value is not None or cell.has_style:
                    note = cell.comment.text if cell.comment else ""
                    lines.append(
                        f"  {cell.coordinate} {cell.value!r} {cell.style} {cell.number_format} "
                        f"{cell.fill.start_color.rgb} {note}"
                    )
    return lines
