"""The examples, each read, judged and written no more than once in a run of the tests.

What is given here is shared: a test that would change it takes a copy.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from pathlib import Path

from rdflib import Graph

from intent import verbs
from intent.effects.assess import assess
from intent.exports.converting import converted_installation, converted_work
from intent.reading.documentation import Documentation, read_documentation
from intent.reading.proposal import Proposal, read_beside
from intent.variance.result import Variance
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary

EXAMPLES = Path(__file__).parents[1] / "examples"
WORKS = sorted(EXAMPLES.glob("*/work.md"))
INSTALLATIONS = sorted(EXAMPLES.glob("*/installations/*.md"))
FIRST_OF_EACH = [min(work.parent.glob("installations/*.md")) for work in WORKS]
LATEST_OF_EACH = [max(work.parent.glob("installations/*.md")) for work in WORKS]
"""One installation of each work: of what does not depend on which, three are tried."""


@cache
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@cache
def ontology() -> Graph:
    """The record's own terms, as they go out with the program."""
    return Graph().parse(data=files("intent.vocabulary").joinpath("record.ttl").read_text(encoding="utf-8"))


@cache
def documentation(path: Path) -> Documentation:
    """A work as read; its shapes are asked only by a test that wants to hear them."""
    return read_documentation(path, vocabulary())


@cache
def proposal(path: Path) -> Proposal:
    """An installation as read, beside its work."""
    return read_beside(path, documentation(work_of(path)))


@cache
def variance(path: Path) -> Variance:
    """An installation as judged, with its effects, without what was shown before."""
    found = proposal(path)
    return assess(found.documentation.work, found.installation)


@cache
def checked(path: Path) -> verbs.Checked:
    """What the verb `check` says of an installation."""
    return verbs.check(path)


@cache
def written(path: Path, form: str) -> str:
    """A work or an installation in another form."""
    if path in WORKS:
        return converted_work(documentation(path), form)[0]
    return converted_installation(proposal(path), form)[0]


@cache
def graph(path: Path) -> Graph:
    """The graph of a work or an installation, as another library reads what is written."""
    return Graph().parse(data=written(path, "n-triples"), format="nt")


def work_of(installation: Path) -> Path:
    return installation.parents[1] / "work.md"
