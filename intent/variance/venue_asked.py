"""Who is asked what the venue is like: whoever is there, and not whoever proposes to show something there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from intent.model.installation import Installation
from intent.model.subject import SubjectKind
from intent.model.work import Work
from intent.names import BORROWER, THE_VENUE
from intent.variance.obstacle import Need, Obstacle


def who_knows_the_venue(work: Work, installation: Installation) -> tuple[str, ...]:
    """Who proposes, where that is the borrower; else the borrowers whose names are in the venue's; else the venue."""
    borrowers = [one for one in work.people if one.role.iri == BORROWER]
    if installation.by in {one.identifier for one in borrowers}:
        return (installation.by,) if installation.by else ()
    venue = installation.venue.casefold()
    there = tuple(one.identifier for one in borrowers if one.name and one.name.casefold() in venue)
    return there or (THE_VENUE,)


def who_can_say(work: Work, installation: Installation, *, of_the_venue: bool) -> str | None:
    """Who can give a value of the proposal that is missing: who proposes it; of the venue, whoever is there."""
    return who_knows_the_venue(work, installation)[0] if of_the_venue else installation.by


def asked_for_needs(
    work: Work, installation: Installation, obstacles: Iterable[Obstacle]
) -> Mapping[str, tuple[Need, ...]]:
    """What has to be known to hold something against a limit, by who can say it; empty for nobody in particular."""
    asked: dict[str, dict[Need, None]] = {}
    for obstacle in obstacles:
        for need in obstacle.missing:
            of_the_venue = need.subject.kind is SubjectKind.VENUE
            people = who_knows_the_venue(work, installation) if of_the_venue else obstacle.ask
            for person in people or ("",):
                asked.setdefault(person, {})[need] = None
    return {person: tuple(needs) for person, needs in asked.items()}


def who_is_asked(work: Work, installation: Installation, obstacle: Obstacle) -> tuple[str, ...]:
    """Whom an obstacle is put to: what is sure to who proposes, what has to be known to who can say it."""
    if obstacle.is_sure:
        return obstacle.ask
    return tuple(person for person in asked_for_needs(work, installation, [obstacle]) if person)
