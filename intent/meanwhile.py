"""A task that a child process does meanwhile, so that two processors are used where there are two."""

from __future__ import annotations

import os
import pickle
import threading
from collections.abc import Callable
from typing import Any, TypeVar

T = TypeVar("T")
Begin = Callable[[Callable[[], T]], Callable[[], T]]
"""A way to begin a task: it gives back the answer, to be called when the result is wanted."""


def at_once(task: Callable[[], T]) -> Callable[[], T]:
    """Do the task now."""
    result = task()
    return lambda: result


def when_asked(task: Callable[[], T]) -> Callable[[], T]:
    """Leave the task until its result is wanted, and do it then."""
    return task


def meanwhile(task: Callable[[], T]) -> Callable[[], T]:
    """Begin a task whose result can be pickled; calling the answer waits for it, and raises what it raised.

    Where no child can be had safely (no `fork`, or other threads running), the task is done at once.
    """
    if not hasattr(os, "fork") or threading.active_count() > 1:
        return at_once(task)
    read_end, write_end = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read_end)
        _report(task, write_end)
    os.close(write_end)
    return lambda: _answer(read_end, child, task)


def _report(task: Callable[[], Any], write_end: int) -> None:
    """In the child: do the task, send its result, and end without the parent's clean-up."""
    try:
        try:
            told = pickle.dumps((True, task()))
        except Exception as error:
            told = pickle.dumps((False, error))
        with os.fdopen(write_end, "wb") as stream:
            stream.write(told)
    finally:
        os._exit(0)


def _answer(read_end: int, child: int, task: Callable[[], T]) -> T:
    with os.fdopen(read_end, "rb") as stream:
        told = stream.read()
    os.waitpid(child, 0)
    if not told:  # the child was ended from outside
        return task()
    is_result, result = pickle.loads(told)
    if is_result:
        return result  # type: ignore[no-any-return]
    raise result
