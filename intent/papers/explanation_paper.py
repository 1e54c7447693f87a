"""What governs a part, a group or a work on a day, as a paper: for which values, by whom, in whose words."""

from __future__ import annotations

from collections.abc import Iterator

from intent.analysis.explanation.explain import Account, Explanation
from intent.analysis.explanation.explained_duty import ExplainedDuty
from intent.analysis.explanation.explained_line import Explained
from intent.analysis.explanation.governing import Fate, Stretch
from intent.language.calendar import day_words
from intent.language.message import Place, Words, listed, opened, quoted, say, say_of
from intent.model.duty import Duty
from intent.model.instruction_text import modality_term
from intent.model.work import Instruction, Work
from intent.papers.document import (
    Block,
    Document,
    FactLine,
    Facts,
    Items,
    PaperSection,
    Paragraph,
    ParagraphRole,
    Quotation,
)
from intent.papers.instructions_told import TypesetDuty, TypesetSentence, as_written, because_words
from intent.papers.verdict_words import ground_words
from intent.variance.result import VERDICT_WORDS, SetAside, Verdict


def explanation_paper(account: Account) -> Document:
    """Each characteristic with what is documented, what holds for which values, and each instruction in its words."""
    said: set[str] = set()
    sections = [
        PaperSection(
            title=opened(
                say("{subject}, {characteristic}", subject=one.subject, characteristic=one.characteristic)
            ),
            anchor=f"explained-{number}",
            blocks=tuple(_blocks(one, account.work, said)),
        )
        for number, one in enumerate(account.explanations, start=1)
    ]
    if account.duties:
        blocks = tuple(block for one in account.duties for block in _duty(account.work, one, said))
        sections.append(PaperSection(title=say("To be done"), anchor="duties", blocks=blocks))
    nothing = Paragraph(say("Nothing is documented, and no instruction speaks of it."))
    title = say("{work}, on {day}", work=account.work.title, day=day_words(account.day))
    return Document(title=title, lead=() if sections else (nothing,), sections=tuple(sections))


def _blocks(one: Explanation, work: Work, said: set[str]) -> Iterator[Block]:
    """The words of a heading stand once, at the first of its instructions that is told."""
    documented = tuple(_documented(value, whose) for value, whose in one.documented)
    if documented:
        yield Facts((FactLine(say("documented"), documented),))
    if not one.instructions:
        yield Paragraph(say("No instruction speaks of it."))
    aside = dict.fromkeys(fallen for stretch in one.stretches for fallen in stretch.fate.set_aside)
    told = (*map(_stretch, one.stretches), *(_set_aside(work, fallen) for fallen in aside))
    if told:
        yield Items(told)
    for instruction in one.instructions:
        yield from _instruction(work, instruction, said)


def _documented(value: Words, whose: Words) -> Words:
    return say("{value} ({whose})", value=value, whose=whose) if whose else value


def _stretch(stretch: Stretch) -> Words:
    return say("{values}: {fate}", values=stretch.values, fate=_fate(stretch.fate))


def _fate(fate: Fate) -> Words:
    by, number = listed(fate.governing), len(fate.governing)
    match fate.verdict:
        case None:
            return say("nobody asks")
        case Verdict.FORBIDDEN:
            return say("forbidden by {lines}", lines=by)
        case Verdict.BREACH:
            return say("against {lines}", lines=by)
        case Verdict.CONTRADICTION:
            return say("{lines} contradict each other, and no rule says which prevails", lines=by)
        case Verdict.UNKNOWN if fate.open:
            return say("perhaps against {lines}, until {needed}", lines=by, needed=fate.open)
        case Verdict.UNKNOWN:
            return say("perhaps against {lines}", lines=by)
        case Verdict.UNCOVERED:
            return say("only where it is so documented")
        case Verdict.CONDITIONAL:
            return say("allowed by {lines}, once {needed}", lines=by, needed=fate.open)
        case Verdict.AS_REQUIRED:
            return say_of(number, "as {lines} requires", "as {lines} require", lines=by)
        case Verdict.ALLOWED:
            return say("allowed by {lines}", lines=by)
    return VERDICT_WORDS[fate.verdict]


def _set_aside(work: Work, fallen: SetAside) -> Words:
    return say(
        "{line} gives way to {other} there: {reason}",
        line=fallen.instruction,
        other=fallen.by,
        reason=because_words(work, fallen),
    )


def _instruction(work: Work, told: Explained, said: set[str]) -> Iterator[Block]:
    line = told.line
    places: dict[str, Place] = {
        "line": line.identifier,
        "modality": modality_term(line.modality, work.vocabulary),
        "sentence": TypesetSentence(work, line),
    }
    holds = say("{line} {modality}: {sentence}", **places)
    state = holds if told.holds else say("{line} {modality}: {sentence} (does not hold)", **places)
    yield Paragraph((state, as_written(work, line)), ParagraphRole.LEADIN)
    yield from _quoted_once(line, told, said)


def _duty(work: Work, told: ExplainedDuty, said: set[str]) -> Iterator[Block]:
    duty = told.duty
    places: dict[str, Place] = {"line": duty.identifier, "sentence": TypesetDuty(work, duty)}
    holds = say("{line}: {sentence}", **places)
    state = holds if told.holds else say("{line}: {sentence} (does not hold)", **places)
    yield Paragraph((state, as_written(work, duty)), ParagraphRole.LEADIN)
    yield from _quoted_once(duty, told, said)


def _quoted_once(
    line: Instruction | Duty, told: Explained | ExplainedDuty, said: set[str]
) -> Iterator[Block]:
    """The particulars of a line and its words; those of its heading only under the first of its lines."""
    yield Items(tuple(_particulars(told, said)))
    if line.heading not in said and told.heading.words:
        yield Quotation(words=quoted(told.heading.words))
    if line.words:
        yield Quotation(words=quoted(line.words))
    said.add(line.heading)


def _particulars(told: Explained | ExplainedDuty, said: set[str]) -> Iterator[Words]:
    """Who gave it and when, why it does not hold, and its source."""
    line = told.duty if isinstance(told, ExplainedDuty) else told.line
    ground = ground_words(line.ground)
    giver = say("{giver}, {ground}", giver=told.giver, ground=ground) if ground else told.giver
    yield say("{giver}: {dates}", giver=giver, dates=told.dates)
    if isinstance(told, Explained) and told.because:
        yield told.because
    if line.heading in said:
        yield say("words and source as under {heading} above", heading=line.heading)
    else:
        yield told.cited or say("no source is named")
