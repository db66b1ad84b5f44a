"""However a workbook is mangled, the reader answers with a day or with a rejection."""

import io
import re
import zipfile

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loadplan.problems import WorkbookRejected
from loadplan.workbook.read import read_day
from tests.workbook.build import save
from tests.workbook.test_whole_day import SHEETS

PIECE = re.compile(rb'"([^"<]*)"|>([^<]+)<')
SPOILT = (
    b"", b"0", b"-1", b"1e999", b"NaN", b"99999999999999999999", b"A1", b"ZZZ1", b"s", b"d", b"e",
    b"b", b"inlineStr", b"str", b"#REF!", b"&amp;", b"&#x1;", b"=1+1", b"2026-13-45T99:99:99",
    b"0.000000001", b"9" * 5000, b"\xff\xfe", b"t-1", b"rId1", b"sheet1.xml", b"../../x",
)  # fmt: skip


@given(data=st.data())
@settings(
    max_examples=150,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_nothing_but_a_rejection(tmp_path, data):
    path = tmp_path / "day.xlsx"
    if not path.exists():
        save(path, SHEETS)
    spoilt = tmp_path / "spoilt.xlsx"
    spoilt.write_bytes(mangled(path.read_bytes(), data.draw))
    problems = problems_of(spoilt)
    assert problems is None or problems
    assert all(problem.found and problem.remedy for problem in problems or ())


def problems_of(path):
    """What is wrong with the workbook; None where it is a day. Anything else is raised."""
    try:
        read_day(path)
    except WorkbookRejected as rejection:
        return rejection.problems
    return None


def mangled(content, draw):
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    for _ in range(draw(st.integers(1, 4))):
        name = draw(st.sampled_from(sorted(parts)))
        part = parts[name]
        how = draw(st.sampled_from(["value", "value", "value", "byte", "cut", "drop"]))
        pieces = list(PIECE.finditer(part))
        if how == "value" and pieces:
            piece = pieces[draw(st.integers(0, len(pieces) - 1))]
            group = 1 if piece[1] is not None else 2
            put = draw(st.sampled_from(SPOILT) | st.binary(max_size=6))
            parts[name] = part[: piece.start(group)] + put + part[piece.end(group) :]
        elif how == "byte" and part:
            at = draw(st.integers(0, len(part) - 1))
            parts[name] = part[:at] + draw(st.binary(max_size=3)) + part[at + 1 :]
        elif how == "cut":
            parts[name] = part[: draw(st.integers(0, len(part)))]
        elif how == "drop" and len(parts) > 1:
            del parts[name]
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in parts.items():
            archive.writestr(name, part)
    return made.getvalue()


@given(content=st.binary(max_size=300), start=st.sampled_from([b"", b"PK\x03\x04", b"PK\x05\x06"]))
@settings(
    max_examples=60,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_any_bytes(tmp_path, content, start):
    path = tmp_path / "day.xlsx"
    path.write_bytes(start + content)
    problems = problems_of(path)
    assert problems is not None
    assert len(problems) == 1
