"""A case as the two texts that a registrar would write."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from oracle.cases import Answer, Case, Line, Place
from oracle.world import Written

Cells = Mapping[str, str]


def work_text(case: Case) -> str:
    """The documentation."""
    people = [
        {
            "person": person.name,
            "name": f"Person {person.name}",
            "role": person.role,
            "authority": person.authority,
            "until": person.until.text,
            "successor": person.successor,
        }
        for person in case.people
    ]
    blocks = [
        "# A Small Work\n\n- artist: Ina Fellmark\n- number: 1\n- owner: Museum of Small Things",
        "## People\n\n" + table(("person", "name", "role", "authority", "until", "successor"), people),
        "## Parts",
        *_groups(case.places),
        "## Devices\n\n"
        + table(("device",), [{"device": name} | words(of) for name, of in case.devices.items()]),
    ]
    if case.work:
        blocks.append("## Whole work\n\n" + _list(words(case.work)))
    if case.lines:
        blocks.append("## Instructions")
        blocks += [_heading(list(lines)) for _, lines in groupby(case.lines, lambda line: line.heading)]
    return "\n\n".join(blocks) + "\n"


def installation_text(case: Case) -> str:
    """The proposal."""
    blocks = [f"# A Proposal\n\n- work: work.md\n- dates: {case.first}/{case.last}"]
    if case.venue:
        blocks.append("## Venue\n\n" + _list(words(case.venue)))
    if case.work_changes:
        blocks.append("## Whole work\n\n" + _list(words(case.work_changes)))
    if case.substitutions:
        rows = [
            {"part": place.name, "device": place.device} | words(place.cells) for place in case.substitutions
        ]
        blocks.append("## Substitutions\n\n" + table(("part", "device"), rows))
    if case.changes:
        rows = [{"part": name} | words(of) for name, of in case.changes.items()]
        blocks.append("## Changes\n\n" + table(("part",), rows))
    if case.omissions:
        blocks.append("## Omissions\n\n" + "\n".join(f"- {name}: no room" for name in case.omissions))
    if case.additions:
        blocks.append(
            "## Additions\n\n" + table(("part", "kind", "group"), [_place(place) for place in case.additions])
        )
    if case.answers:
        blocks.append(
            "## Consents\n\n"
            + table(
                ("person", "to", "answer", "for", "value", "terms", "date", "until"),
                [_answer(answer) for answer in case.answers],
            )
        )
    if case.attested:
        facts = [{"fact": fact, "holds": "yes" if holds else "no"} for fact, holds in case.attested.items()]
        blocks.append("## Attestations\n\n" + table(("fact", "holds"), facts))
    return "\n\n".join(blocks) + "\n"


def words(cells: Mapping[str, Written]) -> dict[str, str]:
    return {name: written.text for name, written in cells.items()}


def table(first: Sequence[str], rows: Iterable[Cells]) -> str:
    """A table with these columns and any more that its rows have, widths evened out."""
    found = list(rows)
    columns = list(dict.fromkeys([*first, *(name for row in found for name in row)]))
    lines = [columns, ["---"] * len(columns), *([row.get(name, "") for name in columns] for row in found)]
    return "\n".join("| " + " | ".join(line) + " |" for line in lines)


def _list(cells: Cells) -> str:
    return "\n".join(f"- {name}: {text}" for name, text in cells.items())


def _place(place: Place) -> dict[str, str]:
    return {"part": place.name, "kind": place.kind, "group": place.group} | words(place.cells)


def _groups(places: Sequence[Place]) -> list[str]:
    blocks = []
    for group in dict.fromkeys(place.group for place in places):
        members = [place for place in places if place.group == group]
        rows = [{"part": place.name, "device": place.device} | words(place.cells) for place in members]
        blocks.append(f"### {group}\n\n- kind: {members[0].kind}\n\n" + table(("part", "device"), rows))
    return blocks


def _answer(answer: Answer) -> dict[str, str]:
    return {
        "person": answer.person,
        "to": answer.to,
        "answer": "" if answer.yes is None else "yes" if answer.yes else "no",
        "for": ", ".join(answer.parts),
        "value": answer.value.text if answer.value else "",
        "terms": f'"{answer.terms}"' if answer.terms else "",
        "date": answer.date.text,
        "until": answer.until.text,
    }


def _heading(lines: Sequence[Line]) -> str:
    shared = lines[0]
    items = [f"- {line.modality}: {_sentence(line)}" for line in lines]
    items += [f"- by: {shared.by}"] * bool(shared.by)
    items += [f"- on: {shared.on.text}"] * bool(shared.on.text)
    items += [f"- ground: {shared.ground}"] * (shared.ground != "intent")
    items += [f"- withdrawn: {shared.withdrawn.text}"] * bool(shared.withdrawn.text)
    if shared.lifted_by is not None:
        items.append(f"- lifted by: {', '.join(shared.lifted_by) or 'nobody'}")
    items += [f"- supersedes: {', '.join(shared.supersedes)}"] * bool(shared.supersedes)
    return f"### {shared.heading} Something said\n\n" + "\n".join(items)


def _sentence(line: Line) -> str:
    clauses = [line.saying.text, *(condition.text for condition in line.conditions)]
    clauses += [f"with consent of {person}" for person in line.consents]
    clauses += [f"{('first', 'second', 'third')[line.choice - 1]} choice"] * bool(line.choice)
    clauses += [f"until {line.until.text}"] * bool(line.until.text)
    return ", ".join(clauses)
