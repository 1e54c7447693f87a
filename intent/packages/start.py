"""What the start page of a package leads to: its papers, its documentation, and what is there for programs."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from pathlib import PurePosixPath

from intent.language.locale import Locale
from intent.language.message import Words, quoted, say
from intent.model.work import Work
from intent.names import INTENT
from intent.packages.carrying import CarriedFile
from intent.packages.contents import (
    ANNEX,
    BOOK,
    CARDS_PAGE,
    INSTALLATION_GRAPH,
    INSTRUCTIONS_PAGE,
    PACKING_LIST,
    POOL_TEXT,
    REPORT_PAGE,
    STANDARDS,
    VERDICTS,
    WORK_GRAPH,
    WORK_TEXT,
)
from intent.packages.outgoing import Outgoing
from intent.packages.read_back import PackedDossier
from intent.papers.start_page import Absent, FiledItem, FiledUnder, start_paper
from intent.papers.telling import tell
from intent.variance.result import Variance
from intent.version import VERSION

_DRAWINGS = f"{REPORT_PAGE}#drawings"
_PAPERS: tuple[tuple[Words, str, Words], ...] = (
    (say("Variance report"), REPORT_PAGE, say("What was found, why, and in whose words.")),
    (say("Drawings"), _DRAWINGS, say("Elevation and plan, documented beside proposed.")),
    (
        say("Annex"),
        ANNEX,
        say("To be signed: conditions, what is to be done, and the limits that hold while it is shown."),
    ),
    (say("Placement cards"), CARDS_PAGE, say("One for each part, to be taped where it goes.")),
    (
        say("Installation book"),
        BOOK,
        say("To install and run it: work, places, cables, switching, the daily check, whom to call."),
    ),
    (
        say("Instructions"),
        INSTRUCTIONS_PAGE,
        say("What governs the work, characteristic by characteristic, in whose words."),
    ),
    (say("Packing list"), PACKING_LIST, say("What travels in which box, to be ticked on both ways.")),
)


def start_page(
    outgoing: Outgoing,
    sent: PackedDossier,
    variance: Variance | None,
    packed: Collection[str],
    locale: Locale,
) -> bytes:
    """The page that leads to whatever of it is in the package."""
    work, proposal = sent.documentation.work, sent.proposal
    filed = (
        FiledUnder(title=say("Papers"), anchor="papers", items=tuple(_papers(packed))),
        FiledUnder(
            title=say("Documentation"), anchor="documentation", items=tuple(_texts(work, outgoing, packed))
        ),
        FiledUnder(
            title=say("For programs"),
            anchor="programs",
            items=tuple(_data(packed)),
            note=say("Whether the package came whole, any program that reads BagIt (RFC 8493) can tell."),
        ),
    )
    paper = start_paper(
        work,
        filed,
        _absent(work, outgoing, packed),
        installation=proposal.installation if proposal else None,
        variance=variance,
        version=VERSION,
        day=outgoing.day,
    )
    return tell(paper, "html", locale).encode()


def _papers(packed: Collection[str]) -> Iterator[FiledItem]:
    for title, address, what in _PAPERS:
        path, _, anchor = address.partition("#")
        printed = str(PurePosixPath(path).with_suffix(".pdf"))
        has_print = printed in packed and not anchor
        if path in packed:
            yield FiledItem(
                title=title, path=path, anchor=anchor, printed=printed if has_print else "", what=what
            )


def _texts(work: Work, outgoing: Outgoing, packed: Collection[str]) -> Iterator[FiledItem]:
    """The texts, then the files that the work and the installation name."""
    titles = {WORK_TEXT: say("The work"), POOL_TEXT: say("Devices of the pool")}
    for path in outgoing.texts:
        yield FiledItem(title=titles.get(path) or say("The installation"), path=path)
    for one in outgoing.files:
        if one.inside in packed:
            yield FiledItem(title=_title(work, one), path=one.inside)


def _title(work: Work, file: CarriedFile) -> Words:
    """`S1, “Conversation with the artist”`, `Answer to R2.1, 2026-11-20.md`; of what is no source, its name."""
    source, name = work.source(file.identifier), PurePosixPath(file.name).name
    if source is not None and source.title:
        return say("{name}, {title}", name=file.identifier, title=quoted(source.title))
    if any(one.identifier == file.identifier for one in work.material):
        return say("Material {material}, {file}", material=file.identifier, file=name)
    if file.name == work.fields.get(str(INTENT.termsFile)):
        return say("Terms of the work’s own, {file}", file=name)
    if file.identifier:
        return say("Answer to {lines}, {file}", lines=file.identifier, file=name)
    return name


def _data(packed: Collection[str]) -> Iterator[FiledItem]:
    graphs = (
        (say("The work as a graph"), WORK_GRAPH),
        (say("The installation as a graph"), INSTALLATION_GRAPH),
        (say("The verdicts"), VERDICTS),
    )
    yield from (FiledItem(title=title, path=path) for title, path in graphs if path in packed)
    yield FiledItem(title=say("In other standards"), path=f"{STANDARDS}/")


def _absent(work: Work, outgoing: Outgoing, packed: Collection[str]) -> Absent:
    kept = (*(source.identifier for source in work.sources if source.internal), *outgoing.kept_letters)
    named = {*(one.identifier for one in work.sources), *(one.identifier for one in work.material)}
    gone = (one for one in outgoing.files if one.inside not in packed)
    missing = (one.identifier if one.identifier in named else one.name for one in gone)
    return Absent(
        withheld=outgoing.leaving.withheld,
        kept=tuple(dict.fromkeys(kept)),
        missing=tuple(dict.fromkeys(missing)),
    )
