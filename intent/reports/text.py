"""A report for the terminal: aligned, wrapped to the width, and complete without colour."""

from __future__ import annotations

from collections.abc import Iterator

from intent.reports.cautions import DEFERENCE
from intent.reports.departures import Departure
from intent.reports.layout import columns_of, items, labelled, wrapped
from intent.reports.prose import as_plain, shown
from intent.reports.story import Story
from intent.reports.wording import OUTCOMES, day_in_words, opening, quoted, sentence, uncapped, verdict_word
from intent.variance.result import Outcome, Verdict

NARROWEST = 40
"""Narrower than this, lines run over rather than break at every word."""
BOLD, RED, YELLOW, GREEN, PLAIN = "\x1b[1m", "\x1b[31m", "\x1b[33m", "\x1b[32m", "\x1b[0m"
OUTCOME_COLOURS = {Outcome.NOT_ACCEPTABLE: RED, Outcome.ACCEPTABLE: GREEN}
VERDICT_COLOURS = {Verdict.FORBIDDEN: RED, Verdict.BREACH: RED, Verdict.ALLOWED: GREEN}


def write_text(story: Story, *, width: int = 80, colour: bool = False) -> str:
    """The report as lines no wider than ``width`` columns; with ANSI colours only where asked for."""
    columns = max(width, NARROWEST)
    lines = [*_masthead(story, columns)]
    for title, body in _sections(story, columns, colour):
        lines.extend(["", _painted(title.upper(), BOLD, colour), "", *body])
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _masthead(story: Story, width: int) -> Iterator[str]:
    yield from wrapped(story.title, width)
    yield "=" * min(width, columns_of(shown(story.title)))
    yield from wrapped(story.byline, width)
    yield ""
    yield from wrapped(f"Variance report: {story.installation}", width)
    yield from wrapped(story.occasion, width)
    yield from wrapped(f"Reported on {day_in_words(story.evidence.date)}.", width)
    yield from _prose(story.work_note, width)


def _sections(story: Story, width: int, colour: bool) -> Iterator[tuple[str, list[str]]]:
    yield (
        "What is proposed",
        [
            *items(story.changes, width),
            *_prose(story.installation_note, width),
            *([""] if story.answers else []),
            *items(story.answers, width),
        ],
    )
    yield "Outcome", list(_outcome(story, width, colour))
    if story.departures:
        yield "Departures, worst first", list(_departures(story, width, colour))
    if story.effects:
        yield "What the change does", list(_effects(story, width))
    if story.findings:
        texts = [f"{one.subject}: {one.text}" if one.subject else one.text for one in story.findings]
        yield "Venue and devices", list(items(texts, width))
    if story.cautions:
        yield "Cautions", list(_cautions(story, width))
    if story.as_required or story.as_documented:
        yield "As required and as documented", list(_kept(story, width))
    yield "What this report rests on", list(_evidence(story, width))
    yield "Signatures", list(_signatures(story, width))


def _outcome(story: Story, width: int, colour: bool) -> Iterator[str]:
    word = OUTCOMES[story.outcome].upper()
    yield _painted(word, BOLD + OUTCOME_COLOURS.get(story.outcome, YELLOW), colour)
    yield from wrapped(story.outcome_sentence, width)
    if story.requests:
        yield from ["", "Who must be asked:"]
    for request in story.requests:
        yield from ["", *wrapped(request.name, width, "  ")]
        texts = [f"{one.text} ({one.whence})" if one.whence else one.text for one in request.questions]
        yield from items(texts, width, "    ")


def _departures(story: Story, width: int, colour: bool) -> Iterator[str]:
    for departure in story.departures:
        yield from _departure(departure, width, colour)
        yield ""
    yield "What the verdicts mean:"
    for word, meaning in story.meanings:
        yield from labelled(word, f"{meaning}.", width, "  ")


