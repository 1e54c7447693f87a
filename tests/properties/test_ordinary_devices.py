"""What is ordinary of a device goes with the device: another has it only where the documented one does.

The vocabulary that ships has no such characteristic; a collection's own may.
"""

from __future__ import annotations

import pytest
from examples_read import vocabulary

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.judge import judge
from intent.vocabulary.loader import extended

OWN = b"""
@prefix intent: <https://w3id.org/intent-record/ns#> . @prefix term: <https://w3id.org/intent-record/term/> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> . @prefix own: <https://ostmere.example/terms/> .
own:humming a intent:Characteristic, skos:Concept ; skos:prefLabel "humming"@en ;
    skos:inScheme term:characteristics ; intent:bearer "device" ; intent:space "yes-no" ;
    intent:valuesFrom term:yes-no ; intent:countsUnasked true ; intent:ordinaryValue term:no ;
    intent:appliesTo term:object ; intent:noticing 1 ; intent:undoing 2 .
"""


@pytest.mark.parametrize(
    ("documented", "proposed", "verdict"),
    [
        ("", "", "as-documented"),
        ("no", "", "as-documented"),
        ("yes", "", "unknown"),
        ("", "yes", "uncovered"),
        ("yes", "yes", "as-documented"),
        ("yes", "no", "uncovered"),
    ],
)
def test_another_device(documented: str, proposed: str, verdict: str) -> None:
    known = extended(vocabulary(), OWN)
    text = (
        "# Fan\n\n- number: 7\n\n## Parts\n\n### Fans\n\n- kind: object\n\n"
        f"| part | device | humming |\n| --- | --- | --- |\n| F1 | D-1 | {documented} |\n"
    )
    reading = read_work(text, "work.md", known)
    work = load_work(reading.triples, reading.iri, known)
    loan = (
        "# Loan\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n\n## Substitutions\n\n"
        f"| part | device | humming |\n| --- | --- | --- |\n| F1 | V-1 | {proposed} |\n"
    )
    proposal = read_installation(loan, "loan.md", work)
    installation = load_installation(proposal.triples, proposal.iri, work, reading.triples)
    (row,) = (
        row for row in judge(work, installation).rows if row.term == "https://ostmere.example/terms/humming"
    )
    assert row.verdict == verdict
