"""Of what a characteristic can be said, and where it is written, in words for messages."""

from __future__ import annotations

from collections.abc import Iterable

from intent.language.message import Joint, Words, listed, say
from intent.vocabulary.terms import Characteristic, Vocabulary

_BEARERS = {
    "device": say("device"),
    "place": say("place"),
    "work": say("work"),
    "venue": say("venue"),
    "material": say("material"),
    "connection": say("connection"),
    "box": say("box"),
}
BEARERS = tuple(_BEARERS)
"""All that can bear a characteristic."""


def bearers_of(characteristic: Characteristic) -> Words:
    """`device or place`: all of which a characteristic is said."""
    return listed((_BEARERS[bearer] for bearer in sorted(characteristic.bearers)), Joint.OR)


_NAMED = {
    "work": say("the work"),
    "venue": say("the venue"),
    "device": say("a part"),
    "place": say("a part"),
    "material": say("a row of Material"),
}
"""What a sentence or an expectation names, for it to be said of that; of boxes and connections neither speaks."""


def place_to_write(
    characteristic: Characteristic, vocabulary: Vocabulary, documents: Iterable[str] = ("work",)
) -> Words:
    """Under which headings a characteristic is written: in the same sort of text if it has any, else in another."""
    bearing = [one for one in vocabulary.sections.values() if one.bearers & characteristic.bearers]
    near = [one for one in bearing if one.documents & frozenset(documents)]
    titles = listed((say("`## {title}`", title=one.label) for one in near or bearing), Joint.OR)
    if near:
        return say("write it under {titles}", titles=titles)
    return say("write it in an installation, under {titles}", titles=titles)


def subject_to_name(characteristic: Characteristic, vocabulary: Vocabulary) -> Words:
    """What to name in the place of something that cannot bear a characteristic."""
    named = dict.fromkeys(_NAMED[one] for one in sorted(characteristic.bearers) if one in _NAMED)
    if not named:
        return say("no instruction speaks of it; {place}", place=place_to_write(characteristic, vocabulary))
    return say("name {subjects} instead", subjects=listed(named, Joint.OR))
