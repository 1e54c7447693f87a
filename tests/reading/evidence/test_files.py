"""Sources' files: read once and from the work's folder only, whatever lies there; and what the examples quote."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest
from examples_read import WORKS, documentation
from rdflib import Graph, Literal

import intent
from intent import verbs
from intent.diagnostics import Severity
from intent.model.work import Work
from intent.names import OA
from intent.reading.documentation import read_documentation
from intent.reading.evidence.quoting import SearchResult, look_up
from intent.reading.evidence.source_files import LARGEST, read_sources
from intent.reading.evidence.source_findings import evidence_findings
from intent.vocabulary.loader import read_vocabulary

ON_PURPOSE = {
    "kestrel-held": {
        "passage-not-found": "R12",
        "passage-elsewhere": "R13",
        "source-missing": "",
        "source-changed": "",
    }
}
"""By example, the findings that it is to have, and the headings whose words are astray."""
SHIPPED = read_vocabulary()
WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role   |
| ------ | ---------------- | ------ |
| artist | Ottiline Quarrow | artist |

## Parts

| part | kind    | rotation |
| ---- | ------- | -------- |
| M1   | display | upright  |

## Sources

### S1 Letter

- kind: letter
- by: artist
- date: 1999
- file: {file}

## Instructions

### R1 Whatever

> {words}

- required: rotation of M1 is upright ± 1 deg
- source: S1{at}
"""


def work_in(folder: Path, file: str, words: str = "You wait on the slip.", at: str = "") -> Work:
    path = folder / "work.md"
    path.write_text(WORK.format(file=file, words=words, at=at), encoding="utf-8")
    return read_documentation(path, SHIPPED).work


def slugs(work: Work, folder: Path) -> list[str]:
    return [found.slug for found in evidence_findings(work, folder, {})]


def test_a_file_is_searched_and_digested(tmp_path: Path) -> None:
    work = work_in(tmp_path, "letter.md")
    (tmp_path / "letter.md").write_bytes(b"You wait\r\non the slip.\r\n")
    assert slugs(work, tmp_path) == []
    file = read_sources(work, tmp_path)["S1"]
    assert file.sha256 == hashlib.sha256(b"You wait\r\non the slip.\r\n").hexdigest()


@pytest.mark.parametrize("name", ["photo.jpg", "talk.wav", "plan.pdf", "without-ending"])
def test_what_is_no_text_is_digested_and_not_searched(name: str, tmp_path: Path) -> None:
    work = work_in(tmp_path, name)
    (tmp_path / name).write_bytes(b"\x00\xff")
    file = read_sources(work, tmp_path)["S1"]
    assert (file.transcript, slugs(work, tmp_path)) == (None, [])
    assert file.sha256 == hashlib.sha256(b"\x00\xff").hexdigest()
    (quoted,) = look_up(work, work.headings, {"S1": file})
    assert quoted.standing is SearchResult.UNSEARCHED


@pytest.mark.parametrize("content", [b"Caf\xe9", b"with a NUL \x00 in it"])
def test_a_text_that_is_none_is_reported(content: bytes, tmp_path: Path) -> None:
    work = work_in(tmp_path, "letter.txt")
    (tmp_path / "letter.txt").write_bytes(content)
    assert slugs(work, tmp_path) == ["source-not-read"]


def test_a_folder_a_pipe_and_a_link_are_not_followed(tmp_path: Path) -> None:
    inside, outside = tmp_path / "work", tmp_path / "outside"
    inside.mkdir()
    outside.mkdir()
    (outside / "secret.md").write_text("You wait on the slip.")
    (inside / "linked.md").symlink_to(outside / "secret.md")
    (inside / "linked").symlink_to(outside)
    (inside / "folder.md").mkdir()
    os.mkfifo(inside / "pipe.md")
    for name in ("linked.md", "linked/secret.md", "folder.md", "pipe.md", "../outside/secret.md"):
        work = work_in(inside, name)
        assert slugs(work, inside) == ["source-not-read"], name
        assert read_sources(work, inside)["S1"].sha256 is None


