"""A square code (QR, ISO/IEC 18004) as one path of a drawing, so that it prints sharp at any size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import segno

from intent.drawings.svg import Element, said_of, shape

QUIET = 4
"""Modules of white round it, as the standard asks for."""


def square_code(text: str, name: str, title: str) -> Element:
    """The code of a text; at the second level of correction, so that a stain or a photocopy does not lose it."""
    rows = tuple(tuple(row) for row in segno.make(text, error="m", micro=False).matrix)
    size = len(rows) + 2 * QUIET
    return shape(
        "svg",
        said_of("title", title, f"{name}-title"),
        shape("rect", width=size, height=size, fill="#fff"),
        shape("path", d="".join(_runs(rows)), fill="#000"),
        role="img",
        aria_labelledby=f"{name}-title",
        class_="code",
        viewBox=f"0 0 {size} {size}",
        shape_rendering="crispEdges",
    )


def _runs(rows: Sequence[Sequence[int]]) -> Iterator[str]:
    """Each unbroken run of dark modules in a row as one bar."""
    for y, row in enumerate(rows):
        start = None
        for x, dark in enumerate((*row, 0)):
            if dark and start is None:
                start = x
            elif not dark and start is not None:
                yield f"M{start + QUIET} {y + QUIET}h{x - start}v1h-{x - start}z"
                start = None
