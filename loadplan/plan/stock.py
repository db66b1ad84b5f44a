"""What there still is to make an article's tie-downs of, from each place in an order on."""

from __future__ import annotations

from dataclasses import dataclass

from loadplan.plan.blocks import Block


@dataclass(frozen=True, slots=True)
class Stock:
    """Per place, the kinds of gear of which every tie-down from there on takes one.

    ``kinds`` are first the tension members, then what tightens them: the tensioner, or the member
    itself where it brings its own. ``plenty`` is whether there is enough of both for every tie-down
    of the article, whatever was taken before.
    """

    kinds: tuple[tuple[tuple[int, ...], tuple[int, ...]], ...]
    plenty: tuple[bool, ...]

    def falls_short(self, start: int, number: int, have: dict[int, int]) -> bool:
        """Whether ``have`` cannot do for ``number`` tie-downs from place ``start`` on."""
        if self.plenty[start]:
            return False
        return any(sum(have[gear] for gear in kinds) < number for kinds in self.kinds[start])


def stock_from(block: Block, order: list[int], have: dict[int, int]) -> Stock:
    """The stock of ``block`` for its main places in ``order``, with ``have`` before any is taken.

    A tie-down takes one tension member and one tightener at the most, those apart too.
    """
    index = {gear: place for place, gear in enumerate(block.menu.gear)}
    most = block.reach.fewest + sum(one.number for one in block.apart)
    found: list[tuple[tuple[int, ...], tuple[int, ...]]] = []
    plenty: list[bool] = []
    members: dict[int, int] = {}
    tight: dict[int, int] = {}
    for place in reversed(order):
        assembly = block.menu.assemblies[place]
        member = index[assembly.member]
        tightener = index[assembly.tensioner] if assembly.tensioner else member
        members[member], tight[tightener] = have[member], have[tightener]
        found.append((tuple(members), tuple(tight)))
        plenty.append(min(sum(members.values()), sum(tight.values())) >= most)
    return Stock(tuple(found[::-1]), tuple(plenty[::-1]))
