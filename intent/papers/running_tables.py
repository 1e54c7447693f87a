"""How a work is set and switched on and off, as the installation book tells it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.scene import Scene
from intent.language.message import Words, named, say
from intent.model.naming import runs
from intent.model.phrasing import expression_words
from intent.papers.document import (
    Block,
    Column,
    Items,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    TableRole,
)
from intent.papers.inline import Break, Content, Inline
from intent.papers.statements_told import in_order
from intent.planning.concerns import SetAlike, set_alike
from intent.planning.switching import Switching, SwitchingStep, switching_of


def settings_section(scene: Scene) -> PaperSection:
    """What is to be set on which parts, as the record states it."""
    columns = (Column(say("parts"), 30), Column(say("setting")))
    rows = tuple(tuple(_settings(scene, one)) for one in set_alike(scene))
    table = PaperTable(columns=columns, rows=rows, role=TableRole.CHECKLIST, ticks=(say("set"),))
    remark = Paragraph(
        say(
            "What is not named here is not stated: leave it as it comes, and write it down if it is changed."
        ),
        ParagraphRole.QUIET,
    )
    return PaperSection(title=say("Settings"), anchor="settings", blocks=(table, remark) if rows else ())


def _settings(scene: Scene, alike: SetAlike) -> Iterator[Content]:
    yield runs(alike.parts)
    lines: list[Inline] = []
    for iri in in_order(scene.vocabulary, alike.statements):
        term = named(scene.vocabulary.named(iri))
        value = expression_words(alike.statements[iri], scene.vocabulary)
        lines += [Break.LINE] if lines else []
        lines.append(say("{subject}: {text}", subject=term, text=value))
    yield tuple(lines)


def switching_sections(scene: Scene) -> tuple[PaperSection, PaperSection]:
    """Starting, and shutting down."""
    switching = switching_of(scene)
    starting = (*_order(scene, switching.on), *_off(switching)) if switching.on else ()
    stopping = _order(scene, switching.off) if switching.off else ()
    return (
        PaperSection(title=say("Starting"), anchor="starting", blocks=starting),
        PaperSection(title=say("Shutting down"), anchor="stopping", blocks=stopping),
    )


def _order(scene: Scene, steps: Sequence[SwitchingStep]) -> tuple[Block, ...]:
    stated = any(step.is_stated for step in steps)
    usual = any(not step.is_stated for step in steps)
    if not stated:
        told = say("The documentation gives no order: this is the usual one (common practice, no source).")
    elif usual:
        told = say(
            "First in the order that the documentation gives; the rest in the usual one "
            "(common practice, no source)."
        )
    else:
        told = say("In the order that the documentation gives.")
    one_by_one = say("Switch one device after another, not all at once, and wait until each has settled.")
    return (
        Paragraph(told, ParagraphRole.LEADIN),
        Items(tuple(_step(scene, step) for step in steps), is_numbered=True),
        Paragraph(one_by_one, ParagraphRole.QUIET),
    )


def _step(scene: Scene, step: SwitchingStep) -> Words:
    """`display: L1 to L6`; of parts of several sorts their identifiers alone."""
    if not step.sort:
        return runs(step.parts)
    return say("{subject}: {text}", subject=scene.vocabulary.named(step.sort), text=runs(step.parts))


def _off(switching: Switching) -> Iterator[Block]:
    if switching.stays_off:
        yield Paragraph(say("These stay switched off: {parts}.", parts=runs(switching.stays_off)))
    if switching.unsaid:
        told = say(
            "Whether these are on while it is shown is not known: {parts}.", parts=runs(switching.unsaid)
        )
        yield Paragraph(told)
