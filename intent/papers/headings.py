"""The headings of a variance report, the same in every form of it."""

from __future__ import annotations

from intent.language.message import say

PROPOSED = say("What is proposed")
OUTCOME = say("Outcome")
DRAWINGS = say("Elevation and plan")
DEPARTURES = say("Departures, worst first")
EFFECTS = say("What the change does")
FINDINGS = say("Venue and devices")
CAUTIONS = say("Cautions")
KEPT = say("As required and as documented")
EVIDENCE = say("What this report rests on")
SIGNATURES = say("Signatures")
SOURCES = say("Sources")
WHERE_FOUND = say("Where the words quoted are found")
CONTENTS = say("Contents")
