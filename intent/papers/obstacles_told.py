"""The obstacles of a proposal, with what each is about; those that count first, then what is as documented."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from intent.analysis.switching_off import gone_when_off
from intent.language.message import Words, joined, listed, opened, say, say_of, sentence
from intent.model.naming import runs, subject_in_short, subject_name
from intent.papers.document import Block, FactLine, Facts, FactsRole, Paragraph, ParagraphRole
from intent.variance.obstacle import Need, Obstacle, Unchecked, in_the_way, needs_words
from intent.variance.result import Variance

IN_SHORT = {
    "box-too-full": say("it does not go into its box"),
    "box-too-light": say("its box bears less"),
    "box-too-small": say("it is larger than its box"),
    "breaker-inrush": say("the breaker may trip when it is switched on"),
    "cable-too-long": say("a cable is longer than the device takes"),
    "ceiling-too-low": say("the ceiling is too low"),
    "circuit-overloaded": say("a circuit is overloaded"),
    "corner-too-tight": say("it does not go round the corner of the corridor"),
    "corridor-too-narrow": say("it does not go through the corridor"),
    "device-failed": say("the device has failed"),
    "device-used-twice": say("one device in two places"),
    "door-too-narrow": say("it does not go through the door"),
    "floor-overloaded": say("the floor does not bear it"),
    "foot-overloading": say("a foot presses too hard on the floor"),
    "hanging-point-overloaded": say("the fixing does not bear it"),
    "hazard-distance": say("people can come into light that harms the eye"),
    "heat": say("the room gets too warm"),
    "heavy-lift": say("not to be lifted by one person"),
    "leakage": say("the residual-current device may trip"),
    "lens": say("the lens cannot make the picture"),
    "lens-shift": say("the lens does not shift the picture far enough"),
    "lift-overloaded": say("too heavy for the lift"),
    "lift-too-small": say("it does not go into the lift"),
    "light-dose": say("too much light for the object"),
    "mains-frequency": say("the mains has another frequency"),
    "mains-voltage": say("the mains has another voltage"),
    "may-not-fit": say("no picture or sound arrives"),
    "no-earth": say("the socket gives no protective earth"),
    "not-arriving": say("no picture or sound arrives"),
    "other-channel": say("another channel arrives"),
    "plug": say("the plug does not go into the socket"),
    "room-too-small": say("it does not stand within the room"),
    "standard-not-taken": say("the standard is not taken"),
    "ultraviolet": say("too much ultraviolet for the object"),
    "vents-not-free": say("the vents are not free"),
}
"""What each sort of obstacle comes to where it is sure, without its figures."""
MANY = 6
"""From so many parts on a line of the first page counts them."""


def obstacles_in_short(obstacles: Sequence[Obstacle]) -> tuple[Words, ...]:
    """A line for each sort of obstacle that is sure, with the parts that it concerns; then what is open, by parts."""
    counting = in_the_way(obstacles)
    sure = _by_sort(one for one in counting if one.is_sure)
    unsure: dict[Words, list[Words]] = {}
    for words, whose in _by_sort(one for one in counting if not one.is_sure):
        unsure.setdefault(whose, []).append(words)
    return (
        *(say("{name} ({role})", name=opened(words), role=whose) for words, whose in sure),
        *(
            say("{parts}, perhaps: {obstacle}", parts=opened(whose), obstacle=joined(every, "; "))
            for whose, every in unsure.items()
        ),
    )


def not_checked(unchecked: Iterable[Unchecked]) -> Words:
    """That some limits were not held against anything, since nobody states them; nothing where all are stated."""
    names = tuple(dict.fromkeys(one.limit for one in unchecked))
    return say("Not checked, for nobody states it: {values}.", values=names) if names else ""


def _by_sort(obstacles: Iterable[Obstacle]) -> tuple[tuple[Words, Words], ...]:
    """What each sort comes to, and which parts it concerns."""
    sorts: dict[Words, list[Obstacle]] = {}
    for one in obstacles:
        sorts.setdefault(IN_SHORT.get(one.slug, one.text), []).append(one)
    return tuple((words, _concerned(same)) for words, same in sorts.items())


def _concerned(same: Sequence[Obstacle]) -> Words:
    """The parts by their identifiers; many of them counted; the venue or the work by its name."""
    names = dict.fromkeys(name for one in same for name in one.subject.members)
    if len(names) > MANY:
        return say("{number} parts", number=len(names))
    return runs(list(names)) if names else subject_name(same[0].subject)


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


def obstacle_blocks(variance: Variance, remedy: Words) -> tuple[Block, ...]:
    """What stands in the way; what the documentation has as well, which does not count; what was not checked.

    ``remedy`` is what `remedy_words` says, which is judged anew each time that it is asked.
    """
    return tuple(_blocks(variance, remedy))


def _blocks(variance: Variance, remedy: Words) -> Iterator[Block]:
    counting = in_the_way(variance.obstacles)
    if counting:
        yield Facts(tuple(_sorted_out(counting)), FactsRole.REQUESTS)
        if remedy:
            yield Paragraph(remedy)
    documented = [one for one in variance.obstacles if one.is_as_documented]
    if documented:
        yield Paragraph(
            say("As documented, untouched by the proposal, and so no obstacle to it:"), ParagraphRole.LEADIN
        )
        yield Facts(tuple(_sorted_out(documented)), FactsRole.REQUESTS)
    unchecked = needs_words(Need(one.limit, one.subject) for one in variance.unchecked)
    if unchecked:
        yield Paragraph(
            say("Not checked, for nobody states it: {values}.", values=unchecked), ParagraphRole.QUIET
        )


def remedy_words(variance: Variance) -> Words:
    """What the documentation itself offers: parts that may be off, with which some obstacles would be gone."""
    found = gone_when_off(variance)
    if found is None:
        return ""
    return say_of(
        len(found.by),
        "With {parts} switched off, which {lines} allows, this would be gone: {obstacles}.",
        "With {parts} switched off, which {lines} allow, this would be gone: {obstacles}.",
        parts=runs(list(found.parts)),
        lines=listed(found.by),
        obstacles=joined([words for words, _ in _by_sort(found.gone)], "; "),
    )


def _sorted_out(obstacles: Iterable[Obstacle]) -> Iterator[FactLine]:
    """One item for each sort, what is sure first: what it comes to, in the words of the first page, and each with its
    figures below it."""
    sorts: dict[tuple[bool, Words], list[Words]] = {}
    for one in sorted(obstacles, key=lambda one: not one.is_sure):
        sort = one.is_sure, IN_SHORT.get(one.slug, one.text)
        sorts.setdefault(sort, []).append(obstacle_sentence(one))
    return (FactLine(_headed(words, is_sure), tuple(told)) for (is_sure, words), told in sorts.items())


def _headed(words: Words, is_sure: bool) -> Words:
    return opened(words) if is_sure else say("Perhaps: {obstacle}", obstacle=words)


def _about(obstacle: Obstacle, text: Words) -> Words:
    if obstacle.names_subject:
        return text
    return say("{subject}: {text}", subject=subject_in_short(obstacle.subject), text=text)
