"""What a package holds, read and judged by its receiver, and laid beside what its sender says of it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from rdflib import Graph

from intent.diagnostics import Diagnostic, Severity, Span, Unusable, refusal, refusal_of_file
from intent.effects.assess import assess
from intent.language.locale import ENGLISH
from intent.language.message import say
from intent.packages.contents import INSTALLATION_GRAPH, INSTALLATIONS, VERDICTS, WORK_GRAPH, WORK_TEXT
from intent.packages.read_back import PackedDossier, named_within, read_back
from intent.reading.files import read_bytes
from intent.record.parse import parse_rdf
from intent.record.serialize import serialize_rdf
from intent.variance.result import Outcome, Variance, Verdict


@dataclass(frozen=True, slots=True)
class JudgedPackage:
    """A package's dossier, with the variance as its receiver finds it."""

    dossier: PackedDossier
    variance: Variance | None
    findings: tuple[Diagnostic, ...]
    """What does not keep it from being used; among it, where verdicts differ from those that were sent."""


def judge_again(root: Path, package: str) -> JudgedPackage:
    """Read and judge what lies in a package's folder, named as ``package``. Raises `Unusable`."""
    if not (root / WORK_TEXT).is_file():
        message = say(
            "there is no `{file}` in the package, so it holds no documentation of a work", file=WORK_TEXT
        )
        raise refusal_of_file("no-work", message, package)
    dossier = read_back(root, _installation(root, package), package)
    faults = list(_graph_faults(root, package, WORK_GRAPH, dossier.documentation.graph))
    proposal = dossier.proposal
    if proposal is None:
        return _unless(faults, JudgedPackage(dossier, None, dossier.findings))
    faults += _graph_faults(root, package, INSTALLATION_GRAPH, proposal.graph)
    variance = assess(dossier.documentation.work, proposal.installation)
    differing: list[Diagnostic] = []
    try:
        differing += _differences(_sent(root, package), variance, f"{package}/{VERDICTS}")
    except Unusable as error:
        faults += error.diagnostics
    return _unless(faults, JudgedPackage(dossier, variance, (*dossier.findings, *differing)))


def _unless(faults: list[Diagnostic], judged: JudgedPackage) -> JudgedPackage:
    if faults:
        raise Unusable(faults)
    return judged


def _installation(root: Path, package: str) -> str | None:
    """The path of the one installation, if there is any. Raises `Unusable` where there are several."""
    folder = root / INSTALLATIONS
    found = sorted(folder.glob("*.md")) if folder.is_dir() else []
    if len(found) > 1:
        message = say("a package holds one installation; this one has {count}", count=len(found))
        raise Unusable(
            [
                Diagnostic(
                    slug="several-installations",
                    message=message,
                    span=Span(file=f"{package}/{INSTALLATIONS}"),
                )
            ]
        )
    return found[0].relative_to(root).as_posix() if found else None


def _graph_faults(root: Path, package: str, path: str, of_text: Graph) -> Iterator[Diagnostic]:
    """Text and graph must say the same: nobody could tell which of two was meant."""
    span = Span(file=f"{package}/{path}")
    try:
        graph = parse_rdf(read_bytes(root / path), str(root / path), "turtle")
    except Unusable as error:
        yield from named_within(error.diagnostics, root, package)
        return
    if serialize_rdf(graph, "turtle") == serialize_rdf(of_text, "turtle"):
        return
    more, less = len(set(graph) - set(of_text)), len(set(of_text) - set(graph))
    message = say(
        "text and graph say different things: {more} statements are in the graph alone, {less} in the text alone",
        more=more,
        less=less,
    )
    yield Diagnostic(slug="text-and-graph-differ", message=message, span=span)


@dataclass(frozen=True, slots=True)
class _SentVerdicts:
    outcome: Outcome
    verdicts: Mapping[tuple[str, str], Verdict]


def _sent(root: Path, package: str) -> _SentVerdicts:
    """The verdicts as they were sent. Raises `Unusable`."""
    path = root / VERDICTS
    span = Span(file=f"{package}/{VERDICTS}")
    try:
        told = json.loads(read_bytes(path))
        verdicts = {
            (str(row["subject"]), str(row["characteristic"])): Verdict(row["verdict"])
            for row in told["verdicts"]
        }
        return _SentVerdicts(Outcome(told["outcome"]), verdicts)
    except Unusable as error:
        raise Unusable(named_within(error.diagnostics, root, package)) from None
    except (ValueError, LookupError, TypeError, RecursionError) as error:
        message = say("the verdicts that were sent cannot be read ({fault})", fault=type(error).__name__)
        raise refusal("bad-verdicts", message, span) from None


def _differences(sent: _SentVerdicts, variance: Variance, file: str) -> Iterator[Diagnostic]:
    """Where the verdicts found here are others than those that were sent."""
    if sent.outcome is not variance.outcome:
        message = say(
            "the outcome is {mine}; the sender says {theirs}", mine=variance.outcome, theirs=sent.outcome
        )
        yield Diagnostic(
            slug="outcome-differs", message=message, span=Span(file=file), severity=Severity.WARNING
        )
    found = {(row.subject.written, ENGLISH.say(row.characteristic)): row.verdict for row in variance.rows}
    for subject, characteristic in dict.fromkeys([*found, *sent.verdicts]):
        key = (subject, characteristic)
        mine, theirs = (one.get(key, Verdict.AS_DOCUMENTED) for one in (found, sent.verdicts))
        if mine is not theirs:
            message = say(
                "{characteristic} of {subject} is {mine}; the sender says {theirs}",
                characteristic=characteristic,
                subject=subject,
                mine=mine,
                theirs=theirs,
            )
            yield Diagnostic(
                slug="verdict-differs",
                message=message,
                span=Span(file=file),
                severity=Severity.WARNING,
                subject=subject,
            )
