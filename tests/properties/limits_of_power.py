"""What feeds and cools the devices: circuits, plugs, air conditioning, and the supplies between."""

from __future__ import annotations

from properties.drawn_limit import HEAD, Drawn, labels

SUPPLIED = f"""{HEAD}## Parts

### Screens

- kind: display

| part | device | technology | power | power factor | rated voltage |
| ---- | ------ | ---------- | ----- | ------------ | ------------- |
| M1   | E-01   | LCD        | 60 W  | 1            | 230 V         |

### Supplies

- kind: converter

| part | device | technology        | power loss |
| ---- | ------ | ----------------- | ---------- |
| C1   | E-11   | mains transformer | 12 W       |

## Instructions

### R1 Anything goes

- allowed: technology of Supplies is any
- allowed: power state of Supplies is any
- allowed: presence of additions is any
- by: artist
- on: 1999
"""
CIRCUIT = "mains: 230 V\n- circuit current: 4 A\n- circuits: 1\n- continuous-load share: 100 %"
SMALL_CIRCUIT = CIRCUIT.replace("4 A", "1 A")

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
SUPPLYING = (
    Drawn(
        name="loss of a supply",
        work=SUPPLIED,
        venue="cooling capacity: 100 W",
        part="C1",
        cell="power loss",
        unit="W",
        most=100,
        others=(("technology", "mains transformer"),),
    ),
    Drawn(
        name="loss of a supply on its circuit",
        work=SUPPLIED,
        venue=SMALL_CIRCUIT,
        part="C1",
        cell="power loss",
        unit="W",
        most=400,
        others=(("technology", "mains transformer"),),
    ),
    Drawn(
        name="loss of a supply that is off",
        work=SUPPLIED,
        venue="cooling capacity: 100 W",
        part="C1",
        cell="power loss",
        unit="W",
        most=100,
        others=(("technology", "mains transformer"),),
        placed=(("power state", "off"),),
    ),
    Drawn(
        name="whether it is a supply",
        work=SUPPLIED,
        venue="cooling capacity: 100 W",
        part="C1",
        cell="technology",
        names=("mains transformer", "power supply", "HDMI converter"),
        draws=(("power", ("10 W", "80 W")), ("power loss", ("10 W", "80 W"))),
    ),
    Drawn(
        name="whether it is a supply on a circuit",
        work=SUPPLIED,
        venue=SMALL_CIRCUIT,
        part="C1",
        cell="technology",
        names=("frequency converter", "power supply", "HDMI converter"),
        others=(("power factor", "1"), ("rated voltage", "230 V")),
        draws=(("power", ("20 W", "300 W")), ("power loss", ("20 W", "300 W"))),
    ),
)
