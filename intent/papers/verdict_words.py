"""What verdicts, outcomes and grounds are called, and what each verdict means."""

from __future__ import annotations

from intent.language.message import Words, say
from intent.variance.result import Outcome, Verdict

OUTCOME_WORDS = {
    Outcome.NOT_ACCEPTABLE: say("not acceptable"),
    Outcome.REFER: say("to be referred"),
    Outcome.ON_CONDITIONS: say("acceptable on conditions"),
    Outcome.ACCEPTABLE: say("acceptable"),
}
VERDICT_MEANINGS = {
    Verdict.FORBIDDEN: say("an instruction forbids it, and nothing lifts the prohibition"),
    Verdict.BREACH: say("an instruction requires something else, and nothing lifts the requirement"),
    Verdict.CONTRADICTION: say("instructions contradict each other, and no rule says which prevails"),
    Verdict.UNKNOWN: say("too little is known to say"),
    Verdict.UNCOVERED: say("it differs from what is documented, and no instruction covers the difference"),
    Verdict.CONDITIONAL: say("an instruction allows it, once everything listed as open is settled"),
    Verdict.ALLOWED: say("an instruction allows it, and nothing is open"),
    Verdict.AS_REQUIRED: say("it is as an instruction requires"),
    Verdict.AS_DOCUMENTED: say("it is as documented"),
}
GROUND_WORDS = {
    "safety": say("for safety"),
    "law": say("by law"),
    "loan": say("under the loan agreement"),
    "care": say("for the care of the work"),
}


def ground_words(ground: str) -> Words:
    """What is said of a verdict's ground; nothing of the artist's intent, which is what a report is about."""
    if ground == "intent":
        return ""
    return GROUND_WORDS.get(ground) or say("on the ground of {ground}", ground=ground)
