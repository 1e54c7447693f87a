"""Where everything goes, by group: each part with its device, its place, which way up, on what, and its channel."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.handling.resting import sure_carriers
from intent.effects.scene import Scene
from intent.language.message import Words, joined, named, opened, say
from intent.model.phrasing import NOT_GIVEN
from intent.model.work import Part
from intent.papers.cards.lengths import METRES, is_display, origin_of, position_words
from intent.papers.cards.posture import lying_of
from intent.papers.cards.signals import part_named
from intent.papers.document import Block, Column, PaperSection, PaperTable, Paragraph, ParagraphRole
from intent.papers.inline import Content, with_below

_COLUMNS = (
    Column(say("part"), 16),
    Column(say("device"), 14),
    Column(say("where")),
    Column(say("which way up"), 14),
    Column(say("on what"), 11),
    Column(say("channel"), 9),
)


def placing_section(scene: Scene) -> PaperSection:
    """One table a group, every part that is there in it once; what belongs to no group stands under its kind."""
    groups: dict[Words, list[Part]] = {}
    carriers = sure_carriers(scene)
    for part in scene.parts():
        groups.setdefault(_title(scene, part), []).append(part)
    tables = (
        PaperSection(title=title, blocks=(_table(scene, parts, carriers),), anchor=f"place-{place}")
        for place, (title, parts) in enumerate(groups.items(), start=1)
    )
    return PaperSection(
        title=say("Where everything goes"),
        anchor="places",
        blocks=(Paragraph(_measured_from(scene), ParagraphRole.QUIET), *tables),
    )


def _title(scene: Scene, part: Part) -> Words:
    """The group of a part; what is added to no group stands together, anything else with its kind."""
    if part.group:
        return part.group
    is_added = part in scene.case.installation.additions
    return say("Added for this showing") if is_added else opened(named(part.kind))


def _measured_from(scene: Scene) -> Words:
    origin = origin_of(scene.case.work)
    if not origin:
        return say(
            "Positions are of the middle of the picture, else of the part. "
            "Where they are measured from is not given."
        )
    return say(
        "Positions are of the middle of the picture, else of the part. The zero is {origin}.", origin=origin
    )


def _table(scene: Scene, parts: list[Part], carriers: Mapping[str, str]) -> Block:
    """A column in which no part of the group has anything is left out."""
    rows = [tuple(_cells(scene, part, carriers)) for part in parts]
    told = [place for place in range(len(_COLUMNS)) if any(row[place] for row in rows)]
    return PaperTable(
        columns=tuple(_COLUMNS[place] for place in told),
        rows=tuple(tuple(row[place] for place in told) for row in rows),
    )


def _cells(scene: Scene, part: Part, carriers: Mapping[str, str]) -> Iterator[Content]:
    name = part.identifier
    yield with_below(part.identifier, part.name)
    yield device_content(scene, name)
    told = position_words(scene, name, METRES)
    yield with_below(told, scene.text(name, "position")) if told else NOT_GIVEN
    lying = lying_of(scene, name, hangs=is_display(scene, part.identifier), depth=0.0)
    yield joined(lying.words, ", ") if lying else ""
    on = carriers.get(name)
    yield with_below(scene.text(name, "support"), part_named(scene, on) if on else "")
    yield scene.text(name, "channel")


def device_content(scene: Scene, part: str) -> Content:
    """The device in a part's place, and below it maker and model; else its technology."""
    make = joined(scene.text(part, name) for name in ("maker", "model"))
    return with_below(scene.device(part) or "", make or scene.text(part, "technology"))
