"""The one table of sheets and columns of the day workbook.

The reader, the blank workbook, the column reference and the messages all follow it. To add a
column, add one line here and the field it fills to the noun.
"""

from __future__ import annotations

from loadplan.day.article import CargoClass, Routing, SecuredUnder, Stands, WeightFrom
from loadplan.day.gear import Condition, Kind
from loadplan.rules.classes import class_named
from loadplan.workbook.column import Sheet, Value
from loadplan.workbook.lines import DAY_LINES, HOUSE_LINES
from loadplan.workbook.make import (
    MOST_WEIGHT,
    above_zero,
    column,
    ident,
    length,
    mass,
    or_zero,
    reference,
    text,
    whole,
    word,
    yes_no,
)

LOADS = Sheet(
    name="Loads",
    help="One row per trip of one trailer. Without this sheet each load in Cargo is out all day.",
    columns=(
        ident("Load", "id", "Name of the load."),
        reference("Trailer", "trailer", "The trailer it goes on.", "none"),
        column(
            "Out",
            "out",
            Value.MOMENT,
            "When it leaves. Gear is out from then on.",
            "start of the day",
        ),
        column(
            "Back",
            "back",
            Value.MOMENT,
            "When it is back; a date and time if after midnight.",
            "end of the day",
        ),
        whole("Priority", "priority", "1 goes first.", least=1, default="1"),
        text("Driver", "driver", "Printed on the load sheet."),
        text("Destination", "destination", "Printed on the load sheet."),
        text("Notes", "notes", "Printed on the load sheet."),
    ),
)

CARGO = Sheet(
    name="Cargo",
    help="One row per article: a machine or a piece of cargo.",
    required=True,
    columns=(
        ident("Article", "id", "Name of the article; each name once in the day."),
        ident("Load", "load", "The load it is on."),
        word(
            "Class",
            "cargo_class",
            CargoClass,
            "What it is; decides which section may govern it.",
            required=True,
            named=class_named,
        ),
        text("Description", "description", "Make and model in words, as the driver knows it."),
        mass("Weight", "weight", "Weight without what Added weight lists.", required=True),
        word(
            "Weight from",
            "weight_from",
            WeightFrom,
            "Where the weight comes from.",
            default="estimate",
        ),
        length("Length", "length", "Needed where a rule counts tie-downs by length."),
        length("Width", "width", "For the picture and the width advice."),
        length("Height", "height", "For the picture and the height advice."),
        word(
            "Secured under",
            "secured_under",
            SecuredUnder,
            "The section it is secured under.",
            default="by class and weight",
        ),
        yes_no(
            "Blocked forward",
            "blocked_forward",
            "Whether something other than its tie-downs keeps it from moving forward.",
        ),
        word(
            "Routing",
            "routing",
            (Routing.DIRECT, Routing.SAME_SIDE, Routing.OVER),
            "How its tie-downs run.",
            default="over for general, else direct",
        ),
        mass("Tie point WLL", "tie_point_wll", "Rating of its own tie points.", default="unrated"),
        column(
            "Accessories",
            "accessories",
            Value.ACCESSORIES,
            "Parts that need a tie-down of their own: boom; bucket (900 lb); blade (pinned).",
            "none",
        ),
        length("Reach", "reach", "Least length of each tension member.", default="any length"),
        whole("Shackles", "shackles", "Shackles in each tie-down.", most=2, default="0"),
        yes_no("Sharp edges", "sharp_edges", "Whether webbing needs edge protectors."),
        yes_no("Chain only", "chain_only", "Whether only chain may be used."),
        text("Details", "details", "What its class asks for, in words."),
        reference("Group", "group", "Articles of one group are secured together.", "alone"),
        word(
            "Group stands",
            "stands",
            Stands,
            "How the articles of its group stand to each other; on one row of the group. In line "
            "each has its own tie-downs, for half its own weight.",
            default="as another row says",
        ),
    ),
)

ADDED_WEIGHT = Sheet(
    name="Added weight",
    help="What rides on an article: buckets, ballast, fuel, tools. Added to its weight.",
    columns=(
        ident("Article", "article", "The article it rides on."),
        text("What", "what", "What it is."),
        or_zero(mass("Weight", "weight", "Its weight.", required=True)),
    ),
)

