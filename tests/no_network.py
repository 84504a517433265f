"""A guard that lets no test reach for a network: every way out of Python's socket module is shut.

`shut()` is called once, before the code under test runs; each try raises `NetworkUsed` and is
written down in `TRIES`, so that code which swallows the error is found as well. Local sockets (`AF_UNIX`) that
the system itself uses stay open. `python tests/no_network.py COMMAND...` runs a Python program under
the guard in a process of its own and exits 3 if it tried.
"""

import runpy
import socket
import sys
from typing import Any, NoReturn

TRIES: list[str] = []
_EVENTS = (
    "socket.connect",
    "socket.bind",
    "socket.getaddrinfo",
    "socket.gethostbyname",
    "socket.sendto",
    "socket.sendmsg",
)


class NetworkUsed(AssertionError):
    """Something tried to open a network connection, or to look up a name."""


def _refuse(what: str) -> NoReturn:
    TRIES.append(what)
    raise NetworkUsed(f"tried the network: {what}")


def _watch(event: str, arguments: tuple[Any, ...]) -> None:
    """Take Python's audit events (PEP 578), which C code that goes through `socket` can't avoid."""
    if event == "socket.__new__" and arguments[1] in (socket.AF_INET, socket.AF_INET6):
        _refuse(f"a socket of family {arguments[1]!r}")
    if event.startswith("urllib.") or event in ("http.client.connect", "ftplib.connect", "smtplib.connect"):
        _refuse(event)
    if event in _EVENTS and not (event in ("socket.connect", "socket.bind") and _is_local(arguments[0])):
        _refuse(f"{event} {arguments[1:]!r:.80}")


def _is_local(one: socket.socket) -> bool:
    return one.family not in (socket.AF_INET, socket.AF_INET6)


def shut() -> None:
    """Shut the network for the rest of this process; there is no way back."""
    if not getattr(sys, "_samespin_network_is_shut", False):
        sys.addaudithook(_watch)
        setattr(sys, "_samespin_network_is_shut", True)  # noqa: B010 sys has no such attribute of its own


def main(arguments: list[str]) -> int:
    """Run a module (`-m name ...`) or a file under the guard."""
    shut()
    try:
        if arguments[0] == "-m":
            sys.argv = arguments[1:]
            runpy.run_module(arguments[1], run_name="__main__", alter_sys=True)
        else:
            sys.argv = arguments
            runpy.run_path(arguments[0], run_name="__main__")
    except SystemExit as end:
        if not TRIES:
            return end.code if isinstance(end.code, int) else 1 if end.code else 0
    for tried in TRIES:
        print(f"tried the network: {tried}", file=sys.stderr)
    return 3 if TRIES else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
