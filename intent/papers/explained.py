"""Explanations as text for a terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from intent.analysis.explanation.explain import Account, Explanation
from intent.analysis.explanation.explained_line import Explained
from intent.analysis.explanation.governing import Fate, Stretch
from intent.language.message import listed
from intent.model.work import Work
from intent.papers.instructions_told import because_in_words
from intent.papers.wording import verdict_word
from intent.variance.result import SetAside, Verdict


def write_account(account: Account) -> str:
    """Each characteristic with what is documented, what holds for which values, and each instruction in its words.

    The words of a heading stand once, at the first of its instructions that is told.
    """
    quoted: set[str] = set()
    blocks = ["\n".join(_lines(explanation, account.work, quoted)) for explanation in account.explanations]
    if not blocks:
        return "Nothing is documented, and no instruction speaks of it.\n"
    return "\n\n".join([f"{account.work.title}, on {account.day}", *blocks]) + "\n"


def _lines(explanation: Explanation, work: Work, quoted: set[str]) -> Iterator[str]:
    yield from _wrapped(f"{explanation.subject}, {explanation.characteristic}", "")
    for value, whose in explanation.documented:
        yield from _wrapped(f"documented: {value}{f' ({whose})' if whose else ''}", "  ")
    if not explanation.instructions:
        yield "  No instruction speaks of it."
    for stretch in explanation.stretches:
        yield from _wrapped(_stretch(stretch), "  * ")
    aside = dict.fromkeys(fallen for stretch in explanation.stretches for fallen in stretch.fate.set_aside)
    for fallen in aside:
        yield from _wrapped(_set_aside(work, fallen), "  - ")
    for told in explanation.instructions:
        yield from _instruction(told, quoted)


def _stretch(stretch: Stretch) -> str:
    return f"{stretch.values}: {_fate(stretch.fate)}"


def _fate(fate: Fate) -> str:
    by = listed(fate.governing)
    match fate.verdict:
        case None:
            return "nobody asks"
        case Verdict.FORBIDDEN:
            return f"forbidden by {by}"
        case Verdict.BREACH:
            return f"against {by}"
        case Verdict.CONTRADICTION:
            return f"{by} contradict each other, and no rule says which prevails"
        case Verdict.UNKNOWN:
            return f"perhaps against {by}" + (f", until {fate.open}" if fate.open else "")
        case Verdict.UNCOVERED:
            return "only where it is so documented"
        case Verdict.CONDITIONAL:
            return f"allowed by {by}, once {fate.open}"
        case Verdict.AS_REQUIRED:
            return f"as {by} {'requires' if len(fate.governing) == 1 else 'require'}"
        case Verdict.ALLOWED:
            return f"allowed by {by}"
    return verdict_word(fate.verdict)


def _set_aside(work: Work, fallen: SetAside) -> str:
    reason = because_in_words(work, fallen).removeprefix("It is set aside because ").removesuffix(".")
    return f"{fallen.instruction} gives way to {fallen.by} there: {reason}"


def _instruction(told: Explained, quoted: set[str]) -> Iterator[str]:
    line = told.line
    state = "" if told.holds else " (does not hold)"
    yield from _wrapped(f"{line.identifier} {line.modality}: {line.sentence}{state}", "  ")
    ground = f"; on the ground of {line.ground}" if line.ground != "intent" else ""
    yield from _wrapped(f"{told.giver}{ground}: {told.dates}", "      ")
    if told.because:
        yield from _wrapped(told.because, "      ")
    if line.heading in quoted:
        yield f"      words and source as under {line.heading} above"
        return
    quoted.add(line.heading)
    yield from _wrapped(told.cited or "no source is named", "      ")
    if told.heading.words:
        yield from _wrapped(f"“{told.heading.words}”", "      ")


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(
        " ".join(text.split()), 80, initial_indent=indent, subsequent_indent=" " * len(indent) + "    "
    )
