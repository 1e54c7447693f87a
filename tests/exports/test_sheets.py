"""Parts, devices and boxes as spreadsheets: they go and come back, and what is wrong is said at its cell.

Sources: RFC 4180 (CSV); ECMA-376, Office Open XML (XLSX).
"""

from __future__ import annotations

import csv
import sys
import zipfile
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from examples_read import WORKS
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook

from intent import verbs
from intent.diagnostics import Unusable
from intent.exports.grid import read_grid, write_grid
from intent.exports.guarding import FORMULA_SIGNS
from intent.exports.sheet_rows import SHEETS

WORK = """# Three windows

- number: 7
- owner: Thornacre Museum

Prose that stays.

## Parts

- origin: the middle window

### Monitors

- kind: display

| part | name        | technology       | rotation |
| ---- | ----------- | ---------------- | -------- |
| M1   | left window | cathode-ray tube | upright  |
| M2   | right one   | cathode-ray tube | upright  |

More prose.

## Boxes

| box | holds | weight |
| --- | ----- | ------ |
| B01 | M1    | 16 kg  |
"""


@pytest.fixture
def work(tmp_path: Path) -> Path:
    path = tmp_path / "work.md"
    path.write_text(WORK, encoding="utf-8")
    return path


def sheet(path: Path, *rows: list[str]) -> Path:
    with path.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)
    return path


@cache
def turtle_of(file: Path, text: str) -> str:
    """The graph of an example with a text in its place; each text is converted once."""
    with TemporaryDirectory() as folder:
        for beside in file.parent.glob("*.*"):
            (Path(folder) / beside.name).write_bytes(beside.read_bytes())
        work = Path(folder) / file.name
        work.write_text(text, encoding="utf-8")
        return verbs.convert(work, "turtle")[0]


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
@pytest.mark.parametrize("name", SHEETS)
@pytest.mark.parametrize("suffix", ["csv", "xlsx"])
def test_a_sheet_that_comes_back_unchanged_changes_nothing(
    file: Path, name: str, suffix: str, tmp_path: Path
) -> None:
    written = tmp_path / f"{name}.{suffix}"
    verbs.sheet(file, name, written)
    text, _ = verbs.enter_sheet(file, name, written)
    assert turtle_of(file, text) == turtle_of(file, file.read_text(encoding="utf-8"))


def test_cells_change_rows_come_and_prose_stays(work: Path, tmp_path: Path) -> None:
    rows = sheet(
        tmp_path / "parts.csv",
        ["part", "group", "kind", "rotation"],
        ["M1", "Monitors", "display", "turned left"],
        ["M3", "Monitors", "display", "upside down"],
        ["P1", "Players", "player", ""],
    )
    text, findings = verbs.enter_sheet(work, "parts", rows)
    assert "| M1   | left window | cathode-ray tube | turned left |" in text
    assert "| M2   | right one   | cathode-ray tube | upright     |" in text
    assert "### Players\n\n- kind: player\n\n| part |" in text
    assert "Prose that stays." in text
    assert "More prose." in text
    assert "- origin: the middle window" in text
    assert [found.slug for found in findings if found.slug == "not-in-sheet"] == ["not-in-sheet"]


def test_what_is_wrong_is_said_at_its_cell(work: Path, tmp_path: Path) -> None:
    rows = sheet(
        tmp_path / "parts.csv",
        ["part", "group", "kind", "rotation", "technology"],
        ["M1", "Monitors", "display", "sideways", "cathode-ray tube"],
        ["M2", "Monitors", "display", "upright", "magic lantern of doom"],
    )
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "parts", rows)
    found = {(one.span.file, one.span.line, one.span.column) for one in raised.value.diagnostics}
    assert found == {(str(rows), 2, 4), (str(rows), 3, 5)}
    assert "cell D2" in str(raised.value)
    assert "cell E3" in str(raised.value)


def test_a_formula_is_an_error_at_its_cell_and_is_never_run(work: Path, tmp_path: Path) -> None:
    path = tmp_path / "boxes.xlsx"
    book = Workbook()
    page = book.worksheets[0]
    for row in (["box", "holds", "weight"], ["B01", "M1", "=1+1"], ["B02", "M2", '=HYPERLINK("http://x")']):
        page.append(row)
    book.save(path)
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "boxes", path)
    assert [one.slug for one in raised.value.diagnostics] == ["formula", "formula"]
    assert "cell C2" in str(raised.value)


@pytest.mark.parametrize("suffix", ["csv", "xlsx"])
def test_no_formula_is_ever_written(suffix: str, tmp_path: Path) -> None:
    path = tmp_path / f"sheet.{suffix}"
    hostile = [f"{sign}cmd|' /C calc'!A0" for sign in FORMULA_SIGNS]
    write_grid(path, "parts", [["part", *hostile]])
    if suffix == "csv":
        with path.open(encoding="utf-8-sig", newline="") as stream:
            (row,) = csv.reader(stream)
        assert not any(cell.startswith(FORMULA_SIGNS) for cell in row)
    else:
        (line,) = load_workbook(path).worksheets[0].iter_rows()
        assert {cell.data_type for cell in line} == {"s"}


