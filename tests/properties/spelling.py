"""Other spellings of a text: each name of the vocabulary by another of its labels, in any language, in any case."""

from __future__ import annotations

import re
from collections.abc import Iterable
from random import Random

from oracle.world import Trait

from intent.vocabulary.terms import Vocabulary

_SECTIONS = ("People", "Parts", "Devices", "Whole work", "Instructions", "Venue", "Substitutions", "Changes")
_OF_TEXT = {"model", "channel"}


def spellings(vocabulary: Vocabulary, world: Iterable[Trait]) -> dict[str, tuple[str, ...]]:
    """The names used in the cases, each with every other name that the vocabulary has for it."""
    found: dict[str, tuple[str, ...]] = {}
    for trait in world:
        characteristic = vocabulary.find_characteristic(trait.name, [trait.bearer])
        assert characteristic is not None, trait.name
        found[trait.name] = characteristic.names
        if trait.name not in _OF_TEXT:
            for written in trait.cells:
                concept = vocabulary.find_value(characteristic.schemes, written.text)
                if concept is not None:
                    found[written.text] = concept.names
    for role in ("artist's estate", "fabricator", "conservator", "registrar"):
        found[f"| {role} |"] = tuple(f"| {name} |" for name in _named(vocabulary, "roles", role))
    found["kind: display"] = tuple(f"kind: {name}" for name in _named(vocabulary, "kinds", "display"))
    found["every display"] = tuple(f"every {name}" for name in _named(vocabulary, "kinds", "display"))
    for section in vocabulary.sections.values():
        if section.label in _SECTIONS:
            found[f"## {section.label}\n"] = tuple(f"## {name}\n" for name in section.names)
    return found


def _named(vocabulary: Vocabulary, scheme: str, name: str) -> tuple[str, ...]:
    schemes = [iri for iri in vocabulary.by_scheme if iri.endswith(f"/{scheme}")]
    concept = vocabulary.find_value(schemes, name)
    assert concept is not None, name
    return concept.names


def respelled(text: str, names: dict[str, tuple[str, ...]], random: Random) -> str:
    """A text with each of these names written another way, one way throughout; facts in quotation marks stay."""
    chosen = {name: _in_some_case(random.choice(others), random) for name, others in names.items()}
    longest = sorted(names, key=len, reverse=True)
    pattern = re.compile('"[^"]*"|' + "|".join(_pattern(name) for name in longest))
    return pattern.sub(lambda match: chosen.get(match[0], match[0]), text)


def _pattern(name: str) -> str:
    """A name as a whole word, where it begins or ends with one."""
    before = r"(?<![\w-])" if name[0].isalnum() else ""
    after = r"(?![\w-])" if name[-1].isalnum() else ""
    return before + re.escape(name) + after


def _in_some_case(name: str, random: Random) -> str:
    return random.choice((name, name.upper(), name.capitalize()))
