"""Events of a LIDO record: how the work came to be, who made a device, and where the work is shown.

Source: ICOM-CIDOC LIDO Working Group, LIDO 1.1 (2021): eventComplexType; types of event of the LIDO Terminology.
"""

from __future__ import annotations

from intent.exports.catalogue import Catalogue, Component, Maker
from intent.exports.lido_things import TERMINOLOGY, URI, appellation, concept
from intent.exports.xml_text import Content, XmlElement, branch, leaf, present
from intent.model.installation import Installation
from intent.names import AGREED, CARRIED_OUT, TERM
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan

_PRODUCTION = ("Production", f"{TERMINOLOGY}lido00007")
_SHOWN = {
    CARRIED_OUT: ("Exhibition", f"{TERMINOLOGY}lido00225"),
    AGREED: ("Exhibition, agreed and planned", AGREED),
}
"""By the status of an installation. A plan has a type of our own, so that nobody stores it as an exhibition."""
MAKER, YEAR_MADE = str(TERM.maker), str(TERM["year-made"])


def _event(kind: tuple[str, str], *content: Content, iri: str = "") -> Content:
    """An event of a kind, by the label and the IRI of the kind, with its own IRI where it has one."""
    label, of_kind = kind
    event_type = concept("eventType", {"en": label}, of_kind)
    return branch("eventSet", branch("event", leaf("eventID", iri, type=URI), event_type, *content))


def production(catalogue: Catalogue) -> Content:
    actors = [_actor(maker) for maker in catalogue.makers]
    return _event(_PRODUCTION, actors, _date(catalogue.made))


def _actor(maker: Maker) -> XmlElement:
    person = maker.person
    role = concept("roleActor", person.role.labels, person.role.iri) if person else None
    return present(
        branch(
            "eventActor",
            leaf("displayActorInRole", f"{maker.name} ({maker.role})"),
            branch(
                "actorInRole",
                branch(
                    "actor",
                    leaf("actorID", person.iri if person else "", type=URI),
                    appellation("nameActorSet", maker.name),
                ),
                role or concept("roleActor", {"": maker.role}),
            ),
        )
    )


def manufacture(component: Component) -> Content:
    """Who made the device that stands in the place, and when, where that is known."""
    facts = {fact.characteristic.iri: fact.text for fact in component.facts}
    maker, year = facts.get(MAKER, ""), facts.get(YEAR_MADE, "")
    if not maker and not year:
        return None
    actor = _actor(Maker(maker, "maker")) if maker else None
    date = branch("eventDate", leaf("displayDate", year))
    return _event(_PRODUCTION, actor, date)


def exhibition(installation: Installation) -> Content:
    """Where and when the work was shown; of what is agreed, that it is planned; of what is only proposed, nothing."""
    status = installation.status.iri if installation.status else ""
    kind = _SHOWN.get(status)
    if kind is None:
        return None
    name = appellation("eventName", installation.title)
    place = branch("eventPlace", leaf("displayPlace", installation.venue))
    return _event(kind, name, _date(installation.dates), place, iri=installation.iri)


def _date(span: DaySpan | None) -> Content:
    """A date as written, with its first and last day; an open end is left out."""
    if span is None:
        return None
    first = "" if span.first == FIRST_DAY else span.first.isoformat()
    last = "" if span.last == LAST_DAY else span.last.isoformat()
    days = branch("date", leaf("earliestDate", first), leaf("latestDate", last))
    return branch("eventDate", leaf("displayDate", str(span)), days)