@given(st.lists(st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]), min_size=1), min_size=1))
def test_every_text_comes_back_from_csv(tmp_path_factory: pytest.TempPathFactory, texts: list[str]) -> None:
    path = tmp_path_factory.mktemp("csv") / "sheet.csv"
    write_grid(path, "parts", [["part"] * max(1, len(texts)), texts or ["a"]])
    assert [cell.text for cell in read_grid(path).rows[1]] == (texts or ["a"])


@pytest.mark.parametrize(
    ("rows", "slug"),
    [
        ([["part", "part"], ["M1", "M1"]], "repeated-column"),
        ([["name"], ["left"]], "no-identifiers"),
        ([["part", "name"], ["", "left"]], "no-identifier"),
        ([["part"], ["M1"], ["m1"]], "repeated-identifier"),
        ([["part"], ["M1", "beyond"]], "ragged-row"),
        ([], "empty-file"),
    ],
)
def test_a_sheet_that_cannot_be_used_is_refused(
    rows: list[list[str]], slug: str, work: Path, tmp_path: Path
) -> None:
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "parts", sheet(tmp_path / "parts.csv", *rows))
    assert slug in {one.slug for one in raised.value.diagnostics}


def test_a_spreadsheet_that_would_unpack_too_large_is_refused(work: Path, tmp_path: Path) -> None:
    path = tmp_path / "bomb.xlsx"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", b"0" * 250_000_000)
    with pytest.raises(Unusable, match="unpack"):
        verbs.enter_sheet(work, "parts", path)
    path.write_bytes(b"PK\x03\x04 not a spreadsheet")
    with pytest.raises(Unusable, match=r"not an \.xlsx"):
        verbs.enter_sheet(work, "parts", path)


def test_an_error_in_a_cell_is_said_there(work: Path, tmp_path: Path) -> None:
    path = tmp_path / "boxes.xlsx"
    book = Workbook()
    page = book.worksheets[0]
    page.append(["box", "holds"])
    page.append(["B01", "M1"])
    page["B2"].value = "#DIV/0!"
    page["B2"].data_type = "e"
    book.save(path)
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "boxes", path)
    assert [one.slug for one in raised.value.diagnostics] == ["cell-error"]


@pytest.mark.parametrize(
    ("name", "content", "slug"),
    [
        ("sheet.csv", b'part,name\n"M1,left', "not-csv"),
        ("sheet.csv", "part\nM\xfc\x81".encode("latin-1"), "not-utf-8"),
        ("sheet.xlsx", b"PK no spreadsheet", "not-xlsx"),
    ],
)
def test_a_file_that_is_no_sheet_is_refused(
    name: str, content: bytes, slug: str, work: Path, tmp_path: Path
) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "parts", path)
    assert [one.slug for one in raised.value.diagnostics] == [slug]


def test_a_zip_that_is_no_spreadsheet_is_refused(work: Path, tmp_path: Path) -> None:
    path = tmp_path / "parts.xlsx"
    with zipfile.ZipFile(path, "w") as packed:
        packed.writestr("readme.txt", "no sheet")
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "parts", path)
    assert [one.slug for one in raised.value.diagnostics] == ["not-xlsx"]


def test_rows_need_a_section_to_stand_in(work: Path, tmp_path: Path) -> None:
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "devices", sheet(tmp_path / "devices.csv", ["device"], ["E-1"]))
    assert [one.slug for one in raised.value.diagnostics] == ["no-section"]