def _departure(departure: Departure, width: int, colour: bool) -> Iterator[str]:
    """Subject and characteristic; verdict and values; the words quoted; what prevails, falls, is open."""
    yield from wrapped(f"{departure.number}. {departure.title}", width, "", "   ")
    word = ", ".join(
        filter(None, [verdict_word(departure.verdict).upper(), departure.ground, departure.days])
    )
    verdict = list(labelled("verdict", word, width, "   "))
    painted = VERDICT_COLOURS.get(departure.verdict, YELLOW)
    yield from (line.replace(word, _painted(word, BOLD + painted, colour)) for line in verdict)
    yield from labelled("documented", departure.documented, width, "   ")
    yield from labelled("proposed", departure.proposed, width, "   ")
    if departure.concerns:
        yield from labelled("concerns", departure.concerns, width, "   ")
    for quotation in departure.quotations:
        yield ""
        yield from wrapped(quoted(quotation.words), width, "      ")
        yield from wrapped(quotation.attribution, width, "      ")
        if quotation.passages:
            from intent.reports.passages import found_at_line

            yield from wrapped(sentence(found_at_line(quotation.passages)), width, "      ")
        if quotation.reason:
            yield from wrapped(f"Reason given: {quotation.reason}", width, "      ")
    yield ""
    groups = [
        ("why", departure.reasons),
        (departure.speaking_label.casefold(), departure.speaking),
        ("also against", departure.also_against),
        ("set aside", departure.set_aside),
        ("open", departure.open),
        ("shown before", departure.shown_before),
    ]
    for label, texts in groups:
        for place, text in enumerate(texts):
            yield from labelled("" if place else label, text, width, "   ")


def _effects(story: Story, width: int) -> Iterator[str]:
    """By topic and part: the quantity on the left, its figures and what they mean beside it."""
    for place, topic in enumerate(story.effects):
        yield from ([""] if place else [])
        yield from wrapped(f"{topic.title}:", width)
        for affected in topic.affected:
            yield from wrapped(opening(affected.subjects), width, "  ", "    ")
            for one in affected.quantities:
                figures = f"{one.figures}: " if one.figures else ""
                meaning = f"{one.name}: {figures}{uncapped(one.meaning) if figures else one.meaning}"
                yield from items([meaning], width, "    ")
        if topic.missing:
            yield from wrapped(f"Not given, and needed to say more: {'; '.join(topic.missing)}.", width, "  ")
        if topic.sources:
            yield from wrapped(f"Computed from: {'; '.join(topic.sources)}.", width, "  ")


def _cautions(story: Story, width: int) -> Iterator[str]:
    for caution in story.cautions:
        yield from wrapped(f"{opening(caution.label)} ({caution.concerns})", width)
        yield from wrapped(caution.text, width, "   ")
    yield from ["", *wrapped(DEFERENCE, width)]


def _kept(story: Story, width: int) -> Iterator[str]:
    for label, kept in (("As required:", story.as_required), ("As documented:", story.as_documented)):
        if kept:
            yield label
            yield from items((f"{one.subjects}: {'; '.join(one.facts)}" for one in kept), width, "  ")


def _evidence(story: Story, width: int) -> Iterator[str]:
    for file in story.evidence.files:
        yield from wrapped(f"{opening(file.role.in_words)}: {file.name}", width)
        yield f"  SHA-256 {file.sha256}"
    yield from wrapped(
        f"Written by intent {story.evidence.version} on {day_in_words(story.evidence.date)}.", width
    )
    if story.notes:
        yield from ["", "Ignored or assumed:", *items(story.notes, width)]


def _signatures(story: Story, width: int) -> Iterator[str]:
    for signature in story.signatures:
        name = f"{signature.name}, who {signature.capacity}" if signature.capacity else signature.name
        yield from wrapped(name or "Name and role", width)
        rule = (width - 12) * 2 // 3
        yield from ["", f"  {'_' * rule}  {'_' * (width - 4 - rule)}", f"  {'signature':<{rule}}  date", ""]


def _prose(markdown: str, width: int) -> Iterator[str]:
    for paragraph in filter(None, as_plain(markdown).split("\n\n")):
        yield ""
        for line in paragraph.split("\n"):
            yield from wrapped(line, width)


def _painted(text: str, ansi: str, colour: bool) -> str:
    return f"{ansi}{text}{PLAIN}" if colour else text
