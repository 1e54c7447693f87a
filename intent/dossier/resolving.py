"""Whom a sentence speaks of: names resolved, kinds and characteristics looked up."""

from __future__ import annotations

from lark import Token, Tree

from intent.diagnostics import nearest, offered, with_known
from intent.dossier.bearers import bearers_of, subject_to_name
from intent.dossier.register import IdentifierKind
from intent.dossier.trees import Sentence, subtrees
from intent.dossier.unreadable import Unreadable
from intent.language.message import say
from intent.model.assertions import Scope, ScopeKind
from intent.names import TERM
from intent.vocabulary.terms import Characteristic

SUBJECTS = (IdentifierKind.PART, IdentifierKind.GROUP, IdentifierKind.MATERIAL)
_KINDS = {
    "every": ScopeKind.EVERY,
    "additions": ScopeKind.ADDITIONS,
    "the_work": ScopeKind.WORK,
    "the_venue": ScopeKind.VENUE,
}
_BEARERS = {ScopeKind.WORK: ("work",), ScopeKind.VENUE: ("venue",)}


def read_scope(sentence: Sentence, tree: Tree[Token]) -> Scope:
    """The scope of an assertion. Raises `Misread`."""
    subjects, *excepted = subtrees(tree)
    names = _names(sentence, excepted[0]) if excepted else ()
    written = sentence.words(tree)
    if subjects.data == "names":
        return Scope(kind=ScopeKind.NAMES, names=_names(sentence, subjects), excepted=names, written=written)
    kind = _KINDS[str(subjects.data)]
    part_kind = _part_kind(sentence, subtrees(subjects)[0]) if kind is ScopeKind.EVERY else None
    return Scope(kind=kind, names=(), part_kind=part_kind, excepted=names, written=written)


def _names(sentence: Sentence, tree: Tree[Token]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(read_name(sentence, name, *SUBJECTS) for name in subtrees(tree)))


def read_name(sentence: Sentence, tree: Tree[Token], *sorts: IdentifierKind) -> str:
    """The identifier that a name stands for."""
    try:
        return sentence.register.find(sentence.words(tree), *sorts).identifier
    except Unreadable as error:
        raise sentence.located(error, tree) from None


def _part_kind(sentence: Sentence, tree: Tree[Token]) -> str:
    name = sentence.words(tree)
    found = sentence.vocabulary.find_value([str(TERM.kinds)], name)
    if found is None:
        known = [kind.label for kind in sentence.vocabulary.in_scheme(str(TERM.kinds))]
        message = say("`{name}` is not a kind of part", name=name)
        near = nearest(name, known)
        told = offered(message, near) if near else with_known(message, known)
        raise sentence.fault("unknown-kind", told, tree)
    return found.iri


def part_kinds(sentence: Sentence, scope: Scope) -> tuple[str, ...]:
    """The kinds of the parts in a scope, for reading their values."""
    if scope.kind is ScopeKind.EVERY and scope.part_kind:
        return (scope.part_kind,)
    parts = [part for name in scope.names for part in sentence.register.parts_of(name)]
    return tuple(dict.fromkeys(part.kind for part in parts if part.kind))


def read_characteristic(sentence: Sentence, tree: Tree[Token], scope: Scope) -> Characteristic:
    """The characteristic of a name, among those that the subjects of a scope can have."""
    name, vocabulary = sentence.words(tree), sentence.vocabulary
    found = vocabulary.find_characteristic(name, _bearers(sentence, scope))
    if found is None and scope.kind is ScopeKind.WORK:
        found = vocabulary.find_characteristic(name, ("device", "place"))
    if found is not None:
        return found
    elsewhere = vocabulary.find_characteristic(name)
    if elsewhere is not None:
        message = say(
            "`{characteristic}` is said of a {bearers}, not of {scope}; {named}",
            characteristic=elsewhere,
            bearers=bearers_of(elsewhere),
            scope=scope.written or say("this"),
            named=subject_to_name(elsewhere, vocabulary),
        )
        raise sentence.fault("wrong-bearer", message, tree)
    labels = [known.label for known in vocabulary.characteristics.values()]
    message = say("`{name}` is not a known characteristic", name=name)
    near = nearest(name, vocabulary.spelled(vocabulary.characteristics), labels)
    raise sentence.fault("unknown-characteristic", offered(message, near), tree)


def _bearers(sentence: Sentence, scope: Scope) -> tuple[str, ...]:
    if any(sentence.register.get(name, IdentifierKind.MATERIAL) for name in scope.names):
        return ("material",)
    return _BEARERS.get(scope.kind, ("device", "place"))