def test_without_the_library_it_is_said_how_to_get_it(
    work: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    verbs.sheet(work, "parts", tmp_path / "parts.xlsx")
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    for act in (
        lambda: verbs.enter_sheet(work, "parts", tmp_path / "parts.xlsx"),
        lambda: verbs.sheet(work, "parts", tmp_path / "other.xlsx"),
    ):
        with pytest.raises(Unusable, match="pip install") as raised:
            act()
        assert [one.slug for one in raised.value.diagnostics] == ["needs-openpyxl"]


@pytest.mark.parametrize(
    ("encoding", "mark"),
    [("utf-8", ","), ("utf-8-sig", ";"), ("utf-16", "\t"), ("utf-16", ";"), ("cp1252", ";")],
)
def test_a_sheet_is_read_as_office_programs_save_it(
    encoding: str, mark: str, work: Path, tmp_path: Path
) -> None:
    """Encodings: The Unicode Standard 23.8, and windows-1252 as registered with IANA."""
    path = tmp_path / "boxes.csv"
    rows = "\r\n".join(mark.join(row) for row in (["part", "name"], ["M1", "Größe"]))
    path.write_bytes(rows.encode(encoding))
    text, findings = verbs.enter_sheet(work, "parts", path)
    assert "| M1   | Größe" in text
    assert ("read-as-western" in {found.slug for found in findings}) == (encoding == "cp1252")


@pytest.mark.parametrize(
    ("language", "written", "read"),
    [
        ("de", "16,5 kg", "16.5 kg"),
        ("fr", "16,125 kg", "16.125 kg"),
        ("de", "at least 1,5 kg", "at least 1.5 kg"),
        ("de", "16.5 kg", "16.5 kg"),
        ("en", "16.5 kg", "16.5 kg"),
    ],
)
def test_numbers_are_read_in_the_language_of_the_sheet(
    language: str, written: str, read: str, work: Path, tmp_path: Path
) -> None:
    rows = sheet(tmp_path / "boxes.csv", ["box", "holds", "weight"], ["B01", "M1", written])
    text, _ = verbs.enter_sheet(work, "boxes", rows, language)
    assert f"| {read} " in text


@pytest.mark.parametrize(
    ("language", "written", "said"),
    [
        (
            "de",
            "1.234 kg",
            "cell C2: `1.234` can be read in two ways; write `1234`, or `1,234` with a decimal",
        ),
        ("de", "1.234,5 kg", "cell C2: `1.234,5` has several marks; write nothing between thousands"),
        (
            "en",
            "1,234 kg",
            "write decimals with a point: `1.234 kg`; without anything between thousands: `1234",
        ),
        ("en", "1,5 kg", "say its language: `--language de` or `--language fr`"),
    ],
)
def test_a_number_that_can_be_read_in_two_ways_is_an_error_at_its_cell(
    language: str, written: str, said: str, work: Path, tmp_path: Path
) -> None:
    rows = sheet(tmp_path / "boxes.csv", ["box", "holds", "weight"], ["B01", "M1", written])
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "boxes", rows, language)
    assert said in str(raised.value)
    first = next(
        found for found in raised.value.diagnostics if found.is_error
    )  # notes tell of the whole sheet
    assert first.slug in {"doubtful-number", "bad-unit"}


def test_commas_in_words_stay_and_positions_part_at_semicolons(work: Path, tmp_path: Path) -> None:
    rows = sheet(tmp_path / "parts.csv", ["part", "name", "position"], ["M1", "no. 1,5; left", "1,5; 0; 2 m"])
    text, _ = verbs.enter_sheet(work, "parts", rows, "de")
    assert "| no. 1,5; left |" in text
    assert "| 1.5, 0, 2 m" in text


def test_a_cell_that_the_export_guarded_comes_back_as_it_was(tmp_path: Path) -> None:
    guarded = ["=1 and more", "'=quoted", "''-twice", "-5 deg", "@home", "'plain"]
    for name in ("sheet.csv", "sheet.xlsx"):
        write_grid(tmp_path / name, "parts", [["part"] * len(guarded), guarded])
        assert [cell.text for cell in read_grid(tmp_path / name).rows[1]] == guarded


def test_added_rows_stand_in_one_table(work: Path, tmp_path: Path) -> None:
    rows = sheet(
        tmp_path / "boxes.csv", ["box", "holds", "weight"], ["B01", "M1", "16 kg"], ["B02", "M2", "17 kg"]
    )
    text, _ = verbs.enter_sheet(work, "boxes", rows)
    assert text.endswith("| B01 | M1    | 16 kg  |\n| B02 | M2    | 17 kg  |\n")


def test_what_the_sheet_changed_is_told_first_and_what_was_found_before_last(
    work: Path, tmp_path: Path
) -> None:
    work.write_text(WORK + "\n## Instructions\n\n### R1 The windows\n", encoding="utf-8")
    rows = sheet(
        tmp_path / "parts.csv",
        ["part", "group", "name", "rotation"],
        ["M1", "Monitors", "left window", "turned left"],
        ["M2", "Players", "", "upright"],
        ["M3", "Monitors", "third", ""],
    )
    _, findings = verbs.enter_sheet(work, "parts", rows)
    told = [str(found).split("\n")[0].split(": ", 1)[1] for found in findings]
    assert told[:4] == [
        "note: cell D2: `M1`: rotation is now `turned left`; it was `upright` [changed-by-sheet]",
        "warning: cell B3: `M2` stays under `Monitors`: a sheet moves nothing to another group; move its row in the "
        "dossier [not-moved]",
        "note: cell C3: `M2`: name is now blank; it was `right one` [changed-by-sheet]",
        "note: cell A4: `M3` is new [new-in-sheet]",
    ]
    assert {found.slug for found in findings[4:]} == {"no-lines"}


def test_a_sheet_that_changes_nothing_says_so(work: Path, tmp_path: Path) -> None:
    verbs.sheet(work, "boxes", tmp_path / "boxes.csv")
    _, findings = verbs.enter_sheet(work, "boxes", tmp_path / "boxes.csv")
    assert [found.slug for found in findings] == ["changes-nothing"]


def test_a_column_that_there_is_not_is_said_at_its_name(work: Path, tmp_path: Path) -> None:
    rows = sheet(tmp_path / "boxes.csv", ["box", "holds", "aura"], ["B01", "M1", "blue"])
    with pytest.raises(Unusable) as raised:
        verbs.enter_sheet(work, "boxes", rows)
    assert "cell C1: `aura` is not a known column here" in str(raised.value)
