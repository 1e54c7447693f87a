"""The page of a package that is opened first: it leads to what is there, and to nothing else."""

from __future__ import annotations

import datetime
import shutil
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import pytest
from examples_read import LATEST_OF_EACH
from lxml import html
from redaction.work_with_secrets import written

from intent import verbs
from intent.diagnostics import Unusable


def page_of(path: Path) -> Any:
    """A page as a tree; what an XPath finds in it has no type that says more."""
    return html.document_fromstring(path.read_bytes())


def start_of(package: Path) -> Any:
    return page_of(package / "index.html")


def loan_with(folder: Path, consents: str) -> Path:
    """The small work with a table of consents in its loan."""
    loan = written(folder)
    header = (
        "| person | to   | answer | date       | source |\n| ------ | ---- | ------ | ---------- | ------ |\n"
    )
    text = loan.read_text(encoding="utf-8")
    loan.write_text(f"{text}\n## Consents\n\n{header}{consents}", encoding="utf-8")
    letter = loan.parent / "letters/2026-10-02.md"
    letter.parent.mkdir()
    letter.write_text("Turn it as you like.\n", encoding="utf-8")
    return loan


ANSWERED = "| heir | R1.2 | yes | 2026-10-02 | letters/2026-10-02.md |\n"


@pytest.mark.parametrize("example", LATEST_OF_EACH, ids=[one.parents[1].name for one in LATEST_OF_EACH])
def test_every_way_leads_to_something_in_the_package(example: Path, tmp_path: Path) -> None:
    package = verbs.pack(example, tmp_path / "package", pdf=False).path
    addresses = [unquote(one) for one in start_of(package).xpath("//a/@href")]
    assert {"data/report/report.html", "data/report/annex.html", "data/packing-list.html"} <= set(addresses)
    for address in addresses:
        path, _, anchor = address.partition("#")
        assert (package / path).exists(), address
        if anchor:
            assert f'id="{anchor}"' in (package / path).read_text(encoding="utf-8"), address


