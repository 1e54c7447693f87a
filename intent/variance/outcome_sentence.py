"""The outcome of a proposal in one sentence that stands by itself: what has to happen before it may be installed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.language.message import Words, joined, listed, say, say_of
from intent.model.naming import person_name
from intent.variance.asking import needs_beside_rows
from intent.variance.causes import Cause, causes, concerned_words, proposed_words
from intent.variance.denied_words import NAMED
from intent.variance.obstacle import in_the_way, needs_words
from intent.variance.reasons import fact_words
from intent.variance.result import BROKEN, Open, OpenKind, Outcome, Variance, Verdict

_SETTLED_BY_ANSWERS = {Verdict.CONDITIONAL, Verdict.UNKNOWN}


def outcome_sentence(variance: Variance) -> Words:
    """What has to happen, without a name that the sentence does not explain."""
    if variance.outcome is Outcome.ACCEPTABLE:
        return say("Acceptable: all is as required or documented, or allowed with nothing left open.")
    found = _Found(variance=variance, causes=causes(variance.departures))
    every = tuple(_steps(found))
    steps = _series(every)
    if variance.outcome is Outcome.ON_CONDITIONS:
        if tuple(_consented(found)):
            return say("Not to be installed until {steps}; then acceptable.", steps=steps)
        return say("Acceptable once {steps}.", steps=steps)
    if variance.outcome is Outcome.NOT_ACCEPTABLE and len(every) == 1:
        return _not_acceptable(found)
    return say("Not to be installed until {steps}.", steps=steps)


def _series(steps: Sequence[Words]) -> Words:
    """All the steps; more than two, which may have commas of their own, with semicolons between them."""
    if len(steps) <= NAMED:
        return listed(steps)
    return say("{first}; and {last}", first=joined(steps[:-1], "; "), last=steps[-1])


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A variance with its departures by cause."""

    variance: Variance
    causes: tuple[Cause, ...]

    def judged(self, *verdicts: Verdict) -> tuple[Cause, ...]:
        return tuple(cause for cause in self.causes if cause[0].verdict in verdicts)

    @property
    def broken(self) -> tuple[Cause, ...]:
        return tuple(cause for cause in self.judged(*BROKEN) if not cause[0].rests_on_practice)

    @property
    def open(self) -> tuple[tuple[Cause, Open], ...]:
        """What an answer would close, with the cause for which it is open."""
        waiting = self.judged(*_SETTLED_BY_ANSWERS)
        return tuple((cause, item) for cause in waiting for row in cause for item in row.open)


def _not_acceptable(found: _Found) -> Words:
    """Where nothing is to be done but to propose something else, or to have it waived."""
    broken = found.broken
    if len(broken) > NAMED:
        return say(
            "Not acceptable as proposed: {number} of {every} points are forbidden, or against what is required.",
            number=len(broken),
            every=len(found.causes),
        )
    return say("Not acceptable as proposed: {faults}.", faults=listed(_fault(found, one) for one in broken))


def _fault(found: _Found, cause: Cause) -> Words:
    what = proposed_words(found.variance, cause)
    if cause[0].verdict is Verdict.FORBIDDEN:
        return say("{what} is forbidden", what=what)
    return say("{what} is against what is required", what=what)


def _steps(found: _Found) -> Iterator[Words]:
    yield from _given_up(found)
    yield from _consented(found)
    yield from _decided(found)
    yield from _attested(found)
    yield from _known(found)
    yield from _cleared(found)


def _given_up(found: _Found) -> Iterator[Words]:
    broken = found.broken
    if not broken:
        return
    named = _named(found, broken)
    if named:
        yield say_of(
            len(broken), "{what} is given up or waived", "{what} are given up or waived", what=listed(named)
        )
    else:
        yield say(
            "{number} of {every} points, which are forbidden or against what is required, are given up or waived",
            number=len(broken),
            every=len(found.causes),
        )


def _named(found: _Found, some: Sequence[Cause]) -> tuple[Words, ...]:
    """What is proposed in each, where they are few; nothing where they are to be counted."""
    return tuple(proposed_words(found.variance, cause) for cause in some) if len(some) <= NAMED else ()


def _consented(found: _Found) -> Iterator[Words]:
    """`the estate has consented to technology LCD for M1`, for each person who must."""
    asked: dict[tuple[str | None, bool], dict[Cause, None]] = {}
    for cause, item in found.open:
        if item.kind is OpenKind.CONSENT:
            asked.setdefault((item.person, item.ends is not None), {})[cause] = None
    for (person, was_given), waiting in asked.items():
        who = person_name(found.variance.work, person)
        named = _named(found, tuple(waiting))
        if was_given:
            yield say("{person} has extended a consent that ends before the showing does", person=who)
        elif named:
            yield say("{person} has consented to {what}", person=who, what=listed(named))
        else:
            yield say("{person} has consented to {number} points", person=who, number=len(waiting))


def _decided(found: _Found) -> Iterator[Words]:
    """What no instruction settles, and what two settle otherwise."""
    practice = (cause for cause in found.judged(*BROKEN) if cause[0].rests_on_practice)
    unsettled = (*practice, *found.judged(Verdict.UNCOVERED))
    if named := _named(found, unsettled):
        yield say("it is decided whether {what} may be", what=listed(named))
    elif unsettled:
        yield say("it is decided on {number} points that no instruction settles", number=len(unsettled))
    if number := len(found.judged(Verdict.CONTRADICTION)):
        yield say_of(
            number,
            "it is settled which of two instructions holds that contradict each other",
            "it is settled which instructions hold in {number} contradictions",
            number=number,
        )


def _attested(found: _Found) -> Iterator[Words]:
    items = (item for _, item in found.open if item.kind is OpenKind.ATTESTATION)
    facts = tuple(dict.fromkeys(fact_words(item) for item in items))
    if len(facts) > NAMED:
        yield say("{number} facts are attested", number=len(facts))
    elif facts:
        yield say("it is attested {facts}", facts=facts)


def _known(found: _Found) -> Iterator[Words]:
    """What has to be known to judge a value, or a limit that is not surely met."""
    unknown = [*_values(found), *(say("{value} is known", value=need) for need in _needs(found))]
    known = tuple(dict.fromkeys(unknown))
    if len(known) > NAMED:
        yield say("{number} things are known that are not given", number=len(known))
    else:
        yield from known


def _values(found: _Found) -> Iterator[Words]:
    for cause in found.judged(Verdict.UNKNOWN):
        if not cause[0].open:
            yield _of_parts(found, cause, cause[0].characteristic)
    for _, item in found.open:
        if item.kind is OpenKind.STATEMENT:
            yield say("it is known whether {statement}", statement=item.text)
        elif item.kind is OpenKind.VALUE:
            yield say("{value} is known", value=item.text)


def _of_parts(found: _Found, cause: Cause, value: Words) -> Words:
    subject = concerned_words(found.variance, cause)
    return say("the {value} of {subject} is known", value=value, subject=subject)


def _needs(found: _Found) -> Iterable[Words]:
    needs = (need for one in in_the_way(found.variance.obstacles) for need in one.missing)
    return needs_words(needs_beside_rows(found.variance.rows, needs))


def _cleared(found: _Found) -> Iterator[Words]:
    """Which obstacles they are, and how many sorts of them, a paper lists."""
    sorts = {one.slug for one in in_the_way(found.variance.obstacles) if one.is_sure}
    if sorts:
        yield say_of(
            len(sorts),
            "the obstacle at the venue or of a device is removed",
            "the obstacles at the venue or of devices are removed",
        )
