"""An instruction written back as its writer put it, as long as those words still say what the record says."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from intent.dossier.duty_clauses import duty_trees
from intent.dossier.duty_line import read_duty
from intent.dossier.interpret import read_line
from intent.dossier.register import Register
from intent.dossier.sentence import parse
from intent.dossier.trees import Sentence
from intent.dossier.unreadable import Unreadable
from intent.dossier.words import Known
from intent.dossier.work_register import register_of
from intent.model.assertions import Assertion, Condition, Form
from intent.model.duty import Duty
from intent.model.instruction_text import SaidDuty, SaidLine, duty_text
from intent.model.work import Instruction, Work


@dataclass(frozen=True, slots=True)
class OwnWords:
    """The sentences of a work as text."""

    work: Work
    register: Register
    known: Known

    def sentence(self, line: Instruction) -> str:
        """The writer's own sentence; where there is none, or it says something else by now, the one told in English.

        A record that was changed by another program, or made to deceive, may hold words that its triples belie.
        """
        if line.written and self.says(line):
            return line.written
        return line.sentence

    def duty(self, duty: Duty) -> str:
        """The writer's own line of a duty; else as it is told in English, a role by a label that is no person."""
        if duty.written and self.says_duty(duty):
            return duty.written
        people = [person.identifier for person in self.work.people]
        return duty_text(duty, self.work.vocabulary, people=people)

    def says_duty(self, duty: Duty) -> bool:
        """Whether the writer's own line of a duty, read again, says what the record says."""
        vocabulary = self.work.vocabulary
        trees, broken = duty_trees(duty.written, self.known, vocabulary.grammars)
        read, faults = read_duty(
            Sentence(duty.written, self.register, vocabulary), trees, vocabulary.grammars[0]
        )
        return not broken and not faults and list(_duty_meaning(read)) == list(_duty_meaning(duty))

    def says(self, line: Instruction) -> bool:
        """Whether the writer's own sentence, read again, says what the record says."""
        vocabulary = self.work.vocabulary
        try:
            tree = parse(line.written, self.known, vocabulary.grammars)
            read = read_line(Sentence(line.written, self.register, vocabulary), tree, line.modality)
        except Unreadable:
            return False
        return list(_meaning(read)) == list(_meaning(line))


def own_words_of(work: Work) -> OwnWords:
    register = register_of(work)
    return OwnWords(work, register, register.known(work.vocabulary))


def _meaning(said: SaidLine) -> Iterator[object]:
    """What is said, without the order in which a graph does not hold it."""
    yield _unordered(said.assertion)
    yield _conditions(said.conditions)
    yield set(said.consents), said.until, said.choice


def _duty_meaning(said: SaidDuty) -> Iterator[object]:
    yield said.what, said.person, said.role, said.timing, said.until
    yield _conditions(said.conditions)


def _conditions(conditions: Iterable[Condition]) -> set[Condition]:
    return {
        replace(one, assertion=_unordered(one.assertion) if one.assertion else None) for one in conditions
    }


def _unordered(assertion: Assertion) -> Assertion:
    scope, expression = assertion.scope, assertion.expression
    if expression.form is Form.ONE_OF:
        expression = replace(expression, items=tuple(sorted(expression.items, key=repr)))
    names, excepted = tuple(sorted(scope.names)), tuple(sorted(scope.excepted))
    return replace(assertion, scope=replace(scope, names=names, excepted=excepted), expression=expression)
