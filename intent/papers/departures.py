"""The departures of a variance as a report tells them: like ones together, each with all said of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from intent.analysis.spares import spares_as_documented
from intent.language.calendar import span_words
from intent.language.message import Words, closed, joined, listed, opened, quoted, say, say_of, sentence
from intent.model.naming import (
    FEW,
    find_part,
    person_words,
    runs,
    subject_name,
    subject_words,
    subjects_by_name,
)
from intent.model.phrasing import NOT_GIVEN
from intent.model.subject import Subject, SubjectKind
from intent.names import PRESENCE
from intent.papers.inline import Content
from intent.papers.instructions_told import QuotedWords, quotations, set_aside_words, with_source
from intent.papers.verdict_words import ground_words
from intent.variance.causes import Cause, causes, proposed_words
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Departure:
    """One way in which the proposal departs from what is documented, for one subject or several alike."""

    number: int
    subject: Words
    """The subject by name, or how many there are."""
    concerns: Words
    """All the subjects, where the heading only counts them."""
    characteristic: Words
    documented: Words
    proposed: Words
    verdict: Verdict
    ground: Words
    """`for safety`; nothing where the ground is the artist's intent."""
    days: Words
    gist: Words
    """What is proposed, in one phrase: `technology LCD for left window (M1)`."""
    reasons: tuple[Words, ...]
    quotations: tuple[QuotedWords, ...]
    speaking: tuple[Content, ...]
    """The instructions that govern, each as a sentence."""
    also_against: tuple[Content, ...]
    """What would stand against it still, if what governs were lifted."""
    set_aside: tuple[Content, ...]
    offered: tuple[Content, ...]
    """What is allowed in its place, by instructions and by spares."""
    open: tuple[Words, ...]
    rows: tuple[Row, ...]
    is_added: bool
    """Whether it is that a part is there which is not documented."""

    @property
    def anchor(self) -> str:
        """Its name in links."""
        return f"departure-{self.number}"

    @property
    def title(self) -> Words:
        return say("{subject}: {text}", subject=opened(self.subject), text=self.characteristic)

    @property
    def matter(self) -> Words:
        """What a question asks about: `left window (M1), technology: LCD instead of cathode-ray tube`."""
        if self.documented == self.proposed == NOT_GIVEN:
            value: Words = NOT_GIVEN
        elif self.documented == self.proposed:
            value = say("{value}, as documented", value=self.proposed)
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
    def speaking_label(self) -> Words:
        """What to call the instructions that govern: with a contradiction, none of them prevails."""
        if self.verdict is Verdict.CONTRADICTION:
            return say("in conflict")
        if self.verdict is Verdict.UNKNOWN:
            return say("speaks of it")
        return say("prevails") if self.set_aside else say("governs")


def departures(variance: Variance) -> tuple[Departure, ...]:
    """Worst first, then in the order of the variance; rows of one cause are one."""
    found = enumerate(causes(variance.departures), start=1)
    return tuple(_departure(variance, place, rows) for place, rows in found)


def _departure(variance: Variance, number: int, rows: Cause) -> Departure:
    work, first = variance.work, rows[0]
    subjects = [row.subject for row in rows]
    fallen = [line for line in map(work.instruction, (one.instruction for one in first.set_aside)) if line]
    behind = first.governing or fallen
    headings = {line.heading for line in behind}
    added = {part.identifier for part in variance.installation.additions}
    return Departure(
        number=number,
        subject=subjects_by_name(work, variance.installation, subjects),
        concerns=_every_subject(variance, subjects),
        characteristic=first.characteristic,
        documented=_one_of(row.documented or NOT_GIVEN for row in rows),
        proposed=first.proposed or NOT_GIVEN,
        verdict=first.verdict,
        ground=ground_words(first.ground),
        days=span_words(first.days),
        gist=proposed_words(variance, rows),
        reasons=tuple(dict.fromkeys(sentence(row.reason) for row in rows if row.reason)),
        quotations=quotations(work, behind),
        speaking=tuple(with_source(work, line) for line in first.governing),
        also_against=tuple(with_source(work, line) for line in first.also_against),
        set_aside=tuple(set_aside_words(work, one, headings) for one in first.set_aside),
        offered=_offered(variance, rows),
        open=tuple(open_words(variance, item) for item in merged(first.open)),
        rows=tuple(rows),
        is_added=first.term == str(PRESENCE) and not added.isdisjoint(first.subject.members),
    )


