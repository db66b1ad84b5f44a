"""The rule, by the oracle's name for it, that a sentence of the judgement is about."""

from __future__ import annotations

PHRASES = {
    "that it is ready": "ready loads",
    "says it is ready": "ready loads",
    "has no such load.": "unknown load or article",
    "has no such article.": "unknown load or article",
    "the article is on load": "article on another load",
    "the load is held": "tie-down on a held load",
    "is not gear of this day": "unknown gear",
    "is marked": "condition",
    "is kept on trailer": "kit",
    "is fixed to a trailer": "kit",
    "has no known WLL": "rating",
    "is no tension member": "tension member",
    "holds an accessory; a winch strap does not": "winch strap",
    "a winch strap runs over": "winch strap",
    "has no tensioner": "tensioner",
    "takes no tensioner of its own": "tensioner",
    "needs a turnbuckle": "tensioner",
    "needs a lever or ratchet binder": "tensioner",
    "no binder is known to fit it": "tensioner",
    "does not fit": "tensioner",
    "shackles, and": "shackles",
    "shackle, and": "shackles",
    "it names shackle": "shackles",
    "is no shackle": "shackles",
    "shackles needs": "shackles",
    "is no edge protector": "edge protectors",
    "of edge protector": "edge protectors",
    "edge protectors needs": "edge protectors",
    "is asked for": "routing",
    "the house holds unrated points": "unrated points",
    "(house rule Unrated points)": "unrated points",
    "is pinned and takes no tie-down": "accessories",
    ": tie-down of ": "accessories",
    "of the article.": "place",
    "given twice": "numbers",
    "must be numbered": "numbers",
    "tie-downs stand there": "most per position",
    "each corner is filled once": "order",
    "filled before the middle": "order",
    "filled in order": "order",
    "tie-down at the front needs": "front",
    "tie-down at the rear needs": "rear",
    ": tie-down at ": "corners",
    "four tie-downs needs": "count",
    "two tie-downs needs": "count",
    "tie-downs by length needs": "count",
    "aggregate WLL needs": "aggregate",
    "least WLL each needs": "least WLL each",
    "no straps on machines needs": "straps on machines",
    "chain only needs": "chain only",
    "reach needs": "reach",
    "anchor points, and the trailer": "anchor points",
    "anchor point, and the trailer": "anchor points",
    "winch straps, and the trailer": "winches",
    "winch strap, and the trailer": "winches",
    "is fixed there": "fixed",
    "can be used.": "pool",
}


def rules(disagreements: tuple[str, ...]) -> set[str]:
    """The rules that ``disagreements`` are about; each sentence is about one."""
    return {_rule(sentence) for sentence in disagreements}


def _rule(sentence: str) -> str:
    for phrase, rule in PHRASES.items():
        if phrase in sentence:
            return rule
    raise AssertionError(f"a disagreement of no known rule: {sentence}")
