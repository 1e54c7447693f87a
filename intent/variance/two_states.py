"""The two states of a case: what is documented of each part, and what the proposal makes of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.model.assertions import Expression, Form, Statements
from intent.model.installation import Change, Installation
from intent.model.logged import devices_as_logged
from intent.model.work import Device, Part, Work
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import point
from intent.variance.state import State, WorkedOut
from intent.vocabulary.terms import Vocabulary


@dataclass(frozen=True, slots=True)
class Entries:
    """What is known of each device: its row, the row of the part that names it, and what it is like."""

    devices: Mapping[str, Device]
    parts_of: Mapping[str, tuple[Part, ...]]
    vocabulary: Vocabulary

    def of(self, device: str | None) -> Statements:
        found: dict[str, Expression] = {}
        seen: set[str] = set()
        while device is not None and device not in seen:
            for characteristic, expression in self._own(device).items():
                if not seen or not self._is_its_own(characteristic):
                    found.setdefault(characteristic, expression)
            seen.add(device)
            known = self.devices.get(device)
            device = known.like if known else None
        return found

    def _is_its_own(self, characteristic: str) -> bool:
        """Whether it is a single device's own, such as its hours, and not that of another which is like it."""
        found = self.vocabulary.characteristics.get(characteristic)
        return found is not None and found.of_one_device

    def _own(self, device: str) -> Statements:
        known = self.devices.get(device)
        own = dict(known.statements) if known else {}
        for part in self.parts_of.get(device, ()):
            for characteristic, expression in part.statements.items():
                if is_of_device(characteristic, self.vocabulary):
                    own.setdefault(characteristic, expression)
        return own


def is_of_device(characteristic: str, vocabulary: Vocabulary) -> bool:
    """Whether a characteristic goes with the device when another takes its place."""
    found = vocabulary.characteristics.get(characteristic)
    return found is not None and "device" in found.bearers


def entries_of(work: Work, pool: Iterable[Device] = ()) -> Entries:
    parts_of: dict[str, tuple[Part, ...]] = {}
    for part in work.parts:
        if part.device:
            parts_of[part.device] = (*parts_of.get(part.device, ()), part)
    devices = devices_as_logged((*work.devices, *pool), work.log, work.parts, work.vocabulary)
    return Entries(devices, parts_of, work.vocabulary)


def documented_state(work: Work) -> State:
    entries = entries_of(work)
    statements: dict[str, Statements] = {
        part.identifier: {**entries.of(part.device), **part.statements} for part in work.parts
    }
    statements.update({material.identifier: material.statements for material in work.material})
    statements[THE_WORK] = work.statements
    statements[THE_VENUE] = {}
    present = dict.fromkeys(part.identifier for part in work.parts)
    return State(
        vocabulary=work.vocabulary,
        statements=statements,
        present=present,
        devices={part.identifier: part.device for part in work.parts},
        kinds={part.identifier: part.kind.iri for part in work.parts},
    )


def proposed_state(work: Work, installation: Installation, documented: State) -> State:
    """The documented state with the proposal's substitutions, changes, omissions and additions."""
    entries = entries_of(work, installation.devices)
    statements: dict[str, Statements] = dict(documented.statements)
    devices = dict(documented.devices)
    for substitution in installation.substitutions:
        placed = {
            characteristic: expression
            for characteristic, expression in statements.get(substitution.part, {}).items()
            if not is_of_device(characteristic, work.vocabulary)
        }
        arrived = entries.of(substitution.device)
        statements[substitution.part] = {**placed, **arrived, **substitution.statements}
        devices[substitution.part] = substitution.device
    for change in installation.changes:
        for part, changed in _altered(change, devices, work.vocabulary):
            statements[part] = {**statements.get(part, {}), **changed}
    for addition in installation.additions:
        statements[addition.identifier] = {**entries.of(addition.device), **addition.statements}
        devices[addition.identifier] = addition.device
    statements[THE_WORK] = {**work.statements, **installation.work_statements}
    statements[THE_VENUE] = installation.venue_statements
    omitted = {omission.part for omission in installation.omissions}
    there = [part for part in documented.present if part not in omitted]
    there += [addition.identifier for addition in installation.additions]
    resolved = {
        subject: _resolved(stated, documented.statements.get(subject, {}))
        for subject, stated in statements.items()
    }
    days = (installation.dates.last - installation.dates.first).days + 1
    return State(
        vocabulary=work.vocabulary,
        statements=resolved,
        present=dict.fromkeys(there),
        devices=devices,
        kinds={**documented.kinds, **{part.identifier: part.kind.iri for part in installation.additions}},
        replaced=frozenset(substitution.part for substitution in installation.substitutions),
        documented=documented,
        days=point(days),
        worked_out=WorkedOut(given=documented.worked_out.given),  # most devices are as documented
    )


def _altered(
    change: Change, devices: Mapping[str, str | None], vocabulary: Vocabulary
) -> Iterator[tuple[str, Statements]]:
    """The parts that a change alters: what is of the device also where the device serves another part."""
    device = devices.get(change.part)
    of_device = {iri: stated for iri, stated in change.statements.items() if is_of_device(iri, vocabulary)}
    if device is not None and of_device:
        yield from (
            (part, of_device) for part, other in devices.items() if other == device and part != change.part
        )
    yield change.part, change.statements


def _resolved(stated: Statements, documented: Statements) -> Statements:
    """What is proposed `as documented` is what the documentation says, and not given where it says nothing."""
    if not any(expression.form is Form.AS_DOCUMENTED for expression in stated.values()):
        return stated
    found = {
        iri: documented.get(iri) if expression.form is Form.AS_DOCUMENTED else expression
        for iri, expression in stated.items()
    }
    return {iri: expression for iri, expression in found.items() if expression is not None}
