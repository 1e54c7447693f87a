"""`intent` holds what an artist requires, allows and forbids, and checks installations against it.

The verbs of the command line are here for programs, with the same names:

    import intent
    documentation = intent.validate("work.md")
    variance = intent.check("installations/2027-loan.md").variance
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from intent.diagnostics import Diagnostic, Unusable
    from intent.verbs import Checked, check, convert, explain, new, report, terms, validate

__version__ = "0.1.0"

__all__ = [
    "Checked",
    "Diagnostic",
    "Unusable",
    "check",
    "convert",
    "explain",
    "new",
    "report",
    "terms",
    "validate",
]


def __getattr__(name: str) -> Any:
    """Import a verb when it is first asked for, so that ``import intent`` costs nothing."""
    if name in {"Diagnostic", "Unusable"}:
        from intent import diagnostics

        return getattr(diagnostics, name)
    if name in __all__:
        from intent import verbs

        return getattr(verbs, name)
    raise AttributeError(f"module 'intent' has no attribute '{name}'")
