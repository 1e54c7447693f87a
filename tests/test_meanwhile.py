"""Tasks in a child process: their results, their faults, and a child that does not live to do them."""

from __future__ import annotations

import os
import signal
from functools import partial

import pytest

from intent.diagnostics import Diagnostic, Span, Unusable
from intent.reading.meanwhile import at_once, meanwhile, when_asked


def _refused(name: str) -> int:
    raise Unusable([Diagnostic(slug="no-file", message=f"there is no file `{name}`", span=Span(file=name))])


def test_tasks_are_done_elsewhere_and_answered_in_any_order() -> None:
    with meanwhile() as begin:
        first = begin(os.getpid)
        second = begin(partial(pow, 2, 100))
        assert second() == 2**100
        assert first() != os.getpid()
        assert first() == first()


def test_a_fault_is_raised_where_the_answer_is_wanted() -> None:
    with meanwhile() as begin:
        refused = begin(partial(_refused, "work.md"))
        after = begin(partial(int, "7"))
        with pytest.raises(Unusable, match=r"there is no file `work\.md`"):
            refused()
        assert after() == 7


def test_what_the_child_did_not_live_to_do_is_done_here() -> None:
    with meanwhile() as begin:
        child = begin(os.getpid)
        os.kill(child(), signal.SIGKILL)
        assert begin(partial(int, "7"))() == 7


def test_no_child_outlives_its_block() -> None:
    with meanwhile() as begin:
        child = begin(os.getpid)()
    with pytest.raises(ProcessLookupError):
        os.kill(child, 0)


def test_other_ways_to_begin() -> None:
    done: list[int] = []
    assert at_once(lambda: done.append(1))() is None
    assert done == [1]
    later = when_asked(lambda: done.append(2))
    assert done == [1]
    later()
    assert done == [1, 2]
