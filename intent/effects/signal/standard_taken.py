"""Whether every display takes the standard of the material that its channel shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from intent.effects.limits_kept import (
    Limited,
    all_alike,
    any_of,
    inputs,
    inputs_of_state,
    obstacles,
    unchecked,
)
from intent.effects.scene import Scene, Sides
from intent.effects.signal.fits import lies_in
from intent.effects.signal.links import listed_of, terms_of
from intent.effects.signal.paths import PICTURE, Way, ways_of
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import term_iri
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked
from intent.vocabulary.named_term import local_name
from intent.vocabulary.terms import Vocabulary

ACCEPTED = "accepted-standard"
NOT_SAID = say("whether the device takes the standard of the material is not said")


def standard_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """A standard that a device does not take, or of which nobody can tell; a converter on the way may change it."""
    scene, ways = sides.proposed, ways_of(sides, PICTURE)
    for part in scene.running("display"):
        converters = converters_on(scene, ways.proposed(part.identifier))
        for material in scene.material(part.identifier):
            yield from _taken(sides, part.identifier, material, converters)


def converters_on(scene: Scene, ways: Mapping[str, Way]) -> tuple[str, ...]:
    """The converters through which some ways lead."""
    through = {link.end for way in ways.values() for link in way[:-1]}
    return tuple(found.identifier for found in scene.parts("converter") if found.identifier in through)


def converting(scene: Scene, converter: str) -> Answer:
    """Whether a converter makes another standard of what it gets."""
    return scene.is_(converter, "technology", "standards-converter")


def not_taken_words(scene: Scene, given: Iterable[str], takes: Iterable[str]) -> Message:
    return say(
        "the material is {standard} and the device takes {takes}: without a standards converter the picture "
        "rolls, tears or loses its colour",
        standard=terms_of(scene, frozenset(given)),
        takes=terms_of(scene, frozenset(takes)),
    )


def _taken(
    sides: Sides, part: str, material: str, converters: Sequence[str]
) -> Iterator[Obstacle | Unchecked]:
    scene = sides.proposed
    listed, given = listed_of(scene, part, ACCEPTED), listed_of(scene, material, "standard")
    takes = (*listed, *sorted(shown_as_well(scene.vocabulary, listed)))
    if not scene.states(part, ACCEPTED) and not scene.states(material, "standard"):
        return
    found = [
        *inputs(sides, part, ACCEPTED, "presence"),
        *inputs(sides, material, "standard"),
        *inputs_of_state(sides, part),
        *(each for name in converters for each in inputs(sides, name, "technology")),
    ]
    for name, stated in ((part, ACCEPTED), (material, "standard")):
        if not scene.states(name, stated) and not any(each.is_changed for each in found):
            yield from unchecked(sides, name, stated)
            return
    is_taken = Answer.OPEN
    if takes and given:
        is_taken = all_alike([lies_in(scene.vocabulary, one_, takes) for one_ in given])
    is_converted = [converting(scene, name) for name in converters]
    limited = Limited(
        slug="standard-not-taken",
        subject=one(part),
        inputs=found,
        sure=not_taken_words(scene, given, listed),
        unsure=NOT_SAID,
    )
    # what is switched off shows nothing, in whatever standard
    yield from obstacles(sides, any_of([is_taken, *is_converted, scene.runs(part).negated]), limited)


def shown_as_well(vocabulary: Vocabulary, standards: Iterable[str]) -> frozenset[str]:
    """The standards whose pictures a device for one of these shows as well.

    Colour was added so that monochrome sets of as many lines go on showing the picture (ITU-R BT.470, from memory).
    """
    concepts = (vocabulary.concepts[term_iri(name)] for name in standards)
    return frozenset(local_name(iri) for concept in concepts for iri in concept.shows_as_well)
