"""A line that says what is to be done: its words, who has to do it, when, and on what conditions."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from lark import Token, Tree

from intent.diagnostics import nearest, offered
from intent.dossier.forms import read_day_of
from intent.dossier.interpret import read_condition
from intent.dossier.register import IdentifierKind
from intent.dossier.trees import Sentence, subtrees
from intent.language.message import say
from intent.model.assertions import Condition
from intent.model.duty import AT_NO_STATED_TIME, Moment, Phase, Timing
from intent.names import TERM
from intent.values.dates import DaySpan
from intent.vocabulary.grammar import COUNTED
from intent.vocabulary.phrases import normal, unquoted

_CONDITIONS = {"if_", "unless"}
_PHASES = {"before": Phase.BEFORE, "during": Phase.DURING, "after": Phase.AFTER}
_MOMENTS = {"of_start": Moment.START, "of_end": Moment.END}
_NEVER = {(Phase.BEFORE, Moment.END), (Phase.AFTER, Moment.START)}
"""What lies before the showing is not counted from its end, and what lies after it not from its start."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DutyLine:
    """A duty, read."""

    what: str
    person: str | None = None
    role: str | None = None
    timing: Timing = AT_NO_STATED_TIME
    conditions: tuple[Condition, ...] = ()
    until: DaySpan | None = None
    written: str = ""
    """The line as it was read."""


def read_duty(sentence: Sentence, tree: Tree[Token]) -> DutyLine:
    """The whole line. Raises `Misread`."""
    first = next(child for child in tree.children if isinstance(child, Token))
    what = unquoted(str(first)).strip()
    if not what:
        raise sentence.fault("no-duty", say("say in the quotation marks what is to be done"), tree)
    line = DutyLine(what=what, written=" ".join(sentence.text.split()))
    for clause in subtrees(tree):
        line = _with_clause(sentence, line, clause)
    return line


def _with_clause(sentence: Sentence, line: DutyLine, clause: Tree[Token]) -> DutyLine:
    kind = str(clause.data)
    if kind in {"with_consent", "choice"}:
        message = say("only what is allowed can ask for consent or be a choice")
        raise sentence.fault("sentence", message, clause)
    if kind in _CONDITIONS:
        condition = read_condition(sentence, subtrees(clause)[0], unless=kind == "unless")
        return replace(line, conditions=(*line.conditions, condition))
    if kind == "until":
        _refuse_second(sentence, clause, line.until is not None)
        return replace(line, until=read_day_of(sentence, subtrees(clause)[0]))
    if kind == "by":
        _refuse_second(sentence, clause, bool(line.person or line.role))
        return _by(sentence, line, subtrees(clause)[0])
    return replace(line, timing=_timed(sentence, line.timing, clause))


def _timed(sentence: Sentence, timing: Timing, clause: Tree[Token]) -> Timing:
    kind = str(clause.data)
    if kind in _PHASES:
        _refuse_second(sentence, clause, timing.phase is not None)
        timed = replace(timing, phase=_PHASES[kind])
    elif kind in _MOMENTS:
        _refuse_second(sentence, clause, timing.within is not None)
        timed = replace(timing, within=_days(sentence, clause), of=_MOMENTS[kind])
    else:
        _refuse_second(sentence, clause, timing.every is not None)
        timed = replace(timing, every=1 if kind == "every_day" else _days(sentence, clause))
    if (timed.phase, timed.of) in _NEVER:
        message = say(
            "what lies before the showing is counted from its start, and what lies after it from its end"
        )
        raise sentence.fault("never-due", message, clause)
    return timed


def _refuse_second(sentence: Sentence, clause: Tree[Token], is_there: bool) -> None:
    if is_there:
        message = say("a duty says this once; make two duties of it, each on a line of its own")
        raise sentence.fault("said-twice", message, clause)


def _by(sentence: Sentence, line: DutyLine, tree: Tree[Token]) -> DutyLine:
    """A person by their identifier, which goes before a role of the same name."""
    name = sentence.words(tree)
    entry = sentence.register.get(name, IdentifierKind.PERSON)
    if entry is not None:
        return replace(line, person=entry.identifier)
    role = sentence.vocabulary.find_value([str(TERM.roles)], name)
    if role is not None:
        return replace(line, role=role.iri)
    people = [person.identifier for person in sentence.register.of_sort(IdentifierKind.PERSON)]
    roles = sentence.vocabulary.in_scheme(str(TERM.roles))
    known = [*people, *(label for one in roles for label in one.names)]
    message = say("`{name}` is neither a person under People nor a role", name=name)
    near = nearest(name, known, [*people, *(one.label for one in roles)])
    raise sentence.fault("unknown-name", offered(message, near), tree)


def _days(sentence: Sentence, clause: Tree[Token]) -> int:
    """A whole number of days: `14 days`."""
    counted = subtrees(clause)[0]
    number, _, unit = sentence.words(counted).partition(" ")
    if not re.fullmatch("[0-9]{1,4}", number) or not int(number):
        message = say("`{number}` is no number of days; write a whole one, such as `14 days`", number=number)
        raise sentence.fault("bad-number", message, counted)
    grammars = sentence.vocabulary.grammars
    known = {label for grammar in grammars for word in COUNTED for label in grammar.labels(word)}
    if normal(unit) not in known:
        message = say("`{unit}` is not read here; count in days", unit=sentence.words(counted))
        raise sentence.fault("not-in-days", message, counted)
    return int(number)
