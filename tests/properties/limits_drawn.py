"""Every limit that is held, with a proposal in which one cell is drawn: a value, a range, a broader term, nothing."""

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

| part | device | technology          | support               | height |
| ---- | ------ | ------------------- | --------------------- | ------ |
| H1   | E-01   | passive loudspeaker | hung from the ceiling | 2 m    |
| F1   | E-02   | active loudspeaker  | on the floor          | 0.5 m  |

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
- by: artist
- on: 1999
"""
SCREENS = f"""{HEAD}## Parts

### Screens

- kind: display

| part | device | technology | channel | input signal | input connector | accepted standard |
| ---- | ------ | ---------- | ------- | ------------ | --------------- | ----------------- |
| M1   | E-03   | LCD        | A       | composite    | BNC             | PAL               |
| M2   | E-04   | LCD        | A       | composite    | BNC             | PAL               |

### Players

- kind: player

| part | device | technology   | channel | output signal | output connector |
| ---- | ------ | ------------ | ------- | ------------- | ---------------- |
| P1   | E-11   | optical disc | A       | composite     | BNC              |

## Material

| material | channel | standard |
| -------- | ------- | -------- |
| V1       | A       | PAL      |

## Connections

| from | to | signal    | connector | length |
| ---- | -- | --------- | --------- | ------ |
| P1   | M1 | composite | BNC       | 12 m   |
| P1   | M2 | composite | BNC       | 12 m   |

## Instructions

### R1 Anything goes

- allowed: technology of Screens and Players is any
- allowed: visible diagonal of Screens is any
- allowed: visible width of Screens is any
- allowed: aspect ratio of Screens is any
- allowed: colour of Screens is any
- allowed: casing of Screens and Players is any
- allowed: position of Screens is any
- allowed: rotation of Screens is any
- allowed: channel of Screens is any
- allowed: throw distance of Screens is any
- allowed: lens position of Screens is any
- allowed: facing of Screens is any
- allowed: tilt of Screens is any
- allowed: keystone correction of Screens is any
- allowed: power state of Screens and Players is any
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
    """Where the cell stands; in a substitution it may be blank."""
    others: tuple[tuple[str, str], ...] = ()
    placed: tuple[tuple[str, str], ...] = ()
    """Cells of the place."""
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
        if self.section == "Substitutions" and not self.is_blank_said:
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
        boxes = {"box": "B1", "holds": "H1", **cells} if self.section == "Boxes" else {}
        tables = [
            table("Substitutions", {"part": self.part, "device": "V-1", **cells})
            if self.section == "Substitutions"
            else "",
            table("Changes", {"part": self.part, **placed}) if placed else "",
            NEIGHBOUR if "position" in placed else "",
            table("Boxes", boxes) if boxes else "",
        ]
        head = "# Loan\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n\n"
        return "\n".join([f"{head}## Venue\n\n- {self.venue}\n", *filter(None, tables)])


NEIGHBOUR = """| part | position    | rotation | outer width | outer height |
| - | - | - | - | - |
| M2 | 0.5, 1, 0 m | upright | 40 cm | 40 cm |
"""


def table(section: str, cells: dict[str, str]) -> str:
    names, values, rule = (" | ".join(part) for part in (cells, cells.values(), ["-"] * len(cells)))
    return f"## {section}\n\n| {names} |\n| {rule} |\n| {values} |\n"


def labels(scheme: str) -> tuple[str, ...]:
    """The names of a scheme that gather no others."""
    known = vocabulary()
    return tuple(
        concept.label
        for concept in known.in_scheme(term_iri(scheme))
        if len(known.narrower.get(concept.iri, ())) <= 2
    )


SIZED = {"outer width": "20 cm", "outer depth": "20 cm", "outer height": "20 cm"}
CIRCUIT = "mains: 230 V\n- circuit current: 4 A\n- circuits: 1\n- continuous-load share: 100 %"
DAYS = "ambient light: 100 lx\n- opening time per day: 8 h\n- days open: 60"
STRAIGHT = (("facing", "0 deg"), ("tilt", "0 deg"), ("rotation", "upright"))
BESIDE = (("position", "0, 1, 0 m"), ("rotation", "upright"))
"""Beside another, 10 cm away; that one stands there in every proposal that says where this stands."""
SIGNALS = ("composite", "S-video", "HDMI", "SDI", "VGA")
SHOWN = (("input signal", "composite"), ("input connector", "BNC"), ("accepted standard", "PAL"))


def but(cells: dict[str, str] | tuple[tuple[str, str], ...], *without: str) -> tuple[tuple[str, str], ...]:
    return tuple((name, value) for name, value in dict(cells).items() if name not in without)


