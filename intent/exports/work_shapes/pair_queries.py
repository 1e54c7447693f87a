"""What is asked of each two parts of a scope, as queries: how far apart they are, and whether they are alike.

A test of a pair is an expression over `?a` and `?b`, and over `?near` and `?far`, between which their difference lies
(of a distance its square); a part of which a bound is not known may be any way off.
"""

from __future__ import annotations

from dataclasses import dataclass

from intent.exports.work_shapes.amount_queries import HIGH, LOW, Together, of_axis
from intent.exports.work_shapes.word_queries import there_is, there_is_no


@dataclass(frozen=True, slots=True)
class Pairs:
    """The pairs of some parts that are there, each once."""

    together: Together
    axes: tuple[str, ...]
    """Of numbers the names of their axes; one alone has none, and what is named has no axes."""

    def no_apart(self, test: str) -> str:
        """That of no pair a test of its difference is true."""
        path, axes = self.together.path, self.axes
        ends = [
            f"OPTIONAL {{ {one} {path}/{of_axis(end, axis)} ?{one[1]}{word}{axis} }}"
            for axis in axes
            for one in ("?a", "?b")
            for end, word in ((LOW, "l"), (HIGH, "h"))
        ]
        reckoned = " ".join(_reckoned(axis) for axis in axes)
        if axes == ("",):
            sums = "BIND(COALESCE(?n, 0) AS ?near) BIND(?f AS ?far)"
        else:
            # of a distance that is not known on one axis nothing is known
            far = " + ".join(f"?f{axis} * ?f{axis}" for axis in axes)
            near = " + ".join(f"?n{axis} * ?n{axis}" for axis in axes)
            sums = f"BIND({far} AS ?far) BIND(IF(BOUND(?far), {near}, 0) AS ?near)"
        return self.together.shape(
            f"""SELECT $this WHERE {{ $this intent:shown/intent:inInstallation ?showing .
  {self._pair()} {" ".join(ends)}
  {reckoned} {sums}
  FILTER({test}) }}"""
        )

    def none(self, test: str) -> str:
        """That of no pair a test is true."""
        return self.together.shape(
            f"""SELECT $this WHERE {{ $this intent:shown/intent:inInstallation ?showing .
  {self._pair()}
  FILTER({test}) }}"""
        )

    def _pair(self) -> str:
        """Two members, the first of which stands before the other."""
        return f"{self.together.member('?a')} {self.together.member('?b')} FILTER(?a_place < ?b_place)"

    def unlike(self) -> str:
        """That two surely differ: no name in common, and no bounds that reach each other."""
        path = self.together.path
        if not self.axes:
            open_ = " || ".join(there_is(f"{one} {path} intent:anything") for one in ("?a", "?b"))
            return f"!({there_is(f'?a {path} ?v . ?b {path} ?v')} || {open_})"
        beyond = " || ".join(
            there_is(f"{one} {of_axis(HIGH, axis)} ?x . {two} {of_axis(LOW, axis)} ?y FILTER(?x < ?y)")
            for axis in self.axes
            for one, two in (("?p", "?q"), ("?q", "?p"))
        )
        return there_is_no(f"?a {path} ?p . ?b {path} ?q FILTER(!({beyond}))")

    def alike(self) -> str:
        """That two are surely the same: given for both, the same names, or the same number on each axis."""
        path = self.together.path
        given = " && ".join(there_is_no(f"{one} intent:notGiven {path}") for one in ("?a", "?b"))
        if not self.axes:
            same = " && ".join(
                there_is_no(f"{one} {path} ?v FILTER {there_is_no(f'{two} {path} ?v')}")
                for one, two in (("?a", "?b"), ("?b", "?a"))
            )
            return f"{given} && {same}"
        exact = " ".join(
            f"?p {of_axis(LOW, axis)} ?x{axis} . ?p {of_axis(HIGH, axis)} ?x{axis} . "
            f"?q {of_axis(LOW, axis)} ?x{axis} . ?q {of_axis(HIGH, axis)} ?x{axis} ."
            for axis in self.axes
        )
        return f"{given} && {there_is(f'?a {path} ?p . ?b {path} ?q . {exact}')}"


def _reckoned(axis: str) -> str:
    """How far apart two numbers lie, each known within bounds: at least and at most; nothing where one has no end."""
    known = " && ".join(f"BOUND(?{one}{word}{axis})" for one in "ab" for word in "lh")
    one, two = f"?al{axis} - ?bh{axis}", f"?bl{axis} - ?ah{axis}"
    more, less = f"?ah{axis} - ?bl{axis}", f"?bh{axis} - ?al{axis}"
    return (
        f"BIND(IF({one} > {two}, {one}, {two}) AS ?g{axis}) "
        f"BIND(IF({known}, IF(?g{axis} > 0, ?g{axis}, 0), ?none) AS ?n{axis}) "
        f"BIND(IF({known}, IF({more} > {less}, {more}, {less}), ?none) AS ?f{axis})"
    )
