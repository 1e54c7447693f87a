"""The connections of the work, and the names of what they carry."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.effects.scene import Scene, Sides
from intent.language.message import Labelled
from intent.model.assertions import Expression, Form, Named, Statements
from intent.model.meaning import given_value
from intent.names import term_iri
from intent.values.sets import Labels
from intent.vocabulary.named_term import local_name
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """One connection; what it carries and what plugs it in by local names, empty where nothing is said."""

    start: str
    end: str
    signal: frozenset[str]
    connector: frozenset[str]
    carries: tuple[str, ...] = ()
    """The signals as they are listed, without what is narrower."""
    plugs: tuple[str, ...] = ()
    """The connectors likewise."""


def links_of(sides: Sides, scene: Scene | None = None) -> Iterator[Link]:
    """The connections of a state of the work, as proposed where none is named."""
    vocabulary = sides.proposed.vocabulary
    for found in (scene or sides.proposed).connections:
        signal = _stated(found.statements, "signal", vocabulary)
        connector = _stated(found.statements, "connector", vocabulary)
        yield Link(
            start=found.start,
            end=found.end,
            signal=signal,
            connector=connector,
            carries=listed_names(found.statements.get(term_iri("signal"))),
            plugs=listed_names(found.statements.get(term_iri("connector"))),
        )


def carrying_links(sides: Sides, scene: Scene, carriers: tuple[str, ...]) -> tuple[Link, ...]:
    """The connections of a state that could carry one of some signals; one that says nothing may carry any."""
    carrying = frozenset[str]().union(*(with_narrower(scene.vocabulary, name) for name in carriers))
    return tuple(link for link in links_of(sides, scene) if not link.signal or link.signal & carrying)


def listed_names(expression: Expression | None) -> tuple[str, ...]:
    """The local names that are listed for a value, as written; none where it is no list of names."""
    if expression is None or expression.form is not Form.ONE_OF or expression.negated:
        return ()
    return tuple(local_name(item.concept) for item in expression.items if isinstance(item, Named))


def listed_of(scene: Scene, subject: str, characteristic: str) -> tuple[str, ...]:
    """The local names that are listed in a state for a characteristic; none where they may be any."""
    return listed_names(scene.state.expression(subject, scene.characteristic(characteristic)))


def _stated(statements: Statements, name: str, vocabulary: Vocabulary) -> frozenset[str]:
    expression = statements.get(term_iri(name))
    if expression is None:
        return frozenset()
    value = given_value(expression, vocabulary.characteristics[term_iri(name)], vocabulary)
    if not isinstance(value, Labels) or value.all_but:
        return frozenset()
    return frozenset(map(local_name, value.names))


def terms_of(scene: Scene, names: frozenset[str]) -> tuple[Labelled, ...]:
    """The terms of some names, without those that a broader one among them holds, to be put in a message."""
    held = {narrow for name in names for narrow in with_narrower(scene.vocabulary, name) if narrow != name}
    return tuple(scene.term(name) for name in sorted(names - held))


def with_narrower(vocabulary: Vocabulary, name: str) -> frozenset[str]:
    """A name with those of all narrower concepts."""
    iri = term_iri(name)
    return frozenset(map(local_name, vocabulary.narrower.get(iri, frozenset({iri}))))
