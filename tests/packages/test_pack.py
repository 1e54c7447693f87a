"""What is packed: all that may leave and nothing else, the same bytes every time, sound to other readers."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import zipfile
from datetime import date
from pathlib import Path

import pytest
from examples_read import FIRST_OF_EACH, LATEST_OF_EACH, proposal, vocabulary
from papers.test_pdf import can_print
from rdflib import DCTERMS, RDFS, Literal
from rdflib.compare import isomorphic
from redaction.work_with_secrets import SECRETS, written

from intent import verbs
from intent.diagnostics import Unusable
from intent.effects.assess import assess
from intent.names import INTENT, OA
from intent.reading.documentation import read_documentation
from intent.reading.proposal import Proposal
from intent.record.parse import empty_graph, parse_rdf
from intent.redaction.withholding import without_internal
from intent.variance.result import RowKey
from packages.package_examples import PACKED_ON, packed

REWRITTEN = {INTENT.workFile, INTENT.poolFile}
"""The paths that an installation has in a package."""


def rows_of(found: Proposal) -> dict[RowKey, tuple[str, tuple[str, ...]]]:
    rows = assess(found.documentation.work, found.installation).rows
    return {row.key: (row.verdict, tuple(line.identifier for line in row.governing)) for row in rows}


PACKED = [(example, "") for example in LATEST_OF_EACH] + [(example, ".zip") for example in FIRST_OF_EACH]
"""One of each work as a folder, and another as a zip."""


@pytest.mark.parametrize(
    ("example", "form"), PACKED, ids=[f"{example.stem}{form or '-folder'}" for example, form in PACKED]
)
def test_what_is_packed_is_received(example: Path, form: str, tmp_path: Path) -> None:
    """design.md, section 7, property 6, for packages: the same graph less what is internal, and the same verdicts."""
    before = proposal(example)
    package = verbs.pack(example, tmp_path / f"package{form}", pdf=False)
    received = verbs.receive(package.path, tmp_path / "opened")
    after = received.judged.dossier.proposal
    assert after is not None
    assert rows_of(after) == rows_of(before)
    assert not [found for found in received.findings if "differ" in found.slug]
    own, other = before.documentation.reading.triples, before.reading.triples
    for mine, beside, theirs in (
        (own, other, after.documentation.graph),
        (other, own, after.graph),
    ):
        expected, found = empty_graph(), empty_graph()
        for triple in without_internal(mine, beside).triples:
            expected.add(triple)
        for graph, triples in ((expected, list(expected)), (found, list(theirs))):
            for triple in triples:
                if triple[1] not in REWRITTEN:
                    graph.add(triple)
                else:
                    graph.remove(triple)
        assert isomorphic(expected, found)


def test_nothing_internal_leaves(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    for path in package.path.rglob("*"):
        if path.is_file():
            content = path.read_bytes()
            assert not [one for one in SECRETS if one.encode() in content], path
    assert not (package.path / "data/dossier/sources/letter.md").exists()
    assert (package.path / "data/dossier/sources/note.md").is_file()
    info = (package.path / "bag-info.txt").read_text(encoding="utf-8")
    for sort in (
        "names of people",
        "contacts",
        "sources",
        "words quoted",
        "devices",
        "insurance",
        "places where",
    ):
        assert sort in info
        assert sort in " ".join(package.left_out)
        assert sort in (package.path / "data/report/annex.html").read_text(encoding="utf-8")
        assert sort in (package.path / "data/packing-list.html").read_text(encoding="utf-8")


def test_what_stays_of_what_is_withheld(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    verbs.pack(loan, tmp_path / "package", pdf=False)
    content = (tmp_path / "package/data/graph/work.ttl").read_bytes()
    graph = parse_rdf(content, "work.ttl", "turtle")
    (heir,) = graph.subjects(DCTERMS.identifier, Literal("heir"))
    assert graph.value(heir, INTENT.role) is not None
    assert graph.value(heir, RDFS.label) is None
    (letter,) = graph.subjects(DCTERMS.identifier, Literal("S2"))
    assert graph.value(letter, DCTERMS.date) is not None
    assert graph.value(letter, INTENT.sourceKind) is not None
    assert graph.value(letter, INTENT.by) is not None, "R2 names nobody, so who speaks in S2 is part of it"
    assert graph.value(letter, DCTERMS.title) is None
    (tubes,) = graph.subjects(DCTERMS.identifier, Literal("R2"))
    assert graph.value(tubes, INTENT.words) is None
    assert list(graph.objects(None, OA.exact)) == [Literal("This way up, whatever they say.")]
    (upright,) = graph.subjects(DCTERMS.identifier, Literal("R1"))
    assert str(graph.value(upright, INTENT.words)) == "This way up, whatever they say."
    assert not list(graph.subjects(DCTERMS.identifier, Literal("E-3"))), "a spare that nothing names is gone"


@pytest.mark.parametrize("section", ["People", "Sources", "Devices", "Boxes", "Instructions"])
def test_a_section_that_is_marked_keeps_what_is_in_it(section: str, tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    text = work.read_text(encoding="utf-8")
    marked = re.sub(f"## {section}\n", f"## {section}\n\n- keep: internal\n\nA remark of the house.\n", text)
    work.write_text(marked, encoding="utf-8")
    package = verbs.pack(loan, tmp_path / "package", pdf=False).path
    dossier = (package / "data/dossier/work.md").read_text(encoding="utf-8")
    assert "A remark of the house" not in dossier
    assert ("Odile Varga-Finn" in dossier) is (section != "People")
    assert ("Corvane" in dossier) is (section != "Devices")
    assert ("B-1" in dossier) is (section != "Boxes")
    assert ("Note inside" in dossier) is (section != "Sources")
    assert "rotation of M1 is upright" in dossier
    assert (package / "data/dossier/sources/note.md").is_file() is (section != "Sources")
    verbs.receive(package, tmp_path / "opened")


def test_what_is_said_of_the_work_as_a_whole_can_be_kept(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    whole = "## Whole work\n\n- keep: internal\n- sound: audible\n\nNobody must hear of it.\n\n## Sources\n"
    work.write_text(work.read_text("utf-8").replace("## Sources\n", whole), encoding="utf-8")
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    dossier = (package.path / "data/dossier/work.md").read_text(encoding="utf-8")
    assert "audible" not in dossier
    assert "Nobody must hear" not in dossier
    assert "what is known of the work as a whole" in package.left_out
    verbs.receive(package.path, tmp_path / "opened")


def test_a_report_does_not_say_that_it_quotes_what_it_does_not(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    report = (verbs.pack(loan, tmp_path / "package", pdf=False).path / "data/report/report.html").read_text(
        "utf-8"
    )
    assert "quotes what is kept in the house" in verbs.report(verbs.check(loan), "html")
    assert "quotes what is kept in the house" not in report


def test_what_is_still_said_is_told(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    work.write_text(work.read_text("utf-8").replace("Two screens", f"{SECRETS[0]} has two screens"), "utf-8")
    findings = verbs.pack(loan, tmp_path / "package", pdf=False).findings
    (found,) = [one for one in findings if one.slug == "still-said"]
    assert found.span.file == "data/dossier/work.md"
    assert SECRETS[0] in str(found)


def test_verdicts_that_turn_are_told(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    text = work.read_text(encoding="utf-8")
    work.write_text(
        text.replace(
            "| M1   | E-1    | upright     | 13 in            |",
            "| M1   | E-1    | upright     | 13 in            | internal |",
        )
        .replace(
            "visible diagonal |\n| ---- | ------ | ----------- | ---------------- |",
            "visible diagonal | keep |\n| ---- | ------ | ----------- | ---------------- | ---- |",
        )
        .replace(
            "| M2   | E-2    | turned left | 13 in            |",
            "| M2   | E-2    | turned left | 13 in            | |",
        ),
        encoding="utf-8",
    )
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    assert "verdict-turns" in {found.slug for found in package.findings}
    received = verbs.receive(package.path, tmp_path / "opened")
    assert not [found for found in received.findings if "differs" in found.slug]


@pytest.mark.parametrize("form", ["", ".zip"], ids=["folder", "zip"])
def test_the_same_bytes_every_time(form: str, tmp_path: Path) -> None:
    """In another process, with another order of sets, from another folder, under another name."""
    first = packed(tmp_path / "one", f"first{form}")
    loan = written(tmp_path / "elsewhere/two")
    script = (
        "import sys, datetime; from intent import verbs; "
        "verbs.pack(*sys.argv[2:], date=datetime.date.fromisoformat(sys.argv[1]), pdf=False)"
    )
    second = tmp_path / f"second{form}"
    environment = {"PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo", "LC_ALL": "C"}
    subprocess.run(
        [sys.executable, "-c", script, PACKED_ON.isoformat(), loan, second], check=True, env=environment
    )
    if form:
        assert first.read_bytes() == second.read_bytes()
    else:
        assert contents(first) == contents(second)


def contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_the_date_is_given_or_that_of_the_day(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    today = [date.today()]
    one = verbs.pack(loan, tmp_path / "one", pdf=False).path
    other = verbs.pack(loan, tmp_path / "other", date=date(2026, 12, 24), pdf=False).path
    today.append(date.today())  # a test may begin before midnight and end after it
    bagged = (one / "bag-info.txt").read_text("utf-8")
    assert any(f"Bagging-Date: {day}\n" in bagged for day in today)
    assert "Bagging-Date: 2026-12-24\n" in (other / "bag-info.txt").read_text("utf-8")


def test_another_reader_finds_the_bag_sound(tmp_path: Path) -> None:
    """The PyPI package `bagit`, as an independent reader of RFC 8493."""
    bagit = pytest.importorskip("bagit")
    folder = packed(tmp_path)
    bag = bagit.Bag(str(folder))
    assert bag.is_valid()
    assert bag.version_info == (1, 0)
    assert bag.algorithms == ["sha512"]
    (folder / "data/dossier/sources/note.md").write_text("other", encoding="utf-8")
    assert not bagit.Bag(str(folder)).is_valid()


def test_the_zip_is_one_folder_stored_with_one_time(tmp_path: Path) -> None:
    package = packed(tmp_path, "package.zip")
    with zipfile.ZipFile(package) as archive:
        entries = archive.infolist()
        assert archive.testzip() is None
    assert {entry.date_time for entry in entries} == {(1980, 1, 1, 0, 0, 0)}
    assert {entry.compress_type for entry in entries} == {zipfile.ZIP_STORED}
    assert len({entry.filename.split("/")[0] for entry in entries}) == 1
    assert [entry.filename for entry in entries] == sorted(entry.filename for entry in entries)


def test_what_cannot_travel_is_refused(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    sound = work.read_text(encoding="utf-8")
    for name in ("sources/a:b.md", "../outside.md", "sources/NUL.md"):
        work.write_text(sound.replace("sources/note.md", name), encoding="utf-8")
        with pytest.raises(Unusable) as error:
            verbs.pack(loan, tmp_path / "package", pdf=False)
        assert error.value.diagnostics[0].span.line
        assert sorted(path.name for path in tmp_path.iterdir()) == ["house"]
    shutil.rmtree(tmp_path / "house")


def test_a_graph_can_be_packed(tmp_path: Path) -> None:
    written(tmp_path / "house")
    text, _ = verbs.convert(tmp_path / "house/work.md", "turtle")
    (tmp_path / "house/work.ttl").write_text(text, encoding="utf-8")
    verbs.pack(tmp_path / "house/work.md", tmp_path / "of-text", pdf=False)
    verbs.pack(tmp_path / "house/work.ttl", tmp_path / "of-graph", pdf=False)
    assert contents(tmp_path / "of-text") == contents(tmp_path / "of-graph")


def test_a_borrower_gets_papers_in_their_language(tmp_path: Path) -> None:
    """What people read is in the language asked for; what programs read is the same, and is received as before."""
    loan = written(tmp_path / "house")
    english = verbs.pack(loan, tmp_path / "english", pdf=False).path
    german = verbs.pack(loan, tmp_path / "german", pdf=False, language="de").path
    ours, theirs = contents(english), contents(german)
    papers = {path for path in ours if path.endswith(".html")}
    seals = {"bag-info.txt", "manifest-sha512.txt", "tagmanifest-sha512.txt"}
    assert len(papers) == 7
    assert {path for path in ours if ours[path] != theirs[path]} - seals == papers
    for path in papers:
        assert '<html lang="de"' in theirs[path].decode()
        assert '<html lang="en"' in ours[path].decode()
    for path in ("data/packing-list.html", "data/report/annex.html"):
        assert "Beim Absender bleiben: " in theirs[path].decode()
    verbs.receive(german, tmp_path / "opened")


def test_packing_again_what_was_received_changes_nothing(tmp_path: Path) -> None:
    package = packed(tmp_path)
    verbs.receive(package, tmp_path / "opened")
    again = verbs.pack(
        tmp_path / "opened/data/dossier/installations/loan.md", tmp_path / "again", pdf=False
    ).path
    kept = ("bag-info.txt", "data/report/annex.html", "data/packing-list.html")
    ours, theirs = contents(package), contents(again)
    assert [path for path in ours if path.startswith("data/dossier") and ours[path] != theirs[path]] == []
    assert all(path in theirs for path in kept)
    assert read_documentation(again / "data/dossier/work.md", vocabulary()).work.title


def test_a_file_that_is_missing_is_told(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    work.write_text(
        work.read_text(encoding="utf-8").replace("sources/note.md", "sources/lost.md"), encoding="utf-8"
    )
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    assert "not-packed" in {found.slug for found in package.findings}


def test_what_is_used_on_paper_goes_as_pages_and_as_pdfs(tmp_path: Path) -> None:
    if not can_print():
        pytest.skip("WeasyPrint, or the Pango that it needs, is not on this machine")
    loan = written(tmp_path / "house")
    package = verbs.pack(loan, tmp_path / "package", language="de").path
    start = (package / "index.html").read_text(encoding="utf-8")
    for name in (
        "report/report",
        "report/placement-cards",
        "report/annex",
        "report/installation-book",
        "packing-list",
    ):
        assert "M1" in (package / f"data/{name}.html").read_text(encoding="utf-8")
        assert (package / f"data/{name}.pdf").read_bytes().startswith(b"%PDF-")
        assert f'href="data/{name}.pdf"' in start
    verbs.receive(package, tmp_path / "opened")


def test_the_installation_book_bears_the_day_of_packing(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    package = verbs.pack(loan, tmp_path / "package", pdf=False, date=date(2027, 1, 15)).path
    book = (package / "data/report/installation-book.html").read_text(encoding="utf-8")
    assert "on 15 January 2027" in book


def test_without_what_makes_pdfs_the_package_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    package = verbs.pack(written(tmp_path / "house"), tmp_path / "package")
    assert any("goes without PDFs" in str(found) for found in package.findings)
    assert (package.path / "data/report/placement-cards.html").exists()
