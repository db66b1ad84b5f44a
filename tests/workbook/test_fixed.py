"""Fixed: pieces already on that may not be there."""

import pytest

from tests.workbook.build import read, rejected

HEADINGS = ("Load", "Article", "Position", "No", "Gear")
REMOVE = "Take the piece off, or correct the row."
CARGO = [
    (
        *("Article", "Load", "Class", "Weight [lb]", "Length [ft]", "Routing", "Accessories"),
        *("Reach [ft]", "Shackles", "Chain only"),
    ),
    ("EX", "L-1", "tracked machine", 36000, 24, None, "boom; blade (pinned)", 12, 1, None),
    ("CO", "L-1", "tracked machine", 20000, 14, "same side", None, None, None, "yes"),
    ("PAL", "L-1", "general", 2000, 4, None, None, None, None, None),
    ("LIFT", "L-2", "wheeled machine", 4000, 8, None, None, None, None, None),
]
GEAR = [
    ("Gear", "Kind", "Size", "Length [ft]", "WLL [lb]", "Fits", "Quantity", "Condition", "Kept on"),
    ("C38", "chain", "3/8", 20, 6600, None, 9, None, None),
    ("C12", "chain", "1/2", 20, 11300, None, 9, None, None),
    ("SHORT", "chain", "3/8", 10, 6600, None, 9, None, None),
    ("NOLEN", "chain", "3/8", None, 6600, None, 9, None, None),
    ("NOSIZE", "chain", None, 20, 6600, None, 9, None, None),
    ("B38", "lever binder", None, None, 5400, "5/16-3/8", 9, None, None),
    ("NOFITS", "lever binder", None, None, 5400, None, 9, None, None),
    ("UNKNOWN", "shackle", None, None, None, None, 9, None, None),
    ("S1", "shackle", None, None, 9500, None, 9, None, None),
    ("S2", "shackle", None, None, 9500, None, 9, None, None),
    ("RS", "ratchet strap", "2", 27, 3333, None, 9, None, None),
    ("WS", "winch strap", "4", 27, 5400, None, 9, None, None),
    ("TB", "turnbuckle", None, None, 5000, None, 9, None, None),
    ("OLD", "chain", "3/8", 20, 6600, None, 9, "hold", None),
    ("KIT", "chain", "3/8", 20, 6600, None, 9, None, "T-2"),
    ("ONE", "chain", "3/8", 20, 6600, None, 1, None, None),
    ("EP", "edge protector", None, None, None, None, 9, None, None),
]
LOADS = [
    ("Load", "Trailer", "Out", "Back"),
    ("L-1", "T-1", "06:00", "10:00"),
    ("L-2", "T-2", "10:10", "12:00"),
]
TRAILERS = [("Trailer", "Winches"), ("T-1", 1), ("T-2", 0)]


def fixed(*rows, **changes):
    return {
        "Loads": LOADS,
        "Cargo": CARGO,
        "Trailers": TRAILERS,
        "Gear": GEAR,
        "Fixed": [HEADINGS, *rows],
        **changes,
    }


def test_pieces_that_may_stay(tmp_path):
    rows = [
        ("L-1", "EX", "front left", 1, "C38"),
        ("L-1", "EX", "front left", 1, "B38"),
        ("L-1", "EX", "front left", 1, "S1"),
        ("L-1", "EX", "front left", 2, "S2"),
        ("L-1", "EX", "boom", 1, "SHORT"),
        ("L-1", "PAL", "over 1", 1, "WS"),
        ("L-1", "PAL", "over 2", 1, "EP"),
        ("L-1", "PAL", "over 2", 1, "EP"),
        ("L-2", "LIFT", "mid right", 1, "KIT"),
    ]
    assert len(read(tmp_path, fixed(*rows)).fixed) == 9


