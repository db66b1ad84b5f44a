"""Generated days read the same by the package and by the oracle's reader, which shares no code."""

from __future__ import annotations

from pathlib import Path

import pytest

from loadplan.rules.choice import routing, secured_under
from loadplan.wll.piece import rate
from loadplan.workbook.read import read_day
from tests.bench.generate import generate, write_workbook
from tests.oracle.day import Day as OtherDay
from tests.oracle.day import read_day as read_again

OPTIONS = (
    {},
    {"metric": True},
    {"tight": True, "fixed": 3},
    {"metric": True, "fractional": True, "reach": True, "shackles": True},
)


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize("options", OPTIONS, ids=str)
def test_both_readers_agree(tmp_path: Path, seed: int, options: dict[str, bool]) -> None:
    path = tmp_path / "day.xlsx"
    write_workbook(generate(12, seed, **options), path)
    day, other = read_day(path), read_again(path)
    assert _ours(day) == _theirs(other)


def _ours(day) -> dict[str, object]:  # type: ignore[no-untyped-def]
    loads = {
        load.id.casefold(): (load.out, load.back, load.priority, (load.trailer or "").casefold())
        for load in day.loads
    }
    articles = {
        article.id.casefold(): (
            article.load.casefold(),
            article.carried_weight,
            article.length,
            secured_under(article, day.house, day.units).value,
            routing(article).value,
            article.blocked_forward,
            article.tie_point_wll,
            tuple(one.name for one in article.accessories if not one.pinned),
            article.reach,
            article.shackles,
            article.sharp_edges,
            article.chain_only,
        )
        for article in day.articles
    }
    gear = {
        piece.id.casefold(): (
            piece.kind.value,
            piece.length,
            rate(piece, day.units).wll,
            piece.quantity,
            (piece.kept_on or "").casefold(),
        )
        for piece in day.gear
    }
    fixed = sorted(
        (piece.load.casefold(), piece.article.casefold(), piece.position, piece.number)
        for piece in day.fixed
    )
    return {
        "turnaround": day.turnaround,
        "loads": loads,
        "articles": articles,
        "gear": gear,
        "fixed": sorted(set(fixed)),
    }


def _theirs(day: OtherDay) -> dict[str, object]:
    loads = {
        load.id.casefold(): (load.out, load.back, load.priority, (load.trailer or "").casefold())
        for load in day.loads.values()
    }
    articles = {
        article.id.casefold(): (
            article.load.casefold(),
            article.weight,
            article.length,
            article.section,
            article.routing,
            article.blocked,
            article.tie_point,
            article.accessories,
            article.reach,
            article.shackles,
            article.sharp,
            article.chain_only,
        )
        for load in day.loads.values()
        for article in load.articles
    }
    gear = {
        piece.id.casefold(): (
            piece.kind,
            piece.length,
            piece.wll,
            piece.owned,
            (piece.kept_on or "").casefold(),
        )
        for piece in day.gear.values()
    }
    fixed = sorted(
        (piece.load.casefold(), piece.article.casefold(), piece.position, piece.number)
        for piece in day.fixed
    )
    return {
        "turnaround": day.turnaround,
        "loads": loads,
        "articles": articles,
        "gear": gear,
        "fixed": fixed,
    }
