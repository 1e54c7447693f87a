"""The words in a drawing, as messages."""

from __future__ import annotations

from collections.abc import Iterable

from intent.drawings.stage import Detail, Item, Stand, Unplaced, View, Which
from intent.language.locale import Locale
from intent.language.message import Message, Words, joined, say
from intent.variance.result import VERDICT_WORDS

STANDINGS = {Stand.OMITTED: say("omitted"), Stand.ADDED: say("added")}
_TITLES = {
    (View.ELEVATION, Which.DOCUMENTED): say("Elevation as documented"),
    (View.ELEVATION, Which.PROPOSED): say("Elevation as proposed"),
    (View.PLAN, Which.DOCUMENTED): say("Plan as documented"),
    (View.PLAN, Which.PROPOSED): say("Plan as proposed"),
}
_NO_GROUP = say("parts in no group")
STATES = {
    Which.DOCUMENTED: say("The documented state"),
    Which.PROPOSED: say("The proposed state"),
}
_VIEWS = {
    View.ELEVATION: say("seen from the front, standing on the finished floor"),
    View.PLAN: say("seen from above, with the viewer's side at the bottom"),
}
TOP_OF_PICTURE = say("top of the picture")
LOOKS_THIS_WAY = say("the way a screen looks that is not seen from the front")
VIEWER = say("seen from here in elevation")
PERSON = say("1.7 m")
METRES_ELEVATION = say(
    "Dimensions in metres, between the middles of neighbours; heights to the middle, above the finished floor."
)
METRES_PLAN = say(
    "Dimensions in metres, between the middles of neighbours; depths from the origin, the ringed cross, "
    "towards the viewer."
)
ASSUMED_LEVEL = say("Where nothing is said of tilt or facing, a part is drawn vertical and facing the front.")
PROJECTORS = say(
    "Projectors are drawn straight before the middle of their picture, at the distance of the throw: nothing is "
    "said of their height, nor of where else they stand."
)
NOTHING_PLACED = say("No part has a position, so there is nothing to draw.")


def title_of(view: View, which: Which, detail: Detail | None) -> Message:
    """`Plan as documented`; `Elevation as documented: Byre`."""
    if detail is None:
        return _TITLES[view, which]
    if detail.is_alike:
        return say("Elevation as documented and as proposed: {group}", group=detail.group or _NO_GROUP)
    if which is Which.DOCUMENTED:
        return say("Elevation as documented: {group}", group=detail.group or _NO_GROUP)
    return say("Elevation as proposed: {group}", group=detail.group or _NO_GROUP)


def scale_words(scale: int, width: float) -> Message:
    return say("1:{scale} at a width of {width} mm", scale=scale, width=round(width))


def description(
    view: View, which: Which, stage_items: Iterable[Item], unplaced: Iterable[Unplaced], scale: int
) -> Message:
    """One sentence that says what is drawn."""
    items = tuple(stage_items)
    displays = sum(1 for item in items if item.is_display)
    departing = [item.identifier for item in items if item.verdict]
    return say(
        "{state}, {view}, at 1:{scale}: displays {displays}, other parts {others}; {departing}; {unplaced}.",
        state=STATES[which],
        view=_VIEWS[view],
        scale=scale,
        displays=displays,
        others=len(items) - displays,
        departing=_departing(departing),
        unplaced=_not_drawn([part.identifier for part in unplaced]),
    )


def _departing(parts: list[str]) -> Message:
    if not parts:
        return say("nothing drawn departs from the documentation")
    return say("marked as departing are {parts}", parts=tuple(parts))


def _not_drawn(parts: list[str]) -> Message:
    if not parts:
        return say("nothing is left undrawn")
    return say("not drawn are {parts}", parts=tuple(parts))


def metres(value: float, locale: Locale) -> str:
    """`1.40`, to the centimetre, with the language's decimal mark."""
    written = f"{value:.2f}"
    written = written[1:] if written == "-0.00" else written
    return locale.written(written).replace("-", "−")


def bare(value: float, locale: Locale) -> str:
    """`2`, `0.5`: without zeros that say nothing."""
    return locale.written(f"{value:g}")


def state_words(item: Item | Unplaced) -> Words:
    """`breach`; `omitted, breach`; nothing for what is as documented."""
    words = [STANDINGS.get(item.standing), VERDICT_WORDS.get(item.verdict) if item.verdict else None]
    return joined((word for word in words if word), ", ")
