"""The constraints of the program, one function each.

Notation: y_l load l goes; u_ia article i is served by assembly a alone, n_ia of them; m_i article
i has a mixed set, of z_ia tie-downs of each a; λ_ip its pattern, f_i longer than every pattern;
w_iq pair q occurs in it; e_lg protectors of kind g on load l; U_rg pieces of g out at moment r.
Each function yields (expression, sense, right-hand side) as PuLP constraints.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator
from fractions import Fraction

import pulp
from pulp import LpAffineExpression, LpConstraint, LpConstraintEQ, LpConstraintGE, LpConstraintLE

from loadplan.plan.activity import Activity
from loadplan.plan.cliques import cliques
from loadplan.plan.loose import Loose
from loadplan.plan.reach import common_unit
from loadplan.plan.sets import LoadSets, Sets, slot_credit
from loadplan.plan.variables import CoupledArticle, MixedSet, SimpleArticle, Variables
from loadplan.rules.requirement import StrengthRequirement

Terms = list[tuple[pulp.LpVariable, float]]


def row(terms: Terms, sense: int, side: float) -> LpConstraint:
    """One constraint; terms are pairs, since summing expressions one by one is far slower."""
    return LpConstraint(LpAffineExpression(terms), sense, rhs=side)


def one_set_each(ready: pulp.LpVariable, article: SimpleArticle) -> LpConstraint:
    """Σ_a u_ia + m_i = y_l: a ready load's article has one set, of one assembly or mixed."""
    terms: Terms = [(variable, 1) for variable in article.pure.values()]
    if article.mixed is not None:
        terms.append((article.mixed.chosen, 1))
    return row([*terms, (ready, -1)], LpConstraintEQ, 0)


def one_pattern(mixed: MixedSet) -> LpConstraint:
    """Σ_p λ_ip + f_i = m_i: a mixed set follows one minimal pattern or is longer than all."""
    terms: Terms = [(pattern, 1) for pattern in mixed.patterns]
    if mixed.longer is not None:
        terms.append((mixed.longer, 1))
    return row([*terms, (mixed.chosen, -1)], LpConstraintEQ, 0)


def strong_enough(mixed: MixedSet) -> Iterator[LpConstraint]:
    """Σ_{a: tier ≥ t} z_ia ≥ Σ_p n_p(≥ t) λ_ip + [t lowest] (longest + 1) f_i for every tier t."""
    tiers = mixed.tiers
    lowest = len(tiers.levels) - 1
    for tier in range(len(tiers.levels)):
        terms: Terms = [
            (variable, 1)
            for variable, at in zip(mixed.pieces, tiers.tier, strict=True)
            if at <= tier
        ]
        terms += [
            (variable, -pattern[tier])
            for variable, pattern in zip(mixed.patterns, tiers.patterns, strict=True)
            if pattern[tier]
        ]
        if tier == lowest and mixed.longer is not None:
            terms.append((mixed.longer, -max(tiers.longest + 1, mixed.reach.fewest, 2)))
        yield row(terms, LpConstraintGE, 0)


def longer_is_strong(mixed: MixedSet) -> Iterator[LpConstraint]:
    """Σ_a v_ia z_ia ≥ need_i f_i: the ordinary covering row of the longer mixed sets.

    Half a unit less than the need, so that whole solutions are told apart exactly, then divided by
    the need.
    """
    if mixed.longer is not None:
        need = mixed.reach.need
        values = zip(mixed.pieces, mixed.reach.values, strict=True)
        terms: Terms = [(variable, value / need) for variable, value in values]
        yield row([*terms, (mixed.longer, 0.5 / need - 1)], LpConstraintGE, 0)


def mixed_within_room(mixed: MixedSet) -> LpConstraint:
    """Σ_a z_ia ≤ longest (m_i − f_i) + room_i f_i: as many tie-downs as its pattern can have."""
    longest, room = mixed.tiers.longest, mixed.place.room
    terms: Terms = [(variable, 1) for variable in mixed.pieces]
    if mixed.longer is not None:
        terms.append((mixed.longer, longest - room))
    return row([*terms, (mixed.chosen, -longest)], LpConstraintLE, 0)


def pairs_used(mixed: MixedSet) -> Iterator[LpConstraint]:
    """Σ_{a ∈ q} z_ia ≤ (longest − 1) w_iq + room_i f_i; w_iq ≤ m_i; Σ_q w_iq ≥ 2 m_i.

    And ≤ room_i w_iq where there is an f_i: the pairs of a longer set occur too. A mixed set has
    two pairs or more. Where shackles differ, one pair may carry several assemblies, so there one
    pair may be all of it.
    """
    by_pair: dict[tuple[str, str], Terms] = defaultdict(list)
    for assembly, variable in zip(mixed.place.assemblies, mixed.pieces, strict=True):
        by_pair[assembly.pair].append((variable, 1))
    several = any(len(terms) > 1 for terms in by_pair.values())
    room = max(mixed.place.room, mixed.tiers.longest)
    for pair, used in mixed.used.items():
        most = mixed.tiers.longest if several else mixed.tiers.longest - 1
        longer: Terms = [] if mixed.longer is None else [(mixed.longer, -mixed.place.room)]
        yield row([*by_pair[pair], (used, -most), *longer], LpConstraintLE, 0)
        if longer:
            yield row([*by_pair[pair], (used, -room)], LpConstraintLE, 0)
        yield row([(used, 1), (mixed.chosen, -1)], LpConstraintLE, 0)
    fewest = 1 if several else 2
    pairs: Terms = [(used, 1) for used in mixed.used.values()]
    yield row([*pairs, (mixed.chosen, -fewest)], LpConstraintGE, 0)


