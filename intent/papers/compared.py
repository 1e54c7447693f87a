"""What changed between two states of a documentation, as text, Markdown or JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator

from intent.analysis.comparison.difference import Difference, ThingKind, What
from intent.analysis.comparison.turns import Turn, Turned
from intent.analysis.comparison.works import Comparison
from intent.papers.layout import items, wrapped
from intent.papers.prose import escaped
from intent.papers.wording import OUTCOMES, listed, opening, quoted, verdict_word
from intent.variance.result import Verdict

NOTHING = "Nothing has changed."
TITLES = {
    ThingKind.WORK: "The work",
    ThingKind.INSTRUCTION: "Instructions",
    ThingKind.HEADING: "Headings of instructions",
    ThingKind.PART: "Parts",
    ThingKind.GROUP: "Groups",
    ThingKind.DEVICE: "Devices",
    ThingKind.PERSON: "People",
    ThingKind.SOURCE: "Sources",
    ThingKind.MATERIAL: "Material",
    ThingKind.CONNECTION: "Connections",
    ThingKind.BOX: "Boxes",
    ThingKind.SECTION: "Sections",
}
_PROSE = {"words", "note", "reason", "afterword"}


def write_comparison(found: Comparison, turn: Turn | None, format: str = "text", *, width: int = 80) -> str:
    """The comparison in one of `text`, `markdown` and `json`; with what it does to an installation, if one is given."""
    if format == "json":
        return json.dumps(_for_programs(found, turn), ensure_ascii=False, indent=2) + "\n"
    sections = [*_sections(found), *(_turn_section(turn) if turn else ())]
    if format == "markdown":
        return _as_markdown(found, sections)
    lines = [*wrapped(f"{found.new.title}: what has changed", width)]
    for title, texts in sections:
        lines.extend(["", *wrapped(title, width), "", *items(texts, width)])
    return "\n".join([*lines, *([] if found.differences else ["", NOTHING])]) + "\n"


def _as_markdown(found: Comparison, sections: list[tuple[str, list[str]]]) -> str:
    blocks = [f"# {escaped(found.new.title)}: what has changed"]
    for title, texts in sections:
        blocks.extend([f"## {escaped(title)}", "\n".join(f"- {escaped(text)}" for text in texts)])
    return "\n\n".join(filter(None, [*blocks, "" if found.differences else NOTHING])) + "\n"


def _sections(found: Comparison) -> Iterator[tuple[str, list[str]]]:
    for sort, title in TITLES.items():
        told = [in_words(one) for one in found.differences if one.sort is sort]
        if told:
            yield title, told


def in_words(one: Difference) -> str:
    """`R1.2 is new: allowed: …`, `M1, rotation: turned left, before upright`."""
    detail = one.after or one.before
    match one.what:
        case What.ADDED:
            return f"{one.name} is new{f': {detail}' if detail else ''}."
        case What.GONE:
            return f"{one.name} is gone{f': {detail}' if detail else ''}."
        case What.WITHDRAWN:
            return f"{one.name} is withdrawn from {one.after} on."
        case What.SUPERSEDED:
            return f"{one.name} is superseded by {one.after}."
        case What.CHANGED:
            return _change(one)


def _change(one: Difference) -> str:
    about = f"{one.name}, {one.respect}" if one.name else opening(one.respect)
    before, after = (_shown(one.respect, text) for text in (one.before, one.after))
    if not one.before:
        return f"{about}: {after}, where nothing was said before."
    if not one.after:
        return f"{about}: nothing is said any more; before, {before}."
    return f"{about}: {after}; before, {before}."


def _shown(respect: str, text: str) -> str:
    return quoted(text) if respect in _PROSE and text else text


def _turn_section(turn: Turn) -> Iterator[tuple[str, list[str]]]:
    outcome = OUTCOMES[turn.after]
    if turn.before is turn.after:
        told = f"The outcome stays {outcome}."
    else:
        told = f"The outcome is now {outcome}; before, {OUTCOMES[turn.before]}."
    rows = [_turned(one) for one in turn.rows] or ["No verdict changes."]
    yield f"What it does to “{turn.title}”", [told, *rows]


def _turned(one: Turned) -> str:
    lines = f" ({listed(one.governing)})" if one.governing else ""
    return (
        f"{one.subject}, {one.characteristic}: {_verdict(one.after)}{lines}; before, {_verdict(one.before)}."
    )


def _verdict(verdict: Verdict | None) -> str:
    return verdict_word(verdict) if verdict else "not judged"


def _for_programs(found: Comparison, turn: Turn | None) -> dict[str, object]:
    told: dict[str, object] = {
        "old": {"title": found.old.title, "iri": found.old.iri},
        "new": {"title": found.new.title, "iri": found.new.iri},
        "differences": [
            {
                "sort": one.sort.value,
                "name": one.name,
                "what": one.what.value,
                "respect": one.respect or None,
                "before": one.before or None,
                "after": one.after or None,
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
                    "subject": one.subject,
                    "characteristic": one.characteristic,
                    "before": one.before.value if one.before else None,
                    "after": one.after.value if one.after else None,
                    "governing": list(one.governing),
                }
                for one in turn.rows
            ],
        }
    return told
