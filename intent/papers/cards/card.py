"""What stands on a placement card, as frozen data, to be told in the reader's language when the card is written."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from intent.language.message import Words
from intent.papers.cards.posture import Lying


@dataclass(frozen=True, slots=True)
class CardRow:
    """A label and what stands beside it, line by line."""

    label: Words
    lines: tuple[Words, ...]
    note: Words = ""
    """In smaller type below: from where is measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prohibition:
    """What must not be done with the part."""

    line: str
    """The identifier of the instruction."""
    ground: str
    what: Words
    conditions: Words = ""
    """Under which it holds, where it does not always."""
    permitted: tuple[Words, ...] = ()
    """What is permitted all the same, with its consents and conditions."""


@dataclass(frozen=True, slots=True)
class ArtistWords:
    """What the artist said."""

    words: str
    source: Words
    """Who said it, when, and where it is written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """One part as it is to stand."""

    identifier: str
    iri: str
    name: Words
    """Its own name; of a part without one, its kind."""
    kind: Words
    standing: Words
    """Where the proposal departs: `added`, `another device`."""
    lying: Lying | None
    """Which way up it goes; nothing of a thing that has no way up of its own."""
    position: CardRow | None
    rows: tuple[CardRow, ...]
    unsettled: Words = ""
    """What is not to be done before somebody has answered."""
    cautions: tuple[Words, ...] = ()
    """The names of the cautions that it calls for; what each says is in the report."""
    prohibitions: tuple[Prohibition, ...] = ()
    """Safety first."""
    quotation: ArtistWords | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The cards of one installation, with what stands on each of them."""

    work: str
    byline: Words
    installation: str
    occasion: Words
    made: datetime.date
    """The day on which the cards were made, which they bear."""
    cards: tuple[Placement, ...]
    duties: tuple[CardRow, ...] = ()
    """What is to be done for the showing, on cards of its own: its number, with what, who and when."""