@pytest.mark.parametrize(
    ("row", "line"),
    [
        (
            ("L-2", "EX", "front left", 1, "C38"),
            "'Fixed'!A2  F01  EX is on load L-1, not on L-2. Write L-1, or correct the article.",
        ),
        (
            ("L-1", "EX", "over 1", 1, "C38"),
            "'Fixed'!C2  F01  Position is \"over 1\", and EX is tied down direct. It must be one "
            "of: front left, front right, rear left, rear right, mid left, mid right, boom.",
        ),
        (
            ("L-1", "PAL", "front left", 1, "RS"),
            "'Fixed'!C2  F01  Position is \"front left\", and PAL is tied down over. It must be "
            "one of: over 1 to over 20.",
        ),
        (
            ("L-1", "PAL", "over 21", 1, "RS"),
            "'Fixed'!C2  F01  Position is \"over 21\", and PAL is tied down over. It must be "
            "one of: over 1 to over 20.",
        ),
        (
            ("L-1", "EX", "blade", 1, "C38"),
            "'Fixed'!C2  F01  blade of EX is pinned and takes no tie-down. "
            "Take (pinned) off in Cargo, or take the row out.",
        ),
        (
            ("L-1", "EX", "rear left", 3, "C38"),
            "'Fixed'!D2  F01  No is 3, and rear left takes 2. It must be 2 or less.",
        ),
        (
            ("L-1", "EX", "boom", 2, "C38"),
            "'Fixed'!D2  F01  No is 2, and boom takes 1. It must be 1.",
        ),
        (
            ("L-1", "PAL", "over 1", 2, "RS"),
            "'Fixed'!D2  F01  No is 2, and over 1 takes 1. It must be 1.",
        ),
        (
            ("L-1", "EX", "front left", 1, "OLD"),
            f"'Fixed'!E2  F02  OLD is marked hold, not good. {REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "UNKNOWN"),
            "'Fixed'!E2  F02  The WLL of UNKNOWN is unknown: no table covers a shackle, and no "
            f"WLL or breaking strength is given. {REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "NOSIZE"),
            f"'Fixed'!E2  F02  NOSIZE has no Size, so no binder is known to fit it. {REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "NOFITS"),
            f"'Fixed'!E2  F02  NOFITS has no Fits, so no chain is known to fit it. {REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "KIT"),
            "'Fixed'!E2  F02  KIT is kept on trailer T-2, and load L-1 is on trailer T-1. "
            f"{REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "WS"),
            "'Fixed'!E2  F02  WS is a winch strap, which goes over the cargo and not on direct "
            f"tie-downs. {REMOVE}",
        ),
        (
            ("L-1", "EX", "boom", 1, "WS"),
            "'Fixed'!E2  F02  WS is a winch strap, which goes over the cargo and not on an "
            f"accessory. {REMOVE}",
        ),
        (
            ("L-1", "EX", "front left", 1, "SHORT"),
            "'Fixed'!E2  F02  EX has a Reach of 12 ft, and SHORT is 10 ft long. " + REMOVE,
        ),
        (
            ("L-1", "EX", "front left", 1, "NOLEN"),
            "'Fixed'!E2  F02  EX has a Reach, and NOLEN has no Length. " + REMOVE,
        ),
        (
            ("L-1", "CO", "front left", 1, "RS"),
            "'Fixed'!E2  F02  CO is chain only, and RS is a ratchet strap. " + REMOVE,
        ),
        (
            ("L-1", "CO", "front left", 1, "TB"),
            "'Fixed'!E2  F02  CO is chain only, and TB is a turnbuckle. " + REMOVE,
        ),
        (
            ("L-1", "CO", "front left", 1, "S1"),
            "'Fixed'!E2  F03  S1: A tie-down there has 0 shackles, and this is one more. " + REMOVE,
        ),
        (
            ("L-1", "EX", "boom", 1, "S1"),
            "'Fixed'!E2  F03  S1: A tie-down there has 0 shackles, and this is one more. " + REMOVE,
        ),
    ],
)
def test_a_piece_that_may_not_be_there(tmp_path, row, line):
    assert rejected(tmp_path, fixed(row)) == [line]