def test_the_page_says_what_came_of_it_and_when_it_was_packed(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    package = verbs.pack(loan, tmp_path / "package", date=datetime.date(2027, 1, 15), pdf=False).path
    told = " ".join(start_of(package).text_content().split())
    assert "Not acceptable" in told
    assert "Packed by intent" in told
    assert "on 15 January 2027" in told
    assert "The sender keeps to itself" in told
    assert "Of what is named here, the sender keeps S2." in told


def test_the_page_is_in_the_language_asked_for(tmp_path: Path) -> None:
    package = verbs.pack(written(tmp_path / "house"), tmp_path / "package", pdf=False, language="de").path
    page = start_of(package)
    assert page.get("lang") == "de"
    assert "Packliste" in page.text_content()
    assert "Packing list" not in page.text_content()


def test_a_work_by_itself_has_a_start_page_without_an_outcome(tmp_path: Path) -> None:
    written(tmp_path / "house")
    package = verbs.pack(tmp_path / "house/work.md", tmp_path / "package", pdf=False).path
    page = start_of(package)
    assert not page.xpath("//*[@id='outcome']")
    assert page.xpath("//a[@href='data/dossier/work.md']")


def test_a_package_without_a_start_page_is_received_as_before(tmp_path: Path) -> None:
    package = verbs.pack(written(tmp_path / "house"), tmp_path / "package", pdf=False).path
    with_page = verbs.receive(package, tmp_path / "one")
    older = tmp_path / "older"
    shutil.copytree(package, older)
    (older / "index.html").unlink()
    manifest = older / "tagmanifest-sha512.txt"
    lines = manifest.read_text(encoding="utf-8").splitlines(keepends=True)
    manifest.write_text("".join(line for line in lines if "index.html" not in line), encoding="utf-8")
    without = verbs.receive(older, tmp_path / "two")
    assert [str(one.message) for one in without.findings] == [str(one.message) for one in with_page.findings]
    assert (tmp_path / "one/index.html").is_file()
    assert not (tmp_path / "two/index.html").exists()


def test_a_start_page_that_was_changed_on_the_way_is_noticed(tmp_path: Path) -> None:
    package = verbs.pack(written(tmp_path / "house"), tmp_path / "package", pdf=False).path
    page = package / "index.html"
    page.write_text(
        page.read_text(encoding="utf-8").replace("Not acceptable", "Acceptable"), encoding="utf-8"
    )
    with pytest.raises(Unusable):
        verbs.receive(package, tmp_path / "opened")


def test_a_letter_on_which_a_consent_rests_goes_along(tmp_path: Path) -> None:
    loan = loan_with(tmp_path / "house", ANSWERED)
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    inside = "data/dossier/installations/letters/2026-10-02.md"
    assert (package.path / inside).read_text(encoding="utf-8") == "Turn it as you like.\n"
    (link,) = start_of(package.path).xpath(f"//a[@href='{inside}']")
    assert link.text_content() == "Answer to R1.2, 2026-10-02.md"
    assert not [one for one in package.findings if one.slug == "not-packed"]
    verbs.receive(package.path, tmp_path / "opened")


def test_a_letter_that_is_not_there_is_to_be_settled(tmp_path: Path) -> None:
    loan = loan_with(tmp_path / "house", ANSWERED.replace("10-02.md", "10-03.md"))
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    (found,) = [one for one in package.findings if one.slug == "not-packed"]
    assert "`letters/2026-10-03.md`" in str(found)
    assert found.severity == "warning"
    assert found.span.line > 1
    assert "to be asked for: letters/2026-10-03.md" in start_of(package.path).text_content()


@pytest.mark.parametrize("source", ["S2", "../sources/letter.md"])
def test_a_letter_that_is_kept_is_named_and_does_not_go(source: str, tmp_path: Path) -> None:
    """However it is named: as a source of the work that is marked, or by the file of one."""
    loan = loan_with(tmp_path / "house", ANSWERED.replace("letters/2026-10-02.md", source))
    package = verbs.pack(loan, tmp_path / "package", pdf=False).path
    assert not list(package.rglob("letter.md"))
    (kept,) = start_of(package).xpath("//p[starts-with(., 'Of what is named here')]/text()")
    assert source in kept


def test_a_letter_out_of_the_works_folder_stays_there(tmp_path: Path) -> None:
    (tmp_path / "private.md").write_text("nobody's business\n", encoding="utf-8")
    loan = loan_with(tmp_path / "house", ANSWERED.replace("letters/2026-10-02.md", "../../private.md"))
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    assert not list(package.path.rglob("private.md"))
    assert "outside-folder" in {one.slug for one in package.findings}


def test_material_that_is_not_there_is_to_be_settled(tmp_path: Path) -> None:
    """Whoever lends has to say how it goes: a borrower would find nothing to play."""
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    material = (
        "## Material\n\n| material | file |\n| -------- | ---- |\n| V1 | media/v1.mkv |\n\n## Sources\n"
    )
    work.write_text(work.read_text("utf-8").replace("## Sources\n", material), encoding="utf-8")
    package = verbs.pack(loan, tmp_path / "package", pdf=False)
    (found,) = [one for one in package.findings if one.slug == "not-packed"]
    assert (found.severity, found.subject) == ("warning", "V1")
    assert "to be asked for: V1" in start_of(package.path).text_content()


def test_a_contact_that_is_marked_is_told_and_no_other(tmp_path: Path) -> None:
    loan = written(tmp_path / "house")
    work = tmp_path / "house/work.md"
    text = work.read_text("utf-8")
    people = text[text.index("| person |") : text.index("## Parts")]
    marked = "\n".join(
        f"{line} {cell} |" if line.startswith("|") else line
        for line, cell in zip(
            people.splitlines(), ["contact leaves", "---", "", "yes", "yes", *[""] * 9], strict=False
        )
    )
    work.write_text(text.replace(people, f"{marked}\n\n"), encoding="utf-8")
    package = verbs.pack(loan, tmp_path / "package", pdf=False).path
    for path in ("index.html", "data/report/annex.html"):
        page = page_of(package / path)
        (told,) = page.xpath("//*[@id='contacts']/..")
        assert "Odile Varga-Finn (conservator)" in told.text_content()
        assert "odile@thornacre.example" in told.text_content()
    everything = b"".join(path.read_bytes() for path in package.rglob("*") if path.is_file())
    assert b"z.ostlund" not in everything, "the heir is kept in the house, whatever is said of the contact"
    verbs.receive(package, tmp_path / "opened")
