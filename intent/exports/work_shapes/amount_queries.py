"""What parts amount to together, in one value: their number, a total, where one stands to another.

A shape here is of a subject on some days; what it asks is of all the parts of its installation. Sums are taken of the
least and of the most that each part may be; a device that serves two parts counts once.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from intent.exports.work_shapes.held_values import is_there
from intent.exports.work_shapes.node_shapes import all_of, any_of, counted_on, unless_query_finds
from intent.exports.work_shapes.shape_names import EVERY_SUBJECT, ShapeNames
from intent.model.assertions import Relation
from intent.names import ABSENT, PRESENCE
from intent.record.turtle_text import decimal_term, iri_term
from intent.values.regions import Interval, Region

LOW = "(intent:atLeast|intent:moreThan)"
HIGH = "(intent:atMost|intent:lessThan)"
AXES = {
    Relation.LEFT_OF: ("1", False),
    Relation.RIGHT_OF: ("1", True),
    Relation.BELOW: ("2", False),
    Relation.ABOVE: ("2", True),
    Relation.BEHIND: ("3", False),
    Relation.IN_FRONT_OF: ("3", True),
}
"""The axis on which one part lies beyond the other, and whether towards the greater."""


@dataclass(frozen=True, slots=True)
class Together:
    """Some parts taken together: the class that they are of, and the property that has what is asked of each."""

    names: ShapeNames
    scope: str
    path: str = ""

    def member(self, name: str) -> str:
        """That something is one of them and there, in a query."""
        absent = f"{name} {self.names.value(PRESENCE)} {iri_term(ABSENT)}"
        return (
            f"{name} intent:inInstallation ?showing ; a {self.scope} ; intent:order {name}_place . "
            f"FILTER NOT EXISTS {{ {absent} }}"
        )

    def shape(self, query: str) -> str:
        """The shape to which a node conforms where a query finds nothing."""
        return unless_query_finds(self.names.prefixes, query)

    def number_in(self, admitted: Region) -> str:
        """That as many are there as a set admits."""
        member = all_of([f"[ sh:class {self.scope} ]", is_there(self.names)])
        return any_of(
            counted_on(EVERY_SUBJECT, member, least=_whole(box[0].low), most=_whole(box[0].high))
            for box in admitted.boxes
        )

    def total_in(self, admitted: Region) -> str:
        """That the total is surely within a set."""
        return self._of_total(f"!({inside('?least', '?most', admitted)})")

    def total_out(self, admitted: Region) -> str:
        """That the total is surely outside a set."""
        return self._of_total(f"!({outside('?least', '?most', admitted)})")

    def _of_total(self, found: str) -> str:
        first = (
            f"FILTER NOT EXISTS {{ ?m intent:shownWith ?d . ?o intent:shownWith ?d . {self.member('?o')} "
            "FILTER(?o_place < ?m_place) }"
        )
        return self.shape(
            f"""SELECT $this WHERE {{
  {{ SELECT $this (SUM(COALESCE(?l, 0)) AS ?low) (SUM(COALESCE(?h, 0)) AS ?high)
      (COUNT(?b) AS ?all) (COUNT(?l) AS ?lows) (COUNT(?h) AS ?highs) WHERE {{
    $this intent:shown/intent:inInstallation ?showing .
    OPTIONAL {{ {self.member("?m")} ?m {self.path} ?b . {first}
      OPTIONAL {{ ?b {LOW} ?l }} OPTIONAL {{ ?b {HIGH} ?h }} }} }} GROUP BY $this }}
  BIND(IF(?lows = ?all, ?low, ?none) AS ?least) BIND(IF(?highs = ?all, ?high, ?none) AS ?most)
  FILTER({found}) }}"""
        )

    def stands(self, relation: Relation, other: str, *, is_so: bool) -> str:
        """That the first of them surely stands, or surely does not stand, so to another part."""
        axis, is_greater = AXES[relation]
        mine, others = ("?a", "?b") if is_greater else ("?b", "?a")
        first = f"FILTER NOT EXISTS {{ {self.member('?o')} FILTER(?o_place < ?a_place) }}"
        absent = f"?b {self.names.value(PRESENCE)} {iri_term(ABSENT)}"
        further, nearer = (LOW, HIGH) if is_so else (HIGH, LOW)
        compared = "?x > ?y" if is_so else "?x <= ?y"
        return self.shape(
            f"""SELECT $this WHERE {{ $this intent:shown/intent:inInstallation ?showing .
  FILTER NOT EXISTS {{ {self.member("?a")} {first}
    ?b intent:inInstallation ?showing ; intent:shows {other} . FILTER NOT EXISTS {{ {absent} }}
    {mine} {self.path}/{of_axis(further, axis)} ?x . {others} {self.path}/{of_axis(nearer, axis)} ?y .
    FILTER({compared}) }} }}"""
        )


def of_axis(end: str, axis: str) -> str:
    """The ends of bounds on one axis."""
    return end.replace("|", f"{axis}|").replace(")", f"{axis})")


def inside(least: str, most: str, admitted: Region) -> str:
    """That everything between two variables lies within a set, in a query; an end that is not bound is open."""
    return " || ".join(f"({_within(least, most, box[0])})" for box in admitted.boxes) or "false"


def outside(least: str, most: str, admitted: Region) -> str:
    """That nothing between two variables lies in a set."""
    return " && ".join(f"({_beyond(least, most, box[0])})" for box in admitted.boxes) or "true"


def _within(least: str, most: str, box: Interval) -> str:
    parts = []
    if box.low is not None:
        sign = ">" if box.low_strict else ">="
        parts.append(f"COALESCE({least} {sign} {decimal_term(box.low)}, false)")
    if box.high is not None:
        sign = "<" if box.high_strict else "<="
        parts.append(f"COALESCE({most} {sign} {decimal_term(box.high)}, false)")
    return " && ".join(parts) or "true"


def _beyond(least: str, most: str, box: Interval) -> str:
    parts = []
    if box.low is not None:
        sign = "<=" if box.low_strict else "<"
        parts.append(f"COALESCE({most} {sign} {decimal_term(box.low)}, false)")
    if box.high is not None:
        sign = ">=" if box.high_strict else ">"
        parts.append(f"COALESCE({least} {sign} {decimal_term(box.high)}, false)")
    return " || ".join(parts) or "false"


def _whole(number: Fraction | None) -> int | None:
    return None if number is None else int(number)
