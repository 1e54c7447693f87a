"""Tasks that a child process does meanwhile, so that two processors are used where there are two."""

from __future__ import annotations

import contextlib
import os
import pickle
import signal
import threading
from collections.abc import Callable, Iterator
from typing import Any, BinaryIO, Generic, NoReturn, TypeVar

T = TypeVar("T")
Begin = Callable[[Callable[[], T]], Callable[[], T]]
"""A way to begin a task: it gives back the answer, to be called when the result is wanted."""
_LARGE = 1 << 20
"""Bytes that a pipe should take before a writer must wait, where the system can be asked."""


def at_once(task: Callable[[], T]) -> Callable[[], T]:
    """Do the task now."""
    result = task()
    return lambda: result


def when_asked(task: Callable[[], T]) -> Callable[[], T]:
    """Leave the task until its result is wanted, and do it then."""
    return task


@contextlib.contextmanager
def meanwhile() -> Iterator[Begin[Any]]:
    """A way to begin tasks in one child process, which does them one after another and ends with the block.

    Tasks after the first, and all results, must be such as can be pickled. Where no child can be had safely (no
    `fork`, or other threads running), tasks are done at once.
    """
    if not hasattr(os, "fork") or threading.active_count() > 1:
        yield at_once
        return
    child = _Child[Any]()
    try:
        yield child.begin
    finally:
        child.end()


class _Child(Generic[T]):
    """The child process, begun with its first task."""

    def __init__(self) -> None:
        self.tasks: list[Callable[[], T]] = []
        self.told: list[tuple[bool, Any]] = []
        self.to_child: BinaryIO | None = None
        self.from_child: BinaryIO | None = None
        self.process = 0

    def begin(self, task: Callable[[], T]) -> Callable[[], T]:
        place = len(self.tasks)
        self.tasks.append(task)
        if self.to_child is None:
            self._fork(task)
        else:
            with contextlib.suppress(BrokenPipeError):
                pickle.dump(task, self.to_child)
                self.to_child.flush()
        return lambda: self._answer(place)

    def _fork(self, first: Callable[[], T]) -> None:
        tasks_in, tasks_out = _pipe()
        results_in, results_out = _pipe()
        self.process = os.fork()
        if self.process == 0:
            os.close(tasks_out)
            os.close(results_in)
            _work(first, tasks_in, results_out)
        os.close(tasks_in)
        os.close(results_out)
        self.to_child, self.from_child = os.fdopen(tasks_out, "wb"), os.fdopen(results_in, "rb")

    def _answer(self, place: int) -> T:
        """The result of a task; one that the child did not live to do is done here."""
        assert self.from_child is not None
        try:
            while len(self.told) <= place:
                self.told.append(pickle.load(self.from_child))
        except EOFError:
            return self.tasks[place]()
        is_result, result = self.told[place]
        if is_result:
            return result  # type: ignore[no-any-return]
        raise result

    def end(self) -> None:
        """End the child, whether or not all its answers were wanted."""
        for stream in (self.to_child, self.from_child):
            if stream is not None:
                with contextlib.suppress(BrokenPipeError):
                    stream.close()
        if self.process:
            with contextlib.suppress(ProcessLookupError):
                os.kill(self.process, signal.SIGKILL)
            os.waitpid(self.process, 0)


def _pipe() -> tuple[int, int]:
    read_end, write_end = os.pipe()
    with contextlib.suppress(ImportError, OSError, AttributeError):
        import fcntl

        fcntl.fcntl(write_end, fcntl.F_SETPIPE_SZ, _LARGE)
    return read_end, write_end


def _work(first: Callable[[], Any], tasks_in: int, results_out: int) -> NoReturn:
    """In the child: do tasks until there are no more, and end without the parent's clean-up."""
    try:
        with os.fdopen(tasks_in, "rb") as tasks, os.fdopen(results_out, "wb") as results:
            task = first
            while True:
                pickle.dump(_done(task), results)
                results.flush()
                task = pickle.load(tasks)
    except BaseException:
        os._exit(0)


def _done(task: Callable[[], Any]) -> tuple[bool, Any]:
    try:
        return True, task()
    except Exception as error:
        return False, error
