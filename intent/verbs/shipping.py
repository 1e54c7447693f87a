"""The verb about what travels: packing."""

from __future__ import annotations

import datetime
from pathlib import Path

from intent.papers.packing_list import packing_paper
from intent.planning.shipment import Shipment, shipment_of
from intent.reading.proposal import leaving_of
from intent.verbs.reading_either import read_either
from intent.verbs.replying import Reply
from intent.version import VERSION


def packing(
    path: str | Path, work: str | Path | None = None, date: datetime.date | None = None
) -> Reply[Shipment]:
    """What travels to an installation, or of a work by itself, without what stays in the house.

    ``date`` is that of the list, today's if none. Raises `Unusable`.
    """
    leaving = leaving_of(*read_either(path, work))
    paper = packing_paper(
        leaving.work,
        None,
        leaving.withheld,
        version=VERSION,
        day=date or datetime.date.today(),
        installation=leaving.installation,
    )
    return Reply(found=shipment_of(leaving.work, leaving.installation), paper=paper)