def test_a_link_within_the_folder_is_followed(tmp_path: Path) -> None:
    work = work_in(tmp_path, "linked.md")
    (tmp_path / "letter.md").write_text("You wait on the slip.")
    (tmp_path / "linked.md").symlink_to(tmp_path / "letter.md")
    assert slugs(work, tmp_path) == []


def test_what_is_too_large_is_left_alone(tmp_path: Path) -> None:
    work = work_in(tmp_path, "talk.wav")
    with (tmp_path / "talk.wav").open("wb") as stream:
        stream.truncate(LARGEST + 1)
    assert slugs(work, tmp_path) == ["source-not-read"]


def test_the_line_to_paste_is_what_is_then_read(tmp_path: Path) -> None:
    work_in(tmp_path, "letter.md")
    (tmp_path / "letter.md").write_text("You wait on the slip.")
    (line,) = verbs.digests(tmp_path / "work.md")
    heading, field = line.split("\n")
    assert heading == "### S1 Letter"
    path = tmp_path / "work.md"
    path.write_text(path.read_text().replace("- file: letter.md\n", f"- file: letter.md\n{field}\n"))
    assert verbs.digests(path) == ()
    assert not verbs.validate(path)
    (tmp_path / "letter.md").write_text("You wait on the slip!")
    assert {found.slug for found in verbs.validate(path)} == {"source-changed", "passage-not-found"}


def selectors(path: Path) -> list[tuple[str, str]]:
    text, _ = intent.convert(path, "n-triples")
    graph = Graph().parse(data=text, format="nt")
    return sorted(
        (str(node).rpartition("#")[2], str(words)) for node, words in graph.subject_objects(OA.exact)
    )


def test_the_record_holds_the_words_of_a_citation(tmp_path: Path) -> None:
    work_in(tmp_path, "letter.md", "You wait\n> on the slip.", " at 0:01:00")
    assert selectors(tmp_path / "work.md") == [("R1.citation-1.words", "You wait on the slip.")]


@pytest.mark.parametrize(
    ("words", "at"),
    [
        ("You wait […] slip.", ""),
        ("You wait.\n\n> On the slip.", ""),
        ("You wait.", "\n- source: S1 at 0:01"),
    ],
)
def test_where_the_words_may_be_in_several_places_the_record_says_no_more(
    words: str, at: str, tmp_path: Path
) -> None:
    work_in(tmp_path, "letter.md", words, at)
    assert selectors(tmp_path / "work.md") == []


def test_words_in_a_selector_are_no_time(tmp_path: Path) -> None:
    """A graph whose selector has words that look like a time still has them as words alone."""
    work = work_in(tmp_path, "letter.md", "t=5")
    assert work.headings[0].sources[0].at is None
    assert Literal("t=5") in set(
        read_documentation(tmp_path / "work.md", SHIPPED).graph.objects(None, OA.exact)
    )


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_what_the_examples_quote_is_found_at_its_time(path: Path) -> None:
    """All but what one example has on purpose, so that each kind of finding occurs once."""
    wrong = ON_PURPOSE.get(path.parent.name, {})
    found_in = documentation(path)
    work = found_in.work
    texts = {source.identifier for source in work.sources if source.file}
    cited = [heading for heading in work.headings if {one.source for one in heading.sources} <= texts]
    found = look_up(work, cited, read_sources(work, found_in.folder))
    assert len(found) >= 5
    astray = {quoted.heading for quoted in found if quoted.standing is not SearchResult.FOUND}
    assert astray == set(wrong.values()) - {""}
    findings = evidence_findings(work, found_in.folder, found_in.reading.spans)
    assert sorted(one.slug for one in findings if one.severity is not Severity.NOTE) == sorted(wrong)
