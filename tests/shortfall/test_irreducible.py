"""Irreducible sets of made-up families, in which what fails is known."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from loadplan.shortfall.irreducible import confirmed, irreducible, narrowed

MEMBERS = "abcdefgh"
Family = list[frozenset[str]]
# What fails is what holds one of these together.
families = st.lists(
    st.frozensets(st.sampled_from(MEMBERS), min_size=1, max_size=5), min_size=1, max_size=5
)


def fails_in(family: Family) -> Callable[[Sequence[str]], bool]:
    return lambda kept: any(one <= set(kept) for one in family)


def is_irreducible(found: Sequence[str], family: Family) -> bool:
    fails = fails_in(family)
    return fails(found) and not any(fails([m for m in found if m != one]) for one in found)


@given(families)
def test_halves_left_out(family: Family) -> None:
    found, sure = irreducible(MEMBERS, fails_in(family))
    assert sure
    assert is_irreducible(found, family)


@given(families)
def test_member_by_member(family: Family) -> None:
    found, sure = confirmed(MEMBERS, fails_in(family), seconds=60)
    assert sure
    assert is_irreducible(found, family)


@given(families, st.randoms(use_true_random=False))
def test_by_reasons(family: Family, random: Random) -> None:
    def reason(kept: Sequence[str]) -> Sequence[str] | None:
        """Some of the members that matter, one failing set at least among them."""
        within = [one for one in family if one <= set(kept)]
        if not within:
            return None
        chosen = random.choice(within)
        more = random.choice(within)
        return [member for member in kept if member in chosen | more]

    assert is_irreducible(narrowed(MEMBERS, reason), family)


@given(families, st.sampled_from(MEMBERS))
def test_a_question_not_settled_is_said(family: Family, doubt: str) -> None:
    def fails(kept: Sequence[str]) -> bool | None:
        return None if doubt not in kept else fails_in(family)(kept)

    found, sure = confirmed(MEMBERS, fails, seconds=60)
    assert not sure
    assert fails_in(family)(found)


def test_it_ends_where_the_time_would_not_do() -> None:
    asked: list[Sequence[str]] = []

    def fails(kept: Sequence[str]) -> bool:
        asked.append(kept)
        return False

    assert confirmed(MEMBERS, fails, seconds=0.0) == (list(MEMBERS), False)
    assert len(asked) == 1
