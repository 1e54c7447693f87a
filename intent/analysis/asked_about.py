"""What somebody asks about by name: a part, a group, material, the work, the venue, a characteristic."""

from __future__ import annotations

from intent.diagnostics import UnknownName, nearest, offered
from intent.language.message import say
from intent.model.work import Work
from intent.names import THE_VENUE, THE_WORK
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic

_WHOLES = {THE_WORK: THE_WORK, "work": THE_WORK, THE_VENUE: THE_VENUE, "venue": THE_VENUE}


def members_named(work: Work, subject: str) -> tuple[str, ...]:
    """The subjects that a name stands for: a part, the parts of a group, material, the work, the venue.

    Raises `UnknownName`.
    """
    found = find_members(work, subject)
    if not found:
        known = [*every_subject(work), *(group.name for group in work.groups)]
        message = say("there is no part or group `{name}` in “{work}”", name=subject, work=work.title)
        raise UnknownName(offered(message, nearest(subject, known)))
    return found


def find_members(work: Work, subject: str) -> tuple[str, ...]:
    """The subjects that a name stands for; none where it stands for nothing."""
    wanted = normal(subject)
    if wanted in _WHOLES:
        return (_WHOLES[wanted],)
    for group in work.groups:
        if normal(group.name) == wanted:
            return tuple(part.identifier for part in work.parts if part.group == group.name)
    things = [(part.identifier, part.name) for part in work.parts]
    things += [(material.identifier, material.name) for material in work.material]
    found = (identifier for identifier, name in things if wanted in {normal(identifier), normal(name)})
    return tuple(found)[:1]


def every_subject(work: Work) -> tuple[str, ...]:
    """Everything of which a state can be asked, in the order of the work."""
    parts = (part.identifier for part in work.parts)
    return (*parts, *(material.identifier for material in work.material), THE_WORK, THE_VENUE)


def characteristic_named(work: Work, name: str) -> Characteristic:
    """The characteristic of a name in any language. Raises `UnknownName`."""
    found = work.vocabulary.find_characteristic(name)
    if found is None:
        message = say("`{name}` is not a known characteristic", name=name)
        raise UnknownName(offered(message, nearest(name, list(work.vocabulary.by_name))))
    return found
