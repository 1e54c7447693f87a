"""Where the time goes: by stage, as whole processes, and how judging grows with the number of parts.

Times are of processor and wall clock of this machine; what the README tells are ratios within one run.
"""

from __future__ import annotations

import gc
import os
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from intent.reading.answers_kept import SETTING

ROOT = Path(__file__).parents[2]
LARGEST = ROOT / "examples/low-farms/installations/2027-halmsee-loan.md"
IMPORTS = "import rdflib, pyshacl, markdown_it, click"
RUNS = 9
WITHOUT_EFFECTS = """
import sys, types
from intent.variance.judge import judge
sys.modules["intent.effects.assess"] = stand_in = types.ModuleType("assess")
stand_in.assess = judge
from intent.commands.main import main
main()
"""
"""`intent check` as it would be if nothing were computed of what a change does."""


def timed(function: Callable[[], object], runs: int = 3) -> tuple[float, object]:
    """The shortest of several runs, in milliseconds, and what the last returned."""
    best, result = float("inf"), None
    for _ in range(runs):
        start = time.perf_counter()
        result = function()
        best = min(best, (time.perf_counter() - start) * 1000)
    return best, result


def stages() -> None:
    from intent.dossier.work_text import read_work
    from intent.effects.assess import assess
    from intent.papers import FORMATS
    from intent.reading.documentation import read_documentation
    from intent.reading.proposal import read_proposal
    from intent.record.load_work import load_work
    from intent.record.validate import validate_record
    from intent.variance.judge import judge
    from intent.verbs import Checked, report
    from intent.vocabulary.loader import read_vocabulary

    print("By stage, on the largest example (shortest of three runs):")
    work_path = LARGEST.parents[1] / "work.md"
    shipped = read_vocabulary()
    documentation = read_documentation(work_path, shipped)
    vocabulary, text = documentation.work.vocabulary, work_path.read_text(encoding="utf-8")
    proposal = read_proposal(LARGEST, None, shipped)
    reading = read_work(text, "work.md", vocabulary)
    variance = assess(documentation.work, proposal.installation)
    checked = Checked(
        variance=variance, findings=(), files=proposal.files, folder=proposal.documentation.folder
    )
    table: list[tuple[str, Callable[[], object]]] = [
        ("read the vocabulary", read_vocabulary),
        ("read the dossier into a graph", lambda: read_work(text, "work.md", vocabulary)),
        ("validate the graph", lambda: validate_record(reading.graph, reading.spans, "work")),
        ("load the graph", lambda: load_work(reading.graph, reading.iri, vocabulary)),
        ("judge", lambda: judge(documentation.work, proposal.installation)),
        ("judge, with effects", lambda: assess(documentation.work, proposal.installation)),
        *((f"report as {form}", partial(report, checked, form)) for form in FORMATS),
        ("all but the report", lambda: read_proposal(LARGEST, None, shipped)),
    ]
    for name, function in table:
        print(f"  {name:32} {timed(function)[0]:8.1f} ms")
    print(f"  ({len(reading.graph)} triples, {len(variance.rows)} rows)")


