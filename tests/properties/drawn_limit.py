"""A limit with a proposal in which one cell is drawn: a value, and what says less: a range, a broader term, nothing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from random import Random

from examples_read import vocabulary

from intent.names import term_iri

HEAD = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role   | until | successor |
| ------ | ---------------- | ------ | ----- | --------- |
| artist | Ottiline Quarrow | artist |       |           |

"""
THINGS = f"""{HEAD}## Parts

### Things

- kind: loudspeaker

| part | device | technology          | support               | height | outer width | outer height | weight |
| ---- | ------ | ------------------- | --------------------- | ------ | ----------- | ------------ | ------ |
| H1   | E-01   | passive loudspeaker | hung from the ceiling | 2 m    | 20 cm       | 20 cm        | 5 kg   |
| F1   | E-02   | active loudspeaker  | on the floor          | 0.5 m  | 20 cm       | 20 cm        | 5 kg   |

## Devices

| device | power | power factor | rated voltage | inrush current | earth leakage current |
| ------ | ----- | ------------ | ------------- | -------------- | --------------------- |
| E-02   | 5 W   | 1            | 230 V         | 1 A            | 1 mA                  |

## Boxes

| box | holds | length | width | height | weight |
| --- | ----- | ------ | ----- | ------ | ------ |
| B1  | H1    | 60 cm  | 50 cm | 50 cm  | 15 kg  |

## Instructions

### R1 Anything goes

- allowed: technology of Things is any
- allowed: casing of Things is any
- allowed: illuminance of Things is any
- allowed: power state of Things is any
- allowed: presence of additions is any
- by: artist
- on: 1999
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A limit, and the cell that is held against it."""

    name: str
    work: str = THINGS
    venue: str = "wall colour: white"
    part: str = "F1"
    cell: str
    unit: str = ""
    most: int = 0
    """Of a number: values lie somewhere between nothing and this."""
    step: int = 0
    """Of a number: how far the values that are always tried lie apart; none, a tenth of the most."""
    names: tuple[str, ...] = ()
    """Of a name: the values; else none."""
    broader: tuple[str, ...] = ()
    """Terms that gather some of them, each with the values that it may stand for after a colon."""
    section: str = "Substitutions"
    """Where the cell stands; in a substitution or an addition it may be blank."""
    others: tuple[tuple[str, str], ...] = ()
    placed: tuple[tuple[str, str], ...] = ()
    """Cells of the place."""
    fed_by: str = ""
    """From where an addition has its picture."""
    draws: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """Other cells, or lines of the venue, of which one value is drawn as well."""
    is_range_said: bool = False
    """Whether a range or a list says something by itself: what a lens makes, a device takes, its sockets."""
    is_blank_said: bool = False
    """Whether a blank says something: that there is no such limit, or that it is as large as the lens makes it."""

    def drawn(self, random: Random) -> Drawn:
        """With the other values drawn."""
        cells, venue = dict(self.others), self.venue
        for name, values in self.draws:
            value = random.choice(values)
            if name.startswith("venue "):
                venue += f"\n- {name.removeprefix('venue ')}: {value}"
            else:
                cells[name] = value
        return replace(self, others=tuple(cells.items()), venue=venue, draws=())

    def pairs(self, random: Random) -> Iterator[tuple[str | None, tuple[str, ...]]]:
        """What says less than a value, nothing last, with values that it may stand for."""
        if self.names:
            one, two = random.sample(self.names, 2)
            if not self.is_range_said:
                yield f"one of {one} or {two}", (one, two)
            yield from ((term, self.names) for term in ("any", *self.broader))
            every = self.names
        else:
            low, high = sorted(random.sample(range(1, self.most), 2))
            if not self.is_range_said:
                yield f"between {low} {self.unit} and {high} {self.unit}", self.among(low, high)
            yield f"at most {high} {self.unit}", self.among(1, high)
            yield f"at least {low} {self.unit}", self.among(low, 4 * self.most)
            every = self.among(1, 4 * self.most)
            yield "any", every
        if self.section in {"Substitutions", "Additions"} and not self.is_blank_said:
            yield None, every

    def among(self, low: int, high: int) -> tuple[str, ...]:
        """Values from one number to another, ten or more of all that there are, both ends among them."""
        steps = range(self.step or self.most // 10, self.most, self.step or self.most // 10)
        numbers = {low, high, *(number for number in steps if low < number < high)}
        return tuple(f"{number} {self.unit}".strip() for number in sorted(numbers))

    def proposal(self, cell: str | None) -> str:
        """The installation with a value in the cell, or nothing."""
        cells = dict(self.others) | ({self.cell: cell} if cell is not None else {})
        placed = dict(self.placed)
        if self.section == "Changes":
            placed, cells = placed | cells, {}
        if self.section == "Additions":
            placed, cells = {}, placed | cells
        rows = {
            "Substitutions": {"part": self.part, "device": "V-1", **cells},
            "Additions": {"part": "X1", **cells},
            "Boxes": {"box": "B1", "holds": "H1", **cells},
        }
        feed = {"from": self.fed_by, "to": "X1", "signal": "composite", "connector": "BNC", "length": "12 m"}
        changes = [{"part": self.part, **placed}] if placed else []
        if "position" in dict(self.placed):
            changes.append(NEIGHBOUR)
        tables = [
            section_of(self.section, rows[self.section]) if self.section in rows else "",
            section_of("Changes", *changes) if changes else "",
            section_of("Connections", feed) if self.fed_by else "",
        ]
        head = "# Loan\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n\n"
        return "\n".join([f"{head}## Venue\n\n- {self.venue}\n", *filter(None, tables)])


NEIGHBOUR = {
    "part": "M2",
    "position": "0.5, 1, 0 m",
    "rotation": "upright",
    "outer width": "40 cm",
    "outer height": "40 cm",
}


def section_of(name: str, *rows: dict[str, str]) -> str:
    """A section with a table for each row, since each has columns of its own."""
    tables = (
        "\n".join(f"| {' | '.join(line)} |" for line in (row, ["-"] * len(row), row.values())) for row in rows
    )
    return f"## {name}\n\n" + "\n\n".join(tables) + "\n"


def labels(scheme: str) -> tuple[str, ...]:
    """The names of a scheme that gather no others."""
    known = vocabulary()
    return tuple(
        concept.label
        for concept in known.in_scheme(term_iri(scheme))
        if len(known.narrower.get(concept.iri, ())) <= 2
    )


def but(cells: dict[str, str] | tuple[tuple[str, str], ...], *without: str) -> tuple[tuple[str, str], ...]:
    return tuple((name, value) for name, value in dict(cells).items() if name not in without)
