"""The departures of a variance as a report tells them: like ones together, each with all said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from intent.language.message import joined, say
from intent.papers.instructions_told import Quotation, quotations, set_aside_in_words, told_with_source
from intent.papers.naming import person_in_words, subjects_in_words
from intent.papers.wording import (
    GROUNDS,
    NOT_GIVEN,
    closed,
    date_in_words,
    given,
    listed,
    opening,
    quoted,
    sentence,
)
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict

_PRESENCE = "https://w3id.org/intent-record/term/presence"


@dataclass(frozen=True, slots=True, kw_only=True)
class Departure:
    """One way in which the proposal departs from what is documented, for one subject or several alike."""

    number: int
    subject: str
    """The subject by name, or how many there are."""
    concerns: str
    """All the subjects, where the heading only counts them."""
    characteristic: str
    documented: str
    proposed: str
    verdict: Verdict
    ground: str
    """`for safety`; nothing where the ground is the artist's intent."""
    days: str
    reasons: tuple[str, ...]
    quotations: tuple[Quotation, ...]
    speaking: tuple[str, ...]
    """The instructions that govern, each as a sentence."""
    also_against: tuple[str, ...]
    """What would stand against it still, if what governs were lifted."""
    set_aside: tuple[str, ...]
    open: tuple[str, ...]
    rows: tuple[Row, ...]
    is_documented: bool = True
    """Whether its subjects are parts of the documented work, or something that it knows."""
    shown_before: tuple[str, ...] = ()
    """What earlier installations have shown of it, and how many steps lead to it."""

    @property
    def title(self) -> str:
        return say("{subject}: {text}", subject=opening(self.subject), text=self.characteristic)

    @property
    def matter(self) -> str:
        """What a question asks about: `left window (M1), technology: LCD instead of cathode-ray tube`."""
        if self.documented == self.proposed:
            value = (
                NOT_GIVEN
                if self.proposed == NOT_GIVEN
                else say("{value}, as documented", value=self.proposed)
            )
        elif self.proposed == NOT_GIVEN:
            value = say("not given, but documented as {documented}", documented=self.documented)
        elif self.documented == NOT_GIVEN:
            value = say("{value}, where nothing is documented", value=self.proposed)
        else:
            value = say("{value} instead of {documented}", value=self.proposed, documented=self.documented)
        return say(
            "{subject}, {characteristic}: {value}",
            subject=self.subject,
            characteristic=self.characteristic,
            value=value,
        )

    @property
    def told(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """Why, what speaks, what stands against it besides, what is set aside and what is open, each with its label."""
        every = (
            (say("why"), self.reasons),
            (self.speaking_label, self.speaking),
            (say("also against"), self.also_against),
            (say("set aside"), self.set_aside),
            (say("open"), self.open),
            (say("shown before"), self.shown_before),
        )
        return tuple((label, texts) for label, texts in every if texts)

    @property
    def adds(self) -> bool:
        """Whether it is the presence of a part that is not documented."""
        return self.rows[0].term == _PRESENCE and not self.is_documented

    @property
    def speaking_label(self) -> str:
        """What to call the instructions that govern: with a contradiction, none of them prevails."""
        if self.verdict is Verdict.CONTRADICTION:
            return say("in conflict")
        if self.verdict is Verdict.UNKNOWN:
            return say("speaks of it")
        return say("prevails") if self.set_aside else say("governs")


def departures(variance: Variance) -> tuple[Departure, ...]:
    """Worst first, then in the order of the variance; rows alike in everything but their subject are one."""
    groups: dict[Row, list[Row]] = {}
    for row in sorted(variance.departures, key=lambda row: -row.verdict.badness):
        groups.setdefault(_likeness(row), []).append(row)
    return tuple(_departure(variance, place, rows) for place, rows in enumerate(groups.values(), start=1))


def _likeness(row: Row) -> Row:
    """The row without its subject: what two departures must share to be told as one."""
    return replace(row, subject="", members=(), reason="")


def _departure(variance: Variance, number: int, rows: Sequence[Row]) -> Departure:
    work, first = variance.work, rows[0]
    subject, concerns = subjects_in_words(variance, [(row.subject, row.members) for row in rows])
    fallen = [line for line in map(work.instruction, (one.instruction for one in first.set_aside)) if line]
    behind = first.governing or fallen
    words, headings = quotations(work, behind), {line.heading for line in behind}
    return Departure(
        number=number,
        subject=subject,
        concerns=concerns,
        characteristic=first.characteristic,
        documented=given(first.documented),
        proposed=given(first.proposed),
        verdict=first.verdict,
        ground=GROUNDS.get(first.ground, say("on the ground of {ground}", ground=first.ground)),
        days=date_in_words(first.days),
        reasons=_reasons(rows),
        quotations=words,
        speaking=tuple(told_with_source(work, line) for line in first.governing),
        also_against=tuple(told_with_source(work, line) for line in first.also_against),
        set_aside=tuple(set_aside_in_words(work, fallen, headings) for fallen in first.set_aside),
        open=tuple(open_in_words(variance, item) for item in merged(first.open)),
        rows=tuple(rows),
        is_documented=first.subject not in {one.identifier for one in variance.installation.additions},
    )


def _reasons(rows: Sequence[Row]) -> tuple[str, ...]:
    """Why, each reason once; one that names its own subject stands for the others too."""
    shared = dict.fromkeys(sentence(row.reason) for row in rows if row.reason)
    if len(shared) <= 1:
        return tuple(shared)
    unnamed = {row.reason.replace(row.subject, "") for row in rows}
    if len(unnamed) > 1:
        return tuple(shared)
    reason = sentence(rows[0].reason)
    return (
        say("{subject}: {reason} The same holds for the others.", subject=rows[0].subject, reason=reason),
    )


def merged(items: Sequence[Open]) -> tuple[Open, ...]:
    """What is open, each thing once, with all the instructions for which it is."""
    instructions: dict[Open, list[str]] = {}
    for item in items:
        named = instructions.setdefault(replace(item, instruction=None), [])
        named.extend([item.instruction] if item.instruction and item.instruction not in named else [])
    return tuple(replace(item, instruction=listed(named) or None) for item, named in instructions.items())


def open_in_words(variance: Variance, item: Open) -> str:
    """One thing that is open, as a sentence."""
    who = person_in_words(variance.work, item.person)
    match item.kind:
        case OpenKind.CONSENT:
            return joined([_consent_missing(item, who), sentence(item.text)])
        case OpenKind.ATTESTATION:
            could = say("{person} could say.", person=opening(who)) if who else ""
            return joined([_fact_missing(item), could])
        case OpenKind.VALUE:
            return closed(_for_lines(opening(missing_in_words(item)), item))


def _for_lines(text: str, item: Open) -> str:
    """What is open, with the instructions for which it is: `… (R1.2)`."""
    if not item.instruction:
        return text
    return say("{text} ({lines})", text=text, lines=item.instruction)


def _consent_missing(item: Open, who: str) -> str:
    giver = who or say("a person not named")
    return closed(_for_lines(say("The consent of {person} is not recorded", person=giver), item))


def _fact_missing(item: Open) -> str:
    if item.answer:
        missing = say("It is not attested that {fact}", fact=quoted(item.text))
    else:
        missing = say("It is not attested that this is not so: {fact}", fact=quoted(item.text))
    return closed(_for_lines(missing, item))


def missing_in_words(item: Open) -> str:
    """What is not known: `whether M3 is below M1`, or a value."""
    what = item.text if item.text.strip() else say("value")
    if " is " in what:
        return say("it is not known whether {statement}", statement=what)
    return say("the {value} is not known well enough", value=what)
