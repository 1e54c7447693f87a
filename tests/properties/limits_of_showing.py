"""What shows the pictures: vents, lenses, signals, connectors, standards."""

from __future__ import annotations

from properties.drawn_limit import HEAD, Drawn, but, labels

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
- allowed: barrier distance of Screens is any
- allowed: facing of Screens is any
- allowed: tilt of Screens is any
- allowed: keystone correction of Screens is any
- allowed: power state of Screens and Players is any
- allowed: presence of additions is any
- by: artist
- on: 1999
"""
STRAIGHT = (("facing", "0 deg"), ("tilt", "0 deg"), ("rotation", "upright"))
BESIDE = (("position", "0, 1, 0 m"), ("rotation", "upright"))
"""Beside another, 10 cm away; that one stands there in every proposal that says where this stands."""
SIGNALS = ("composite", "S-video", "HDMI", "SDI", "VGA")
SHOWN = (("input signal", "composite"), ("input connector", "BNC"), ("accepted standard", "PAL"))

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
        name="light that harms",
        work=SCREENS,
        part="M1",
        venue="visitor position: 0, 1.5, 3 m",
        cell="hazard distance",
        unit="cm",
        most=600,
        others=(*SHOWN, ("technology", "LCD"), ("visible height", "1 m"), ("aspect ratio", "3:1")),
        placed=(("lens position", "0, 1.5, 5 m"), ("position", "0, 1.5, 0 m"), *STRAIGHT),
        is_blank_said=True,
    ),
    Drawn(
        name="barrier about light that harms",
        work=SCREENS,
        part="M1",
        section="Changes",
        cell="barrier distance",
        unit="cm",
        most=600,
        placed=(("hazard distance", "2 m"), *STRAIGHT),
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
