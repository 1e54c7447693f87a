"""A work's instructions and duties as an ODRL policy, in a profile of this project.

What is required is an obligation, what is allowed a permission, what is forbidden a prohibition, each on a collection
of parts. Source: W3C ODRL Information Model 2.2 and its vocabulary (2018). ODRL knows three ways to settle a conflict;
the cautious one is stated (`odrl:prohibit`), and which instruction prevails over which is said rule by rule.
"""

from __future__ import annotations

from collections.abc import Sequence

from intent.analysis.exceptions import exceptions_in
from intent.exports.catalogue import duties_in_force, in_force
from intent.exports.odrl_duties import duty_rule
from intent.exports.odrl_rules import RULES, instruction_rule, rule_node
from intent.language.locale import ENGLISH
from intent.model.duty import Duty
from intent.model.work import Instruction, Modality, Work
from intent.names import INTENT
from intent.record.turtle_text import iri_term, prologue, subject_block, text_term

PROFILE = str(INTENT["odrl-profile"])
COMMENT = """The instructions and duties of a work as an ODRL 2.2 policy, in the profile intent:odrl-profile.
A refinement of an action says how the installing must, may or must not be done; a constraint of a rule says when the
rule applies. A rule does not apply to what is done under the rules that its constraint intent:doneUnder names: those
prevail over it. Where rules conflict all the same, this policy says that prohibitions count: ask the work's owner."""


def export_odrl(work: Work) -> str:
    """The policy in Turtle; instructions withdrawn are left out, and so are those that others supersede.

    Raises nothing: what a constraint cannot say is said in words beside it.
    """
    lines, duties, exceptions = in_force(work), duties_in_force(work), exceptions_in(work)
    blocks = [
        _policy(work, lines, duties),
        _action(),
        subject_block("odrl:prohibit", [("a", "odrl:ConflictTerm")]),
    ]
    blocks += [text for line in lines for text in instruction_rule(work, line, exceptions)]
    blocks += [text for duty in duties for text in duty_rule(work, duty)]
    used = ["dcterms", "edtf", "intent", "odrl", "rdf", "rdfs", "term", "unit", "xsd"]
    return "\n".join([prologue(used, COMMENT), *dict.fromkeys(blocks)])


def _policy(work: Work, lines: Sequence[Instruction], duties: Sequence[Duty]) -> str:
    statements = [
        ("a", "odrl:Policy, odrl:Set"),
        ("odrl:profile", iri_term(PROFILE)),
        ("odrl:conflict", "odrl:prohibit"),
        ("dcterms:title", text_term(work.title)),
        ("dcterms:subject", iri_term(work.iri)),
    ]
    for modality, (predicate, _) in RULES.items():
        rules = [line.identifier for line in lines if line.modality is modality]
        if modality is Modality.REQUIRED:
            rules += [duty.identifier for duty in duties]
        if rules:
            statements.append((predicate, ", ".join(rule_node(work, name) for name in rules)))
    return subject_block(rule_node(work, "policy"), statements)


def _action() -> str:
    statements = [
        ("a", "odrl:Action"),
        ("rdfs:label", text_term("install", ENGLISH.tag)),
        ("rdfs:comment", text_term("To set a work up and show it.", ENGLISH.tag)),
        ("odrl:includedIn", "odrl:use"),
    ]
    return subject_block("intent:install", statements)
