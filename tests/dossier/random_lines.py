"""Random instructions over the whole vocabulary: every scope, comparison and clause that the sentence has."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from hypothesis import strategies as st

from dossier.telling import vocabulary, work
from intent.dossier.duty_line import DutyLine
from intent.dossier.expressions import read_item
from intent.dossier.interpret import Line
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Named,
    Relation,
    Relative,
    Scope,
    ScopeKind,
    Text,
)
from intent.model.duty import Moment, Phase, Timing
from intent.model.meaning import COUNT
from intent.names import TERM
from intent.values.dates import read_date
from intent.vocabulary.terms import Characteristic, Concept

PARTS = ("M1", "M2", "M3", "E1", "O1", "O2", "P1", "P2")
NAMES = {
    "display": ("Monitors", "Écrans d'Or", "M1", "M2", "M3", "E1"),
    "object": ("Tische, Bänke und der Rest", "Port and Starboard", "O1", "O2"),
    "player": ("Players", "P1", "P2"),
}
TEXTS = (
    "Corvane", "Pelorin, Sons and Company", "A or B", "De la Cour", "of", "ist", "n'est pas d'ici", 'called "B"',
    "Werk und Ort", "TV-13", "at most one", "white", "+- 3", "die „Rote“", "(1, 2 m)", "l'œuvre", "is of is",
    "by the sea", "after", "within 3 days", "the end", "während der Ausstellung",
)  # fmt: skip
FACTS = (
    "no tube is left",
    "keine Röhre, falls nötig",
    "aucun tube n'est trouvé",
    'it says "no"',
    "if and or",
)
DATES = ("1993", "1999-05", "1999-05-14", "1993/1995", "199X", "1993~")
NUMBERS = ("3", "0", "13.5", "1/3", "-2")
_SUMMED = {"quantity", "count"}
_SUBTRACTED = {"quantity", "count", "ratio", "angle"}
_ORDERED = {"quantity", "count", "ratio"}


def kind_of(names: Sequence[str]) -> str:
    return next(kind for kind, found in NAMES.items() if names[0] in found)


@st.composite
def scopes(draw: st.DrawFn) -> tuple[Scope, str, tuple[str, ...]]:
    """A scope, the bearer of what is said of it, and the kinds of its parts."""
    kind = draw(st.sampled_from(ScopeKind))
    if kind is ScopeKind.NAMES:
        of_kind = draw(st.sampled_from(sorted(NAMES)))
        names = draw(st.lists(st.sampled_from(NAMES[of_kind]), min_size=1, max_size=3, unique=True))
        excepted = draw(st.lists(st.sampled_from(PARTS), max_size=2, unique=True))
        scope = Scope(kind=kind, names=tuple(names), excepted=tuple(excepted))
        return scope, "device", (str(TERM[of_kind]),)
    if kind is ScopeKind.EVERY:
        part_kind = draw(st.sampled_from([one.iri for one in vocabulary().in_scheme(str(TERM.kinds))]))
        return Scope(kind=kind, part_kind=part_kind), "device", (part_kind,)
    bearer = {ScopeKind.WORK: "work", ScopeKind.VENUE: "venue"}.get(kind, "device")
    return Scope(kind=kind), bearer, ()


def characteristics(
    bearer: str, kinds: tuple[str, ...], spaces: frozenset[str] | None = None
) -> st.SearchStrategy[Characteristic]:
    """Those that a bearer has, of these value spaces, with a value that parts of these kinds can have."""
    known = [one for one in vocabulary().characteristics.values() if bearer in one.bearers]
    return st.sampled_from(
        [
            one
            for one in known
            if (spaces is None or one.space in spaces) and (one.space != "concept" or values(one, kinds))
        ]
    )


def values(characteristic: Characteristic, kinds: tuple[str, ...]) -> list[Concept]:
    known = vocabulary().in_scheme(*characteristic.schemes)
    return [one for one in known if not kinds or any(vocabulary().applies(one, kind) for kind in kinds)]


@st.composite
def items(draw: st.DrawFn, characteristic: Characteristic, kinds: tuple[str, ...]) -> Item:
    """A value of a characteristic."""
    space = characteristic.space
    if space in {"concept", "yes-no"}:
        return Named(draw(st.sampled_from(values(characteristic, kinds))).iri)
    if space == "text":
        return Text(draw(st.sampled_from(TEXTS)))
    if space == "date":
        return Dated(read_date(draw(st.sampled_from(DATES))))
    if space in _ORDERED and not _is_of_scale(characteristic) and draw(st.integers(0, 5)) == 0:
        tolerance = draw(st.sampled_from((None, Fraction(5))))
        return Relative(Fraction(draw(st.integers(1, 200))), tolerance_percent=tolerance)
    return draw(measured(characteristic))


def symbols(characteristic: Characteristic) -> list[str]:
    """The units of a characteristic, as they are written."""
    units = vocabulary().units.values()
    return [one.symbol for one in units if characteristic.quantity_kind in one.quantity_kinds and one.symbol]


def _is_of_scale(characteristic: Characteristic) -> bool:
    """Whether the zero of its units is only agreed on, as of temperatures: nothing is a share of them."""
    units = vocabulary().units.values()
    return any(one.offset for one in units if characteristic.quantity_kind in one.quantity_kinds)


@st.composite
def measured(draw: st.DrawFn, characteristic: Characteristic) -> Item:
    space, number = characteristic.space, st.sampled_from(NUMBERS)
    tolerance = draw(st.sampled_from((None, None, "5 %")))
    if space in {"ratio", "raster", "count"}:
        written = {"ratio": "4:3", "raster": "720×576", "count": "3"}[space]
        return read_item(written, characteristic, vocabulary(), tolerance=draw(st.sampled_from((None, "1"))))
    unit = draw(st.sampled_from(symbols(characteristic)))
    if space == "position":
        written = f"(0.5, {draw(number)}, 1.0 {unit})"
        return read_item(written, characteristic, vocabulary(), tolerance=None)
    named = [
        one.label for one in vocabulary().in_scheme(*characteristic.schemes) if one.magnitude is not None
    ]
    written = draw(st.sampled_from([*named, f"{draw(number)} {unit}"]))
    return read_item(written, characteristic, vocabulary(), tolerance=tolerance)


@st.composite
def expressions(draw: st.DrawFn, characteristic: Characteristic, kinds: tuple[str, ...]) -> Expression:
    negated = draw(st.booleans())
    forms = [Form.ONE_OF, Form.ONE_OF, Form.AS_DOCUMENTED, Form.ANY]
    if characteristic.space in _ORDERED:
        forms += [Form.AT_LEAST, Form.AT_MOST]
    form = draw(st.sampled_from(forms))
    if form in {Form.AS_DOCUMENTED, Form.ANY}:
        return Expression(form=form, negated=negated)
    if form is Form.ONE_OF:
        found = draw(st.lists(items(characteristic, kinds), min_size=1, max_size=3, unique=True))
        return Expression(form=form, items=tuple(found), negated=negated)
    written = draw(st.sampled_from(NUMBERS[:2]))
    unit = symbols(characteristic)[0] if characteristic.space == "quantity" else ""
    item = read_item(f"{written} {unit}".strip(), characteristic, vocabulary())
    return Expression(form=form, items=(item,), negated=negated)


@st.composite
def assertions(draw: st.DrawFn) -> Assertion:
    aggregate = draw(st.sampled_from(Aggregate))
    if aggregate is Aggregate.RELATION:
        one, other = draw(st.permutations(PARTS))[:2]
        scope = Scope(kind=ScopeKind.NAMES, names=(one,))
        relation = draw(st.sampled_from(Relation))
        return Assertion(aggregate=aggregate, scope=scope, relation=relation, other=other)
    scope, bearer, kinds = draw(scopes())
    if aggregate in {Aggregate.NUMBER, Aggregate.DISTANCE}:
        compared = COUNT if aggregate is Aggregate.NUMBER else vocabulary().find_characteristic("height")
        assert compared is not None
        return Assertion(aggregate=aggregate, scope=scope, expression=draw(expressions(compared, ())))
    spaces = {Aggregate.TOTAL: _SUMMED, Aggregate.DIFFERENCE: _SUBTRACTED}.get(aggregate)
    found = draw(characteristics(bearer, kinds, frozenset(spaces) if spaces else None))
    expression = Expression(form=Form.ANY)
    if aggregate not in {Aggregate.SAME, Aggregate.DIFFERENT}:
        expression = draw(expressions(found, kinds))
    return Assertion(aggregate=aggregate, scope=scope, characteristic=found.iri, expression=expression)


@st.composite
def conditions(draw: st.DrawFn) -> Condition:
    unless = draw(st.booleans())
    if draw(st.booleans()):
        return Condition(unless, fact=draw(st.sampled_from(FACTS)))
    return Condition(unless, assertion=draw(assertions()))


@st.composite
def lines(draw: st.DrawFn) -> Line:
    """What one instruction says."""
    people = [person.identifier for person in work().people]
    return Line(
        assertion=draw(assertions()),
        conditions=tuple(draw(st.lists(conditions(), max_size=2))),
        until=read_date(draw(st.sampled_from(DATES))) if draw(st.booleans()) else None,
        consents=tuple(draw(st.lists(st.sampled_from(people), max_size=2, unique=True))),
        choice=draw(st.sampled_from((None, 1, 2, 10))),
    )


@st.composite
def timings(draw: st.DrawFn) -> Timing:
    """When a duty falls; what lies before the showing is counted from its start, what lies after it from its end."""
    phase = draw(st.sampled_from((None, *Phase)))
    within = draw(st.sampled_from((None, 1, 14)))
    moments = {Phase.BEFORE: (Moment.START,), Phase.AFTER: (Moment.END,)}.get(
        phase or Phase.DURING, tuple(Moment)
    )
    return Timing(
        phase=phase,
        every=draw(st.sampled_from((None, 1, 3))),
        within=within,
        of=draw(st.sampled_from(moments)) if within else None,
    )


@st.composite
def duties(draw: st.DrawFn) -> DutyLine:
    """What one duty says."""
    people = [person.identifier for person in work().people]
    roles = [role.iri for role in vocabulary().in_scheme(str(TERM.roles))]
    person = draw(st.sampled_from((None, *people)))
    return DutyLine(
        what=draw(st.sampled_from(FACTS)),
        person=person,
        role=draw(st.sampled_from((None, *roles))) if person is None else None,
        timing=draw(timings()),
        conditions=tuple(draw(st.lists(conditions(), max_size=2))),
        until=read_date(draw(st.sampled_from(DATES))) if draw(st.booleans()) else None,
    )
