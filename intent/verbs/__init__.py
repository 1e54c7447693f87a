"""The public verbs: everything that the program does, one function each, for the command line and for programs alike.

This is the one surface to import from. Each verb is imported when it is first asked for, since a check should not wait
for what a package or an export needs.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from intent.verbs.dossiers import convert as convert
    from intent.verbs.dossiers import digests as digests
    from intent.verbs.dossiers import enter_sheet as enter_sheet
    from intent.verbs.dossiers import new as new
    from intent.verbs.dossiers import sheet as sheet
    from intent.verbs.dossiers import terms as terms
    from intent.verbs.dossiers import validate as validate
    from intent.verbs.inquiries import compare as compare
    from intent.verbs.inquiries import explain as explain
    from intent.verbs.inquiries import history as history
    from intent.verbs.inquiries import questions as questions
    from intent.verbs.preparing import prepare as prepare
    from intent.verbs.proposals import Checked as Checked
    from intent.verbs.proposals import cards as cards
    from intent.verbs.proposals import check as check
    from intent.verbs.proposals import check_and_report as check_and_report
    from intent.verbs.proposals import pdf as pdf
    from intent.verbs.proposals import report as report
    from intent.verbs.replying import Reply as Reply
    from intent.verbs.replying import tell_reply as tell_reply
    from intent.verbs.shipping import packing as packing
    from intent.verbs.transfers import export as export
    from intent.verbs.transfers import pack as pack
    from intent.verbs.transfers import receive as receive
    from intent.verbs.transfers import tell_received as tell_received

VERBS = {
    "Reply": "replying",
    "Checked": "proposals",
    "cards": "proposals",
    "check": "proposals",
    "check_and_report": "proposals",
    "compare": "inquiries",
    "convert": "dossiers",
    "digests": "dossiers",
    "enter_sheet": "dossiers",
    "explain": "inquiries",
    "export": "transfers",
    "history": "inquiries",
    "new": "dossiers",
    "pack": "transfers",
    "packing": "shipping",
    "pdf": "proposals",
    "prepare": "preparing",
    "questions": "inquiries",
    "receive": "transfers",
    "report": "proposals",
    "sheet": "dossiers",
    "tell_reply": "replying",
    "tell_received": "transfers",
    "terms": "dossiers",
    "validate": "dossiers",
}
"""Each name with the module of this folder that holds it."""

__all__ = [*VERBS]


def __getattr__(name: str) -> Any:
    """A verb, imported when it is first asked for."""
    if name not in VERBS:
        raise AttributeError(f"module 'intent.verbs' has no attribute '{name}'")
    return getattr(import_module(f"intent.verbs.{VERBS[name]}"), name)