@pytest.mark.parametrize(
    ("pieces", "line"),
    [
        (("C38", "C38"), "C38: C38 is its tension member already."),
        (("C38", "RS"), "RS: C38 is its tension member already."),
        (("B38", "TB"), "TB: B38 is its tensioner already."),
        (("S1", "S1"), "S1: A tie-down there has 1 shackle, and this is one more."),
        (("C12", "B38"), "B38: C12 is on it, which is not one it fits."),
        (("C38", "TB"), "TB: C38 is on it, which is not one it fits."),
        (("RS", "B38"), "B38: RS is on it, which takes no tensioner."),
    ],
)
def test_pieces_that_do_not_make_one_tie_down(tmp_path, pieces, line):
    rows = [("L-1", "EX", "front left", 1, piece) for piece in pieces]
    assert rejected(tmp_path, fixed(*rows)) == [f"'Fixed'!E3  F03  {line} {REMOVE}"]


def test_two_kinds_of_shackle_on_one_tie_down(tmp_path):
    cargo = [CARGO[0], (*CARGO[1][:8], 2, None), *CARGO[2:]]
    rows = [("L-1", "EX", "front left", 1, piece) for piece in ("S1", "S2")]
    assert rejected(tmp_path, fixed(*rows, Cargo=cargo)) == [
        f"'Fixed'!E3  F03  S2: S1 is on it, and all its shackles are of one kind. {REMOVE}"
    ]


def test_more_at_once_than_owned_with_the_turnaround(tmp_path):
    rows = [("L-1", "EX", "front left", 1, "ONE"), ("L-2", "LIFT", "front left", 1, "ONE")]
    assert len(read(tmp_path, fixed(*rows)).fixed) == 2
    # Back at 10:00 and free at 10:10 is in time for 10:10; free at 10:11 is not.
    ten = {"Day": [("Setting", "Value"), ("Turnaround [min]", 10)]}
    assert len(read(tmp_path, fixed(*rows, **ten)).fixed) == 2
    eleven = {"Day": [("Setting", "Value"), ("Turnaround [min]", 11)]}
    assert rejected(tmp_path, fixed(*rows, **eleven)) == [
        "'Fixed'!E3  F04  2 pieces of ONE would be out at 10:10, and there is 1. "
        "Correct the row, Quantity on Gear, or the times on Loads."
    ]


def test_more_winch_straps_than_winches(tmp_path):
    rows = [("L-1", "PAL", f"over {number}", 1, "WS") for number in (1, 2)]
    assert rejected(tmp_path, fixed(*rows)) == [
        "'Fixed'!E3  F04  2 winch straps on load L-1 and 1 winch on its trailer. "
        "Correct the row, or Winches on Trailers."
    ]


def test_only_the_house_rules_may_be_broken_by_what_is_on(tmp_path):
    house = [("Rule", "Value"), ("Straps on machines", "no"), ("Least WLL each [lb]", 5000)]
    row = ("L-2", "LIFT", "front left", 1, "RS")
    day = read(tmp_path, fixed(row, **{"House rules": house}))
    assert [piece.gear for piece in day.fixed] == ["RS"]


PIPES = [
    (*CARGO[0], "Details", "Group", "Group stands"),
    ("A", "L-1", "general", 900, 4, None, None, None, None, None, None, "Pair", "side by side"),
    ("B", "L-1", "general", 900, 4, None, None, None, None, None, None, "pair", None),
]


def test_pieces_on_a_group_stand_under_its_name(tmp_path):
    day = read(tmp_path, fixed(("L-1", "PAIR", "Over 1", 1, "RS"), Cargo=PIPES))
    assert [(piece.article, piece.position) for piece in day.fixed] == [("Pair", "over 1")]
    assert [article.group for article in day.articles] == ["Pair", "Pair"]


def test_pieces_on_a_member_of_a_group(tmp_path):
    assert rejected(tmp_path, fixed(("L-1", "A", "over 1", 1, "RS"), Cargo=PIPES)) == [
        "'Fixed'!B2  F01  A is secured in the group Pair. Write Pair."
    ]


def test_nothing_is_said_of_pieces_on_a_group_with_a_member_in_error(tmp_path):
    broken = [*PIPES[:2], ("B", "L-1", "general", -900, *PIPES[2][4:])]
    assert rejected(tmp_path, fixed(("L-1", "PAIR", "nowhere", 9, "RS"), Cargo=broken)) == [
        "'Cargo'!D3  V01  Weight is -900. It must be more than 0."
    ]
