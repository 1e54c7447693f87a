"""What changed between two states of a documentation, as a paper."""

from __future__ import annotations

import json
from collections.abc import Iterator

from intent.analysis.comparison.difference import Difference, ThingKind, What
from intent.analysis.comparison.turns import Turn, Turned
from intent.analysis.comparison.works import Comparison
from intent.language.locale import ENGLISH
from intent.language.message import Words, listed, opened, quoted, say
from intent.model.naming import subject_name
from intent.papers.document import Document, Items, PaperSection, Paragraph
from intent.papers.verdict_words import OUTCOME_WORDS
from intent.variance.result import VERDICT_WORDS, Verdict

TITLES = {
    ThingKind.WORK: say("The work"),
    ThingKind.INSTRUCTION: say("Instructions"),
    ThingKind.DUTY: say("Duties"),
    ThingKind.HEADING: say("Headings of instructions"),
    ThingKind.PART: say("Parts"),
    ThingKind.GROUP: say("Groups"),
    ThingKind.DEVICE: say("Devices"),
    ThingKind.PERSON: say("People"),
    ThingKind.SOURCE: say("Sources"),
    ThingKind.MATERIAL: say("Material"),
    ThingKind.CONNECTION: say("Connections"),
    ThingKind.BOX: say("Boxes"),
    ThingKind.LOG_ENTRY: say("Log"),
    ThingKind.TASK: say("Tasks"),
    ThingKind.EXPECTATION: say("Expectations"),
    ThingKind.SECTION: say("Sections"),
}
_NOT_JUDGED = say("not judged")


def comparison_paper(found: Comparison, turn: Turn | None = None) -> Document:
    """What changed; with what it does to an installation, if one was given."""
    sections = [*_sections(found), *([_turn_section(turn)] if turn else [])]
    unchanged = () if found.differences else (Paragraph(say("Nothing has changed.")),)
    return Document(
        title=say("{work}: what has changed", work=found.new.title), lead=unchanged, sections=tuple(sections)
    )


def _sections(found: Comparison) -> Iterator[PaperSection]:
    for sort, title in TITLES.items():
        told = tuple(difference_words(one) for one in found.differences if one.sort is sort)
        if told:
            yield PaperSection(title=title, anchor=f"changed-{sort.value}", blocks=(Items(told),))


def difference_words(one: Difference) -> Words:
    """`R1.2 is new: allowed: …`, `M1, rotation: turned left; before, upright.`"""
    detail = one.after or one.before
    match one.what:
        case What.ADDED if detail:
            return say("{thing} is new: {detail}.", thing=one.name, detail=detail)
        case What.ADDED:
            return say("{thing} is new.", thing=one.name)
        case What.GONE if detail:
            return say("{thing} is gone: {detail}.", thing=one.name, detail=detail)
        case What.GONE:
            return say("{thing} is gone.", thing=one.name)
        case What.WITHDRAWN:
            return say("{thing} is withdrawn from {date} on.", thing=one.name, date=one.after)
        case What.SUPERSEDED:
            return say("{thing} is superseded by {others}.", thing=one.name, others=one.after)
    return _change(one)


def _change(one: Difference) -> Words:
    about = (
        say("{thing}, {respect}", thing=one.name, respect=one.respect) if one.name else opened(one.respect)
    )
    before, after = (_shown(one, text) for text in (one.before, one.after))
    if not one.before:
        return say("{about}: {value}, where nothing was said before.", about=about, value=after)
    if not one.after:
        return say("{about}: nothing is said any more; before, {value}.", about=about, value=before)
    return say("{about}: {value}; before, {earlier}.", about=about, value=after, earlier=before)


def _shown(one: Difference, text: Words) -> Words:
    return quoted(text) if one.is_prose and isinstance(text, str) and text else text


def _turn_section(turn: Turn) -> PaperSection:
    after, before = OUTCOME_WORDS[turn.after], OUTCOME_WORDS[turn.before]
    if turn.before is turn.after:
        told = say("The outcome stays {outcome}.", outcome=after)
    else:
        told = say("The outcome is now {outcome}; before, {earlier}.", outcome=after, earlier=before)
    rows = [_turned(one) for one in turn.rows] or [say("No verdict changes.")]
    title = say("What it does to “{installation}”", installation=turn.title)
    return PaperSection(title=title, anchor="turned", blocks=(Items((told, *rows)),))


def _turned(one: Turned) -> Words:
    after = _verdict(one.after)
    if one.governing:
        after = say("{verdict} ({lines})", verdict=after, lines=listed(one.governing))
    return say(
        "{subject}, {characteristic}: {verdict}; before, {earlier}.",
        subject=subject_name(one.subject),
        characteristic=one.characteristic,
        verdict=after,
        earlier=_verdict(one.before),
    )


def _verdict(verdict: Verdict | None) -> Words:
    return VERDICT_WORDS[verdict] if verdict else _NOT_JUDGED


def comparison_json(found: Comparison, turn: Turn | None = None) -> str:
    """The same for programs, in English."""
    told: dict[str, object] = {
        "old": {"title": found.old.title, "iri": found.old.iri},
        "new": {"title": found.new.title, "iri": found.new.iri},
        "differences": [
            {
                "sort": one.sort.value,
                "name": ENGLISH.say(one.name),
                "what": one.what.value,
                "respect": ENGLISH.say(one.respect) or None,
                "before": ENGLISH.say(one.before) or None,
                "after": ENGLISH.say(one.after) or None,
            }
            for one in found.differences
        ],
    }
    if turn:
        told["installation"] = {
            "title": turn.title,
            "outcome": {"before": turn.before.value, "after": turn.after.value},
            "verdicts": [
                {
                    "subject": one.subject.written,
                    "characteristic": ENGLISH.say(one.characteristic),
                    "before": one.before.value if one.before else None,
                    "after": one.after.value if one.after else None,
                    "governing": list(one.governing),
                }
                for one in turn.rows
            ],
        }
    return json.dumps(told, ensure_ascii=False, indent=2) + "\n"