def _offered(variance: Variance, rows: Cause) -> tuple[Content, ...]:
    lines = {line.identifier: line for row in rows for line in row.offered}
    return (*(with_source(variance.work, line) for line in lines.values()), *_spare_words(variance, rows))


def _spare_words(variance: Variance, rows: Cause) -> Iterator[Words]:
    """The spares that are as documented, for each part where one is."""
    for row in rows:
        spares = spares_as_documented(variance, row)
        if spares:
            yield say_of(
                len(spares),
                "The spare {devices} is as documented for {part}.",
                "The spares {devices} are as documented for {part}.",
                devices=runs([one.identifier for one in spares]),
                part=subject_words(variance.work, variance.installation, row.subject),
            )


def _one_of(values: Iterable[Words]) -> Words:
    """The value that they all have."""
    found = tuple(dict.fromkeys(values))
    return found[0] if len(found) == 1 else say("various")


def _every_subject(variance: Variance, subjects: Sequence[Subject]) -> Words:
    """All the subjects, where a heading only counts them."""
    work, installation = variance.work, variance.installation
    if len(subjects) <= FEW:
        return ""
    parts = [
        find_part(work, installation, one.members[0]) for one in subjects if one.kind is SubjectKind.PART
    ]
    if any(part and part.name for part in parts):
        return listed(subject_words(work, installation, subject) for subject in subjects)
    return runs([subject_name(subject) for subject in subjects])


def merged(items: Sequence[Open]) -> tuple[tuple[Open, tuple[str, ...]], ...]:
    """What is open, each thing once, with all the instructions for which it is."""
    instructions: dict[Open, dict[str, None]] = {}
    for item in items:
        named = instructions.setdefault(replace(item, instruction=None), {})
        named.update({item.instruction: None} if item.instruction else {})
    return tuple((item, tuple(named)) for item, named in instructions.items())


def open_words(variance: Variance, opened_for: tuple[Open, tuple[str, ...]]) -> Words:
    """One thing that is open, as a sentence."""
    item, lines = opened_for
    who = person_words(variance.work, item.person)
    match item.kind:
        case OpenKind.CONSENT if item.ends:
            told = say(
                "The consent of {person} ends on {date}, before the showing does",
                person=who or say("a person not named"),
                date=item.ends,
            )
            return _closed_for(told, lines)
        case OpenKind.CONSENT if item.denied:
            told = say(
                "The consent of {person} no longer counts, since it is attested that this is not so: “{fact}”",
                person=who or say("a person not named"),
                fact=item.denied,
            )
            return _closed_for(told, lines)
        case OpenKind.CONSENT:
            missing = say("The consent of {person} is not recorded", person=who or say("a person not named"))
            return joined([_closed_for(missing, lines), sentence(item.text)])
        case OpenKind.ATTESTATION:
            could = say("{person} could say.", person=opened(who)) if who else ""
            return joined([_closed_for(_fact_missing(item), lines), could])
    return _closed_for(opened(missing_words(item)), lines)


def _closed_for(text: Words, lines: Sequence[str]) -> Words:
    """What is open, with the instructions for which it is: `… (R1.2).`"""
    return closed(say("{text} ({lines})", text=text, lines=tuple(lines)) if lines else text)


def _fact_missing(item: Open) -> Words:
    fact = quoted(item.text)
    if item.answer:
        return say("It is not attested that {fact}", fact=fact)
    return say("It is not attested that this is not so: {fact}", fact=fact)


def missing_words(item: Open) -> Words:
    """What is not known: whether M3 is below M1, or a value."""
    what = item.text or say("value")
    if item.kind is OpenKind.STATEMENT:
        return say("it is not known whether {statement}", statement=what)
    return say("not known well enough: {value}", value=what)
