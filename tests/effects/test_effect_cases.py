"""The effects of a proposal: a work and an installation as text, and the quantities before and after.

Every row of an expected table is found, word for word in the columns that it has (topic, parts, quantity, documented,
proposed, sentence, missing, source). Below the table, `obstacle:` is a sure obstacle, `open:` a limit of which it is
not known whether it is kept, `to be known:` what would settle one, `as documented:` what the documented state has as
well and what counts for nothing, `not checked:` a limit that nobody states, `no obstacle:` says that nothing stands in
the way, `without:` names a quantity that is not told, `once:` one that is told of nothing else, and `outcome:` is that
of the whole.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from test_cases import (
    Case,
    cases_in,
    closing_lines,
    documented,
    read,
    rows_of,
    whole_installation,
    whole_work,
)

from intent.dossier.installation_text import read_installation, read_pool
from intent.effects.assess import assess
from intent.language.figures import Figure
from intent.language.locale import ENGLISH
from intent.language.message import say
from intent.record.load_installation import load_installation
from intent.values.regions import Interval
from intent.variance.obstacle import Need, in_the_way, needs_words
from intent.variance.result import Effect, Variance

CASES = Path(__file__).parent / "cases"


def every_case() -> list[Case]:
    return [case for file in sorted(CASES.glob("*.md")) for case in cases_in(file)]


def assessed(case: Case) -> Variance:
    reading, work = documented(whole_work(case))
    pool = read(read_pool(case.pool, "pool.md", work)) if case.pool else None
    proposal = read(read_installation(whole_installation(case), "installation.md", work, pool))
    devices = pool.triples if pool else ()
    return assess(work, load_installation(proposal.triples, proposal.iri, work, reading.triples, devices))


def told(effect: Effect) -> dict[str, str]:
    return {
        "topic": effect.topic.value,
        "parts": ", ".join(effect.subject.members),
        "quantity": ENGLISH.say(effect.quantity),
        "documented": figured(effect.documented, effect.unit),
        "proposed": figured(effect.proposed, effect.unit),
        "sentence": ENGLISH.say(effect.sentence),
        "missing": ", ".join(map(ENGLISH.say, effect.missing)),
        "source": ENGLISH.say(effect.source),
    }


def figured(bounds: Interval | None, unit: str) -> str:
    return "" if bounds is None else ENGLISH.say(say("{figure}", figure=Figure(bounds=bounds, unit=unit)))


@pytest.mark.parametrize("case", every_case(), ids=lambda case: f"{case.file.stem}:{case.line}")
def test_effect_case(case: Case) -> None:
    variance = assessed(case)
    found = [told(effect) for effect in variance.effects]
    where = f"{case.file}:{case.line}"
    listing = "\n".join(" | ".join(one.values()) for one in found)
    for row in rows_of(case.expected) if "|" in case.expected else []:
        assert any(row.items() <= one.items() for one in found), f"{where}: {row}\nfound:\n{listing}"
    obstructed = obstructions(variance)
    for word, text in closing_lines(case.expected):
        if word in obstructed:
            assert text in obstructed[word], f"{where}: {word}: {text}\nfound:\n{obstructed}"
        elif word == "without":
            assert not [one for one in found if one["quantity"] == text], (
                f"{where}: {text}\nfound:\n{listing}"
            )
        elif word == "once":
            assert len([one for one in found if one["quantity"] == text]) == 1, (
                f"{where}: {text}\nfound:\n{listing}"
            )
        elif word == "outcome":
            assert variance.outcome == text, f"{where}: {variance.outcome}\n{obstructed}"
        elif word == "no obstacle":
            assert not in_the_way(variance.obstacles), f"{where}:\n{obstructed}"
        else:
            raise AssertionError(f"{where}: no line is called `{word}`")


def obstructions(variance: Variance) -> dict[str, list[str]]:
    """What stands in the way, by the words with which a case names it."""
    found = in_the_way(variance.obstacles)
    unchecked = needs_words(Need(one.limit, one.subject) for one in variance.unchecked)
    return {
        "obstacle": [ENGLISH.say(one.text) for one in found if one.is_sure],
        "open": [ENGLISH.say(one.text) for one in found if not one.is_sure],
        "to be known": [ENGLISH.say(need) for one in found for need in needs_words(one.missing)],
        "as documented": [ENGLISH.say(one.text) for one in variance.obstacles if one.is_as_documented],
        "not checked": list(map(ENGLISH.say, unchecked)),
    }


@pytest.mark.parametrize("case", every_case(), ids=lambda case: f"{case.file.stem}:{case.line}")
def test_an_obstacle_names_its_subject_once(case: Case) -> None:
    """A report puts the subject before a text that does not name it, and only before such a text."""
    for obstacle in assessed(case).obstacles:
        named = set(re.findall(r"[\w-]+", ENGLISH.say(obstacle.text)))
        is_named = named.issuperset(obstacle.subject.members)
        assert obstacle.names_subject == is_named, f"{case.file}:{case.line}: {obstacle.text}"
