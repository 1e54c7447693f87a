"""What may leave of a work and an installation: the one answer that exports, packages, cards and papers are made of.

What stays in the house is common practice in museums, no source.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from rdflib import Literal

from intent.dossier.work_text import read_work
from intent.reading.documentation import read_documentation
from intent.reading.proposal import Proposal, leaving_of, read_proposal
from intent.record.load_work import load_work
from intent.record.serialize import serialize_rdf
from intent.redaction.leaving import Leaving, what_may_leave
from intent.redaction.still_said import texts_said_in, texts_to_look_for
from intent.redaction.withholding import WithheldKind
from intent.vocabulary.loader import read_vocabulary
from redaction.work_with_secrets import SECRETS, written


@pytest.fixture
def proposal(tmp_path: Path) -> Proposal:
    return read_proposal(written(tmp_path), None, read_vocabulary())


def texts_of(leaving: Leaving) -> set[str]:
    graph = (*leaving.work_graph, *leaving.installation_graph)
    return {str(value) for *_, value in graph if isinstance(value, Literal)}


def test_nothing_that_stays_is_in_what_leaves(proposal: Proposal) -> None:
    leaving = leaving_of(proposal.documentation, proposal)
    told = [*texts_of(leaving), repr(leaving.work), repr(leaving.installation), repr(leaving)]
    assert not [(secret, text) for secret in SECRETS for text in told if secret in text]


def test_what_was_left_out_is_known_by_its_kind_and_can_be_looked_for(proposal: Proposal) -> None:
    leaving = leaving_of(proposal.documentation, proposal)
    assert leaving.withheld == (
        WithheldKind.PEOPLE,
        WithheldKind.CONTACTS,
        WithheldKind.SOURCES,
        WithheldKind.QUOTATIONS,
        WithheldKind.DEVICES,
        WithheldKind.LOG,
        WithheldKind.VALUES,
        WithheldKind.PLACES,
        WithheldKind.COMMENTS,
    )
    kept = " ".join(leaving.kept_texts)
    a_maker = "Pellucid Optics"  # what is stated of a device may be so of others too, and is not looked for
    assert [secret for secret in SECRETS if secret not in kept] == [a_maker]


def test_the_work_is_what_its_graph_says(proposal: Proposal) -> None:
    leaving = leaving_of(proposal.documentation, proposal)
    assert leaving.work == load_work(leaving.work_graph, leaving.work.iri, leaving.work.vocabulary)
    assert leaving.installation is not None
    assert leaving.installation.dates == proposal.installation.dates
    assert [one.device for one in leaving.installation.substitutions] == ["P-1"]


def test_a_work_alone_keeps_a_device_that_only_an_installation_names(tmp_path: Path) -> None:
    """A spare that is kept in the house goes, unless something that is sent beside it names it."""
    loan = written(tmp_path)
    loan.write_text(loan.read_text(encoding="utf-8").replace("M2   | P-1", "M2   | E-3"), encoding="utf-8")
    proposal = read_proposal(loan, None, read_vocabulary())
    alone, beside = leaving_of(proposal.documentation, None), leaving_of(proposal.documentation, proposal)
    assert [device.identifier for device in alone.work.devices] == ["E-1", "E-2"]
    assert [device.identifier for device in beside.work.devices] == ["E-1", "E-2", "E-3"]
    assert alone.installation is None
    assert not alone.installation_graph


def test_text_and_graph_let_the_same_leave(tmp_path: Path) -> None:
    """design.md, section 7, property 6: what is received as RDF behaves as what is typed."""
    written(tmp_path)
    typed = read_documentation(tmp_path / "work.md", read_vocabulary())
    (tmp_path / "work.ttl").write_text(serialize_rdf(typed.graph, "turtle"), encoding="utf-8")
    received = read_documentation(tmp_path / "work.ttl", read_vocabulary())
    one, other = leaving_of(typed, None), leaving_of(received, None)
    assert set(one.work_graph) == set(other.work_graph)
    assert (one.work, one.withheld, one.kept_texts) == (other.work, other.withheld, other.kept_texts)


def test_what_leaves_has_nothing_more_to_keep_but_its_marks(proposal: Proposal) -> None:
    """Taking out a second time takes out nothing: what is received and sent on loses no more."""
    once = leaving_of(proposal.documentation, proposal)
    assert once.installation is not None
    again = what_may_leave(once.work, once.work_graph, once.installation, once.installation_graph)
    assert replace(again, withheld=(), kept_texts=frozenset()) == replace(
        once, withheld=(), kept_texts=frozenset()
    )
    assert not again.withheld


def test_parts_that_are_kept_are_named(tmp_path: Path) -> None:
    loan = written(tmp_path)
    work = tmp_path / "work.md"
    text = work.read_text(encoding="utf-8")
    group = text[text.index("### Monitors") : text.index("## Devices")]
    marked = re.sub(r"(?m)^(\| part .*)$", r"\1 keep |", group)
    marked = re.sub(r"(?m)^(\| --.*)$", r"\1 ---- |", marked)
    marked = re.sub(r"(?m)^(\| M1 .*)$", r"\1 internal |", marked)
    marked = re.sub(r"(?m)^(\| M2 .*)$", r"\1 |", marked)
    work.write_text(text.replace(group, marked), encoding="utf-8")
    proposal = read_proposal(loan, None, read_vocabulary())
    leaving = leaving_of(proposal.documentation, proposal)
    assert leaving.internal_parts == {"M1"}
    assert WithheldKind.PARTS in leaving.withheld
    (kept,) = [part for part in leaving.work.parts if part.identifier == "M1"]
    assert (kept.kind.label, kept.group, kept.device, kept.statements) == ("display", "Monitors", None, {})


@pytest.mark.parametrize(
    ("kept", "found"),
    [
        ("Zephrine Ostlund", ["Zephrine Ostlund"]),
        ("Zephrine\n  Ostlund", ["Zephrine Ostlund"]),
        ("Ostlun", ["Ostlun"]),
        ("Ostlu", []),
        ("84,000", []),
        ("1999-05-14", []),
    ],
)
def test_only_what_is_worth_looking_for_is_looked_for(kept: str, found: list[str]) -> None:
    text = "Lent by Zephrine\nOstlund on 1999-05-14 for 84,000 crowns."
    assert list(texts_said_in(text, texts_to_look_for([kept]))) == found


def test_an_expectation_leaves_with_what_it_takes_as_given_unless_it_is_marked() -> None:
    text = (Path(__file__).parents[1] / "dossier" / "languages" / "english.md").read_text(encoding="utf-8")
    reading = read_work(text, "work.md", read_vocabulary())
    work = load_work(reading.triples, reading.iri, read_vocabulary())
    leaving = what_may_leave(work, reading.triples)
    marked = [one for one in work.expectations if one.internal]
    assert [one.scope.names for one in marked] == [("Sets",)]
    assert leaving.work.expectations == tuple(one for one in work.expectations if not one.internal)
    assert WithheldKind.EXPECTATIONS in leaving.withheld
    assert not [one for triple in leaving.work_graph for one in triple if "expectation-2" in str(one)]


def test_a_section_of_expectations_that_is_marked_keeps_them_all() -> None:
    text = (Path(__file__).parents[1] / "dossier" / "languages" / "english.md").read_text(encoding="utf-8")
    whole = text.replace("## Expectations\n", "## Expectations\n\n- keep: internal\n")
    reading = read_work(whole, "work.md", read_vocabulary())
    work = load_work(reading.triples, reading.iri, read_vocabulary())
    assert work.expectations
    assert what_may_leave(work, reading.triples).work.expectations == ()


def test_a_contact_leaves_where_it_is_marked_to_be_told(tmp_path: Path) -> None:
    """Whom a borrower may call; of somebody who is kept in the house the mark tells nothing."""
    loan = written(tmp_path)
    work = tmp_path / "work.md"
    text = work.read_text(encoding="utf-8")
    people = text[text.index("| person |") : text.index("## Parts")]
    cells = {"| person": "contact leaves", "| ------": "---", "| heir": "yes", "| cons": "yes"}
    marked = "\n".join(
        line + next((f" {cell} |" for head, cell in cells.items() if line.startswith(head)), " |")
        for line in people.strip().splitlines()
    )
    work.write_text(text.replace(people, f"{marked}\n\n"), encoding="utf-8")
    proposal = read_proposal(loan, None, read_vocabulary())
    leaving = leaving_of(proposal.documentation, proposal)
    assert {one.identifier: one.contact for one in leaving.work.people} == {
        "artist": "",
        "heir": "",
        "cons": "odile@thornacre.example",
    }
    assert "z.ostlund@thornacre.example" in leaving.kept_texts
    assert "odile@thornacre.example" not in leaving.kept_texts
