"""Of what a characteristic can be said, in words for messages."""

from __future__ import annotations

from intent.language.message import Joint, Words, listed, say
from intent.vocabulary.terms import Characteristic

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
