"""What stands on a placement card, as frozen data; sayings are said when the card is written."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CardRow:
    """A label and what stands beside it, line by line."""

    label: str
    lines: tuple[str, ...]
    note: str = ""
    """In smaller type below: from where is measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prohibition:
    """What must not be done with the part."""

    line: str
    """The identifier of the instruction."""
    ground: str
    what: str
    because: str = ""
    conditions: str = ""
    """Under which it holds, where it does not always."""
    permitted: tuple[str, ...] = ()
    """What is permitted all the same, with its consents and conditions."""


@dataclass(frozen=True, slots=True)
class Words:
    """What the artist said."""

    words: str
    source: str
    """Who said it, when, and where it is written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """One part as it is to stand."""

    identifier: str
    iri: str
    name: str
    kind: str
    standing: str
    """Where the proposal departs: `added`, `another device`."""
    turn: float | None
    """Degrees clockwise from upright, seen from the front; none where that is not known, or says nothing."""
    turn_label: str
    """What the turn is called."""
    turn_words: str
    position: CardRow | None
    rows: tuple[CardRow, ...]
    unsettled: str = ""
    """What is not to be done before somebody has answered."""
    cautions: tuple[str, ...] = ()
    """The names of the cautions that it calls for; what each says is in the report."""
    prohibitions: tuple[Prohibition, ...] = ()
    quotation: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The cards of one installation, with what stands on each of them."""

    work: str
    byline: str
    installation: str
    occasion: str
    cards: tuple[Placement, ...]
