"""A work's instructions as an ODRL policy, in a profile of this project.

What is required is an obligation, what is allowed a permission, what is forbidden a prohibition, each on a collection
of parts, with constraints and units. Source: W3C ODRL Information Model 2.2 and its vocabulary (2018). ODRL knows three
ways to settle a conflict; the cautious one is stated (`odrl:prohibit`), since our order of precedence cannot be said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from intent.exports.catalogue import in_force, line_text
from intent.language.locale import ENGLISH
from intent.model.assertions import Aggregate, Condition
from intent.model.instruction_text import assertion_text, condition_text
from intent.model.meaning import admitted_values, every_value, is_relative, scale
from intent.model.phrasing import characteristic_words
from intent.model.work import Instruction, Modality, Work
from intent.names import INTENT, is_iri, local_iri
from intent.record.turtle_text import decimal_term, iri_term, prologue, subject_block, text_term
from intent.values.regions import Box, Interval
from intent.values.sets import Labels, ValueSet
from intent.variance.scopes import scopes_of

PROFILE = str(INTENT["odrl-profile"])
COMMENT = """The instructions of a work as an ODRL 2.2 policy, in the profile intent:odrl-profile.
Constraints of one rule must all hold. Where rules conflict this policy says that prohibitions count; the documentation
itself has a finer order (who spoke, of what, when), which ODRL cannot say: ask the owner of the work."""
RULES = {
    Modality.REQUIRED: ("odrl:obligation", "odrl:Duty"),
    Modality.ALLOWED: ("odrl:permission", "odrl:Permission"),
    Modality.FORBIDDEN: ("odrl:prohibition", "odrl:Prohibition"),
}
Statements = list[tuple[str, str]]


def export_odrl(work: Work) -> str:
    """The policy in Turtle; instructions withdrawn are left out, and so are those that others supersede.

    Raises nothing: what a constraint cannot say is said in words beside it.
    """
    lines = in_force(work)
    blocks = [_policy(work, lines), _action(), subject_block("odrl:prohibit", [("a", "odrl:ConflictTerm")])]
    blocks += [text for line in lines for text in _rule(work, line)]
    used = ["dcterms", "intent", "odrl", "rdfs", "term", "unit", "xsd"]
    return "\n".join([prologue(used, COMMENT), *dict.fromkeys(blocks)])


def _node(work: Work, *steps: str) -> str:
    return iri_term(str(local_iri(work.iri, "odrl", *steps)))


def _policy(work: Work, lines: Sequence[Instruction]) -> str:
    statements = [
        ("a", "odrl:Policy, odrl:Set"),
        ("odrl:profile", iri_term(PROFILE)),
        ("odrl:conflict", "odrl:prohibit"),
        ("dcterms:title", text_term(work.title)),
        ("dcterms:subject", iri_term(work.iri)),
    ]
    for modality, (predicate, _) in RULES.items():
        rules = [_node(work, line.identifier) for line in lines if line.modality is modality]
        if rules:
            statements.append((predicate, ", ".join(rules)))
    return subject_block(_node(work, "policy"), statements)


def _action() -> str:
    statements = [
        ("a", "odrl:Action"),
        ("rdfs:label", text_term("install", ENGLISH.tag)),
        ("rdfs:comment", text_term("To set a work up and show it.", ENGLISH.tag)),
        ("odrl:includedIn", "odrl:use"),
    ]
    return subject_block("intent:install", statements)


def _rule(work: Work, line: Instruction) -> Iterator[str]:
    constraints = list(_constraints(work, line))
    statements = [
        ("a", f"odrl:Rule, {RULES[line.modality][1]}"),
        ("odrl:action", "intent:install"),
        ("odrl:target", _node(work, line.identifier, "target")),
        ("dcterms:identifier", text_term(line.identifier)),
        ("rdfs:comment", text_term(line_text(work, line))),
    ]
    person = work.person(line.by)
    if person is not None:
        statements.append(("odrl:assigner", iri_term(person.iri)))
        yield subject_block(
            iri_term(person.iri), [("a", "odrl:Party"), ("rdfs:label", text_term(person.role.label))]
        )
    if constraints:
        nodes = [
            _node(work, line.identifier, f"constraint-{place}") for place in range(1, len(constraints) + 1)
        ]
        statements.append(("odrl:constraint", ", ".join(nodes)))
        yield from (subject_block(node, found) for node, found in zip(nodes, constraints, strict=True))
    if line.consents:
        duties = [_node(work, line.identifier, f"consent-{name}") for name in line.consents]
        statements.append(("odrl:duty", ", ".join(duties)))
        yield from (_consent(work, name, duty) for name, duty in zip(line.consents, duties, strict=True))
    yield subject_block(_node(work, line.identifier), statements)
    yield from _target(work, line)
    yield from _operand(work, line)


def _consent(work: Work, name: str, duty: str) -> str:
    person = work.person(name)
    statements = [("a", "odrl:Rule, odrl:Duty"), ("odrl:action", "odrl:obtainConsent")]
    if person is not None:
        statements.append(("odrl:consentingParty", iri_term(person.iri)))
    return subject_block(duty, statements)


def _target(work: Work, line: Instruction) -> Iterator[str]:
    """The parts that are meant, as a collection; the work or the venue as an asset by itself."""
    target = _node(work, line.identifier, "target")
    label = line.assertion.scope.written or assertion_text(line.assertion, work.vocabulary)
    yield subject_block(target, [("a", "odrl:AssetCollection"), ("rdfs:label", text_term(label))])
    for member in scopes_of(work).of_work(line.assertion):
        part = work.part(member)
        if part is not None:
            yield subject_block(iri_term(part.iri), [("a", "odrl:Asset"), ("odrl:partOf", target)])


def _operand_node(work: Work, line: Instruction) -> str:
    assertion = line.assertion
    if assertion.aggregate is Aggregate.EACH and assertion.characteristic:
        return iri_term(assertion.characteristic)
    return _node(work, "operand", _operand_name(work, line).replace(" ", "-"))


def _operand_name(work: Work, line: Instruction) -> str:
    return ENGLISH.say(characteristic_words(line.assertion, work.vocabulary))


def _operand(work: Work, line: Instruction) -> Iterator[str]:
    label = text_term(_operand_name(work, line), ENGLISH.tag)
    yield subject_block(_operand_node(work, line), [("a", "odrl:LeftOperand"), ("rdfs:label", label)])


def _constraints(work: Work, line: Instruction) -> Iterator[Statements]:
    yield from _compared(work, line)
    yield from (_condition(work, condition) for condition in line.conditions)
    for day, operator in ((line.on, "odrl:gteq"), (line.until, "odrl:lteq")):
        if day is not None:
            at = day.first if operator == "odrl:gteq" else day.last
            yield [
                ("a", "odrl:Constraint"),
                ("odrl:leftOperand", "odrl:dateTime"),
                ("odrl:operator", operator),
                ("odrl:rightOperand", f'"{at.isoformat()}"^^xsd:date'),
            ]


def _condition(work: Work, condition: Condition) -> Statements:
    """A fact to be attested, or an assertion in words."""
    return [
        ("a", "odrl:Constraint"),
        ("odrl:leftOperand", "intent:attested"),
        ("odrl:operator", "odrl:neq" if condition.unless else "odrl:eq"),
        ("odrl:rightOperand", text_term(condition.fact or condition_text(condition, work.vocabulary))),
    ]


def _compared(work: Work, line: Instruction) -> Iterator[Statements]:
    """What the value is compared with: names, bounds with units, or, where that cannot be said, words."""
    assertion, vocabulary = line.assertion, work.vocabulary
    characteristic = vocabulary.characteristics.get(assertion.characteristic or "")
    head = [("a", "odrl:Constraint"), ("odrl:leftOperand", _operand_node(work, line))]
    if assertion.aggregate in {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}:
        yield [*head, ("odrl:operator", "odrl:eq"), ("odrl:rightOperand", "true")]
        return
    if is_relative(assertion.expression):
        yield [
            *head,
            ("odrl:operator", "odrl:eq"),
            ("odrl:rightOperand", text_term(assertion.expression.written)),
        ]
        return
    compared = scale(assertion.aggregate, characteristic, vocabulary)
    unit = vocabulary.reference_unit(compared.quantity_kind)
    measured = [("odrl:unit", iri_term(unit.iri))] if unit else []
    admitted = admitted_values(assertion.expression, compared, vocabulary)
    if admitted is None or admitted == every_value(compared, vocabulary):
        return
    for operator, operand in _operands(admitted):
        yield [*head, ("odrl:operator", operator), ("odrl:rightOperand", operand), *measured]


def _operands(admitted: ValueSet) -> Iterator[tuple[str, str]]:
    if isinstance(admitted, Labels):
        names = sorted(iri_term(name) if is_iri(name) else text_term(name) for name in admitted.names)
        yield ("odrl:isNoneOf" if admitted.all_but else "odrl:isAnyOf"), ", ".join(names)
    elif len(admitted.boxes) == 1 and len(admitted.boxes[0]) == 1:
        yield from _bounds(admitted.boxes[0][0])
    else:
        yield "odrl:isAnyOf", ", ".join(text_term(_box_words(box)) for box in admitted.boxes)


def _bounds(interval: Interval) -> Iterator[tuple[str, str]]:
    if interval.low is not None and interval.low == interval.high:
        yield "odrl:eq", decimal_term(interval.low)
        return
    if interval.low is not None:
        yield ("odrl:gt" if interval.low_strict else "odrl:gteq"), decimal_term(interval.low)
    if interval.high is not None:
        yield ("odrl:lt" if interval.high_strict else "odrl:lteq"), decimal_term(interval.high)


def _box_words(box: Box) -> str:
    """Several stretches, or several axes, as one text: `0.1/0.2`, an axis after the other."""
    return "; ".join(f"{_end(interval.low)}/{_end(interval.high)}" for interval in box)


def _end(end: Fraction | None) -> str:
    return ".." if end is None else decimal_term(end)
