"""Which player feeds which display or loudspeaker: along the connections, else by the channel they share."""

from __future__ import annotations

from intent.effects.scene import Scene

Link = tuple[str, str]


def links_of(scene: Scene) -> tuple[Link, ...]:
    """Players and what they feed, in the order of the work."""
    sinks = tuple(part.identifier for part in scene.parts("display", "loudspeaker"))
    onwards: dict[str, list[str]] = {}
    for connection in scene.connections:
        onwards.setdefault(connection.start, []).append(connection.end)
    return tuple(
        (player.identifier, sink)
        for player in scene.parts("player")
        for sink in _fed_by(scene, player.identifier, sinks, onwards)
    )


def _fed_by(
    scene: Scene, player: str, sinks: tuple[str, ...], onwards: dict[str, list[str]]
) -> tuple[str, ...]:
    reached = _reached(player, onwards)
    if len(reached) > 1:
        return tuple(sink for sink in sinks if sink in reached)
    channel = scene.text(player, "channel")
    return tuple(sink for sink in sinks if channel and scene.text(sink, "channel") == channel)


def _reached(start: str, onwards: dict[str, list[str]]) -> frozenset[str]:
    seen, waiting = {start}, [start]
    while waiting:
        for end in onwards.get(waiting.pop(), ()):
            if end not in seen:
                seen.add(end)
                waiting.append(end)
    return frozenset(seen)
