"""A report for the terminal: aligned, wrapped to the width, and complete without colour."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from intent.language.message import Tongue, say
from intent.papers.cautions import DEFERENCE
from intent.papers.departures import Departure
from intent.papers.headings import (
    CAUTIONS,
    DEPARTURES,
    EFFECTS,
    EVIDENCE,
    FINDINGS,
    KEPT,
    OUTCOME,
    PROPOSED,
    SIGNATURES,
)
from intent.papers.instructions_told import Quotation, reason_given
from intent.papers.kept import kept_lists
from intent.papers.layout import columns_of, items, labelled, wrapped
from intent.papers.prose import as_plain, shown
from intent.papers.report_evidence import written_by
from intent.papers.story import Story
from intent.papers.wording import OUTCOMES, closed, day_in_words, opening, quoted, sentence, verdict_word
from intent.variance.result import Outcome, Verdict

NARROWEST = 40
"""Narrower than this, lines run over rather than break at every word."""
BOLD, RED, YELLOW, GREEN, PLAIN = "\x1b[1m", "\x1b[31m", "\x1b[33m", "\x1b[32m", "\x1b[0m"
OUTCOME_COLOURS = {Outcome.NOT_ACCEPTABLE: RED, Outcome.ACCEPTABLE: GREEN}
VERDICT_COLOURS = {Verdict.FORBIDDEN: RED, Verdict.BREACH: RED, Verdict.ALLOWED: GREEN}


@dataclass(frozen=True, slots=True)
class Terminal:
    """What the lines are laid out for."""

    width: int
    colour: bool
    tongue: Tongue

    def wrapped(self, text: str, first: str = "", rest: str | None = None) -> Iterator[str]:
        return wrapped(self.tongue.tell(text), self.width, first, rest)

    def items(self, texts: Iterable[str], indent: str = "") -> Iterator[str]:
        return items(map(self.tongue.tell, texts), self.width, indent)

    def labelled(self, label: str, text: str, indent: str = "") -> Iterator[str]:
        return labelled(self.tongue.tell(label), self.tongue.tell(text), self.width, indent)

    def painted(self, text: str, ansi: str) -> str:
        return f"{ansi}{text}{PLAIN}" if self.colour else text


def write_text(story: Story, *, width: int = 80, colour: bool = False) -> str:
    """The report as lines no wider than ``width`` columns; with ANSI colours only where asked for."""
    sheet = Terminal(max(width, NARROWEST), colour, story.tongue)
    lines = [*_masthead(story, sheet)]
    for title, body in _sections(story, sheet):
        heading = sheet.painted(story.tongue.tell(title).upper(), BOLD)
        lines.extend(["", heading, "", *body])
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _masthead(story: Story, sheet: Terminal) -> Iterator[str]:
    yield from sheet.wrapped(story.title)
    yield "=" * min(sheet.width, columns_of(shown(story.title)))
    yield from sheet.wrapped(story.byline)
    yield ""
    yield from sheet.wrapped(say("Variance report: {installation}", installation=story.installation))
    yield from sheet.wrapped(story.occasion)
    yield from sheet.wrapped(say("Reported on {date}.", date=day_in_words(story.evidence.date)))
    yield from _prose(story.work_note, sheet)


def _sections(story: Story, sheet: Terminal) -> Iterator[tuple[str, list[str]]]:
    yield PROPOSED, list(_proposal(story, sheet))
    yield OUTCOME, list(_outcome(story, sheet))
    if story.departures:
        yield DEPARTURES, list(_departures(story, sheet))
    if story.effects:
        yield EFFECTS, list(_effects(story, sheet))
    if story.findings:
        yield FINDINGS, list(sheet.items(one.told for one in story.findings))
    if story.cautions:
        yield CAUTIONS, list(_cautions(story, sheet))
    if story.as_required or story.as_documented:
        yield KEPT, list(_kept(story, sheet))
    yield EVIDENCE, list(_evidence(story, sheet))
    yield SIGNATURES, list(_signatures(story, sheet))


def _proposal(story: Story, sheet: Terminal) -> Iterator[str]:
    yield from sheet.items(story.changes)
    yield from _prose(story.installation_note, sheet)
    yield from ([""] if story.answers else [])
    yield from sheet.items(story.answers)


def _outcome(story: Story, sheet: Terminal) -> Iterator[str]:
    word = story.tongue.tell(OUTCOMES[story.outcome]).upper()
    yield sheet.painted(word, BOLD + OUTCOME_COLOURS.get(story.outcome, YELLOW))
    yield from sheet.wrapped(story.outcome_sentence)
    if story.requests:
        yield ""
        yield from sheet.wrapped(say("Who must be asked:"))
    for request in story.requests:
        yield ""
        yield from sheet.wrapped(request.name, "  ")
        yield from sheet.items((one.told for one in request.questions), "    ")


def _departures(story: Story, sheet: Terminal) -> Iterator[str]:
    for departure in story.departures:
        yield from _departure(departure, sheet)
        yield ""
    yield from sheet.wrapped(say("What the verdicts mean:"))
    for word, meaning in story.meanings:
        yield from sheet.labelled(word, closed(meaning), "  ")


def _departure(departure: Departure, sheet: Terminal) -> Iterator[str]:
    """Subject and characteristic; verdict and values; the words quoted; what prevails, falls, is open."""
    title = sheet.tongue.tell(departure.title)
    yield from sheet.wrapped(f"{departure.number}. {title}", "", "   ")
    verdict = sheet.tongue.tell(verdict_word(departure.verdict)).upper()
    word = ", ".join(filter(None, [verdict, departure.ground, departure.days]))
    painted = sheet.painted(word, BOLD + VERDICT_COLOURS.get(departure.verdict, YELLOW))
    for line in sheet.labelled(say("verdict"), word, "   "):
        yield line.replace(word, painted)
    yield from sheet.labelled(say("documented"), departure.documented, "   ")
    yield from sheet.labelled(say("proposed"), departure.proposed, "   ")
    if departure.concerns:
        yield from sheet.labelled(say("concerns"), departure.concerns, "   ")
    for quotation in departure.quotations:
        yield from _quotation(quotation, sheet)
    yield ""
    for label, texts in departure.told:
        for place, text in enumerate(texts):
            yield from sheet.labelled("" if place else label, text, "   ")


def _quotation(quotation: Quotation, sheet: Terminal) -> Iterator[str]:
    yield ""
    yield from sheet.wrapped(quoted(quotation.words), "      ")
    yield from sheet.wrapped(quotation.attribution, "      ")
    if quotation.passages:
        from intent.papers.passages_told import found_at_line

        yield from sheet.wrapped(sentence(found_at_line(quotation.passages)), "      ")
    if quotation.reason:
        yield from sheet.wrapped(reason_given(quotation.reason), "      ")


def _effects(story: Story, sheet: Terminal) -> Iterator[str]:
    """By topic and part: the quantity on the left, its figures and what they mean beside it."""
    for place, topic in enumerate(story.effects):
        yield from ([""] if place else [])
        yield from sheet.wrapped(say("{heading}:", heading=topic.title))
        for affected in topic.affected:
            yield from sheet.wrapped(opening(affected.subjects), "  ", "    ")
            yield from sheet.items((one.told for one in affected.quantities), "    ")
        yield from (line for text in topic.remarks for line in sheet.wrapped(text, "  "))


def _cautions(story: Story, sheet: Terminal) -> Iterator[str]:
    for caution in story.cautions:
        yield from sheet.wrapped(caution.title)
        yield from sheet.wrapped(caution.text, "   ")
    yield ""
    yield from sheet.wrapped(DEFERENCE)


def _kept(story: Story, sheet: Terminal) -> Iterator[str]:
    for label, kept in kept_lists(story.as_required, story.as_documented):
        yield from sheet.wrapped(label)
        yield from sheet.items((one.told for one in kept), "  ")


def _evidence(story: Story, sheet: Terminal) -> Iterator[str]:
    for file in story.evidence.files:
        yield from sheet.wrapped(
            say("{subject}: {text}", subject=opening(file.role.in_words), text=file.name)
        )
        yield f"  SHA-256 {file.sha256}"
    yield from sheet.wrapped(written_by(story.evidence))
    if story.notes:
        yield ""
        yield from sheet.wrapped(say("Ignored or assumed:"))
        yield from sheet.items(story.notes)


def _signatures(story: Story, sheet: Terminal) -> Iterator[str]:
    signature, date = sheet.tongue.say("signature"), sheet.tongue.say("date")
    for line in story.signatures:
        yield from sheet.wrapped(line.told or opening(say("name and role")))
        rule = (sheet.width - 12) * 2 // 3
        yield from [
            "",
            f"  {'_' * rule}  {'_' * (sheet.width - 4 - rule)}",
            f"  {signature:<{rule}}  {date}",
            "",
        ]


def _prose(markdown: str, sheet: Terminal) -> Iterator[str]:
    for paragraph in filter(None, as_plain(markdown).split("\n\n")):
        yield ""
        for line in paragraph.split("\n"):
            yield from wrapped(line, sheet.width)
