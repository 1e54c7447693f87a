"""The obstacles of a proposal, with what each is about; those that count first, then what is as documented."""

from __future__ import annotations

from collections.abc import Iterator

from intent.language.message import Words, joined, say, sentence
from intent.model.naming import subject_in_short
from intent.papers.document import Block, Items, Paragraph, ParagraphRole
from intent.variance.obstacle import Need, Obstacle, in_the_way, needs_words
from intent.variance.result import Variance


def obstacle_words(obstacle: Obstacle) -> Words:
    """An obstacle with its subject before it, where its text does not name it."""
    return _about(obstacle, obstacle.text)


def obstacle_sentence(obstacle: Obstacle) -> Words:
    """The same as a sentence, with what would have to be known after it."""
    told = _about(obstacle, sentence(obstacle.text))
    if not obstacle.missing:
        return sentence(told)
    needs = needs_words(obstacle.missing)
    return joined([sentence(told), say("To be known: {values}.", values=needs)])


def obstacle_blocks(variance: Variance) -> tuple[Block, ...]:
    """What stands in the way; what the documentation has as well, which does not count; what was not checked."""
    return tuple(_blocks(variance))


def _blocks(variance: Variance) -> Iterator[Block]:
    counting = in_the_way(variance.obstacles)
    if counting:
        yield Items(tuple(obstacle_sentence(one) for one in counting))
    documented = [one for one in variance.obstacles if one.is_as_documented]
    if documented:
        yield Paragraph(
            say("As documented, untouched by the proposal, and so no obstacle to it:"), ParagraphRole.LEADIN
        )
        yield Items(tuple(obstacle_sentence(one) for one in documented))
    unchecked = needs_words(Need(one.limit, one.subject) for one in variance.unchecked)
    if unchecked:
        yield Paragraph(
            say("Not checked, for nobody states it: {values}.", values=unchecked), ParagraphRole.QUIET
        )


def _about(obstacle: Obstacle, text: Words) -> Words:
    if obstacle.names_subject:
        return text
    return say("{subject}: {text}", subject=subject_in_short(obstacle.subject), text=text)