HANDLED = (
    Drawn(
        name="floor",
        venue="floor load limit: 3 kPa",
        cell="weight",
        unit="kg",
        most=600,
        others=(("standing area", "0.1 m²"),),
    ),
    Drawn(
        name="floor under a foot",
        venue="floor point load limit: 2 kN",
        cell="weight",
        unit="kg",
        most=600,
    ),
    Drawn(
        name="hanging point", venue="hanging load limit: 25 kg", part="H1", cell="weight", unit="kg", most=60
    ),
    Drawn(name="lift load", venue="lift load limit: 100 kg", cell="weight", unit="kg", most=250),
    Drawn(
        name="door",
        venue="door width: 80 cm",
        cell="outer width",
        unit="cm",
        most=200,
        others=(("outer depth", "100 cm"), ("outer height", "100 cm")),
    ),
    Drawn(
        name="corridor",
        venue="corridor width: 80 cm",
        cell="outer depth",
        unit="cm",
        most=200,
        others=(("outer width", "100 cm"), ("outer height", "100 cm")),
    ),
    Drawn(
        name="lift car",
        venue="lift width: 100 cm\n- lift depth: 100 cm\n- lift height: 200 cm",
        cell="outer width",
        unit="cm",
        most=300,
        others=but(SIZED, "outer width"),
    ),
    Drawn(name="ceiling", venue="ceiling height: 2.5 m", part="H1", cell="outer height", unit="cm", most=250),
    Drawn(
        name="door for a box",
        venue="door width: 80 cm",
        part="H1",
        section="Boxes",
        cell="width",
        unit="cm",
        most=200,
        others=(("length", "100 cm"), ("height", "100 cm"), ("weight", "15 kg")),
    ),
    Drawn(
        name="lift for a box",
        venue="lift load limit: 100 kg",
        part="H1",
        section="Boxes",
        cell="weight",
        unit="kg",
        most=250,
        others=(("length", "60 cm"), ("width", "50 cm"), ("height", "50 cm")),
    ),
)
LIT = (
    Drawn(
        name="light",
        venue="ambient light: 100 lx",
        cell="illuminance limit",
        unit="lx",
        most=250,
        is_blank_said=True,
    ),
    Drawn(
        name="light of a year",
        venue=DAYS,
        cell="yearly light dose limit",
        unit="lx h",
        most=100_000,
        is_blank_said=True,
    ),
    Drawn(
        name="class of light",
        venue="ambient light: 100 lx",
        cell="light responsivity",
        names=labels("light-responsivities"),
        is_blank_said=True,
    ),
    Drawn(
        name="light on it",
        section="Changes",
        cell="illuminance",
        unit="lx",
        most=250,
        placed=(("illuminance limit", "100 lx"),),
    ),
)
POWERED = (
    Drawn(
        name="circuit",
        venue=CIRCUIT,
        cell="power",
        unit="W",
        most=2000,
        others=(("power factor", "1"), ("rated voltage", "230 V")),
    ),
    Drawn(
        name="power factor",
        venue=CIRCUIT,
        cell="apparent power",
        unit="VA",
        most=2000,
        others=(("rated voltage", "230 V"),),
    ),
    Drawn(name="cooling", venue="cooling capacity: 500 W", cell="power", unit="W", most=1200),
    Drawn(
        name="cooling while it waits",
        venue="cooling capacity: 50 W",
        cell="standby power",
        unit="W",
        most=120,
        others=(("power", "100 W"),),
        placed=(("power state", "off"),),
    ),
    Drawn(
        name="whether it is on",
        venue="cooling capacity: 50 W",
        cell="power state",
        names=("on", "off"),
        section="Changes",
        placed=(("power", "100 W"), ("standby power", "1 W")),
    ),
    Drawn(
        name="breaker",
        venue="breaker inrush limit: 80 A",
        cell="inrush current",
        unit="A",
        most=200,
        placed=(("switched together", "no"),),
    ),
    Drawn(
        name="protection",
        venue="residual-current limit: 30 mA",
        cell="earth leakage current",
        unit="mA",
        most=70,
    ),
    Drawn(
        name="voltage",
        venue="mains: 230 V",
        cell="rated voltage",
        unit="V",
        most=300,
        step=10,
        is_range_said=True,
    ),
    Drawn(
        name="frequency",
        venue="mains frequency: 50 Hz",
        cell="rated frequency",
        unit="Hz",
        most=70,
        step=10,
        is_range_said=True,
    ),
    Drawn(
        name="plug",
        cell="plug",
        names=labels("plugs"),
        draws=(("venue socket", labels("plugs")[:15]), ("earthing", labels("earthings"))),
    ),
    Drawn(
        name="earth",
        cell="earthing",
        names=labels("earthings"),
        draws=(("venue socket", ("type A", "type F")), ("plug", ("type A", "type C", "type F"))),
    ),
)
SHOWING = (
    Drawn(
        name="vents",
        work=SCREENS,
        part="M1",
        cell="vent clearance",
        unit="cm",
        most=30,
        others=(
            *SHOWN,
            ("vent position", "sides"),
            ("outer width", "40 cm"),
            ("outer height", "40 cm"),
        ),
        placed=BESIDE,
        is_blank_said=True,
    ),
    Drawn(
        name="where the vents are",
        work=SCREENS,
        part="M1",
        cell="vent position",
        names=labels("vent-positions"),
        others=(*SHOWN, ("vent clearance", "20 cm"), ("outer width", "40 cm"), ("outer height", "40 cm")),
        placed=BESIDE,
    ),
    Drawn(
        name="lens",
        work=SCREENS,
        part="M1",
        cell="throw ratio",
        most=6,
        step=1,
        others=(
            *SHOWN,
            ("technology", "video projector"),
            ("visible width", "3 m"),
            ("aspect ratio", "16:9"),
        ),
        placed=(("throw distance", "6 m"),),
        is_range_said=True,
    ),
    Drawn(
        name="size of the picture",
        work=SCREENS,
        part="M1",
        cell="visible width",
        unit="cm",
        most=900,
        step=100,
        others=(
            *SHOWN,
            ("technology", "video projector"),
            ("throw ratio", "2:1"),
            ("aspect ratio", "16:9"),
        ),
        placed=(("throw distance", "6 m"),),
        is_blank_said=True,
    ),
    Drawn(
        name="distance",
        work=SCREENS,
        part="M1",
        section="Changes",
        cell="throw distance",
        unit="cm",
        most=900,
        step=100,
        placed=(("technology", "video projector"), ("throw ratio", "2:1"), ("visible width", "3 m")),
    ),
    Drawn(
        name="lens shift",
        work=SCREENS,
        part="M1",
        cell="lens shift range",
        unit="%",
        most=100,
        step=10,
        others=(
            *SHOWN,
            ("technology", "video projector"),
            ("throw ratio", "2:1"),
            ("visible height", "1 m"),
            ("aspect ratio", "3:1"),
        ),
        placed=(("lens position", "0, 1.5, 6 m"), ("position", "0, 2, 0 m"), *STRAIGHT),
        is_blank_said=True,
    ),
    Drawn(
        name="whether the picture is squared",
        work=SCREENS,
        part="M1",
        section="Changes",
        cell="keystone correction",
        names=("yes", "no"),
        placed=(
            ("technology", "video projector"),
            ("lens position", "0, 1.5, 6 m"),
            ("position", "0, 2, 0 m"),
            ("throw ratio", "2:1"),
            ("visible height", "1 m"),
            ("aspect ratio", "3:1"),
            ("lens shift range", "20 %"),
            *STRAIGHT,
        ),
    ),
    Drawn(
        name="signal taken",
        work=SCREENS,
        part="M1",
        cell="input signal",
        names=SIGNALS,
        broader=("analogue video", "video signal"),
        others=but(SHOWN, "input signal"),
        is_range_said=True,
    ),
    Drawn(
        name="connector",
        work=SCREENS,
        part="M1",
        cell="input connector",
        names=("BNC", "phono", "HDMI connector", "DE-15"),
        others=but(SHOWN, "input connector"),
        is_range_said=True,
    ),
    Drawn(
        name="signal given",
        work=SCREENS,
        part="P1",
        cell="output signal",
        names=SIGNALS,
        broader=("analogue video", "video signal"),
        others=(("output connector", "BNC"),),
        placed=(("channel", "A"),),
        is_range_said=True,
    ),
    Drawn(
        name="standard",
        work=SCREENS,
        part="M1",
        cell="accepted standard",
        names=("PAL", "NTSC", "SECAM"),
        broader=("standard definition",),
        others=but(SHOWN, "accepted standard"),
        is_range_said=True,
    ),
    Drawn(
        name="longest cable",
        work=SCREENS,
        part="M1",
        cell="cable length limit",
        unit="m",
        most=40,
        others=SHOWN,
        is_blank_said=True,
    ),
    Drawn(
        name="whether the player is on",
        work=SCREENS,
        part="P1",
        section="Changes",
        cell="power state",
        names=("on", "off"),
    ),
    Drawn(name="channel", work=SCREENS, part="M1", section="Changes", cell="channel", names=("A", "B", "C")),
)
LIMITS = (*HANDLED, *LIT, *POWERED, *SHOWING)
