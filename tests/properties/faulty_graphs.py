"""Graphs with one small fault each: what a slip of another program, or of a hand, makes of a record."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from random import Random

from rdflib import RDF, XSD, Literal, URIRef
from rdflib.term import Node

from intent.names import EDTF, INTENT, Triple
from intent.record.ontology import Ontology

Triples = Sequence[Triple]


@dataclass(frozen=True)
class Fault:
    """What was done to one triple of a graph, and the graph after it."""

    kind: str
    triple: Triple
    now: tuple[Triple, ...]
    """What stands in the triple's place."""
    graph: tuple[Triple, ...]

    def __str__(self) -> str:
        was, now = (
            " ; ".join(" ".join(map(_short, one)) for one in each) for each in ([self.triple], self.now)
        )
        return f"{self.kind}: {was}  ->  {now or 'nothing'}"


def _short(node: Node) -> str:
    return str(node).rsplit("/", 1)[-1].rsplit("#", 1)[-1][:60]


@dataclass(frozen=True)
class Faults:
    """The faults that one graph can have."""

    triples: Triples
    ontology: Ontology

    def every(self, random: Random) -> Iterator[Fault]:
        """One of each kind at each triple that can have it."""
        for triple in self.triples:
            for kind in KINDS:
                yield from self.at(triple, kind, random)

    def some(self, random: Random, number: int) -> Iterator[Fault]:
        """So many, drawn from all the kinds alike."""
        while number:
            found = list(self.at(random.choice(list(self.triples)), random.choice(list(KINDS)), random))
            yield from found
            number -= len(found)

    def at(self, triple: Triple, kind: str, random: Random) -> Iterator[Fault]:
        now = KINDS[kind](self, triple, random)
        if now is not None and tuple(now) != (triple,):
            rest = tuple(one for one in self.triples if one != triple)
            yield Fault(kind, triple, tuple(now), (*rest, *now))


Done = Sequence[Triple] | None
"""What stands in the place of a triple; none where it cannot have this fault."""


def _misspelt(text: str, random: Random) -> str:
    """A name with a letter left out, doubled or exchanged with the next."""
    if len(text) < 3:
        return text + "s"
    at = random.randrange(1, len(text) - 1)
    return random.choice(
        [
            text[:at] + text[at + 1 :],
            text[:at] + text[at] + text[at:],
            text[:at] + text[at : at + 2][::-1] + text[at + 2 :],
        ]
    )


def _misspell_property(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, value = triple
    if "intent-record" not in str(predicate) and "purl.org/dc" not in str(predicate):
        return None
    start, name = str(predicate)[: -len(_short(predicate))], _short(predicate)
    return [(subject, URIRef(start + _misspelt(name, random)), value)]


def _misspell_value(faults: Faults, triple: Triple, random: Random) -> Done:
    """Another spelling of a class, a form, a modality."""
    subject, predicate, value = triple
    if not str(value).startswith(str(INTENT)) or isinstance(value, Literal):
        return None
    return [(subject, predicate, INTENT[_misspelt(_short(value), random)])]


def _another_property(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, value = triple
    if predicate not in faults.ontology.properties:
        return None
    return [(subject, random.choice(sorted(faults.ontology.properties, key=str)), value)]


def _another_class(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, _ = triple
    if predicate != RDF.type:
        return None
    return [(subject, predicate, random.choice(sorted(faults.ontology.classes, key=str)))]


def _left_out(faults: Faults, triple: Triple, random: Random) -> Done:
    return []


def _another_literal(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, value = triple
    if not isinstance(value, Literal):
        return None
    return [(subject, predicate, _changed(value, random))]


def _changed(value: Literal, random: Random) -> Literal:
    if value.datatype == XSD.boolean:
        return Literal(not value.value)
    if value.datatype == XSD.integer:
        return Literal(int(value) + random.choice([-1, 1, 7]))
    if value.datatype == XSD.decimal:
        return Literal(
            Decimal(str(value)) * random.choice([Decimal(10), Decimal("0.1"), Decimal(-1)])
            + random.choice([0, 1])
        )
    if value.datatype == EDTF:
        return Literal(str(value).replace("2", "1", 1) if random.random() < 0.5 else "1890", datatype=EDTF)
    text = str(value)
    return Literal(
        random.choice([text + " x", _misspelt(text + "xx", random), "7 kg"]), datatype=value.datatype
    )


def _said_again(faults: Faults, triple: Triple, random: Random) -> Done:
    """A second value of the same property, from elsewhere in the graph."""
    subject, predicate, value = triple
    others = [other for _, same, other in faults.triples if same == predicate and other != value]
    return [triple, (subject, predicate, random.choice(others))] if others else None


def _stated_again(faults: Faults, triple: Triple, random: Random) -> Done:
    """A second statement of a characteristic, with the value of another statement of it or of anything."""
    bearer, predicate, statement = triple
    if predicate != INTENT.states:
        return None
    second = URIRef(f"{statement}.{random.choice(['a', 'z'])}")
    said = [(one, value) for node, one, value in faults.triples if node == statement]
    values = [value for _, one, value in faults.triples if one == INTENT.value]
    copied = [(second, one, random.choice(values) if one == INTENT.value else value) for one, value in said]
    return [triple, (bearer, predicate, second), *copied]


def _elsewhere(faults: Faults, triple: Triple, random: Random) -> Done:
    """The same property of something else."""
    subject, predicate, value = triple
    if isinstance(value, Literal):
        return None
    others = sorted(
        {other for _, same, other in faults.triples if same == predicate and other != value}, key=str
    )
    return [(subject, predicate, random.choice(others))] if others else None


def _nowhere(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, value = triple
    return None if isinstance(value, Literal) else [(subject, predicate, URIRef(f"{value}x"))]


def _anywhere(faults: Faults, triple: Triple, random: Random) -> Done:
    subject, predicate, value = triple
    if isinstance(value, Literal):
        return None
    return [(subject, predicate, random.choice(faults.triples)[0])]


def _of_another(faults: Faults, triple: Triple, random: Random) -> Done:
    """The same said of another thing."""
    subject, predicate, value = triple
    others = sorted(
        {other for other, same, _ in faults.triples if same == predicate and other != subject}, key=str
    )
    return [(random.choice(others), predicate, value)] if others else None


KINDS: dict[str, Callable[[Faults, Triple, Random], Done]] = {
    "property misspelt": _misspell_property,
    "name misspelt": _misspell_value,
    "another property": _another_property,
    "another class": _another_class,
    "left out": _left_out,
    "another literal": _another_literal,
    "said again": _said_again,
    "stated again": _stated_again,
    "pointing elsewhere": _elsewhere,
    "pointing nowhere": _nowhere,
    "pointing anywhere": _anywhere,
    "said of another": _of_another,
}
