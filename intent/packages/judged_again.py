"""What a package holds, read and judged by its receiver, and laid beside what its sender says of it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from rdflib import Graph

from intent.diagnostics import Diagnostic, Severity, Span, Unusable
from intent.effects.assess import assess
from intent.packages.contents import INSTALLATION_GRAPH, INSTALLATIONS, VERDICTS, WORK_GRAPH, WORK_TEXT
from intent.packages.read_back import ReadBack, named_within, read_back
from intent.reading.files import read_bytes
from intent.record.parse import parse_rdf
from intent.record.serialize import serialize_rdf
from intent.variance.result import Outcome, Variance, Verdict


@dataclass(frozen=True, slots=True)
class Judged:
    """A package's dossier, with the variance as its receiver finds it."""

    dossier: ReadBack
    variance: Variance | None
    findings: tuple[Diagnostic, ...]
    """What does not keep it from being used; among it, where verdicts differ from those that were sent."""


def judge_again(root: Path, package: str) -> Judged:
    """Read and judge what lies in a package's folder, named as ``package``. Raises `Unusable`."""
    if not (root / WORK_TEXT).is_file():
        message = f"there is no `{WORK_TEXT}` in the package, so it holds no documentation of a work"
        raise Unusable([Diagnostic(slug="no-work", message=message, span=Span(file=package))])
    dossier = read_back(root, _installation(root, package), package)
    faults = list(_graph_faults(root, package, WORK_GRAPH, dossier.documentation.graph))
    proposal = dossier.proposal
    if proposal is None:
        return _unless(faults, Judged(dossier, None, dossier.findings))
    faults += _graph_faults(root, package, INSTALLATION_GRAPH, proposal.graph)
    variance = assess(dossier.documentation.work, proposal.installation)
    differing: list[Diagnostic] = []
    try:
        differing += _differences(_sent(root, package), variance, f"{package}/{VERDICTS}")
    except Unusable as error:
        faults += error.diagnostics
    return _unless(faults, Judged(dossier, variance, (*dossier.findings, *differing)))


def _unless(faults: list[Diagnostic], judged: Judged) -> Judged:
    if faults:
        raise Unusable(faults)
    return judged


def _installation(root: Path, package: str) -> str | None:
    """The path of the one installation, if there is any. Raises `Unusable` where there are several."""
    folder = root / INSTALLATIONS
    found = sorted(folder.glob("*.md")) if folder.is_dir() else []
    if len(found) > 1:
        message = f"a package holds one installation; this one has {len(found)}"
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
    message = f"text and graph say different things: {more} statements are in the graph alone, {less} in the text alone"
    yield Diagnostic(slug="text-and-graph-differ", message=message, span=span)


@dataclass(frozen=True, slots=True)
class _Sent:
    outcome: Outcome
    verdicts: Mapping[tuple[str, str], Verdict]


def _sent(root: Path, package: str) -> _Sent:
    """The verdicts as they were sent. Raises `Unusable`."""
    path = root / VERDICTS
    span = Span(file=f"{package}/{VERDICTS}")
    try:
        told = json.loads(read_bytes(path))
        verdicts = {
            (str(row["subject"]), str(row["characteristic"])): Verdict(row["verdict"])
            for row in told["verdicts"]
        }
        return _Sent(Outcome(told["outcome"]), verdicts)
    except Unusable as error:
        raise Unusable(named_within(error.diagnostics, root, package)) from None
    except (ValueError, LookupError, TypeError, RecursionError) as error:
        message = f"the verdicts that were sent cannot be read ({type(error).__name__})"
        raise Unusable([Diagnostic(slug="bad-verdicts", message=message, span=span)]) from None


def _differences(sent: _Sent, variance: Variance, file: str) -> Iterator[Diagnostic]:
    """Where the verdicts found here are others than those that were sent."""
    if sent.outcome is not variance.outcome:
        message = f"the outcome is {variance.outcome}; the sender says {sent.outcome}"
        yield Diagnostic(
            slug="outcome-differs", message=message, span=Span(file=file), severity=Severity.WARNING
        )
    found = {(row.subject, row.characteristic): row.verdict for row in variance.rows}
    for key in dict.fromkeys([*found, *sent.verdicts]):
        mine, theirs = (one.get(key, Verdict.AS_DOCUMENTED) for one in (found, sent.verdicts))
        if mine is not theirs:
            message = f"{key[1]} of {key[0]} is {mine}; the sender says {theirs}"
            yield Diagnostic(
                slug="verdict-differs",
                message=message,
                span=Span(file=file),
                severity=Severity.WARNING,
                subject=key[0],
            )
