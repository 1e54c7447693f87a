"""A report as Markdown (CommonMark with tables), for a letter, a file beside the work's own, or a wiki."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from intent.language.message import Tongue, say
from intent.papers.cautions import DEFERENCE
from intent.papers.departures import Departure
from intent.papers.headings import (
    CAUTIONS,
    CONTENTS,
    DEPARTURES,
    EFFECTS,
    EVIDENCE,
    FINDINGS,
    KEPT,
    OUTCOME,
    PROPOSED,
    SIGNATURES,
    WHERE_FOUND,
)
from intent.papers.instructions_told import Quotation, reason_given
from intent.papers.kept import kept_lists
from intent.papers.passages_told import shown_passages, whereabouts
from intent.papers.prose import as_markdown, escaped
from intent.papers.report_evidence import written_by
from intent.papers.story import LONG, Story
from intent.papers.wording import OUTCOMES, closed, day_in_words, opening, quoted, verdict_word


def write_markdown(story: Story) -> str:
    """The report as Markdown; nothing that its writers put in it becomes markup, except their own prose."""
    sections = [(title, list(body)) for title, body in _sections(story)]
    blocks = list(_masthead(story))
    if len(story.departures) > LONG:
        blocks.extend(_contents(story, [title for title, _ in sections]))
    for title, body in sections:
        blocks.extend([f"## {story.tongue.tell(title)}", *body])
    return "\n\n".join(filter(None, blocks)) + "\n"


def _escaped(text: str, tongue: Tongue) -> str:
    """What is told, in the language of the report, as Markdown shows it."""
    return escaped(tongue.tell(text))


def _masthead(story: Story) -> Iterator[str]:
    tongue = story.tongue
    yield f"# {escaped(story.title)}"
    yield escaped(story.byline)
    head = _escaped(say("Variance report: {installation}", installation=story.installation), tongue)
    yield f"**{head}.** {escaped(story.occasion)}"
    yield tongue.say("Reported on {date}.", date=day_in_words(story.evidence.date))
    yield as_markdown(story.work_note)


def _contents(story: Story, titles: Iterable[str]) -> Iterator[str]:
    tongue = story.tongue
    yield f"**{tongue.tell(CONTENTS)}**"
    lines = []
    for title in titles:
        beside = tongue.tell(OUTCOMES[story.outcome]) if title == OUTCOME else ""
        lines.append(f"- {_entry(tongue.tell(title), beside, tongue)}")
        if title == DEPARTURES:
            lines.extend(f"  - {_departure_entry(one, tongue)}" for one in story.departures)
    yield "\n".join(lines)


def _departure_entry(departure: Departure, tongue: Tongue) -> str:
    heading = f"{departure.number}. {tongue.tell(departure.title)}"
    return _entry(heading, tongue.tell(verdict_word(departure.verdict)), tongue)


def _entry(heading: str, beside: str, tongue: Tongue) -> str:
    link = _link(heading)
    return tongue.say("{subject}: {text}", subject=link, text=beside) if beside else link


def _link(heading: str) -> str:
    """A link to a heading by the anchor that most renderers give it: lower case, hyphens, no punctuation."""
    anchor = re.sub(r"[^\w\- ]", "", heading.casefold()).replace(" ", "-")
    return f"[{escaped(heading)}](#{anchor})"


def _sections(story: Story) -> Iterator[tuple[str, Iterator[str]]]:
    yield PROPOSED, _proposal(story)
    yield OUTCOME, _outcome(story)
    if story.departures:
        yield DEPARTURES, _departures(story)
    if story.effects:
        yield EFFECTS, _effects(story)
    if story.findings:
        yield FINDINGS, iter([_list((one.told for one in story.findings), story.tongue)])
    if story.cautions:
        yield CAUTIONS, _cautions(story)
    if story.as_required or story.as_documented:
        yield KEPT, _kept(story)
    yield EVIDENCE, _evidence(story)
    yield SIGNATURES, _signatures(story)
    found = list(whereabouts(shown_passages(story.departures)))
    if found:
        notes = (f"[^{one.name}]: {_escaped(closed(told), story.tongue)}" for one, told in found)
        yield WHERE_FOUND, notes


def _proposal(story: Story) -> Iterator[str]:
    yield _list(story.changes, story.tongue)
    yield as_markdown(story.installation_note)
    yield _list(story.answers, story.tongue)


def _outcome(story: Story) -> Iterator[str]:
    tongue = story.tongue
    yield f"**{tongue.tell(opening(OUTCOMES[story.outcome]))}.** {escaped(story.outcome_sentence)}"
    if story.requests:
        yield tongue.say("Who must be asked:")
    for request in story.requests:
        yield f"### {escaped(request.name)}"
        yield _list((one.told for one in request.questions), tongue)


def _departures(story: Story) -> Iterator[str]:
    for departure in story.departures:
        yield from _departure(departure, story.tongue)
    yield story.tongue.say("What the verdicts mean:")
    meanings = [
        story.tongue.say("{subject}: {text}", subject=f"**{word}**", text=escaped(closed(meaning)))
        for word, meaning in story.meanings
    ]
    yield "\n".join(f"- {meaning}" for meaning in meanings)


def _departure(departure: Departure, tongue: Tongue) -> Iterator[str]:
    yield f"### {departure.number}. {_escaped(departure.title, tongue)}"
    verdict = f"**{tongue.tell(verdict_word(departure.verdict))}**"
    word = ", ".join(filter(None, [verdict, departure.ground, departure.days]))
    yield _table(
        [tongue.say("verdict"), tongue.say("documented"), tongue.say("proposed")],
        [[word, escaped(departure.documented), escaped(departure.proposed)]],
    )
    if departure.concerns:
        yield _escaped(say("Concerns: {parts}.", parts=departure.concerns), tongue)
    for quotation in departure.quotations:
        yield _quotation(quotation, tongue)
    told = [
        (tongue.tell(opening(say("{heading}:", heading=label))), text)
        for label, texts in departure.told
        for text in texts
    ]
    yield "\n".join(f"- *{label}* {_escaped(text, tongue)}" for label, text in told)


def _quotation(quotation: Quotation, tongue: Tongue) -> str:
    marks = "".join(f"[^{one.name}]" for one, _ in whereabouts(quotation.passages))
    words = _escaped(quoted(quotation.words), tongue)
    lines = [f"> {words}{marks}", ">", f"> {escaped(quotation.attribution)}"]
    if quotation.reason:
        lines.extend([">", f"> {_escaped(reason_given(quotation.reason), tongue)}"])
    return "\n".join(lines)


def _effects(story: Story) -> Iterator[str]:
    tongue = story.tongue
    header = [
        tongue.say("quantity"),
        tongue.say("documented"),
        tongue.say("proposed"),
        tongue.say("what it means"),
    ]
    for topic in story.effects:
        yield f"### {topic.title}"
        for affected in topic.affected:
            yield f"*{escaped(opening(affected.subjects))}*"
            rows = [
                list(map(escaped, (one.name, one.documented, one.proposed, one.meaning)))
                for one in affected.quantities
            ]
            yield _table(header, rows)
        yield from (_escaped(text, tongue) for text in topic.remarks)


def _cautions(story: Story) -> Iterator[str]:
    lines = [
        f"**{escaped(opening(caution.label))}** ({escaped(caution.concerns)})" for caution in story.cautions
    ]
    texts = [
        story.tongue.say("{subject}: {text}", subject=line, text=escaped(caution.text))
        for line, caution in zip(lines, story.cautions, strict=True)
    ]
    yield "\n".join(f"- {text}" for text in texts)
    yield story.tongue.tell(DEFERENCE)


def _kept(story: Story) -> Iterator[str]:
    for label, kept in kept_lists(story.as_required, story.as_documented):
        yield story.tongue.tell(label)
        yield _list((one.told for one in kept), story.tongue)


def _evidence(story: Story) -> Iterator[str]:
    tongue = story.tongue
    rows = [
        [tongue.tell(file.role.in_words), escaped(file.name), f"`{file.sha256}`"]
        for file in story.evidence.files
    ]
    if rows:
        yield _table([tongue.say("role"), tongue.say("file"), "SHA-256"], rows)
    yield _escaped(written_by(story.evidence), tongue)
    if story.notes:
        yield tongue.say("Ignored or assumed:")
        yield _list(story.notes, tongue)


def _signatures(story: Story) -> Iterator[str]:
    tongue = story.tongue
    header = [tongue.say("name and role"), tongue.say("signature"), tongue.say("date")]
    yield _table(header, [[_escaped(line.told, tongue) or " ", " ", " "] for line in story.signatures])


def _list(texts: Iterable[str], tongue: Tongue) -> str:
    return "\n".join(f"- {_escaped(text, tongue)}" for text in texts)


def _table(header: list[str], rows: list[list[str]]) -> str:
    lines = [header, ["---"] * len(header), *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
