"""Which situation calls for which caution: a work and a proposal as text, and the cautions of the report.

The dangers are the usual ones of the trade (common practice, no source, unless the vocabulary names one).
"""

from __future__ import annotations

from pathlib import Path

import pytest
from examples_read import vocabulary
from test_cases import Case, read, whole_installation, whole_work

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.effects.assess import assess
from intent.names import TERM
from intent.papers.cautions import called_for
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work

SITUATIONS = [
    # what stands in the row of a part, or under the venue or the work; what is called for
    ("display", "technology", "cathode-ray tube", "high-voltage"),  # implosion, live chassis, old capacitors
    ("display", "technology", "CRT projector", "high-voltage"),
    ("display", "casing", "none", "high-voltage"),
    ("display", "casing", "altered", "mains"),
    ("display", "earthing", "no protection", "high-voltage"),
    ("display", "lamp type", "xenon lamp", "hot-lamps"),
    ("display", "lamp type", "high-pressure mercury lamp", "mercury"),
    ("display", "lamp type", "carbon arc", "ultraviolet"),
    ("display", "lamp type", "RGB laser", "laser"),
    ("display", "technology", "video projector", "projector-beam"),
    ("display", "technology", "film projector", "moving-parts"),
    ("display", "technology", "LED wall", "flicker"),
    ("display", "technology", "cathode-ray tube", "acclimatisation"),
    ("display", "technology", "cathode-ray tube", "heat"),
    ("display", "enclosed", "yes", "heat"),
    ("display", "support", "hung from the ceiling", "hanging"),
    ("lamp", "technology", "laser", "laser"),
    ("lamp", "laser class", "class 1", "laser-class-1"),
    ("lamp", "laser class", "class 2M", "laser-class-2"),
    ("lamp", "laser class", "class 3R", "laser-class-3r"),
    ("lamp", "laser class", "class 4", "laser-class-4"),
    ("display", "risk group", "RG2", "risk-group-2"),
    ("display", "risk group", "RG3", "risk-group-3"),
    ("lamp", "technology", "strobe lamp", "flicker"),
    ("lamp", "technology", "neon tube", "neon"),
    ("lamp", "technology", "fluorescent lamp", "mercury"),
    ("lamp", "technology", "ultraviolet lamp", "ultraviolet"),
    ("player", "battery", "yes", "lithium"),  # in transport
    ("player", "technology", "handheld device", "lithium"),
    ("player", "support", "on a stand", "weight"),  # tipping
    ("player", "support", "on a plinth", "weight"),
    ("player", "support", "on a shelf", "weight"),
    ("player", "support", "in a rack", "weight"),
    ("player", "support", "on another part", "weight"),
    ("player", "support", "leaning", "weight"),
    ("player", "support", "on the wall", "weight"),
    ("player", "people to lift", "2", "weight"),
    ("player", "technology", "tape player", "acclimatisation"),
    ("loudspeaker", "technology", "passive loudspeaker", "sound-level"),
    ("loudspeaker", "technology", "active loudspeaker", "mains"),
    ("converter", "technology", "audio amplifier", "sound-level"),
    ("converter", "technology", "scaler", "acclimatisation"),
    ("carrier", "technology", "nitrate film", "nitrate-film"),
    ("carrier", "technology", "videotape", "acclimatisation"),
    ("cable", "technology", "mains cable", "escape-routes"),
    ("furniture", "support", "on the floor", "escape-routes"),
    ("object", "support", "on the floor", "weight"),
]
PLACES = [
    ("Venue", "stairs", "yes", "weight", "the venue"),
    ("Whole work", "room light", "dark", "escape-routes", "the work"),
]
UNCALLED = [
    ("player", "battery", "no", "lithium"),
    ("player", "enclosed", "no", "heat"),
    ("player", "support", "on the floor", "weight"),
]


def called(work: str, installation: str) -> dict[str, tuple[str, ...]]:
    """The cautions by the end of their names, with what calls for them."""
    case = Case(Path(__file__), 1, "", "", work, "", installation, "")
    reading = read(read_work(whole_work(case), "work.md", vocabulary()))
    documented = load_work(reading.triples, reading.iri, vocabulary())
    proposal = read(read_installation(whole_installation(case), "installation.md", documented, None))
    proposed = load_installation(proposal.triples, proposal.iri, documented, reading.triples, ())
    found = called_for(assess(documented, proposed))
    return {
        iri.removeprefix(f"{TERM}caution-"): tuple(one.written for one in subjects)
        for iri, subjects in found.items()
    }


def part(kind: str, characteristic: str, value: str) -> str:
    table = f"| part | {characteristic} |\n| ---- | ---- |\n| X1 | {value} |\n"
    return f"## Parts\n\n### Things\n\n- kind: {kind}\n\n{table}"


@pytest.mark.parametrize(("kind", "characteristic", "value", "caution"), SITUATIONS)
def test_a_situation_calls_for_its_caution(kind: str, characteristic: str, value: str, caution: str) -> None:
    assert called(part(kind, characteristic, value), "")[caution] == ("X1",)


@pytest.mark.parametrize(("section", "characteristic", "value", "caution", "subject"), PLACES)
def test_the_venue_and_the_work_call_for_cautions(
    section: str, characteristic: str, value: str, caution: str, subject: str
) -> None:
    installation = f"## {section}\n\n- {characteristic}: {value}\n"
    assert subject in called(part("carrier", "technology", "videotape"), installation)[caution]


@pytest.mark.parametrize(("kind", "characteristic", "value", "caution"), UNCALLED)
def test_what_calls_for_none(kind: str, characteristic: str, value: str, caution: str) -> None:
    assert caution not in called(part(kind, characteristic, value), "")


def test_a_device_that_arrives_and_the_one_that_leaves_both_count() -> None:
    installation = (
        "## Substitutions\n\n| part | device | lamp type |\n| --- | --- | --- |\n| X1 | V-1 | RGB laser |\n"
    )
    found = called(part("display", "technology", "cathode-ray tube"), installation)
    assert found["laser"] == found["high-voltage"] == ("X1",)


def test_a_class_that_is_known_stands_in_place_of_the_broader_caution() -> None:
    """Of the device of which it is known: the other may be of any class."""
    known = "| part | device | technology | laser class |\n| --- | --- | --- | --- |\n| X1 | V-1 | laser | class 1 |\n"
    found = called(part("lamp", "technology", "neon tube"), f"## Substitutions\n\n{known}")
    assert found["laser-class-1"] == ("X1",)
    assert "laser" not in found
    found = called(part("lamp", "technology", "laser"), f"## Substitutions\n\n{known}")
    assert found["laser-class-1"] == found["laser"] == ("X1",)


def test_every_caution_is_called_for_by_some_situation() -> None:
    cautions = {iri for iri, one in vocabulary().concepts.items() if str(TERM.cautions) in one.schemes}
    tried = {f"{TERM}caution-{caution}" for *_, caution in SITUATIONS}
    assert tried == cautions
