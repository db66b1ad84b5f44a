"""Where the articles stand in the deck picture.

Articles are placed along the deck in workbook order, front first, with a stated gap: the workbook
gives no positions, so this is a picture to read numbers from, not a loading position. Lengths are
floats in the day's unit, because they only draw.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from loadplan.day.article import Article
from loadplan.day.trailer import Trailer
from loadplan.day.units import Units
from loadplan.results.deck.stands import Stand, stood

GAP = {Units.US: Fraction(1), Units.METRIC: Fraction(3, 10)}
_USUAL_WIDTH = {Units.US: 8.5, Units.METRIC: 2.6}
_USUAL_ARTICLE = {Units.US: 15.0, Units.METRIC: 4.5}
_LEAST_ARTICLE = {Units.US: 3.0, Units.METRIC: 1.0}
_NARROW = 0.7
_HAIR = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One article as drawn: from ``front`` back by ``length``.

    Its middle stands ``aside`` of the middle of the deck, to the left if above 0. ``under`` are the
    articles of a stack below it.
    """

    article: Article
    front: float
    length: float
    width: float
    length_known: bool
    width_known: bool
    aside: float = 0.0
    under: tuple[Article, ...] = ()

    @property
    def rear(self) -> float:
        """Distance of its rear end from the front of the deck."""
        return self.front + self.length

    @property
    def to_scale(self) -> bool:
        """Whether both sizes seen from above are known."""
        return self.length_known and self.width_known


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """The deck as drawn and the articles on it; ``notes`` say what is not known or not right."""

    deck_length: float
    deck_width: float
    deck_length_known: bool
    deck_width_known: bool
    gap: float
    fits: bool
    blocks: tuple[Block, ...]
    notes: tuple[str, ...]

    @property
    def view_length(self) -> float:
        """What the picture must show lengthwise: the deck and whatever stands past its end."""
        return max([self.deck_length, *(block.rear for block in self.blocks)])

    @property
    def view_width(self) -> float:
        """What the picture must show crosswise."""
        sides = (2 * abs(block.aside) + block.width for block in self.blocks)
        return max([self.deck_width, *sides])


def place(articles: Sequence[Article], trailer: Trailer | None, units: Units) -> Placing:
    """``articles`` placed on the deck of ``trailer`` (None: nothing is known of it)."""
    deck = None if trailer is None else trailer.deck_length
    wide = None if trailer is None else trailer.deck_width
    gap = float(GAP[units])
    deck_width = _USUAL_WIDTH[units] if wide is None else float(wide)
    stands = stood(articles)
    lengths = _lengths(stands, deck, gap, units)
    needed = sum(lengths) + gap * max(0, len(lengths) - 1)
    deck_length = needed + 2 * gap if deck is None else float(deck)
    fits = needed <= deck_length + _HAIR
    against_front = bool(articles) and articles[0].blocked_forward
    front = min(gap, deck_length - needed) if fits and not against_front else 0.0
    return Placing(
        deck_length=deck_length,
        deck_width=deck_width,
        deck_length_known=deck is not None,
        deck_width_known=wide is not None,
        gap=gap,
        fits=fits,
        blocks=tuple(_blocks(stands, lengths, max(front, 0.0), gap, deck_width)),
        notes=tuple(_notes(articles, len(stands), deck, wide, needed, fits, units)),
    )


def _blocks(
    stands: Sequence[Stand], lengths: Sequence[float], front: float, gap: float, deck: float
) -> Iterator[Block]:
    """One stand behind the other from ``front``; an unknown width is drawn narrower than its share.

    What stands side by side fills the deck from right to left; of a stack each is drawn in place.
    """
    for stand, length in zip(stands, lengths, strict=True):
        beside = 1 if stand.stacked else len(stand.articles)
        unknown = deck * _NARROW / beside
        wide = [unknown if one.width is None else float(one.width) for one in stand.articles]
        edge = 0.0 if stand.stacked else -sum(wide) / 2
        for place, (article, width) in enumerate(zip(stand.articles, wide, strict=True)):
            yield Block(
                article=article,
                front=front,
                length=length if article.length is None else float(article.length),
                width=width,
                length_known=article.length is not None,
                width_known=article.width is not None,
                aside=0.0 if stand.stacked else edge + width / 2,
                under=stand.articles[:place] if stand.stacked else (),
            )
            edge += 0.0 if stand.stacked else width
        front += length + gap


def _lengths(
    stands: Sequence[Stand], deck: Fraction | None, gap: float, units: Units
) -> list[float]:
    """Each stand's length; those not given share what the others leave of the deck."""
    longest = [_longest(stand) for stand in stands]
    known = [float(one) for one in longest if one is not None]
    blanks = len(stands) - len(known)
    share = _USUAL_ARTICLE[units]
    if blanks and deck is not None:
        left = float(deck) - sum(known) - gap * (len(stands) - 1)
        share = max(_LEAST_ARTICLE[units], min(share, left / blanks))
    return [share if one is None else float(one) for one in longest]


def _longest(stand: Stand) -> Fraction | None:
    """The longest of its articles whose length is given."""
    return max((one.length for one in stand.articles if one.length is not None), default=None)


def _notes(
    articles: Sequence[Article],
    places: int,
    deck: Fraction | None,
    wide: Fraction | None,
    needed: float,
    fits: bool,
    units: Units,
) -> list[str]:
    unit = units.length
    notes = []
    if not fits and deck is not None:
        what = f"{len(articles)} articles" if len(articles) > 1 else "The article"
        gaps = f" with {float(GAP[units]):g} {unit} between them" if places > 1 else ""
        verb = "need" if len(articles) > 1 else "needs"
        notes.append(
            f"DOES NOT FIT: {what}{gaps} {verb} {needed:.5g} {unit}; "
            f"the deck is {float(deck):.5g} {unit}."
        )
    if deck is None:
        notes.append("Deck length not given: the deck is drawn as long as its cargo.")
    if wide is None:
        notes.append(f"Deck width not given: drawn {_USUAL_WIDTH[units]:g} {unit} wide.")
    no_length = [article.id for article in articles if article.length is None]
    no_width = [article.id for article in articles if article.width is None]
    if no_length:
        notes.append(f"Length not given, so not to scale: {', '.join(no_length)}.")
    if no_width:
        notes.append(f"Width not given, so not to scale: {', '.join(no_width)}.")
    return notes
