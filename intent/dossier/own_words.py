"""An instruction written back as its writer put it, as long as those words still say what the record says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from intent.dossier.interpret import read_line
from intent.dossier.register import Register
from intent.dossier.sentence import parse
from intent.dossier.trees import Sentence
from intent.dossier.unreadable import Unreadable
from intent.dossier.words import Known
from intent.dossier.work_register import register_of
from intent.model.assertions import Assertion, Form
from intent.model.instruction_text import SaidLine
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
    yield {
        replace(one, assertion=_unordered(one.assertion) if one.assertion else None)
        for one in said.conditions
    }
    yield set(said.consents), said.until, said.choice


def _unordered(assertion: Assertion) -> Assertion:
    scope, expression = assertion.scope, assertion.expression
    if expression.form is Form.ONE_OF:
        expression = replace(expression, items=tuple(sorted(expression.items, key=repr)))
    names, excepted = tuple(sorted(scope.names)), tuple(sorted(scope.excepted))
    return replace(assertion, scope=replace(scope, names=names, excepted=excepted), expression=expression)
