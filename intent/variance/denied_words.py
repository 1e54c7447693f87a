"""What was refused or denied, in sentences for somebody with one minute."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.language.message import Words, joined, listed, say, sentence
from intent.model.naming import person_name
from intent.variance.causes import Cause, causes, proposed_words
from intent.variance.denial import Denial
from intent.variance.result import Variance, Verdict

NAMED = 2
"""Up to so many things of a kind are named; more are counted, and a paper lists them."""


def denied_words(variance: Variance) -> Words:
    """`The estate has refused technology LCD for M1. It is on record that this is not so: “…”.`; else nothing."""
    found = causes(variance.departures)
    denied = [(cause, one) for cause in found if _counts(cause) for row in cause for one in row.denied]
    return joined([sentence(told) for told in (*_refused(variance, denied), *_attested(denied))])


def _counts(cause: Cause) -> bool:
    """Whether an answer against it still matters: nothing else allows it."""
    return cause[0].verdict is not Verdict.ALLOWED


def _refused(variance: Variance, denied: Sequence[tuple[Cause, Denial]]) -> Iterator[Words]:
    refused: dict[str, dict[Cause, None]] = {}
    for cause, one in denied:
        if one.refused_by:
            refused.setdefault(one.refused_by, {})[cause] = None
    for person, what in refused.items():
        who = person_name(variance.work, person)
        if len(what) > NAMED:
            yield say("{person} has refused {number} points", person=who, number=len(what))
        else:
            named = listed(proposed_words(variance, cause) for cause in what)
            yield say("{person} has refused {what}", person=who, what=named)


def _attested(denied: Sequence[tuple[Cause, Denial]]) -> Iterator[Words]:
    facts = tuple(dict.fromkeys(_fact(one) for _, one in denied if not one.refused_by))
    if len(facts) > NAMED:
        yield say("{number} facts are on record that speak against the proposal", number=len(facts))
    elif facts:
        yield say("it is on record {facts}", facts=facts)


def _fact(one: Denial) -> Words:
    if not one.fact:
        return say("that what is to be chosen first can be had")
    if one.holds:
        return say("that “{fact}”", fact=one.fact)
    return say("that this is not so: “{fact}”", fact=one.fact)
