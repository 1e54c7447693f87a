"""The departures of a variance as a report tells them: like ones together, each with all said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from intent.reports.instructions import Quotation, quotations, set_aside_in_words, told_with_source
from intent.reports.naming import person_in_words, subjects_in_words
from intent.reports.wording import GROUNDS, NOT_GIVEN, date_in_words, given, listed, opening, quoted, sentence
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict


@dataclass(frozen=True, slots=True)
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
    shown_before: tuple[str, ...] = ()
    """What earlier installations have shown of it, and how many steps lead to it."""

    @property
    def title(self) -> str:
        return f"{opening(self.subject)}: {self.characteristic}"

    @property
    def matter(self) -> str:
        """What a question asks about: `left window (M1), technology: LCD instead of cathode-ray tube`."""
        if self.documented == self.proposed:
            value = NOT_GIVEN if self.proposed == NOT_GIVEN else f"{self.proposed}, as documented"
        elif self.proposed == NOT_GIVEN:
            value = f"{NOT_GIVEN}, but documented as {self.documented}"
        elif self.documented == NOT_GIVEN:
            value = f"{self.proposed}, where nothing is documented"
        else:
            value = f"{self.proposed} instead of {self.documented}"
        return f"{self.subject}, {self.characteristic}: {value}"

    @property
    def speaking_label(self) -> str:
        """What to call the instructions that govern: with a contradiction, none of them prevails."""
        if self.verdict is Verdict.CONTRADICTION:
            return "In conflict"
        if self.verdict is Verdict.UNKNOWN:
            return "Speaks of it"
        return "Prevails" if self.set_aside else "Governs"


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
        ground=GROUNDS.get(first.ground, f"on the ground of {first.ground}"),
        days=date_in_words(first.days),
        reasons=_reasons(rows),
        quotations=words,
        speaking=tuple(told_with_source(work, line) for line in first.governing),
        also_against=tuple(told_with_source(work, line) for line in first.also_against),
        set_aside=tuple(set_aside_in_words(work, fallen, headings) for fallen in first.set_aside),
        open=tuple(open_in_words(variance, item) for item in merged(first.open)),
        rows=tuple(rows),
    )


def _reasons(rows: Sequence[Row]) -> tuple[str, ...]:
    """Why, each reason once; one that names its own subject stands for the others too."""
    shared = dict.fromkeys(sentence(row.reason) for row in rows if row.reason)
    if len(shared) <= 1:
        return tuple(shared)
    unnamed = {row.reason.replace(row.subject, "") for row in rows}
    return (
        (f"{rows[0].subject}: {sentence(rows[0].reason)} The same holds for the others.",)
        if (len(unnamed) == 1)
        else tuple(shared)
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
    about = f" ({item.instruction})" if item.instruction else ""
    who = person_in_words(variance.work, item.person)
    match item.kind:
        case OpenKind.CONSENT:
            detail = f" {sentence(item.text)}" if item.text else ""
            return f"The consent of {who or 'a person not named'} is not recorded{about}.{detail}"
        case OpenKind.ATTESTATION:
            fact = f"that {quoted(item.text)}" if item.answer else f"that this is not so: {quoted(item.text)}"
            return f"It is not attested {fact}{about}.{f' {opening(who)} could say.' if who else ''}"
        case OpenKind.VALUE:
            return f"{opening(missing_in_words(item))}{about}."


def missing_in_words(item: Open) -> str:
    """What is not known: `whether M3 is below M1`, or a value."""
    what = item.text.strip().rstrip(".") or "a value"
    return f"it is not known whether {what}" if " is " in what else f"the {what} is not known well enough"
