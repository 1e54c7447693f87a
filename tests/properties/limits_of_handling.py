"""What bears, passes and lights a thing: floors, points, doors, lifts, boxes, and the light on it."""

from __future__ import annotations

from properties.drawn_limit import Drawn, but, labels

SIZED = {"outer width": "20 cm", "outer depth": "20 cm", "outer height": "20 cm"}
DAYS = "ambient light: 100 lx\n- opening time per day: 8 h\n- days open: 60"

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
