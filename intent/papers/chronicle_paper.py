"""The history of a work, as a paper: each showing, then what departed, characteristic by characteristic."""

from __future__ import annotations

import json

from intent.analysis.history.chronicle import Chapter, Chronicle, PastShowing
from intent.language.calendar import span_words
from intent.language.locale import ENGLISH
from intent.language.message import Words, listed, opened, say, words
from intent.model.naming import person_words, subject_name
from intent.model.phrasing import NOT_GIVEN
from intent.model.work import Work
from intent.papers.document import Block, Column, Document, Items, PaperSection, PaperTable, Paragraph
from intent.papers.verdict_words import OUTCOME_WORDS
from intent.variance.result import VERDICT_WORDS, Variance


def chronicle_paper(told: Chronicle) -> Document:
    """How a work was shown."""
    lead: list[Block] = [Items(tuple(_showing(one) for one in told.variances))] if told.variances else []
    if not told.variances:
        lead.append(Paragraph(say("No installation that was carried out is kept beside the work.")))
    elif not told.chapters:
        lead.append(Paragraph(say("Nothing departed from the documentation.")))
    chapters = (
        PaperSection(
            title=_heading(one),
            anchor=f"chapter-{number}",
            blocks=(
                Paragraph(say("Documented as {value}.", value=one.documented or NOT_GIVEN)),
                _table(told.work, one),
            ),
        )
        for number, one in enumerate(told.chapters, start=1)
    )
    return Document(
        title=say("{work}: as it was shown", work=told.work.title), lead=tuple(lead), sections=tuple(chapters)
    )


def _showing(variance: Variance) -> Words:
    """`15 September 2023 to 31 March 2024: In the lower hall (Stadtgalerie Orrenbach); acceptable`."""
    one = variance.installation
    title = say("{title} ({venue})", title=one.title, venue=one.venue) if one.venue else one.title
    return say(
        "{dates}: {title}; {outcome}",
        dates=span_words(one.dates),
        title=title,
        outcome=OUTCOME_WORDS[variance.outcome],
    )


def _heading(chapter: Chapter) -> Words:
    name: Words = subject_name(chapter.subject)
    if chapter.name:
        name = say("{name} ({part})", name=chapter.name, part=name)
    return say("{subject}, {characteristic}", subject=opened(name), characteristic=chapter.characteristic)


def _table(work: Work, chapter: Chapter) -> PaperTable:
    titles = words("when", "where", "as shown", "verdict", "with the consent of")
    return PaperTable(
        columns=tuple(Column(title) for title in titles),
        rows=tuple(
            (
                span_words(one.installation.dates),
                one.installation.title,
                _value(one),
                VERDICT_WORDS[one.verdict] if one.verdict else "",
                listed(person_words(work, person) for person in one.consents),
            )
            for one in chapter.entries
        ),
    )


def _value(one: PastShowing) -> Words:
    value = one.value or NOT_GIVEN
    if not one.distance:
        return value
    return say("{value} ({distance} from what is documented)", value=value, distance=one.distance)


def chronicle_json(told: Chronicle) -> str:
    """The same for programs, in English."""
    installations = [
        {
            "title": one.installation.title,
            "iri": one.installation.iri,
            "date": one.installation.dates.first.isoformat(),
            "until": one.installation.dates.last.isoformat(),
            "venue": one.installation.venue,
            "outcome": one.outcome.value,
        }
        for one in told.variances
    ]
    history = [
        {
            "subject": chapter.subject.written,
            "characteristic": ENGLISH.say(chapter.characteristic),
            "documented": ENGLISH.say(chapter.documented),
            "entries": [_entry(one) for one in chapter.entries],
        }
        for chapter in told.chapters
    ]
    work = {"title": told.work.title, "iri": told.work.iri}
    whole = {"work": work, "installations": installations, "history": history}
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _entry(one: PastShowing) -> dict[str, object]:
    return {
        "installation": one.installation.iri,
        "date": one.installation.dates.first.isoformat(),
        "value": ENGLISH.say(one.value),
        "verdict": one.verdict.value if one.verdict else None,
        "consents": list(one.consents),
        "distance": ENGLISH.say(one.distance) or None,
    }
