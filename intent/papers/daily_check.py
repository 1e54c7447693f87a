"""The daily check of a work while it is shown: switching, what visitors should find, and what recurs."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene
from intent.language.message import Words, joined, listed, say
from intent.model.naming import runs
from intent.names import THE_WORK
from intent.papers.cards.lengths import is_display
from intent.papers.cards.posture import lying_of
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
from intent.papers.duties_told import ToldDuty, duty_checklist
from intent.papers.inline import Content, with_below
from intent.papers.wiring_tables import material_words
from intent.planning.channel_plan import ChannelPlan
from intent.planning.switching import switching_of
from intent.values.sets import Answer

_FOUND = (
    Column(say("parts"), 26),
    Column(say("which way up"), 30),
    Column(say("channel")),
    Column(say("played by"), 14),
)
_LOG = (Column(say("date"), 18), Column(say("looked at by"), 26), Column(say("what was not as it should be")))
_DAYS = 7
"""Lines of the log: a week's."""


def daily_section(plan: ChannelPlan, recurring: tuple[ToldDuty, ...], signed: Column) -> PaperSection:
    """What is looked at and done again and again; nothing where nothing is shown, sounds or recurs."""
    scene = plan.sides.proposed
    rows = tuple(_alike(plan))
    blocks: list[Block] = []
    if rows:
        table = PaperTable(columns=_FOUND, rows=rows, role=TableRole.CHECKLIST, ticks=(say("right"),))
        blocks += [Items(tuple(_steps(scene)), is_numbered=True), table]
    if recurring:
        blocks += [Paragraph(say("To be done again and again:"), ParagraphRole.LEADIN)]
        blocks += duty_checklist(recurring, signed)
    if blocks:
        log = PaperTable(columns=_LOG, rows=(("",),) * _DAYS, role=TableRole.CHECKLIST)
        kept = Paragraph(say("A line for each day; copy the page for further weeks."), ParagraphRole.LEADIN)
        blocks += [kept, log]
    return PaperSection(title=say("Daily check"), anchor="daily", blocks=tuple(blocks))


def _steps(scene: Scene) -> Iterator[Words]:
    """What is done on each day, in this order: going round and writing down is common practice, no source."""
    yield from _switched(scene)
    yield say(
        "Go round as a visitor does: each part lies as the table below says, "
        "shows or sounds its channel, and what plays it plays on."
    )
    yield say(
        "Leave what is not so untouched and unopened, write it down, "
        "and call somebody named under “Whom to call”."
    )


def _switched(scene: Scene) -> Iterator[Words]:
    """When the work runs, and what follows for switching."""
    if not switching_of(scene).on:
        return
    if not scene.states(THE_WORK, "running"):
        yield say("When it runs is not stated: ask before switching anything off.")
    elif scene.is_(THE_WORK, "running", "continuous") is Answer.IN:
        yield say(
            "It runs day and night: switch nothing off, and on again only what has failed, as under “Starting”."
        )
    else:
        running = scene.text(THE_WORK, "running")
        yield say(
            "It runs: {running}. Switch on as under “Starting”, and off as under “Shutting down”.",
            running=running,
        )


def _alike(plan: ChannelPlan) -> Iterator[tuple[Content, ...]]:
    """What is to be found in each place; parts of a group of which the same is said share a row."""
    scene = plan.sides.proposed
    alike: dict[tuple[str | None, Words, Content, Words], list[str]] = {}
    for part in plan.screens:
        group = scene.case.scopes.proposed.every[part].group
        key = (group, _way_up(scene, part), _given(scene, part), _players(plan, part))
        alike.setdefault(key, []).append(part)
    for (_, way_up, given, players), parts in alike.items():
        yield runs(parts), way_up, given, players


def _way_up(scene: Scene, part: str) -> Words:
    lying = lying_of(scene, part, hangs=is_display(scene, part), depth=0.0)
    return joined(lying.words, ", ") if lying else ""


def _given(scene: Scene, part: str) -> Content:
    """Channel and material; of what stays off, that it does."""
    if scene.runs(part) is Answer.OUT:
        return say("stays switched off")
    return with_below(scene.text(part, "channel"), material_words(scene, part))


def _players(plan: ChannelPlan, part: str) -> Words:
    return listed(dict.fromkeys(one.player for one in plan.into(part)))
