"""What cannot be said from what is given, and what would have to be given to say it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from intent.language.message import Message
from intent.model.subject import one
from intent.variance.result import Effect, EffectTopic

Missing: TypeAlias = tuple[Message, ...]
"""What the characteristics are called of which nothing is given, and on which a closer answer depends."""


def unsaid_effects(
    lacking: Mapping[str, Missing],
    *,
    topic: EffectTopic,
    quantity: Message,
    sentence: Message,
    source: Message,
    unit: str = "",
) -> Iterator[Effect]:
    """An effect without figures for each part or box of which something is missing; alike ones are joined when told."""
    for identifier, missing in lacking.items():
        if missing:
            yield Effect(
                topic=topic,
                subject=one(identifier),
                quantity=quantity,
                unit=unit,
                sentence=sentence,
                source=source,
                missing=missing,
            )
