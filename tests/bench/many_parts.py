"""A random work of many parts with ten instructions each, and a proposal that changes a third of them."""

from __future__ import annotations

import random

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.model.installation import Installation
from intent.model.work import Work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary

SENTENCES = (
    "required: technology of {part} is cathode-ray tube",
    'allowed: technology of {part} is flat panel, if "no tube can be found", with consent of estate',
    "forbidden: technology of {part} is projector",
    "required: visible diagonal of {part} is between {low} in and {high} in",
    "allowed: visible diagonal of {part} is at least {low} in, second choice",
    "required: rotation of {part} is turned left",
    "allowed: rotation of {part} is between 250 deg and 290 deg",
    "forbidden: rotation of {part} is upside down",
    "required: aspect ratio of {part} is 4:3",
    "allowed: colour of {part} is any",
)


def random_case(parts: int, seed: int = 20261124) -> tuple[Work, Installation]:
    """The same case for the same numbers, on every machine."""
    chance = random.Random(seed)
    vocabulary = read_vocabulary()
    reading = read_work(_work_text(parts, chance), "work.md", vocabulary)
    work = load_work(reading.graph, reading.iri, vocabulary)
    proposed = read_installation(_installation_text(parts, chance), "installation.md", work)
    return work, load_installation(proposed.graph, proposed.iri, work, reading.graph)


def _work_text(parts: int, chance: random.Random) -> str:
    rows = [
        f"| M{number} | cathode-ray tube | {chance.randint(9, 25)} in | 4:3 | turned left | colour |"
        for number in range(parts)
    ]
    headings = []
    for number in range(parts):
        low = chance.randint(9, 14)
        lines = [f"- {sentence.format(part=f'M{number}', low=low, high=low + 8)}" for sentence in SENTENCES]
        headings.append("\n".join([f"### R{number} Of M{number}", "", *lines, "- by: artist", "- on: 1999"]))
    return "\n\n".join(
        [
            "# Many\n\n- owner: Nobody\n- number: 1",
            "## People\n\n| person | name | role | until | successor |\n| --- | --- | --- | --- | --- |\n"
            "| artist | A | artist | 2010 | estate |\n| estate | E | artist's estate | | |",
            "## Parts\n\n### Screens\n\n- kind: display\n\n"
            "| part | technology | visible diagonal | aspect ratio | rotation | colour |\n"
            "| --- | --- | --- | --- | --- | --- |\n" + "\n".join(rows),
            "## Instructions",
            *headings,
        ]
    )


def _installation_text(parts: int, chance: random.Random) -> str:
    changed = sorted(chance.sample(range(parts), parts // 3))
    rows = [
        f"| M{number} | {chance.choice(['LCD', 'flat panel', 'video projector'])} | {chance.randint(9, 30)} in | 4:3 |"
        f" {chance.choice(['colour', 'monochrome'])} | original |"
        for number in changed
    ]
    return "\n".join(
        [
            "# Proposal\n\n- dates: 2027-03-01/2027-06-30\n\n## Substitutions\n",
            "| part | technology | visible diagonal | aspect ratio | colour | casing |",
            "| --- | --- | --- | --- | --- | --- |",
            *rows,
        ]
    )
