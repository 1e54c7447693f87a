"""The table of expectations, written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.dossier.own_labels import OwnLabels
from intent.dossier.writing import kept, statement_cells, table_block
from intent.model.expectation import Expectation, GivenAnswer
from intent.model.instruction_text import scope_text
from intent.vocabulary.grammar import Word


def expectations_table(expectations: Iterable[Expectation], labels: OwnLabels) -> str:
    """How cases are to be judged, a row each."""
    return table_block([_cells(expectation, labels) for expectation in expectations])


def _cells(expectation: Expectation, labels: OwnLabels) -> dict[str, str]:
    stated = statement_cells(expectation.value, labels)
    word = labels.vocabulary.verdict_words.get(expectation.verdict)
    return {
        "part": scope_text(expectation.scope, labels.vocabulary, labels.language),
        "characteristic": ", ".join(stated),
        "value": ", ".join(stated.values()),
        "given": "; ".join(_given(answer, labels) for answer in expectation.given),
        "on": str(expectation.on or ""),
        "verdict": labels.of(word) if word else expectation.verdict,
        "remark": expectation.note,
        "keep": kept(expectation.internal),
    }


def _given(answer: GivenAnswer, labels: OwnLabels) -> str:
    return labels.grammar.told(list(_pieces(answer)))


def _pieces(answer: GivenAnswer) -> Iterator[Word | str]:
    """`not "the glass is broken"`, `consent of estate to R1.2, R2`."""
    if answer.person is None:
        if not answer.holds:
            yield Word.NOT
        yield f'"{answer.fact}"'
        return
    yield Word.CONSENT_OF if answer.holds else Word.REFUSAL_OF
    yield answer.person
    if answer.to:
        yield Word.TO_LINE
        yield ", ".join(answer.to)
