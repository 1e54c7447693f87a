"""What was found of the venue and the devices, with what each finding is about."""

from __future__ import annotations

from intent.language.message import Words, say, sentence
from intent.model.naming import subject_in_short
from intent.variance.result import VenueFinding


def finding_words(finding: VenueFinding) -> Words:
    """A finding with its subject before it, where its text does not name it."""
    return _about(finding, finding.text)


def finding_sentence(finding: VenueFinding) -> Words:
    """The same as a sentence: `L1 to L6: The power is not known.`"""
    return _about(finding, sentence(finding.text))


def _about(finding: VenueFinding, text: Words) -> Words:
    if finding.names_subject:
        return text
    return say("{subject}: {text}", subject=subject_in_short(finding.subject), text=text)
