"""Advice on payload and size: lines that never hold a load.

``need`` is what the load comes to and ``have`` what the trailer or the road allows. A line is
``met`` only where everything it compares is known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.trailer import Trailer
from loadplan.judge.case import LoadCase
from loadplan.judge.wording import NOTHING, need_and_have, sentences
from loadplan.outcome.check import Check, Verdict
from loadplan.rules.canada import in_rules
from loadplan.rules.limits import LIMITS
from loadplan.rules.sources import HEIGHT, TRAILERS, WIDTH, workbook
from loadplan.source import Source
from loadplan.text import names, plain

_LENGTH_PLACES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class _Figures:
    """Some figures of a load: those that are given, and a sentence for each gap."""

    known: tuple[Fraction, ...]
    gaps: tuple[str, ...] = ()

    def sum(self) -> Fraction:
        """The sum of what is known."""
        return sum(self.known, Fraction(0))

    def most(self) -> tuple[Fraction, ...]:
        """The largest of what is known, nothing without any."""
        return (max(self.known),) if self.known else ()

    def spelled(self) -> str:
        """``12 + 8.5 = 20.5``."""
        terms = " + ".join(plain(part, _LENGTH_PLACES) for part in self.known)
        return terms if len(self.known) < 2 else f"{terms} = {plain(self.sum(), _LENGTH_PLACES)}"


def size_advice(case: LoadCase) -> Iterator[Check]:
    """Payload, deck length, width on the deck, overall width and overall height of one load."""
    limits = LIMITS[case.day.units]
    weights = _of_articles(case, "weight", lambda article: article.carried_weight)
    lengths = _of_articles(case, "length", lambda article: article.length)
    widths = _of_articles(case, "width", lambda article: article.width)
    heights = _of_articles(case, "height", lambda article: article.height)
    payload = _of_trailer(case, "payload", lambda trailer: trailer.payload)
    deck_length = _of_trailer(case, "deck length", lambda trailer: trailer.deck_length)
    deck_width = _of_trailer(case, "deck width", lambda trailer: trailer.deck_width)
    deck_height = _of_trailer(case, "deck height", lambda trailer: trailer.deck_height)
    widest = _Figures(known=widths.most(), gaps=widths.gaps)
    across = _Figures(known=widths.known + deck_width.known, gaps=widths.gaps + deck_width.gaps)
    overall = _Figures(known=across.most(), gaps=across.gaps)
    high = _Figures(known=deck_height.known + heights.most(), gaps=heights.gaps + deck_height.gaps)
    yield _line(case, "payload", "Weights with everything on them", weights, payload)
    yield _line(case, "deck length", "Lengths end to end without a gap", lengths, deck_length)
    yield _line(case, "width on the deck", "Widest article", widest, deck_width)
    words = "Wider of deck and widest article"
    yield _road(case, "overall width", words, overall, (case.day.width_limit, limits.width, WIDTH))
    words = "Deck height and highest article"
    yield _road(case, "overall height", words, high, (case.day.height_limit, limits.height, HEIGHT))


def _road(
    case: LoadCase,
    name: str,
    words: str,
    need: _Figures,
    limit: tuple[Fraction | None, Fraction, Source],
) -> Check:
    """A line against a limit of the road: the day's setting, else the default and its source."""
    setting, default, source = limit
    stated = setting is not None and setting != default
    figures = _Figures(known=(default if setting is None else setting,))
    return _line(case, name, words, need, figures, workbook("Day") if stated else source)


def _line(
    case: LoadCase,
    name: str,
    words: str,
    need: _Figures,
    have: _Figures,
    source: Source = TRAILERS,
) -> Check:
    """One line: exceeded already by what is known, not wholly known, or within."""
    units = case.day.units
    unit, places = (units.mass, 0) if name == "payload" else (units.length, _LENGTH_PLACES)
    exceeded = bool(have.known) and need.sum() > have.sum()
    text, there = need_and_have(need.sum(), have.sum(), places)
    gaps = tuple(dict.fromkeys(need.gaps + have.gaps))
    return Check(
        load=case.load.id,
        article="",
        name=name,
        need=text if exceeded or not need.gaps else NOTHING,
        have=there if have.known else NOTHING,
        unit=unit,
        verdict=Verdict.ADVICE if exceeded or gaps else Verdict.MET,
        working=sentences([f"{words}: {need.spelled()}" if need.known else "", *gaps]),
        source=in_rules(case.day, source).cite(),
    )


def _of_articles(
    case: LoadCase, what: str, figure: Callable[[Article], Fraction | None]
) -> _Figures:
    figures = [(one.article.id, figure(one.article)) for one in case.articles]
    blank = [article for article, value in figures if value is None]
    return _Figures(
        known=tuple(value for _, value in figures if value is not None),
        gaps=(f"The {what} of {names(blank)} is not given",) if blank else (),
    )


def _of_trailer(
    case: LoadCase, what: str, figure: Callable[[Trailer], Fraction | None]
) -> _Figures:
    if case.trailer is None:
        return _Figures(known=(), gaps=("The load names no trailer",))
    value = figure(case.trailer)
    if value is None:
        return _Figures(known=(), gaps=(f"The {what} of trailer {case.trailer.id} is not given",))
    return _Figures(known=(value,))
