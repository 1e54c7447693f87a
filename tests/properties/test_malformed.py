"""Property 9, first half: no input, however malformed, ends in a traceback; what is wrong with it is said."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from functools import partial
from pathlib import Path
from random import Random

import pytest
from examples_read import EXAMPLES
from oracle.drawing import draw_case
from oracle.world import small_world
from oracle.writing import installation_text, work_text

from intent.diagnostics import Diagnostic, Unusable
from intent.verbs import check, convert, validate

SUFFIXES = {"markdown": ".md", "turtle": ".ttl", "json-ld": ".jsonld"}
TIMES = 20
PIECES = (
    b'\x00 \xff | ## \n \n\n " - ` < > & [ ] { } ( ) ; . , : @ ^^ \\u \xe2\x80\xae \xef\xbb\xbf \r \t'.split(
        b" "
    )
    + b"1e400 -1 0 NaN 2027-02-30 9999-12-31~ .. / ../../etc/hosts and is of every null [] R1 M1".split(b" ")
    + b'{"@id":1} "@context":"https://example.org/" _:b0 <#x> owl:imports'.split(b" ")
    + [b"9" * 40, b" and "]
)
"""What may be put in: marks of every notation used here, numbers and dates that are none, names from elsewhere."""


def mutated(content: bytes, random: Random) -> bytes:
    """A content with a few places cut, doubled, exchanged or put in."""
    for _ in range(random.choice((1, 1, 2, 5))):
        start = random.randrange(len(content) + 1)
        end = min(len(content), start + random.choice((0, 1, 3, 20, 200)))
        middle = random.choice(
            (
                b"",
                content[start:end] * 2,
                random.choice(PIECES),
                bytes([random.randrange(256)]),
                content[end : end + 20],
            )
        )
        content = content[:start] + middle + content[end:]
    return content


ACTS = (validate, check, partial(convert, to="markdown"), partial(convert, to="turtle"))


def assert_said(act: Callable[..., object], path: Path, beside: Path | None) -> None:
    """Whatever is read there, only `Unusable` with its diagnostics may come of it."""
    said = _said(act, path, beside)
    assert said is None or (said and all(one.message for one in said))


def _said(act: Callable[..., object], path: Path, beside: Path | None) -> tuple[Diagnostic, ...] | None:
    """What was said of an input that cannot be used; None where it can."""
    try:
        act(path, work=beside)
    except Unusable as error:
        return tuple(error.diagnostics)
    return None


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small example in every format."""
    root = tmp_path_factory.mktemp("malformed") / "kestrel-held"
    shutil.copytree(EXAMPLES / "kestrel-held", root)
    case = draw_case(Random(3), small_world())
    (root / "small.md").write_text(work_text(case), encoding="utf-8")
    (root / "proposal.md").write_text(
        installation_text(case).replace("work.md", "small.md"), encoding="utf-8"
    )
    for format in ("turtle", "json-ld"):
        for name, work in (("small.md", None), ("proposal.md", root / "small.md")):
            text = convert(root / name, format, work)[0]
            (root / name).with_suffix(SUFFIXES[format]).write_text(text, encoding="utf-8")
    return root


@pytest.mark.parametrize("name", ["small", "proposal"])
@pytest.mark.parametrize("suffix", [".md", ".ttl", ".jsonld"])
def test_malformed_input_is_never_a_traceback(suffix: str, name: str, folder: Path) -> None:
    random, content = Random(f"{suffix} {name}"), (folder / f"{name}{suffix}").read_bytes()
    for number in range(TIMES):
        path = folder / f"mutated-{name}{suffix}"
        path.write_bytes(mutated(content, random))
        try:
            assert_said(random.choice(ACTS), path, folder / f"small{suffix}" if name == "proposal" else None)
        except Exception as error:
            content_shown = path.read_bytes().decode("utf-8", "backslashreplace")
            raise AssertionError(f"a traceback, from mutation {number}:\n{content_shown}") from error


@pytest.mark.parametrize(
    "content", [b"", b" ", b"\xef\xbb\xbf", b"# ", b"{", b"[]", b"null", b"\x00", b"# A\n" * 3]
)
@pytest.mark.parametrize("suffix", [".md", ".ttl", ".jsonld", ".nt", ".json", ".txt"])
def test_hardly_any_input_is_never_a_traceback(content: bytes, suffix: str, tmp_path: Path) -> None:
    path = tmp_path / f"work{suffix}"
    path.write_bytes(content)
    for act in ACTS:
        assert_said(act, path, None)
