"""Whether every display takes the standard of the material that its channel shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.effects.limits_kept import Limited, any_of, inputs, obstacles, unchecked
from intent.effects.scene import Scene, Sides
from intent.effects.signal.fits import all_alike, lies_in
from intent.effects.signal.links import listed_names, terms_of
from intent.effects.signal.paths import PICTURE, ways_of
from intent.language.message import say
from intent.model.subject import one
from intent.names import term_iri
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked
from intent.vocabulary.terms import Vocabulary, local_name

ACCEPTED = "accepted-standard"


def standard_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """A standard that a device does not take, or of which nobody can tell; a converter on the way may change it."""
    scene, ways = sides.proposed, ways_of(sides, PICTURE)
    for part in scene.parts("display"):
        through = {link.end for way in ways.proposed(part.identifier).values() for link in way[:-1]}
        converters = [found.identifier for found in scene.parts("converter") if found.identifier in through]
        for material in scene.material(part.identifier):
            yield from _taken(sides, part.identifier, material, converters)


def _taken(sides: Sides, part: str, material: str, converters: list[str]) -> Iterator[Obstacle | Unchecked]:
    scene = sides.proposed
    listed, given = _listed(scene, part, ACCEPTED), _listed(scene, material, "standard")
    takes = (*listed, *sorted(shown_as_well(scene.vocabulary, listed)))
    if not scene.states(part, ACCEPTED) and not scene.states(material, "standard"):
        return
    found = [
        *inputs(sides, part, ACCEPTED, "presence"),
        *inputs(sides, material, "standard"),
        *(each for name in converters for each in inputs(sides, name, "technology")),
    ]
    for name, stated in ((part, ACCEPTED), (material, "standard")):
        if not scene.states(name, stated) and not any(each.is_changed for each in found):
            yield from unchecked(sides, name, stated)
            return
    is_taken = Answer.OPEN
    if takes and given:
        is_taken = all_alike([lies_in(scene.vocabulary, one_, takes) for one_ in given])
    is_converted = [scene.is_(name, "technology", "standards-converter") for name in converters]
    limited = Limited(
        slug="standard-not-taken",
        subject=one(part),
        inputs=found,
        sure=say(
            "the material is {standard} and the device takes {takes}: without a standards converter the picture "
            "rolls, tears or loses its colour",
            standard=terms_of(scene, frozenset(given)),
            takes=terms_of(scene, frozenset(listed)),
        ),
        unsure=say("whether the device takes the standard of the material is not said"),
    )
    yield from obstacles(sides, any_of([is_taken, *is_converted]), limited)


def shown_as_well(vocabulary: Vocabulary, standards: Iterable[str]) -> frozenset[str]:
    """The standards whose pictures a device for one of these shows as well.

    Colour was added so that monochrome sets of as many lines go on showing the picture (ITU-R BT.470, from memory).
    """
    concepts = (vocabulary.concepts[term_iri(name)] for name in standards)
    return frozenset(local_name(iri) for concept in concepts for iri in concept.shows_as_well)


def _listed(scene: Scene, subject: str, name: str) -> tuple[str, ...]:
    return listed_names(scene.state.expression(subject, scene.characteristic(name)))