def loose_tied(ready: pulp.LpVariable, loose: Loose) -> Iterator[LpConstraint]:
    """Σ_m b_lm = c_l y_l over all parts; Σ_m b_lm = Σ_t b_lt in each: as many of both halves."""
    members: Terms = [(one, 1) for part in loose.parts for one in part.members.values()]
    yield row([*members, (ready, -len(loose.spots))], LpConstraintEQ, 0)
    for part in loose.parts:
        if part.tensioners:
            mine: Terms = [(one, 1) for one in part.members.values()]
            others: Terms = [(one, -1) for one in part.tensioners.values()]
            yield row([*mine, *others], LpConstraintEQ, 0)


def accessories_tied(ready: pulp.LpVariable, article: CoupledArticle) -> Iterator[LpConstraint]:
    """Σ_a b_ia = c_i y_l: every credited accessory tie-down, c_i of a class."""
    for one, variables in article.accessories:
        terms: Terms = [(variable, 1) for variable in variables]
        yield row([*terms, (ready, -len(one.places))], LpConstraintEQ, 0)


def slots_finished(ready: pulp.LpVariable, article: CoupledArticle) -> Iterator[LpConstraint]:
    """Σ_c s_isc = y_l: each begun tie-down of a ready load is finished in one way."""
    for choices in article.slots:
        yield row([*((choice, 1) for choice in choices), (ready, -1)], LpConstraintEQ, 0)


def pieces_at_positions(article: CoupledArticle) -> Iterator[LpConstraint]:
    """Σ_a z_ika = Σ_{p ∈ k} t_ip: the tie-downs of a position class stand at its positions."""
    for place, pieces in zip(article.sets.classes, article.pieces, strict=True):
        terms: Terms = [(variable, 1) for variable in pieces]
        terms += [(article.at[position], -1) for position in place.positions]
        yield row(terms, LpConstraintEQ, 0)


def counts_met(ready: pulp.LpVariable, article: CoupledArticle) -> Iterator[LpConstraint]:
    """Σ_p worth t_ip ≥ (count − begun) y_l for every count asked for, and t_ip ≤ room y_l."""
    begun = [slot.position for slot in article.sets.slots if not slot.accessory]
    for count in article.sets.demand.counts:
        lacking = count.at_least - sum(count.worth(position) for position in begun)
        if lacking > 0:
            terms: Terms = [(v, count.worth(at)) for at, v in article.at.items() if count.worth(at)]
            yield row([*terms, (ready, -lacking)], LpConstraintGE, 0)
    for variable in article.at.values():
        yield row([(variable, 1), (ready, -(variable.upBound or 0))], LpConstraintLE, 0)


def coupled_strength(ready: pulp.LpVariable, article: CoupledArticle) -> Iterator[LpConstraint]:
    """Σ credit · WLL over all tie-downs, begun and added, ≥ need y_l.

    In the greatest common unit of the WLLs, the need rounded up to it and half a unit less, so that
    whole solutions are told apart exactly; then divided by the need.
    """
    for number, strength in enumerate(article.sets.demand.strengths):
        terms = [*_credited(article, number, strength)]
        if strength.need <= 0:
            continue
        unit = common_unit([value for _, value in terms])
        need = math.ceil(strength.need / unit)
        pairs: Terms = [(variable, int(value / unit) / need) for variable, value in terms]
        yield row([*pairs, (ready, 0.5 / need - 1)], LpConstraintGE, 0)


def _credited(
    article: CoupledArticle, number: int, strength: StrengthRequirement
) -> Iterator[tuple[pulp.LpVariable, Fraction]]:
    """What one tie-down more of each kind adds to the ``number``-th strength."""
    sets = article.sets
    for place, pieces in zip(sets.classes, article.pieces, strict=True):
        if place.counted[number]:
            share = strength.credit_of(place.routing)
            for assembly, variable in zip(place.assemblies, pieces, strict=True):
                yield variable, share * assembly.wll
    for slot, choices in zip(sets.slots, article.slots, strict=True):
        share = slot_credit(sets, slot, strength)
        for completion, variable in zip(slot.assemblies, choices, strict=True):
            yield variable, share * completion.assembly.wll
    for one, variables in article.accessories:
        for assembly, variable in zip(one.assemblies, variables, strict=True):
            yield variable, strength.accessory_credit * assembly.wll


