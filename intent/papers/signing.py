"""Who signs a paper about a proposal: who proposes, and everybody who must be asked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from intent.language.message import Words, listed, say
from intent.model.naming import person_words
from intent.papers.requests import Request
from intent.variance.result import Variance


@dataclass(frozen=True, slots=True)
class Signer:
    """Somebody who signs."""

    name: Words
    capacity: Words
    """`proposes and is asked`."""


def signers(variance: Variance, asked: Iterable[Request]) -> tuple[Signer, ...]:
    """Who proposes, then everybody who must be asked."""
    capacities: dict[Words, list[Words]] = {}
    if variance.installation.by:
        capacities[person_words(variance.work, variance.installation.by)] = [say("proposes")]
    for request in asked:
        if request.person:
            capacities.setdefault(request.name, []).append(say("is asked"))
    return tuple(Signer(name, listed(what)) for name, what in capacities.items())
