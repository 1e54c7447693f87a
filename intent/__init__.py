"""`intent` holds what an artist requires, allows and forbids, and checks installations against it.

The verbs of the command line are here for programs, with the same names:

    import intent
    findings = intent.validate("work.md")
    variance = intent.check("installations/2027-loan.md").variance
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from intent.version import VERSION

if TYPE_CHECKING:
    from intent.diagnostics import Diagnostic as Diagnostic
    from intent.diagnostics import Unusable as Unusable
    from intent.verbs import *  # noqa: F403

__version__ = VERSION


def __getattr__(name: str) -> Any:
    """Import a verb when it is first asked for, so that ``import intent`` costs nothing."""
    if name in {"Diagnostic", "Unusable"}:
        return getattr(import_module("intent.diagnostics"), name)
    if name.startswith("_"):
        raise AttributeError(f"module 'intent' has no attribute '{name}'")
    try:
        return getattr(import_module("intent.verbs"), name)
    except AttributeError:
        raise AttributeError(f"module 'intent' has no attribute '{name}'") from None
