"""What counts of what people said, as queries: whether a fact is attested, a consent refused, an answer given.

The latest word counts. What is hoped for counts from the last of the days of its date, the contrary from the first;
of an answer the data say so themselves.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from intent.record.turtle_text import text_term


def unless_found(pattern: str) -> str:
    """The query that finds a node of which a pattern is not met: a shape of it is one to which the rest conform."""
    return (
        f"SELECT $this WHERE {{ $this intent:fromDay ?day ; intent:shown ?subject .\n  FILTER({pattern}) }}"
    )


def there_is(pattern: str) -> str:
    """That a pattern is met, as an expression."""
    return f"EXISTS {{ {pattern} }}"


def there_is_no(pattern: str) -> str:
    """That a pattern is not met, as an expression."""
    return f"NOT EXISTS {{ {pattern} }}"


def unless_fact(fact: str, *, holds: bool, hoped: bool) -> str:
    """What finds a node unless the latest word on a fact, in its normal form, is that it holds, or does not."""
    said, contrary = (_last_word(text_term(fact), hoped=hoped, holds=one) for one in (holds, not holds))
    return f"{there_is_no(said)} || {there_is(contrary)}"


def _last_word(fact: str, *, hoped: bool, holds: bool) -> str:
    """An attestation that has begun to count, and that no other is surely later than."""
    late, early = ("?x_last", "?x_first") if hoped else ("?x_first", "?x_last")
    begins = "?w_last" if holds is hoped else "?w_first"
    return f"""?w intent:fact {fact} ; intent:answer {str(holds).lower()} ; intent:earliest ?w_first ;
      intent:latest ?w_last FILTER({begins} <= ?day)
    FILTER NOT EXISTS {{ ?x intent:fact {fact} ; intent:answer ?x_holds ; intent:earliest ?x_first ;
      intent:latest ?x_last FILTER(?x_first > ?w_last && IF(?x_holds, {late}, {early}) <= ?day) }}"""


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerQueries:
    """What counts of the answers to one line: of each subject by itself, or of all that it speaks of together."""

    line: str
    """The IRI of the line, as a query has it."""
    scope: str = ""
    """Of a line that speaks of parts together, the class of them; else none."""

    def unless_refused(self, person: str) -> str:
        """What finds a node unless a refusal counts, as a person's: no yes is surely later, and it has not ended."""
        refusal = f"{self._answer('?r', 'false', person)} {self._unfollowed('?r', 'true', person)}"
        return there_is_no(f"{refusal} FILTER {there_is_no(_ended('?r'))}")

    def unless_given(self, persons: Iterable[str]) -> str:
        """What finds a node unless a yes counts of one of some persons: none has refused, none of the last is over."""
        refusal = f"{self._answer('?r', 'false', '?who')} {self._unfollowed('?r', 'true', '?who')}"
        last = f"{self._answer('?z', 'true', '?who')} {self._unfollowed('?z', 'true', '?who')}"
        return there_is_no(
            f"""{self._answer("?y", "true", "?who")} FILTER(?who IN ({", ".join(persons)}))
    FILTER {there_is_no(refusal)}
    FILTER {there_is_no(f"{last} FILTER({there_is(_ended('?z'))} || {there_is(_denied('?z'))})")}"""
        )

    def _answer(self, name: str, word: str, person: str) -> str:
        """An answer as a person's that has begun to count, and that reaches what is asked about."""
        reach = self._reaches_all(name) if word == "true" else self._reaches_any(name)
        return f"""{name} intent:answers {self.line} ; intent:countsFor {person} ; intent:answer {word} ;
      intent:countsFrom {name}_from ; intent:earliest {name}_first ; intent:latest {name}_last .
    {reach} FILTER({name}_from <= ?day)"""

    def _unfollowed(self, name: str, word: str, person: str) -> str:
        """That no answer of a kind is surely later."""
        later = f"{self._answer('?l', word, person)} FILTER(?l_first > {name}_last)"
        return f"FILTER {there_is_no(later)}"

    def _reaches_all(self, name: str) -> str:
        """Of a yes: that it is for all that is asked about."""
        if not self.scope:
            return f"?subject intent:shows/^intent:forPart {name} ."
        return f"FILTER {there_is_no(f'?m a {self.scope} FILTER {there_is_no(_names(name))}')}"

    def _reaches_any(self, name: str) -> str:
        """Of a no: that it is for any of what is asked about."""
        if not self.scope:
            return f"?subject intent:shows/^intent:forPart {name} ."
        return f"FILTER {there_is(f'?m a {self.scope} . {_names(name)}')}"


def _names(name: str) -> str:
    return f"?m intent:shows/^intent:forPart {name}"


def _ended(name: str) -> str:
    return f"{name} intent:overFrom {name}_over FILTER({name}_over <= ?day)"


def _denied(name: str) -> str:
    """That a term is attested not to hold."""
    said = _last_word("?term", hoped=True, holds=False)
    contrary = _last_word("?term", hoped=True, holds=True)
    return f"{name} intent:onTerms ?term . {said} FILTER {there_is_no(contrary)}"
