"""A writer's own prose, which is Markdown: made safe for a page, for a Markdown report, and for a terminal.

Raw HTML never passes, and nothing in prose is fetched when the page is opened: images become their words.
"""

from __future__ import annotations

import re

from markdown_it import MarkdownIt
from markdown_it.token import Token

_SPECIAL = re.compile(r"([\\`*_\[\]<>|~])")
_CONTROLS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
SPACES = re.compile(r"[^\S\u00a0\u202f]+")
"""White space, but not the spaces that hold a mark to its word."""
_BLOCK_START = re.compile(r"^(\d+(?=[.)](?:\s|$))|(?=(?:#{1,6}|[+-])(?:\s|$))|(?=(?:-+|=+)$))")
"""What begins a heading or an item of a list at the start of a line."""


def shown(text: str) -> str:
    """The text without control characters, which XML refuses and a terminal would obey."""
    return _CONTROLS.sub("\N{REPLACEMENT CHARACTER}", text)


def without_comments(prose: str) -> str:
    """The prose without the comments (`<!-- … -->`) that its writer meant for other writers."""
    return re.sub(r"\n{3,}", "\n\n", re.sub(r"<!--.*?-->", "", prose, flags=re.DOTALL)).strip()


def as_page(prose: str) -> str:
    """The prose as HTML that holds no raw HTML of the writer, no images and no headings of its own."""
    reader = _reader(html=False)
    tokens = reader.parse(shown(prose))
    for token in tokens:
        if token.type in {"heading_open", "heading_close"}:
            token.tag = "p"
        if token.children:
            token.children = _without_images(token.children)
    rendered: str = reader.renderer.render(tokens, reader.options, {})
    return rendered


def as_markdown(prose: str) -> str:
    """The prose as it is; where it holds raw HTML, its angle brackets become characters."""
    text = shown(prose).strip()
    tokens = _reader(html=True).parse(text)
    inner = [child for token in tokens for child in token.children or ()]
    if any(token.type in {"html_block", "html_inline"} for token in [*tokens, *inner]):
        return text.replace("<", "&lt;")
    return text


def as_plain(prose: str) -> str:
    """The words of the prose, its paragraphs apart by a blank line."""
    paragraphs = []
    for token in _reader(html=False).parse(prose):
        if token.type == "inline":
            paragraphs.append("".join(_words(child) for child in token.children or ()))
        elif token.type in {"fence", "code_block"}:
            paragraphs.append(token.content.strip())
    return "\n\n".join(filter(None, paragraphs))


def escaped(text: str) -> str:
    """Text that Markdown shows as it is, on one line."""
    line = _SPECIAL.sub(r"\\\1", " ".join(filter(None, SPACES.split(shown(text)))).replace("&", "&amp;"))
    return _BLOCK_START.sub(r"\1\\", line)


def _reader(*, html: bool) -> MarkdownIt:
    return MarkdownIt("commonmark", {"html": html}).enable("table")


def _without_images(children: list[Token]) -> list[Token]:
    return [
        Token("text", "", 0, content=child.content) if child.type == "image" else child for child in children
    ]


def _words(token: Token) -> str:
    return {"softbreak": " ", "hardbreak": "\n"}.get(token.type, token.content)
