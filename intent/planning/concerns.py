"""What is stated of parts by what it concerns: how a device is to be set, in what condition a thing is and stays."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from intent.effects.scene import Scene
from intent.model.assertions import Form, Statements
from intent.names import TERM


class Concern(StrEnum):
    """As the vocabulary names it."""

    SETTING = "setting"
    CONDITION = "condition"


@dataclass(frozen=True, slots=True)
class SetAlike:
    """Parts of which the same settings are stated."""

    parts: tuple[str, ...]
    statements: Statements


def stated_of(scene: Scene, part: str, concern: Concern) -> Statements:
    """What is stated of a part that concerns this; a collection's own term, unless it says otherwise, its condition.

    `any` says that a value is not known, and so states nothing.
    """
    return {
        iri: value
        for iri, value in scene.state.statements.get(part, {}).items()
        if _concern(scene, iri) == concern and value.form is not Form.ANY
    }


def _concern(scene: Scene, iri: str) -> str:
    characteristic = scene.vocabulary.characteristics.get(iri)
    said = characteristic.concerns if characteristic else ""
    is_own = not iri.startswith(str(TERM))
    return said or (Concern.CONDITION if is_own else "")


def set_alike(scene: Scene) -> tuple[SetAlike, ...]:
    """The settings of all parts that are there, those with the same together, in the order of the work."""
    found: list[SetAlike] = []
    for part in scene.parts():
        stated = stated_of(scene, part.identifier, Concern.SETTING)
        if stated:
            _put(found, part.identifier, stated)
    return tuple(found)


def _put(found: list[SetAlike], part: str, stated: Statements) -> None:
    for place, one in enumerate(found):
        if one.statements == stated:
            found[place] = SetAlike((*one.parts, part), stated)
            return
    found.append(SetAlike((part,), stated))