def processes() -> None:
    """Whole processes, one after the other in each round, so that a machine that slows down slows all of them."""
    print(f"\nAs whole processes (median of {RUNS} rounds):")
    check = [sys.executable, "-m", "intent", "check", str(LARGEST)]
    with tempfile.TemporaryDirectory() as folder:
        kept, anew = {SETTING: folder}, {SETTING: "off"}
        told: dict[str, tuple[list[str], dict[str, str]]] = {
            IMPORTS: ([sys.executable, "-c", IMPORTS], anew),
            "intent check, judged anew": (check, anew),
            "the same without effects": ([sys.executable, "-c", WITHOUT_EFFECTS, *check[3:]], anew),
            "as HTML, judged anew": ([*check, "--format", "html"], anew),
            "intent check, kept from before": (check, kept),
            "as HTML, kept from before": ([*check, "--format", "html"], kept),
        }
        for name in ("intent check, kept from before", "as HTML, kept from before"):
            process(*told[name])
        spent: dict[str, list[float]] = {name: [] for name in told}
        for _ in range(RUNS):
            for name, (command, setting) in told.items():
                spent[name].append(process(command, setting))
    medians = {name: statistics.median(times) for name, times in spent.items()}
    for name, median in medians.items():
        print(f"  {name:48} {median:8.1f} ms   {median / medians[IMPORTS]:5.2f} of the imports")
    anew_text, kept_text = medians["intent check, judged anew"], medians["intent check, kept from before"]
    print(f"  check, kept, to the imports {kept_text / medians[IMPORTS]:.2f} (to stay within 2.2)")
    print(f"  HTML to text, anew {medians['as HTML, judged anew'] / anew_text:.2f} (to stay within 1.6)")
    print(f"  HTML to text, kept {medians['as HTML, kept from before'] / kept_text:.2f} (to stay within 1.6)")
    print(
        f"  with effects to without {anew_text / medians['the same without effects']:.2f} (to stay within 1.2)"
    )


def process(command: list[str], setting: dict[str, str]) -> float:
    start = time.perf_counter()
    silent = subprocess.DEVNULL
    subprocess.run(
        command, stdout=silent, stderr=silent, cwd=ROOT, check=False, env={**os.environ, **setting}
    )
    return (time.perf_counter() - start) * 1000


def growth() -> None:
    from many_parts import random_case

    from intent.variance.judge import judge

    print("\nJudging random parts with ten instructions each (without collecting, as the command runs):")
    gc.disable()
    first = 0.0
    for parts in (125, 250, 500, 1000):
        work, installation = random_case(parts)
        spent, variance = timed(partial(judge, work, installation), 1)
        each = spent / parts
        first = first or each
        rows = len(getattr(variance, "rows", ()))
        print(
            f"  {parts:5} parts {spent:9.1f} ms   {each:6.3f} ms a part ({each / first:.2f} of the first), {rows} rows"
        )


def quotations() -> None:
    from intent.reading.evidence.nearest import nearest_passage
    from intent.reading.evidence.search import find, pieces_of, transcript_of

    print("\nA passage sought in a transcript of 200,000 words:")
    chance = random.Random(1)
    words = (ROOT / "examples/low-farms/sources/conversation-1992.md").read_text(encoding="utf-8").split()
    lines = (" ".join(chance.choices(words, k=40)) for _ in range(5000))
    text = "\n\n".join(f"[{n // 3600}:{n // 60 % 60:02}:{n % 60:02}] {line}" for n, line in enumerate(lines))
    last = " ".join(text.split()[-30:])
    changed = last.replace(" ", " unsaid ", 1)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "transcript.md"
        path.write_text(text, encoding="utf-8")
        base, _ = timed(lambda: transcript_of(path.read_text(encoding="utf-8")))

        def seek(passage: str) -> object:
            source, pieces = transcript_of(path.read_text(encoding="utf-8")), pieces_of(passage)
            return find(pieces, source) or nearest_passage(pieces, source)

        print(f"  {'read and reduce to its wording':44} {base:8.1f} ms")
        tried: list[tuple[str, Callable[[], object]]] = [
            ("with a passage at its end", lambda: seek(last)),
            ("with one that is nowhere", lambda: seek(changed)),
        ]
        for name, function in tried:
            spent, found = timed(function)
            print(f"  {name:44} {spent:8.1f} ms   ratio {spent / base:.2f} (to stay within 3)")
            assert found is not None
    source = transcript_of(text)
    each, _ = timed(lambda: find(pieces_of(last), source))
    print(f"  {'each further passage':44} {each:8.1f} ms")


if __name__ == "__main__":
    stages()
    processes()
    growth()
    quotations()
