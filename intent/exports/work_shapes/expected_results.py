"""What any engine is to find with the shapes of a work and the data of an installation, for a registrar's tool.

Beside it what the program found, and of which graphs, so that a stranger can tell what was checked.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from hashlib import sha256

from intent.effects.assess import assess
from intent.exports.work_shapes.canaries import CANARY, canary_shapes
from intent.exports.work_shapes.instruction_shapes import ASKED, SHAPE, bare_case
from intent.exports.work_shapes.shape_names import THE_SHOWING, ShapeNames
from intent.exports.work_shapes.undecided import Undecided, undecided_lines, why_undecided
from intent.language.locale import ENGLISH
from intent.model.work import Modality
from intent.names import local_iri
from intent.variance.case import Case
from intent.variance.judge import Ruling, rulings
from intent.variance.result import BROKEN
from intent.variance.topics import TopicKind
from intent.version import VERSION

Json = dict[str, object]


def expected_results(case: Case, files: Mapping[str, str]) -> str:
    """The results as JSON; ``files`` are the graphs by their names."""
    found, bare = rulings(case), bare_case(case.work)
    variance = assess(case.work, case.installation)
    known = tuple(undecided_lines(bare))
    rows = [_row(case, one, why_undecided(case, bare, known, one)) for one in found]
    told: Json = {
        "program": {"name": "intent", "version": VERSION},
        "work": {"iri": case.work.iri, "title": case.work.title},
        "installation": {
            "iri": case.installation.iri,
            "title": case.installation.title,
            "dates": str(case.installation.dates),
        },
        "graphs": [
            {"file": name, "sha256": sha256(text.encode()).hexdigest()} for name, text in files.items()
        ],
        "outcome": variance.outcome.value,
        "counts": dict(Counter(one.row.verdict.value for one in found)),
        "obstacles": [
            {
                "subject": one.subject.written,
                "text": ENGLISH.say(one.text),
                "sure": one.is_sure,
                "as_documented": one.is_as_documented,
            }
            for one in variance.obstacles
        ],
        "must_fail": sorted(_canaries(case)),
        "rows": rows,
    }
    return json.dumps(told, indent=1, ensure_ascii=False) + "\n"


def _canaries(case: Case) -> Iterator[str]:
    names = ShapeNames(case.work)
    yield from (names.iri(CANARY, name) for name in canary_shapes(names))


def _row(case: Case, ruling: Ruling, why: Undecided | None) -> Json:
    """One row: what the program found, and whether an engine finds a violation of any of its shapes in its focus.

    ``why`` the shapes do not decide it; nothing where they do.
    """
    row, topic = ruling.row, ruling.topic
    focus = THE_SHOWING if topic.kind is TopicKind.AGGREGATE else topic.members[0]
    asked = [line for line in topic.lines if line.modality is not Modality.ALLOWED]
    told: Json = {
        "subject": row.subject.written,
        "characteristic": ENGLISH.say(row.characteristic),
        "verdict": row.verdict.value,
        "documented": ENGLISH.say(row.documented),
        "proposed": ENGLISH.say(row.proposed),
        "governing": [line.identifier for line in row.governing],
        "focus": str(local_iri(case.installation.iri, "shown", focus)),
        "shapes": [ShapeNames(case.work).iri(SHAPE, line.identifier, ASKED) for line in asked],
        "decided": why is None,
    }
    if why is not None:
        return {**told, "because": f"It {why.value}."}
    return {**told, "violation": row.verdict in BROKEN}
