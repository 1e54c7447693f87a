"""A line that says what is to be done: its words, who has to do it, when, and on what conditions."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from lark import Token, Tree

from intent.diagnostics import nearest, offered
from intent.dossier.forms import read_day_of
from intent.dossier.interpret import read_condition
from intent.dossier.register import IdentifierKind
from intent.dossier.trees import Misread, Sentence, subtrees
from intent.language.message import say
from intent.model.assertions import Condition
from intent.model.duty import AT_NO_STATED_TIME, Moment, Phase, Timing
from intent.names import TERM
from intent.values.dates import DaySpan
from intent.vocabulary.grammar import COUNTED, Grammar, Word
from intent.vocabulary.phrases import normal, unquoted

_CONDITIONS = {"if_", "unless"}
_PHASES = {"before": Phase.BEFORE, "during": Phase.DURING, "after": Phase.AFTER}
_OFTEN = {"every_day": 1, "every_week": 7}
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


def read_duty(
    sentence: Sentence, trees: Iterable[Tree[Token]], spoken: Grammar
) -> tuple[DutyLine, tuple[Misread, ...]]:
    """The line, of one tree or of several that begin with the same words, and every fault of what it says.

    ``spoken`` is the language in whose words it is told what to write instead.
    """
    line = DutyLine(what="", written=" ".join(sentence.text.split()))
    faults: list[Misread] = []
    for tree in trees:
        first = next(child for child in tree.children if isinstance(child, Token))
        line = replace(line, what=unquoted(str(first)).strip())
        if not line.what:
            message = say("say in the quotation marks what is to be done")
            faults.append(sentence.fault("no-duty", message, Tree("what", [first])))
        for clause in subtrees(tree):
            try:
                line = _with_clause(sentence, line, clause, spoken)
            except Misread as fault:
                faults.append(fault)
    return line, tuple(faults)


def _with_clause(sentence: Sentence, line: DutyLine, clause: Tree[Token], spoken: Grammar) -> DutyLine:
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
    return replace(line, timing=_timed(sentence, line.timing, clause, spoken))


def _timed(sentence: Sentence, timing: Timing, clause: Tree[Token], spoken: Grammar) -> Timing:
    kind = str(clause.data)
    if kind in _PHASES:
        _refuse_second(sentence, clause, timing.phase is not None)
        timed = replace(timing, phase=_PHASES[kind])
    elif kind in _MOMENTS:
        _refuse_second(sentence, clause, timing.within is not None)
        timed = replace(timing, within=_days(sentence, clause, spoken), of=_MOMENTS[kind])
    else:
        _refuse_second(sentence, clause, timing.every is not None)
        every = _OFTEN[kind] if kind in _OFTEN else _days(sentence, clause, spoken)
        timed = replace(timing, every=every)
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


def _days(sentence: Sentence, clause: Tree[Token], spoken: Grammar) -> int:
    """A whole number of days or weeks, in days: `14 days`."""
    counted = subtrees(clause)[0]
    words = sentence.words(counted)
    number, _, unit = words.partition(" ")
    grammars = sentence.vocabulary.grammars
    known = {
        label: days
        for word, days in COUNTED.items()
        for grammar in grammars
        for label in grammar.labels(word)
    }
    if normal(unit) not in known:
        message = say(
            "`{words}` is not read here; count in days or weeks, such as `{days}` or `{weeks}`",
            words=words,
            days=spoken.told(["30", Word.DAYS]),
            weeks=spoken.told(["2", Word.WEEKS]),
        )
        raise sentence.fault("not-in-days", message, counted)
    if not re.fullmatch("[0-9]{1,4}", number) or not int(number):
        message = say(
            "`{number}` is no number of days; write a whole one, such as `{days}`",
            number=number,
            days=spoken.told(["14", Word.DAYS]),
        )
        raise sentence.fault("bad-number", message, counted)
    return int(number) * known[normal(unit)]
