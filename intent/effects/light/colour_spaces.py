"""Which colour spaces a display has, and which the material that it shows was made for."""

from __future__ import annotations

from collections.abc import Iterable

from intent.effects.scene import Scene
from intent.names import term_iri
from intent.vocabulary.terms import Concept

Spaces = tuple[Concept, ...]
"""The colour spaces that it may be; none where nobody can tell."""
JAPANESE = "ntsc-j"
"""Its sets had a far cooler white (common practice, no source): not meant where no more than NTSC is said."""
WHITE = 3
"""Its place among the chromaticities, after red, green and blue."""


def spaces_of_display(scene: Scene, part: str) -> Spaces:
    """The colour spaces that are stated of a display."""
    return _known(scene, (term_iri(name) for name in scene.stated_names(part, "colour-space")))


def spaces_of_material(scene: Scene, part: str) -> Spaces:
    """The colour spaces for which what a part's channel shows was made; none where of some of it nobody can tell."""
    found = [_made_for(scene, material) for material in scene.material(part)]
    return tuple(dict.fromkeys(space for some in found for space in some)) if all(found) else ()


def _made_for(scene: Scene, material: str) -> Spaces:
    """The space that is stated, else those that material of its standard is meant for."""
    if scene.states(material, "colour-space"):
        return _known(scene, (term_iri(name) for name in scene.names(material, "colour-space")))
    standards = scene.stated_names(material, "standard")
    meant = [_meant_for(scene, standard) for standard in sorted(standards - {JAPANESE} or standards)]
    return _known(scene, (iri for some in meant for iri in some)) if all(meant) else ()


def _meant_for(scene: Scene, standard: str) -> tuple[str, ...]:
    concept = scene.vocabulary.concepts.get(term_iri(standard))
    return concept.meant_for if concept else ()


def _known(scene: Scene, iris: Iterable[str]) -> Spaces:
    """The spaces in a settled order, if the chromaticities of all of them are known."""
    found = [scene.vocabulary.concepts[iri] for iri in sorted(dict.fromkeys(iris))]
    return tuple(found) if all(space.chromaticities for space in found) else ()
