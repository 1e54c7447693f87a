"""No query language is run anywhere in the program: SPARQL could reach the network by SERVICE and LOAD.

Source: W3C, SPARQL 1.1 Federated Query (SERVICE) and SPARQL 1.1 Update (LOAD), Recommendations of 21 March 2013.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES = sorted((ROOT / "intent").rglob("*.py"))
_ASKS = {"query", "Store", "prepareQuery", "prepareUpdate", "processUpdate"}


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_module_asks_a_query(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    asked = {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)} & _ASKS
    named = {
        alias.name
        for node in ast.walk(tree)
        if isinstance(node, (ast.Import, ast.ImportFrom))
        for alias in node.names
    }
    assert not asked
    assert not any(
        "sparql" in name.lower()
        for name in named | {getattr(node, "module", None) or "" for node in ast.walk(tree)}
    )


def test_the_shapes_hold_no_query_and_the_validator_runs_none() -> None:
    for path in (ROOT / "shapes").glob("*.ttl"):
        assert not re.search(r"sh:(sparql|select|ask|rule|js)\b", path.read_text(encoding="utf-8"))
    validator = (ROOT / "intent" / "record" / "validate.py").read_text(encoding="utf-8")
    assert "advanced=False, js=False" in validator
