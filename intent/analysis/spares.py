"""The spares of a work that are as documented where a proposal departs: a remedy that the dossier itself offers."""

from __future__ import annotations

from intent.model.meaning import given_value, unchanged_values
from intent.model.subject import SubjectKind
from intent.model.work import Device, Part, Work
from intent.names import SPARE
from intent.values.sets import is_within
from intent.variance.result import NOT_COVERED, Row, Variance
from intent.vocabulary.terms import Characteristic


def spares_as_documented(variance: Variance, row: Row) -> tuple[Device, ...]:
    """The spares, in use nowhere, that have what is documented of the part's device; none where that is not at issue.

    Each must state all that is documented of the device and counts: what nobody has said of a spare may be otherwise.
    """
    characteristic = variance.work.vocabulary.characteristics.get(row.term or "")
    part = variance.work.part(row.subject.members[0]) if row.subject.kind is SubjectKind.PART else None
    if (
        part is None
        or row.verdict not in NOT_COVERED
        or characteristic is None
        or not _is_of_device(characteristic)
    ):
        return ()
    used = {one.device for one in variance.installation.substitutions}
    return tuple(
        device
        for device in variance.work.devices
        if device.status is not None
        and device.status.iri == SPARE
        and device.identifier not in used
        and _is_as_documented(variance.work, part, device)
    )


def _is_of_device(characteristic: Characteristic) -> bool:
    return "device" in characteristic.bearers and "place" not in characteristic.bearers


def _is_as_documented(work: Work, part: Part, spare: Device) -> bool:
    own = next((one.statements for one in work.devices if one.identifier == part.device), {})
    documented = {**own, **part.statements}
    asked = [
        (characteristic, expression)
        for iri, expression in documented.items()
        if (characteristic := work.vocabulary.characteristics[iri])
        and _is_of_device(characteristic)
        and "device" in characteristic.unasked_of
    ]
    return bool(asked) and all(
        characteristic.iri in spare.statements
        and is_within(
            given_value(spare.statements[characteristic.iri], characteristic, work.vocabulary),
            unchanged_values(given_value(expression, characteristic, work.vocabulary), characteristic),
        )
        for characteristic, expression in asked
    )
