"""From the tree of a sentence to an assertion with its clauses."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lark import Token, Tree

from intent.dossier.forms import read_day_of, read_expression
from intent.dossier.register import IdentifierKind
from intent.dossier.resolving import part_kinds, read_characteristic, read_name, read_scope
from intent.dossier.trees import Sentence, subtrees
from intent.language.message import say
from intent.model.assertions import Aggregate, Assertion, Condition, Relation, Scope, ScopeKind
from intent.model.meaning import scale
from intent.model.work import Modality
from intent.values.dates import DaySpan
from intent.vocabulary.grammar import ORDINALS, Word
from intent.vocabulary.phrases import unquoted
from intent.vocabulary.terms import Characteristic

_SUMMED = {"quantity", "count"}
_SUBTRACTED = {"quantity", "count", "ratio", "angle"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A sentence, read."""

    assertion: Assertion
    conditions: tuple[Condition, ...] = ()
    until: DaySpan | None = None
    consents: tuple[str, ...] = ()
    choice: int | None = None
    written: str = ""
    """The sentence as it was read."""


def read_line(sentence: Sentence, tree: Tree[Token], modality: Modality) -> Line:
    """The whole sentence, its assertion and clauses. Raises `Misread`."""
    assertion, *clauses = subtrees(tree)
    line = Line(assertion=_assertion(sentence, assertion), written=" ".join(sentence.text.split()))
    for clause in clauses:
        line = _with_clause(sentence, line, clause, modality)
    return line


def _assertion(sentence: Sentence, tree: Tree[Token]) -> Assertion:
    if tree.data == "relation":
        return _relation(sentence, tree)
    *named, scope_tree, comparison = subtrees(tree)
    scope = read_scope(sentence, scope_tree)
    characteristic = read_characteristic(sentence, named[0], scope) if named else None
    if comparison.data in {"same", "different"}:
        return _comparative(sentence, tree, comparison, scope, characteristic)
    aggregate, written = Aggregate(str(tree.data)), sentence.words(tree)
    if characteristic is not None:
        _refuse_unsummable(sentence, named[0], aggregate, characteristic)
    compared = scale(aggregate, characteristic, sentence.vocabulary)
    expression = read_expression(sentence, subtrees(comparison)[0], compared, part_kinds(sentence, scope))
    expression = replace(expression, negated=comparison.data == "is_not")
    iri = characteristic.iri if characteristic else None
    return Assertion(
        aggregate=aggregate, scope=scope, characteristic=iri, expression=expression, written=written
    )


def _comparative(
    sentence: Sentence,
    tree: Tree[Token],
    comparison: Tree[Token],
    scope: Scope,
    characteristic: Characteristic | None,
) -> Assertion:
    if tree.data != "each" or characteristic is None:
        message = say("only a characteristic can be the same or different for all")
        raise sentence.fault("sentence", message, comparison)
    return Assertion(
        aggregate=Aggregate(str(comparison.data)),
        scope=scope,
        characteristic=characteristic.iri,
        written=sentence.words(tree),
    )


def _refuse_unsummable(
    sentence: Sentence, tree: Tree[Token], aggregate: Aggregate, characteristic: Characteristic
) -> None:
    if aggregate is Aggregate.TOTAL and characteristic.space not in _SUMMED:
        message = say("{characteristic} cannot be summed", characteristic=characteristic)
        raise sentence.fault("sentence", message, tree)
    if aggregate is Aggregate.DIFFERENCE and characteristic.space not in _SUBTRACTED:
        message = say("{characteristic} cannot be subtracted", characteristic=characteristic)
        raise sentence.fault("sentence", message, tree)


def _relation(sentence: Sentence, tree: Tree[Token]) -> Assertion:
    one, other = subtrees(tree)
    name = read_name(sentence, one, IdentifierKind.PART)
    return Assertion(
        aggregate=Aggregate.RELATION,
        scope=Scope(kind=ScopeKind.NAMES, names=(name,), written=name),
        relation=Relation[_word(tree).name],
        other=read_name(sentence, other, IdentifierKind.PART),
        written=sentence.words(tree),
    )


def _with_clause(sentence: Sentence, line: Line, clause: Tree[Token], modality: Modality) -> Line:
    if clause.data in {"with_consent", "choice"} and modality is not Modality.ALLOWED:
        message = say("only what is allowed can ask for consent or be a choice")
        raise sentence.fault("sentence", message, clause)
    if clause.data in {"if_", "unless"}:
        condition = read_condition(sentence, subtrees(clause)[0], unless=clause.data == "unless")
        return replace(line, conditions=(*line.conditions, condition))
    if clause.data == "until":
        return replace(line, until=read_day_of(sentence, subtrees(clause)[0]))
    if clause.data == "with_consent":
        person = read_name(sentence, subtrees(clause)[0], IdentifierKind.PERSON)
        return replace(line, consents=(*line.consents, person))
    return replace(line, choice=ORDINALS.index(_word(clause)) + 1)


def _word(tree: Tree[Token]) -> Word:
    """The relation or ordinal among the tokens of a tree."""
    tokens = (one for one in tree.children if isinstance(one, Token) and one.type in {"RELATION", "ORDINAL"})
    return Word[next(tokens)]


def read_condition(sentence: Sentence, tree: Tree[Token], *, unless: bool) -> Condition:
    """What stands after `if` or `unless`: a fact, or an assertion."""
    if tree.data == "fact":
        return Condition(unless, fact=unquoted(sentence.words(tree)))
    return Condition(unless, assertion=_assertion(sentence, tree))
