"""What a proposal makes of the connections and boxes of a work."""

from __future__ import annotations

from intent.model.installation import Installation
from intent.model.work import Connection, Crate, Work


def connections_as_proposed(work: Work, installation: Installation) -> tuple[Connection, ...]:
    """The connections of a showing, those of the work first.

    A row of the installation takes the place of all that lead into the part where it ends; one without a start leaves
    that part unfed. Connections from and to omitted parts go.
    """
    omitted = {omission.part for omission in installation.omissions}
    replaced = {connection.end for connection in installation.connections}
    kept = [connection for connection in work.connections if connection.end not in replaced]
    made = [connection for connection in installation.connections if connection.start]
    return tuple(one for one in (*kept, *made) if not {one.start, one.end} & omitted)


def boxes_as_proposed(work: Work, installation: Installation) -> tuple[Crate, ...]:
    """The boxes that travel: a box of the installation takes the place of the work's box of the same identifier."""
    packed = {box.identifier for box in installation.boxes}
    return (*(box for box in work.boxes if box.identifier not in packed), *installation.boxes)