def coupled_pairs(article: CoupledArticle) -> Iterator[LpConstraint]:
    """z_ika ≤ room w_iq and s_isc ≤ w_iq: a pair that occurs is counted."""
    for place, pieces in zip(article.sets.classes, article.pieces, strict=True):
        for assembly, variable in zip(place.assemblies, pieces, strict=True):
            most = -(variable.upBound or 0)
            yield row([(variable, 1), (article.used[assembly.pair], most)], LpConstraintLE, 0)
    for slot, choices in zip(article.sets.slots, article.slots, strict=True):
        for completion, variable in zip(slot.assemblies, choices, strict=True):
            if not slot.accessory:
                used = article.used[completion.assembly.pair]
                yield row([(variable, 1), (used, -1)], LpConstraintLE, 0)


def anchors_enough(load: LoadSets, activities: Iterable[Activity]) -> Iterator[LpConstraint]:
    """Σ anchor points taken ≤ anchor points there are, over all articles of the load."""
    if load.anchors is None:
        return
    per = load.anchors.per_tie_down
    terms: Terms = [(a.variable, a.tie_downs * per[a.routing]) for a in activities]
    yield row(terms, LpConstraintLE, load.anchors.at_most)


def winches_enough(load: LoadSets, activities: Iterable[Activity]) -> Iterator[LpConstraint]:
    """Σ winch straps ≤ winches of the trailer: each holds one for the whole trip."""
    if load.demand.winches.at_most:
        terms: Terms = [(a.variable, a.winches) for a in activities if a.winches]
        yield row(terms, LpConstraintLE, load.demand.winches.at_most)


def edges_protected(
    load: LoadSets, protectors: dict[str, pulp.LpVariable], activities: Iterable[Activity]
) -> Iterator[LpConstraint]:
    """Σ_g e_lg ≥ Σ protectors that the load's webbing tie-downs take."""
    if load.possible and load.needs_protectors():
        terms: Terms = [(a.variable, -a.protectors) for a in activities if a.protectors]
        have: Terms = [(variable, 1) for variable in protectors.values()]
        yield row(have + terms, LpConstraintGE, 0)


def pools(sets: Sets, variables: Variables) -> Iterator[LpConstraint]:
    """U_rg = U_{r−1,g} + pieces leaving − pieces come back, 0 ≤ U_rg ≤ q_g − fixed, per moment r.

    The moments are the maximal cliques of the trips; gear on by ``Fixed`` is out whether or not
    the load goes. A kit only has to do for each load of its own trailer.
    """
    takes = _takes(sets, variables)
    fixed = _fixed(sets)
    trips = [(one.load.out, one.load.back + sets.day.turnaround) for one in sets.loads]
    moments, spans = cliques(trips)
    for gear in sets.gear:
        if gear.id not in takes:
            continue
        mine = takes[gear.id]
        on = fixed.get(gear.id, {})
        if gear.kept_on is not None:
            for load, terms in mine.items():
                yield row(terms, LpConstraintLE, gear.usable - on.get(load, 0))
            continue
        begun = [0] * len(moments)
        for load, pieces in on.items():
            for moment in range(spans[load][0], spans[load][1] + 1):
                begun[moment] += pieces
        out = variables.out_of(gear.id, [gear.usable - pieces for pieces in begun])
        yield from _flow(mine, spans, out)


def _flow(
    takes: dict[int, Terms], spans: list[tuple[int, int]], flow: list[pulp.LpVariable]
) -> Iterator[LpConstraint]:
    starts: dict[int, Terms] = defaultdict(list)
    for load, terms in takes.items():
        first, last = spans[load]
        starts[first] += [(variable, -pieces) for variable, pieces in terms]
        starts[last + 1] += terms
    for moment, out in enumerate(flow):
        before: Terms = [(flow[moment - 1], -1)] if moment else []
        yield row([(out, 1), *before, *starts.get(moment, ())], LpConstraintEQ, 0)


def _takes(sets: Sets, variables: Variables) -> dict[str, dict[int, Terms]]:
    """Per kind of gear and load, the variables that take pieces of it and how many."""
    found: dict[str, dict[int, Terms]] = defaultdict(lambda: defaultdict(list))
    for activity in variables.activities:
        for gear, pieces in activity.uses:
            found[gear][activity.load].append((activity.variable, pieces))
    for load, protectors in enumerate(variables.protectors):
        for gear, variable in protectors.items():
            found[gear][load].append((variable, 1))
    return found


def _fixed(sets: Sets) -> dict[str, dict[int, int]]:
    """Per kind of gear and load, the pieces that ``Fixed`` has put on."""
    index = {one.load.id: place for place, one in enumerate(sets.loads)}
    found: dict[str, dict[int, int]] = defaultdict(lambda: defaultdict(int))
    for piece in sets.day.fixed:
        found[piece.gear][index[piece.load]] += 1
    return found
