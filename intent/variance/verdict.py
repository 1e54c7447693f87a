"""Steps 3 and 4: what falls, ties or stands, and the verdict of one ground."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from intent.model.authority import OBSERVED_PRACTICE_RANK
from intent.model.work import Instruction, Modality
from intent.variance.case import Case
from intent.variance.change import Deviation
from intent.variance.precedence import leaves_no_value, prevails
from intent.variance.result import Because, Open, SetAside, Verdict
from intent.variance.says import Said, Says


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifter:
    """What makes an *against* fall: a permission, a requirement met, or a dispensation."""

    by: str
    because: Because
    open: tuple[Open, ...]
    said: Said | None
    """The instruction; none for a dispensation."""

    @property
    def is_permission(self) -> bool:
        return self.said is None or self.said.says is Says.PERMITS

    @property
    def rank(self) -> tuple[int, int, str]:
        """The best permission has the fewest things open; then the earlier choice."""
        choice = self.said.line.choice if self.said else None
        return len(self.open), choice or 0, self.by


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """One *against* or *perhaps against*, and how it fares."""

    said: Said
    lifters: tuple[Lifter, ...]
    ties_with: tuple[Said, ...]
    perhaps_lifters: tuple[Said, ...]

    @property
    def falls(self) -> bool:
        return bool(self.lifters)

    @property
    def is_sure(self) -> bool:
        return self.said.says is Says.AGAINST

    @property
    def ties(self) -> bool:
        return self.is_sure and not self.falls and bool(self.ties_with)

    @property
    def stands(self) -> bool:
        return self.is_sure and not self.falls and not self.ties_with

    @property
    def permission(self) -> Lifter | None:
        """The best permission, where it falls to permissions alone."""
        if not self.falls or not all(lifter.is_permission for lifter in self.lifters):
            return None
        return min(self.lifters, key=lambda lifter: lifter.rank)


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """The verdict of one ground, with what governs it, what is set aside, and what is open."""

    verdict: Verdict
    governing: tuple[Said, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    open: tuple[Open, ...] = ()
    excused_by: tuple[Instruction, ...] = ()
    """Of a contradicted aggregate: the permissions whose departures alone break it."""
    also_against: tuple[Said, ...] = ()
    """What else of this ground stands against the value."""
    broken: tuple[Said, ...] = ()
    """All that is surely broken, whatever the modality."""
    over: tuple[Said, ...] = ()
    """Permissions that would cover the value, were they not over."""
    offers: tuple[Said, ...] = ()
    """Permissions in force that speak of it and allow other values."""

    def is_broken_beyond_practice(self, case: Case) -> bool:
        """Whether anything is broken that does not rank with observed practice, which alone is only to be referred."""
        return any(case.ranks[said.line.identifier] != OBSERVED_PRACTICE_RANK for said in self.broken)


def weigh(case: Case, every: Sequence[Said]) -> list[Weighed]:
    """Step 3 for all that is against or perhaps against."""
    return [_weigh(case, said, every) for said in every if said.says in {Says.AGAINST, Says.PERHAPS_AGAINST}]


def _weigh(case: Case, against: Said, every: Sequence[Said]) -> Weighed:
    rivals = [said for said in every if said.says in {Says.PERMITS, Says.MEETS} and _can_lift(said, against)]
    lifters = [
        Lifter(by=given.person, because=Because.DISPENSATION, open=given.open, said=None)
        for given in against.dispensed
    ]
    ties: list[Said] = []
    for rival in rivals:
        because = prevails(case, rival.claim, against.claim)
        if because is not None:
            lifters.append(Lifter(by=rival.line.identifier, because=because, open=rival.open, said=rival))
        elif prevails(case, against.claim, rival.claim) is None:
            ties.append(rival)
    perhaps = [
        said
        for said in every
        if said.says is Says.PERHAPS_PERMITS and prevails(case, said.claim, against.claim) is not None
    ]
    return Weighed(
        said=against, lifters=tuple(lifters), ties_with=tuple(ties), perhaps_lifters=tuple(perhaps)
    )


def _can_lift(said: Said, against: Said) -> bool:
    """A permission always can; a requirement only where no value at all satisfies both."""
    is_permission = not said.is_requirement and said.says is Says.PERMITS
    return is_permission or leaves_no_value(said.claim, against.claim)


def judge_ground(case: Case, every: Sequence[Said], change: Deviation, ground: str) -> Judgement | None:
    """Step 4: the first verdict that applies; none where this ground has nothing to say."""
    found = _judged(weigh(case, every), every, change, ground)
    if found is None:
        return None
    over = tuple(said for said in every if said.over is not None)
    offers = tuple(said for said in every if said.over is None and _allows_others(said))
    return replace(found, over=over, offers=offers) if over or offers else found


def _allows_others(said: Said) -> bool:
    return said.line.modality is Modality.ALLOWED and said.says is Says.NOTHING


def _judged(
    weighed: Sequence[Weighed], every: Sequence[Said], change: Deviation, ground: str
) -> Judgement | None:
    aside = _set_aside(weighed)
    broken = tuple(one.said for one in weighed if one.stands and not one.perhaps_lifters)
    for verdict, modality in ((Verdict.FORBIDDEN, Modality.FORBIDDEN), (Verdict.BREACH, Modality.REQUIRED)):
        sure = tuple(said for said in broken if said.line.modality is modality)
        if sure:
            others = tuple(one.said for one in weighed if one.stands and one.said not in sure)
            return Judgement(
                verdict=verdict, governing=sure, set_aside=aside, also_against=others, broken=broken
            )
    tied = [one for one in weighed if one.ties]
    if tied:
        governing = [said for one in tied for said in (one.said, *one.ties_with)]
        return Judgement(verdict=Verdict.CONTRADICTION, governing=once(governing), set_aside=aside)
    unsure = [one for one in weighed if not one.falls]
    if unsure:
        governing = [said for one in unsure for said in (one.said, *one.perhaps_lifters)]
        return Judgement(
            verdict=Verdict.UNKNOWN, governing=once(governing), set_aside=aside, open=_opens(governing)
        )
    return _lifted(weighed, aside) or _met(every, change, aside, ground)


def _lifted(weighed: Sequence[Weighed], aside: tuple[SetAside, ...]) -> Judgement | None:
    best = [lifter for one in weighed if (lifter := one.permission) is not None]
    if not best:
        return None
    governing = once([lifter.said for lifter in best if lifter.said is not None])
    opens = tuple(dict.fromkeys(item for lifter in best for item in lifter.open))
    return Judgement(
        verdict=Verdict.CONDITIONAL if opens else Verdict.ALLOWED,
        governing=governing,
        set_aside=aside,
        open=opens,
    )


def _met(
    every: Sequence[Said], change: Deviation, aside: tuple[SetAside, ...], ground: str
) -> Judgement | None:
    met = tuple(said for said in every if said.says is Says.MEETS)
    if met:
        return Judgement(verdict=Verdict.AS_REQUIRED, governing=met, set_aside=aside)
    if change.is_unchanged:
        return Judgement(verdict=Verdict.AS_DOCUMENTED, governing=(), set_aside=aside)
    return _uncovered(every, change, aside) if ground == "intent" else None


def _uncovered(every: Sequence[Said], change: Deviation, aside: tuple[SetAside, ...]) -> Judgement | None:
    """What only the ground of intent asks: whether a departure is covered by any permission."""
    permits = [said for said in every if said.says is Says.PERMITS]
    if permits:
        best = min(permits, key=lambda said: (len(said.open), said.line.choice or 0, said.line.identifier))
        verdict = Verdict.CONDITIONAL if best.open else Verdict.ALLOWED
        return Judgement(verdict=verdict, governing=(best,), set_aside=aside, open=best.open)
    perhaps = tuple(said for said in every if said.says is Says.PERHAPS_PERMITS)
    if perhaps:
        return Judgement(verdict=Verdict.UNKNOWN, governing=perhaps, set_aside=aside, open=_opens(perhaps))
    asked = bool(every) or (change.counts_unasked and change.is_documented)
    if not asked:
        return None
    if not change.is_given:
        return Judgement(verdict=Verdict.UNKNOWN, set_aside=aside)
    if not change.is_documented:
        spoken = tuple(said for said in every if said.line.modality is Modality.ALLOWED)
        return Judgement(verdict=Verdict.UNCOVERED, governing=spoken, set_aside=aside) if spoken else None
    if not change.differs:
        return Judgement(verdict=Verdict.UNKNOWN, set_aside=aside)
    return Judgement(verdict=Verdict.UNCOVERED, set_aside=aside)


def _set_aside(weighed: Sequence[Weighed]) -> tuple[SetAside, ...]:
    return tuple(
        SetAside(one.said.line.identifier, lifter.by, lifter.because)
        for one in weighed
        for lifter in sorted(one.lifters, key=lambda lifter: lifter.rank)[:1]
    )


def once(every: Iterable[Said]) -> tuple[Said, ...]:
    """What was said, each instruction once."""
    return tuple({said.line.identifier: said for said in every}.values())


def _opens(every: Sequence[Said]) -> tuple[Open, ...]:
    return tuple(dict.fromkeys(item for said in every for item in said.open))
