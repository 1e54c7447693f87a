"""The history of a work as text, Markdown or JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator

from intent.analysis.history.chronicle import Chapter, Chronicle, Showing
from intent.model.work import Work
from intent.papers.layout import items, wrapped
from intent.papers.naming import person_in_words
from intent.papers.prose import escaped
from intent.papers.wording import OUTCOMES, date_in_words, given, listed, opening, verdict_word
from intent.variance.result import Variance

NOTHING = "No installation that was carried out is kept beside the work."
NO_DEPARTURE = "Nothing departed from the documentation."


def write_chronicle(told: Chronicle, format: str = "text", *, width: int = 80) -> str:
    """The history in one of `text`, `markdown` and `json`."""
    if format == "json":
        return json.dumps(_for_programs(told), ensure_ascii=False, indent=2) + "\n"
    return _as_markdown(told) if format == "markdown" else _as_text(told, width)


def _as_text(told: Chronicle, width: int) -> str:
    lines = [*wrapped(f"{told.work.title}: as it was shown", width), ""]
    lines.extend(items((_showing(one) for one in told.variances), width) if told.variances else [NOTHING])
    for chapter in told.chapters:
        lines.extend(["", *wrapped(_heading(chapter), width)])
        for entry in chapter.entries:
            lines.extend(wrapped(_entry(told.work, entry), width, "  ", "      "))
    if told.variances and not told.chapters:
        lines.extend(["", NO_DEPARTURE])
    return "\n".join(lines) + "\n"


def _as_markdown(told: Chronicle) -> str:
    blocks = [f"# {escaped(told.work.title)}: as it was shown"]
    blocks.append("\n".join(f"- {escaped(_showing(one))}" for one in told.variances) or NOTHING)
    for chapter in told.chapters:
        blocks.append(f"## {escaped(_heading(chapter))}")
        blocks.append("\n".join(_table(told.work, chapter)))
    if told.variances and not told.chapters:
        blocks.append(NO_DEPARTURE)
    return "\n\n".join(blocks) + "\n"


def _table(work: Work, chapter: Chapter) -> Iterator[str]:
    yield "| when | where | as shown | verdict | with the consent of |"
    yield "| --- | --- | --- | --- | --- |"
    for entry in chapter.entries:
        cells = [
            date_in_words(entry.installation.dates),
            entry.installation.title,
            _value(entry),
            verdict_word(entry.verdict) if entry.verdict else "",
            _people(work, entry),
        ]
        yield f"| {' | '.join(escaped(cell) or ' ' for cell in cells)} |"


def _showing(variance: Variance) -> str:
    """`15 September 2023 to 31 March 2024: In the lower hall (Stadtgalerie Orrenbach); acceptable`."""
    one = variance.installation
    venue = f" ({one.venue})" if one.venue else ""
    return f"{date_in_words(one.dates)}: {one.title}{venue}; {OUTCOMES[variance.outcome]}"


def _heading(chapter: Chapter) -> str:
    name = f"{chapter.name} ({chapter.subject})" if chapter.name else chapter.subject
    return f"{opening(name)}, {chapter.characteristic}: documented as {given(chapter.documented)}"


def _entry(work: Work, entry: Showing) -> str:
    """`2023 film duplicate; allowed; with the consent of …; In the lower hall, winter 2023`."""
    verdict = verdict_word(entry.verdict) if entry.verdict else ""
    people = _people(work, entry)
    consent = f"with the consent of {people}" if people else ""
    told = "; ".join(filter(None, [_value(entry), verdict, consent, entry.installation.title]))
    return f"{entry.installation.dates.first}: {told}"


def _value(entry: Showing) -> str:
    away = f" ({entry.distance} from what is documented)" if entry.distance not in {"", "0", "0 m"} else ""
    return f"{given(entry.value)}{away}"


def _people(work: Work, entry: Showing) -> str:
    return listed([person_in_words(work, person) for person in entry.consents])


def _for_programs(told: Chronicle) -> dict[str, object]:
    return {
        "work": {"title": told.work.title, "iri": told.work.iri},
        "installations": [
            {
                "title": one.installation.title,
                "iri": one.installation.iri,
                "date": one.installation.dates.first.isoformat(),
                "until": one.installation.dates.last.isoformat(),
                "venue": one.installation.venue,
                "outcome": one.outcome.value,
            }
            for one in told.variances
        ],
        "history": [
            {
                "subject": chapter.subject,
                "characteristic": chapter.characteristic,
                "documented": chapter.documented,
                "entries": [
                    {
                        "installation": entry.installation.iri,
                        "date": entry.installation.dates.first.isoformat(),
                        "value": entry.value,
                        "verdict": entry.verdict.value if entry.verdict else None,
                        "consents": list(entry.consents),
                        "distance": entry.distance or None,
                    }
                    for entry in chapter.entries
                ],
            }
            for chapter in told.chapters
        ],
    }
