"""A report as Markdown (CommonMark with tables), for a letter, a file beside the work's own, or a wiki."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from intent.reports.cautions import DEFERENCE
from intent.reports.departures import Departure
from intent.reports.instructions import Quotation
from intent.reports.passages import shown_passages, whereabouts
from intent.reports.prose import as_markdown, escaped
from intent.reports.story import LONG, Story
from intent.reports.wording import OUTCOMES, day_in_words, opening, quoted, verdict_word

OUTCOME, DEPARTURES = "Outcome", "Departures, worst first"


def write_markdown(story: Story) -> str:
    """The report as Markdown; nothing that its writers put in it becomes markup, except their own prose."""
    sections = [(title, list(body)) for title, body in _sections(story)]
    blocks = list(_masthead(story))
    if len(story.departures) > LONG:
        blocks.extend(_contents(story, [title for title, _ in sections]))
    for title, body in sections:
        blocks.extend([f"## {title}", *body])
    return "\n\n".join(filter(None, blocks)) + "\n"


def _masthead(story: Story) -> Iterator[str]:
    yield f"# {escaped(story.title)}"
    yield escaped(story.byline)
    yield f"**Variance report: {escaped(story.installation)}.** {escaped(story.occasion)}"
    yield f"Reported on {day_in_words(story.evidence.date)}."
    yield as_markdown(story.work_note)


def _contents(story: Story, titles: Iterable[str]) -> Iterator[str]:
    yield "**Contents**"
    lines = []
    for title in titles:
        lines.append(f"- {_link(title)}{f': {OUTCOMES[story.outcome]}' if title == OUTCOME else ''}")
        if title == DEPARTURES:
            named = [(f"{one.number}. {one.title}", verdict_word(one.verdict)) for one in story.departures]
            lines.extend(f"  - {_link(heading)}: {verdict}" for heading, verdict in named)
    yield "\n".join(lines)


def _link(heading: str) -> str:
    """A link to a heading by the anchor that most renderers give it: lower case, hyphens, no punctuation."""
    anchor = re.sub(r"[^\w\- ]", "", heading.casefold()).replace(" ", "-")
    return f"[{escaped(heading)}](#{anchor})"


def _sections(story: Story) -> Iterator[tuple[str, Iterator[str]]]:
    yield "What is proposed", _proposal(story)
    yield OUTCOME, _outcome(story)
    if story.departures:
        yield DEPARTURES, _departures(story)
    if story.effects:
        yield "What the change does", _effects(story)
    if story.findings:
        yield "Venue and devices", _findings(story)
    if story.cautions:
        yield "Cautions", _cautions(story)
    if story.as_required or story.as_documented:
        yield "As required and as documented", _kept(story)
    yield "What this report rests on", _evidence(story)
    yield "Signatures", _signatures(story)
    found = list(whereabouts(shown_passages(story.departures)))
    if found:
        yield "Where the words quoted are found", (f"[^{one.name}]: {escaped(told)}." for one, told in found)


def _proposal(story: Story) -> Iterator[str]:
    yield _list(story.changes)
    yield as_markdown(story.installation_note)
    yield _list(story.answers)


def _outcome(story: Story) -> Iterator[str]:
    yield f"**{opening(OUTCOMES[story.outcome])}.** {escaped(story.outcome_sentence)}"
    if story.requests:
        yield "Who must be asked:"
    for request in story.requests:
        yield f"### {escaped(request.name)}"
        yield _list(f"{one.text} ({one.whence})" if one.whence else one.text for one in request.questions)


def _departures(story: Story) -> Iterator[str]:
    for departure in story.departures:
        yield from _departure(departure)
    yield "What the verdicts mean:"
    yield "\n".join(f"- **{word}**: {escaped(meaning)}." for word, meaning in story.meanings)


def _departure(departure: Departure) -> Iterator[str]:
    yield f"### {departure.number}. {escaped(departure.title)}"
    word = ", ".join(
        filter(None, [f"**{verdict_word(departure.verdict)}**", departure.ground, departure.days])
    )
    yield _table(
        ["verdict", "documented", "proposed"],
        [[word, escaped(departure.documented), escaped(departure.proposed)]],
    )
    if departure.concerns:
        yield f"Concerns: {escaped(departure.concerns)}."
    for quotation in departure.quotations:
        yield _quotation(quotation)
    groups = [
        ("Why", departure.reasons),
        (departure.speaking_label, departure.speaking),
        ("Also against", departure.also_against),
        ("Set aside", departure.set_aside),
        ("Open", departure.open),
        ("Shown before", departure.shown_before),
    ]
    yield "\n".join(f"- *{label}:* {escaped(text)}" for label, texts in groups for text in texts)


def _quotation(quotation: Quotation) -> str:
    marks = "".join(f"[^{one.name}]" for one, _ in whereabouts(quotation.passages))
    lines = [f"> {escaped(quoted(quotation.words))}{marks}", ">", f"> {escaped(quotation.attribution)}"]
    if quotation.reason:
        lines.extend([">", f"> Reason given: {escaped(quotation.reason)}"])
    return "\n".join(lines)


def _effects(story: Story) -> Iterator[str]:
    for topic in story.effects:
        yield f"### {topic.title}"
        for affected in topic.affected:
            yield f"*{escaped(opening(affected.subjects))}*"
            rows = [
                list(map(escaped, (one.name, one.documented, one.proposed, one.meaning)))
                for one in affected.quantities
            ]
            yield _table(["quantity", "documented", "proposed", "what it means"], rows)
        if topic.missing:
            yield f"Not given, and needed to say more: {escaped('; '.join(topic.missing))}."
        if topic.sources:
            yield f"Computed from: {escaped('; '.join(topic.sources))}."


def _findings(story: Story) -> Iterator[str]:
    yield _list(f"{one.subject}: {one.text}" if one.subject else one.text for one in story.findings)


def _cautions(story: Story) -> Iterator[str]:
    lines = [
        f"- **{escaped(opening(caution.label))}** ({escaped(caution.concerns)}): {escaped(caution.text)}"
        for caution in story.cautions
    ]
    yield "\n".join(lines)
    yield DEFERENCE


def _kept(story: Story) -> Iterator[str]:
    for label, kept in (("As required:", story.as_required), ("As documented:", story.as_documented)):
        if kept:
            yield label
            yield _list(f"{one.subjects}: {'; '.join(one.facts)}" for one in kept)


def _evidence(story: Story) -> Iterator[str]:
    rows = [[file.role.in_words, escaped(file.name), f"`{file.sha256}`"] for file in story.evidence.files]
    if rows:
        yield _table(["role", "file", "SHA-256"], rows)
    yield f"Written by intent {escaped(story.evidence.version)} on {day_in_words(story.evidence.date)}."
    if story.notes:
        yield "Ignored or assumed:"
        yield _list(story.notes)


def _signatures(story: Story) -> Iterator[str]:
    rows = [
        [escaped(f"{line.name}, who {line.capacity}" if line.capacity else line.name) or " ", " ", " "]
        for line in story.signatures
    ]
    yield _table(["name and role", "signature", "date"], rows)


def _list(texts: Iterable[str]) -> str:
    return "\n".join(f"- {escaped(text)}" for text in texts)


def _table(header: list[str], rows: list[list[str]]) -> str:
    lines = [header, ["---"] * len(header), *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
