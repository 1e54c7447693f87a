"""What stands above a drawing: what it shows, and its scale."""

from __future__ import annotations

from intent.drawings.captions import scale_words, title_of
from intent.drawings.depicted import LEFT, RIGHT, Depicted
from intent.drawings.lettering import LEADING, NOTE, TITLE, broken
from intent.drawings.stage import Which
from intent.drawings.svg import SERIF, Element, words

_LAST, _SCALE = 5.5, 10.0
"""Where the last line of the title and the line of the scale stand, in millimetres down the paper."""


def heading(subject: Depicted) -> tuple[list[Element], float]:
    """The heading, which grows upwards; and where it begins. It is as high in both states, so that they align."""
    both = {which: _lines(subject, which) for which in Which}
    rise = TITLE * LEADING * (max(map(len, both.values())) - 1)
    lines, made = both[subject.which], list[Element]()
    for row, text in enumerate(reversed(lines)):
        at = (LEFT, _LAST - row * TITLE * LEADING)
        made.insert(0, words(text, at, TITLE, font_family=SERIF, font_style="italic"))
    scale = subject.locale.say(scale_words(subject.sheet.scale, subject.sheet.width))
    made.append(words(scale, (LEFT, _SCALE), NOTE, font_family=SERIF))
    return made, -rise


def _lines(subject: Depicted, which: Which) -> list[str]:
    """The title in as few lines as it needs; its face is larger than that of which the breaking knows."""
    sheet = subject.sheet
    title = subject.locale.say(title_of(sheet.view, which, subject.detail))
    return list(broken(title, NOTE, (sheet.width - LEFT - RIGHT) * NOTE / TITLE))
