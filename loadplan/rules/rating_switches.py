"""Disputed points of ratings: unmarked and unrated gear, and prints that differ."""

from __future__ import annotations

from loadplan.day.house import TableFigures, UnmarkedHardware, UnratedPoints, WireRopeFigure
from loadplan.rules.switch import Reading, Switch

RATING_SWITCHES = (
    Switch(
        name="Unrated points",
        field="unrated_points",
        asks="What does an anchor or tie point without a rating mean?",
        readings=(
            Reading(
                word="warn",
                value=UnratedPoints.WARN,
                rests_on="no marking is required in either country; it does not cap, and sheets "
                "say so",
            ),
            Reading(
                word="hold",
                value=UnratedPoints.HOLD,
                rests_on="393.108(a) caps a tie-down at its anchor point, so it must be known",
            ),
        ),
        us="warn",
    ),
    Switch(
        name="Unmarked hardware",
        field="unmarked_hardware",
        asks="What does a binder or shackle without a WLL bear?",
        readings=(
            Reading(
                word="unknown",
                value=UnmarkedHardware.UNKNOWN,
                rests_on="393.108(a) takes the lowest part and no table covers hardware",
            ),
            Reading(
                word="lowest grade",
                value=UnmarkedHardware.LOWEST_GRADE,
                rests_on="the British Columbia manual takes the lowest grade of its size",
            ),
        ),
        us="unknown",
    ),
    Switch(
        name="Table figures",
        field="table_figures",
        asks="Whose figures for unmarked 2 in webbing and 3/8 in grade 100 chain?",
        readings=(
            Reading(
                word="federal",
                value=TableFigures.FEDERAL,
                rests_on="the mirror of the federal table: 2,000 lb and 8,800 lb",
            ),
            Reading(
                word="state manual",
                value=TableFigures.STATE_MANUAL,
                rests_on="a state manual prints 2,100 lb (950 kg) and 8,600 lb",
            ),
        ),
        us="federal",
    ),
    Switch(
        name="Wire rope of 3/4 in",
        field="wire_rope_figure",
        asks="What does an unmarked 3/4 in wire rope bear?",
        readings=(
            Reading(word="table", value=WireRopeFigure.TABLE, rests_on="the table: 10,900 lb"),
            Reading(
                word="quarter of strength",
                value=WireRopeFigure.QUARTER,
                rests_on="one quarter of the published strength (393.108(e)(1)): 11,900 lb",
            ),
        ),
        us="table",
    ),
)
