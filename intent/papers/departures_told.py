"""One departure as a section: its verdict in the margin, and the artist's words before all else."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.language.message import Words, closed, quoted, say
from intent.papers.departures import Departure
from intent.papers.document import FactLine, Facts, FactsRole, PaperSection, Quotation, Reference, SectionRole
from intent.papers.inline import Content, Stamp
from intent.papers.instructions_told import QuotedWords
from intent.papers.verdict_words import VERDICT_MEANINGS
from intent.variance.result import VERDICT_WORDS, Verdict


def departure_section(
    one: Departure,
    before: tuple[Words, ...],
    found_in: Mapping[str, Sequence[Reference]],
    asked: tuple[Words, ...],
) -> PaperSection:
    """Subject and characteristic; verdict and values; the words quoted; what prevails, falls, is open.

    ``before`` is what was shown before, ``found_in`` where the words quoted under each heading were found, ``asked``
    who is asked what about it.
    """
    verdict: tuple[Content, ...] = (Stamp(one.verdict), one.ground, one.days)
    told = tuple(_told(one, before, asked))
    return PaperSection(
        title=one.title,
        anchor=one.anchor,
        number=one.number,
        role=SectionRole.DEPARTURE,
        gist=VERDICT_WORDS[one.verdict],
        margin=FactLine(say("verdict"), tuple(text for text in verdict if text)),
        blocks=(
            Facts(tuple(_values(one)), FactsRole.VALUES),
            *(_quotation(words, found_in.get(words.under, ())) for words in one.quotations),
            *([Facts(told)] if told else []),
        ),
    )


def _values(one: Departure) -> Iterator[FactLine]:
    yield FactLine(say("documented"), (one.documented,))
    yield FactLine(say("proposed"), (one.proposed,))
    if one.concerns:
        yield FactLine(say("concerns"), (one.concerns,))


def _told(one: Departure, before: tuple[Words, ...], asked: tuple[Words, ...]) -> Iterator[FactLine]:
    """Why, what speaks, what stands against it besides, what is set aside, what is open, and what was shown before."""
    every: tuple[tuple[Words, tuple[Content, ...]], ...] = (
        (say("why"), one.reasons),
        (one.speaking_label, one.speaking),
        (say("also against"), one.also_against),
        (say("set aside"), one.set_aside),
        (say("open"), one.open),
        (say("instead"), one.offered),
        (say("asked"), asked),
        (say("shown before"), before),
    )
    yield from (FactLine(label, texts) for label, texts in every if texts)


def _quotation(words: QuotedWords, references: Sequence[Reference]) -> Quotation:
    return Quotation(
        words=quoted(words.words),
        captions=(words.attribution,),
        references=tuple(references),
        remarks=(words.reason,) if words.reason else (),
    )


def meanings_section(found: Sequence[Departure]) -> PaperSection:
    """The verdicts that occur, each with its meaning."""
    occurring = {one.verdict for one in found}
    lines = (
        FactLine(VERDICT_WORDS[verdict], (closed(VERDICT_MEANINGS[verdict]),))
        for verdict in Verdict
        if verdict in occurring
    )
    return PaperSection(title=say("What the verdicts mean"), blocks=(Facts(tuple(lines)),))