TRAILERS = Sheet(
    name="Trailers",
    help="What each trailer offers to tie down to. With this sheet every trailer must be on it.",
    columns=(
        ident("Trailer", "id", "Name of the trailer."),
        length("Deck length", "deck_length", "For the picture and the length advice."),
        length("Deck width", "deck_width", "For the picture and the width advice."),
        length("Deck height", "deck_height", "For the height advice."),
        mass("Payload", "payload", "For the payload advice."),
        whole("Anchors", "anchors", "How many anchor points it has.", default="not counted"),
        mass("Anchor WLL", "anchor_wll", "Rating of each anchor point.", default="unrated"),
        whole("Winches", "winches", "How many winches it has.", default="0"),
        yes_no("Front structure", "front_structure", "Whether it has a front end structure."),
    ),
)

_SPECIFICATION = (
    column(
        "Size", "size", Value.SIZE, "Chain size, webbing width or rope diameter: 3/8, 10 mm, 4 in."
    ),
    column(
        "Grade", "grade", Value.GRADE, "Grade mark of a chain (70); material of a rope.", "unmarked"
    ),
    length("Length", "length", "Length of a tension member."),
    mass("WLL", "wll", "Working load limit as marked by the maker.", default="unmarked"),
    mass("Breaking strength", "breaking_strength", "As stated by the maker."),
    column(
        "Fits",
        "fits",
        Value.FITS,
        "Chain sizes a tensioner takes: 5/16-3/8 (those two sizes), or a list 3/8, 1/2.",
    ),
)
_KIND = word("Kind", "kind", Kind, "What the piece is.", required=True)

GEAR = Sheet(
    name="Gear",
    help="One row per kind of piece, in the cage or kept on a trailer.",
    required=True,
    columns=(
        ident("Gear", "id", "Name of this kind of piece."),
        _KIND,
        *_SPECIFICATION,
        whole("Quantity", "quantity", "How many there are.", default="1"),
        word("Condition", "condition", Condition, "Only good gear is planned.", default="good"),
        reference("Kept on", "kept_on", "The trailer whose kit it is.", "cage"),
        or_zero(mass("Mass", "mass", "Weight of one piece.")),
    ),
)

PRICES = Sheet(
    name="Prices",
    help="Pieces that can be had: more of what there is, or something new.",
    columns=(
        reference(
            "Gear",
            "id",
            "A kind of piece on Gear, to price more of it; or an id for something new.",
            "the one kind the row describes in full, or something new",
        ),
        word(
            "Kind", "kind", Kind, "What the piece is; needed unless Gear names one that there is."
        ),
        *_SPECIFICATION,
        above_zero(
            column(
                "Price",
                "price",
                Value.MONEY,
                "Price of one piece; a currency may stand in the cell.",
            ),
            MOST_WEIGHT,
            required=True,
        ),
        whole("Most", "most", "How many can be had.", default="any number"),
    ),
)

FIXED = Sheet(
    name="Fixed",
    help="Pieces already on. Rows with the same load, article, position and number are one "
    "tie-down.",
    columns=(
        ident("Load", "load", "The load."),
        ident("Article", "article", "The article."),
        text(
            "Position",
            "position",
            "front left, front right, rear left, rear right, mid left, mid right, over 1 and on, "
            "or the accessory's name.",
            required=True,
        ),
        whole("No", "number", "Which tie-down there.", least=1, default="1"),
        ident("Gear", "gear", "The piece."),
    ),
)

_VALUE = text("Value", "value", "Its value; blank: the default.", required=True)
DAY = Sheet(
    name="Day",
    help="Settings of the day.",
    columns=(
        text("Setting", "name", "Its name.", required=True),
        _VALUE,
    ),
    lines=DAY_LINES,
)

HOUSE_RULES = Sheet(
    name="House rules",
    help="Stricter limits and the readings of disputed points the yard has chosen.",
    columns=(text("Rule", "name", "Its name.", required=True), _VALUE),
    lines=HOUSE_LINES,
)

SHEETS = (DAY, LOADS, CARGO, ADDED_WEIGHT, TRAILERS, GEAR, PRICES, HOUSE_RULES, FIXED)
README_SHEET = "Read me"
