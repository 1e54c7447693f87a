"""The page of a package that is opened first: the outcome, whom to call, and the way to everything that lies in it."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace
from urllib.parse import quote

from intent.language.calendar import day_words, span_words
from intent.language.message import Words, say, sentence
from intent.model.installation import Installation
from intent.model.naming import runs
from intent.model.work import Work
from intent.papers.contacts_told import contacts_section
from intent.papers.document import (
    Block,
    Document,
    Items,
    PaperSection,
    Paragraph,
    ParagraphRole,
)
from intent.papers.inline import Beside, Break, Content, Inline, Phrase, Stamp, quiet
from intent.papers.left_out import left_out_section
from intent.papers.masthead import byline, occasion_words, outcome_told
from intent.redaction.withholding import WithheldKind
from intent.variance.result import Variance


@dataclass(frozen=True, slots=True, kw_only=True)
class FiledItem:
    """Something that lies in a package."""

    title: Words
    path: str
    """From where the page lies."""
    anchor: str = ""
    """Of the place in it, where it is not meant as a whole."""
    printed: str = ""
    """The path of the same as a PDF, where there is one."""
    what: Words = ""
    """What it is good for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FiledUnder:
    """Things that lie in a package and belong together."""

    title: Words
    anchor: str
    items: tuple[FiledItem, ...]
    note: Words = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Absent:
    """What a package does not hold, though what is in it names it."""

    withheld: tuple[WithheldKind, ...]
    kept: tuple[str, ...] = ()
    """Sources and letters that stay with the sender, as they are named."""
    missing: tuple[str, ...] = ()
    """Sources and material whose files were not there when it was packed."""


def start_paper(
    work: Work,
    filed: Sequence[FiledUnder],
    absent: Absent,
    *,
    installation: Installation | None,
    variance: Variance | None,
    version: str,
    day: datetime.date,
) -> Document:
    """The page; of a package without an installation, without an outcome."""
    contacts = contacts_section(work, installation.dates if installation else None)
    first, *others = map(_section, filed)
    sections = (*_outcome(variance), first, contacts, *others, _absent(absent))
    return Document(
        title=work.title,
        name=say("{work}: contents of the package", work=work.title),
        lead=tuple(_lead(work, installation, variance)),
        sections=tuple(section for section in sections if section.blocks),
        foot=say("Packed by intent {version} on {date}.", version=version, date=day_words(day)),
        created=day,
    )


def _lead(work: Work, installation: Installation | None, variance: Variance | None) -> list[Block]:
    told: list[Block] = [Paragraph(byline(work), ParagraphRole.BYLINE)] if byline(work) else []
    if installation is not None:
        told.append(Paragraph(sentence(installation.title), ParagraphRole.OCCASION))
        occasion = occasion_words(variance) if variance else sentence(span_words(installation.dates))
        told.append(Paragraph(occasion, ParagraphRole.OCCASION))
    return told


def _outcome(variance: Variance | None) -> tuple[PaperSection, ...]:
    if variance is None:
        return ()
    blocks = (
        Paragraph(Stamp(variance.outcome), ParagraphRole.OUTCOME),
        Paragraph(outcome_told(variance)),
    )
    return (PaperSection(title=say("Outcome"), anchor="outcome", blocks=blocks),)


def _section(filed: FiledUnder) -> PaperSection:
    items = Items(tuple(_told(one) for one in filed.items))
    note = (Paragraph(filed.note, ParagraphRole.QUIET),) if filed.note else ()
    return PaperSection(title=filed.title, anchor=filed.anchor, blocks=(items, *note) if filed.items else ())


def _told(item: FiledItem) -> Content:
    """Its title as the way to it, and to it as a PDF; below that what it is good for."""
    address = quote(item.path) + (f"#{item.anchor}" if item.anchor else "")
    told: list[Inline] = [Phrase(item.title, link=Beside(address))]
    if item.printed:
        told += [" · ", Phrase(say("PDF"), link=Beside(quote(item.printed)))]
    return (*told, Break.LINE, quiet(item.what)) if item.what else tuple(told)


def _absent(absent: Absent) -> PaperSection:
    left_out = left_out_section(absent.withheld)
    told = (
        [Paragraph(say("Of what is named here, the sender keeps {names}.", names=runs(absent.kept)))]
        if absent.kept
        else []
    )
    if absent.missing:
        names = runs(absent.missing)
        told.append(
            Paragraph(say("Not there when this was packed, and to be asked for: {names}.", names=names))
        )
    return replace(left_out, blocks=(*left_out.blocks, *told))
