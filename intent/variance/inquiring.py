"""Which instructions of one ground speak of a topic on a day, and what each is asked about its value."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from intent.model.meaning import admitted_values
from intent.model.work import Instruction
from intent.values.sets import ValueSet
from intent.variance.case import Case
from intent.variance.says import Inquiry
from intent.variance.speaking import Speaker, speakers
from intent.variance.topics import Topic


def inquiries(
    case: Case, topic: Topic, speaking: Iterable[Speaker], *, value: ValueSet, documented: ValueSet | None
) -> list[Inquiry]:
    """What each instruction that speaks of one value is asked."""
    return [
        Inquiry(
            speaker=speaker,
            value=value,
            admitted=admitted_by(case, speaker.line, documented),
            text=topic.said_of,
        )
        for speaker in speaking
    ]


def speaking_on(
    case: Case, lines: Sequence[Instruction], members: Sequence[str], ground: str, day: datetime.date
) -> list[Speaker]:
    """The instructions of a ground that speak of some members on a day."""
    return speakers(case, [line for line in lines if line.ground == ground], members, day)


def admitted_by(case: Case, line: Instruction, documented: ValueSet | None) -> ValueSet | None:
    """The values that an instruction admits; none where it rests on what is not documented."""
    assertion = line.assertion
    characteristic = case.vocabulary.characteristics[assertion.characteristic or ""]
    return admitted_values(assertion.expression, characteristic, case.vocabulary, documented)
