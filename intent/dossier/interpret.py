"""From the tree of a sentence to an assertion with its clauses: names resolved, values read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lark import Token, Tree

from intent.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Expression,
    Form,
    Item,
    Relation,
    Scope,
    ScopeKind,
)
from intent.dates import DaySpan, read_date
from intent.diagnostics import nearest
from intent.dossier.expressions import Unreadable, read_item, unit_written, unquoted
from intent.dossier.register import Register, Sort
from intent.dossier.words import ORDINALS
from intent.meaning import scale
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary

_FORMS = {
    "one_of": Form.ONE_OF,
    "between": Form.BETWEEN,
    "at_least": Form.AT_LEAST,
    "at_most": Form.AT_MOST,
    "as_documented": Form.AS_DOCUMENTED,
    "any": Form.ANY,
}
_SCOPES = {
    "every": ScopeKind.EVERY,
    "additions": ScopeKind.ADDITIONS,
    "the_work": ScopeKind.WORK,
    "the_venue": ScopeKind.VENUE,
}
_BEARERS = {ScopeKind.WORK: ("work",), ScopeKind.VENUE: ("venue",)}


class Misread(Unreadable):
    """Something in a sentence that cannot be read, with where it stands in it, counted from 0."""

    def __init__(self, slug: str, message: str, offset: int, length: int) -> None:
        super().__init__(slug, message)
        self.offset = offset
        self.length = length


@dataclass(frozen=True, slots=True)
class Line:
    """A sentence, read."""

    assertion: Assertion
    conditions: tuple[Condition, ...] = ()
    until: DaySpan | None = None
    consents: tuple[str, ...] = ()
    choice: int | None = None


@dataclass(frozen=True, slots=True)
class Interpreter:
    """Reads trees with what the work and the vocabulary know."""

    text: str
    register: Register
    vocabulary: Vocabulary

    def line(self, tree: Tree[Token], modality: str) -> Line:
        """The whole sentence. Raises `Misread`."""
        assertion, *clauses = _trees(tree)
        line = Line(self.assertion(assertion))
        for clause in clauses:
            line = self._with_clause(line, clause, modality)
        return line

    def assertion(self, tree: Tree[Token]) -> Assertion:
        written = self._slice(tree)
        if tree.data == "relation":
            return replace(self._relation(tree), written=written)
        *named, scope_tree, comparison = _trees(tree)
        scope = self.scope(scope_tree)
        aggregate = Aggregate(str(tree.data))
        characteristic = self._characteristic(named[0], scope) if named else None
        inner = _trees(comparison)
        if comparison.data in {"same", "different"}:
            return self._comparative(tree, comparison, aggregate, scope, characteristic)
        if aggregate in {Aggregate.TOTAL, Aggregate.DIFFERENCE} and characteristic:
            self._summable(named[0], aggregate, characteristic)
        compared = scale(aggregate, characteristic, self.vocabulary)
        expression = self._expression(inner[0], compared, scope, negated=comparison.data == "is_not")
        iri = characteristic.iri if characteristic else None
        return Assertion(aggregate, scope, iri, expression, written=written)

    def _comparative(
        self,
        tree: Tree[Token],
        comparison: Tree[Token],
        aggregate: Aggregate,
        scope: Scope,
        characteristic: Characteristic | None,
    ) -> Assertion:
        if aggregate is not Aggregate.EACH or characteristic is None:
            raise self._misread(
                "sentence", "only a characteristic can be the same or different for all", comparison
            )
        return Assertion(
            Aggregate(str(comparison.data)), scope, characteristic.iri, written=self._slice(tree)
        )

    def _summable(self, tree: Tree[Token], aggregate: Aggregate, characteristic: Characteristic) -> None:
        fitting = (
            {"quantity", "count"} if aggregate is Aggregate.TOTAL else {"quantity", "count", "ratio", "angle"}
        )
        if characteristic.space not in fitting:
            what = "summed" if aggregate is Aggregate.TOTAL else "subtracted"
            raise self._misread("sentence", f"{characteristic.label} cannot be {what}", tree)

    def _relation(self, tree: Tree[Token]) -> Assertion:
        one, other = _trees(tree)
        relation = next(
            token for token in tree.children if isinstance(token, Token) and token.type == "RELATION"
        )
        name = self._name(one, Sort.PART)
        return Assertion(
            Aggregate.RELATION,
            Scope(ScopeKind.NAMES, (name,), written=name),
            relation=Relation(normal(relation)),
            other=self._name(other, Sort.PART),
        )

    def scope(self, tree: Tree[Token]) -> Scope:
        subjects, *excepted = _trees(tree)
        names = self._names(excepted[0], Sort.PART, Sort.GROUP, Sort.MATERIAL) if excepted else ()
        written = self._slice(tree)
        if subjects.data == "names":
            found = self._names(subjects, Sort.PART, Sort.GROUP, Sort.MATERIAL)
            return Scope(ScopeKind.NAMES, found, excepted=names, written=written)
        kind = _SCOPES[str(subjects.data)]
        part_kind = self._kind(_trees(subjects)[0]) if kind is ScopeKind.EVERY else None
        return Scope(kind, (), part_kind, names, written)

    def _kind(self, tree: Tree[Token]) -> str:
        name = self._slice(tree)
        scheme = "https://w3id.org/intent-record/term/kinds"
        found = self.vocabulary.find_value([scheme], name)
        if found is None:
            known = [kind.label for kind in self.vocabulary.in_scheme(scheme)]
            raise self._misread("unknown-kind", f"`{name}` is not a kind of part{nearest(name, known)}", tree)
        return found.iri

    def _names(self, tree: Tree[Token], *sorts: Sort) -> tuple[str, ...]:
        return tuple(dict.fromkeys(self._name(name, *sorts) for name in _trees(tree)))

    def _name(self, tree: Tree[Token], *sorts: Sort) -> str:
        try:
            return self.register.find(self._slice(tree), *sorts).identifier
        except Unreadable as error:
            raise self._misread(error.slug, str(error), tree) from None

    def _characteristic(self, tree: Tree[Token], scope: Scope) -> Characteristic:
        name = self._slice(tree)
        bearers = self._bearers(scope)
        found = self.vocabulary.find_characteristic(name, bearers)
        if found is None and scope.kind is ScopeKind.WORK:
            found = self.vocabulary.find_characteristic(name, ("device", "place"))
        if found is not None:
            return found
        elsewhere = self.vocabulary.find_characteristic(name)
        if elsewhere is not None:
            borne = " or ".join(sorted(elsewhere.bearers))
            message = f"`{elsewhere.label}` is said of a {borne}, not of {scope.written or 'this'}"
            raise self._misread("wrong-bearer", message, tree)
        offer = nearest(name, list(self.vocabulary.by_name))
        raise self._misread("unknown-characteristic", f"`{name}` is not a known characteristic{offer}", tree)

    def _bearers(self, scope: Scope) -> tuple[str, ...]:
        if any(self.register.get(name, Sort.MATERIAL) for name in scope.names):
            return ("material",)
        return _BEARERS.get(scope.kind, ("device", "place"))

    def kinds(self, scope: Scope) -> tuple[str, ...]:
        """The kinds of the parts in a scope, for reading their values."""
        if scope.kind is ScopeKind.EVERY and scope.part_kind:
            return (scope.part_kind,)
        parts = [part for name in scope.names for part in self.register.parts_of(name)]
        return tuple(dict.fromkeys(part.kind for part in parts if part.kind))

    def expression(
        self, tree: Tree[Token], characteristic: Characteristic, kinds: Sequence[str] = ()
    ) -> Expression:
        """Values alone, as in a cell."""
        form = _FORMS[str(tree.data)]
        written = self._slice(tree)
        if form in {Form.AS_DOCUMENTED, Form.ANY}:
            return Expression(form, written=written)
        if form is Form.ONE_OF:
            items = [self._item(item, characteristic, kinds) for item in _trees(tree)]
        else:
            values = _trees(tree)
            self._ordered(tree, characteristic)
            shared = unit_written(self._slice(values[-1]))
            items = [self._value(value, characteristic, kinds, None, shared) for value in values]
        return Expression(form, tuple(items), written=written)

    def _expression(
        self, tree: Tree[Token], characteristic: Characteristic, scope: Scope, *, negated: bool
    ) -> Expression:
        expression = self.expression(tree, characteristic, self.kinds(scope))
        return replace(expression, negated=negated)

    def _ordered(self, tree: Tree[Token], characteristic: Characteristic) -> None:
        if characteristic.space in {"concept", "yes-no", "text", "position"}:
            message = f"{characteristic.label} has no more and less; write `one of …`"
            raise self._misread("no-order", message, tree)
        if characteristic.space == "angle" and tree.data != "between":
            raise self._misread("no-order", "angles go round; write `between … and …`, clockwise", tree)

    def _item(self, tree: Tree[Token], characteristic: Characteristic, kinds: Sequence[str]) -> Item:
        value, *tolerance = _trees(tree)
        return self._value(
            value, characteristic, kinds, self._slice(tolerance[0]) if tolerance else None, None
        )

    def _value(
        self,
        tree: Tree[Token],
        characteristic: Characteristic,
        kinds: Sequence[str],
        tolerance: str | None,
        shared_unit: str | None,
    ) -> Item:
        text = self._slice(tree)
        try:
            return read_item(text, characteristic, self.vocabulary, kinds, tolerance, shared_unit)
        except Unreadable as error:
            raise self._misread(error.slug, str(error), tree) from None

    def _with_clause(self, line: Line, clause: Tree[Token], modality: str) -> Line:
        if clause.data in {"with_consent", "choice"} and modality != "allowed":
            raise self._misread("sentence", "only what is allowed can ask for consent or be a choice", clause)
        if clause.data in {"if_", "unless"}:
            condition = self._condition(_trees(clause)[0], unless=clause.data == "unless")
            return replace(line, conditions=(*line.conditions, condition))
        if clause.data == "until":
            return replace(line, until=self._date(_trees(clause)[0]))
        if clause.data == "with_consent":
            return replace(line, consents=(*line.consents, self._name(_trees(clause)[0], Sort.PERSON)))
        return replace(line, choice=ORDINALS.index(normal(str(clause.children[0]))) + 1)

    def _condition(self, tree: Tree[Token], *, unless: bool) -> Condition:
        if tree.data == "fact":
            return Condition(unless, fact=unquoted(self._slice(tree)))
        return Condition(unless, assertion=self.assertion(tree))

    def _date(self, tree: Tree[Token]) -> DaySpan:
        try:
            return read_date(self._slice(tree))
        except ValueError as error:
            raise self._misread("bad-date", str(error), tree) from None

    def _slice(self, tree: Tree[Token]) -> str:
        start, end = _extent(tree)
        return self.text[start:end]

    def _misread(self, slug: str, message: str, tree: Tree[Token]) -> Misread:
        start, end = _extent(tree)
        return Misread(slug, message, start, max(1, end - start))


def _trees(tree: Tree[Token]) -> list[Tree[Token]]:
    return [child for child in tree.children if isinstance(child, Tree)]


def _extent(tree: Tree[Token]) -> tuple[int, int]:
    tokens = list(tree.scan_values(lambda token: isinstance(token, Token)))
    starts = [token.start_pos for token in tokens if token.start_pos is not None]
    ends = [token.end_pos for token in tokens if token.end_pos is not None]
    return (min(starts), max(ends)) if starts and ends else (0, 0)
