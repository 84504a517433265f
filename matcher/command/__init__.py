"""The `samespin` command: one file a subcommand, each loaded only when it is called.

Exit status: 0 done, 1 the input held an error (the good records are still done), 2 wrong usage.
Results go to standard output, messages to standard error.
"""

import importlib
import io
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import click

from matcher import __version__
from matcher.errors import SamespinError

COMMANDS: dict[str, str] = {
    "read": "Read listings or plates and say what facts stand in them.",
    "rank": "Judge listings as stand-ins for an old motor, best first.",
    "triage": "Find out which part failed from bench tests.",
    "arrival": "Check a delivered motor and tell the last safe day to send it back.",
    "sheet": "Write the swap sheet of one job.",
    "airflow": "Work out airflow, static pressure and what another speed would do.",
    "demo": "Show the whole job on the shipped example.",
    "window": "Open the window (as does samespin alone).",
}
"""Every command with its one line of help; the file of the same name holds a `command`."""

_HELP = {"help_option_names": ["-h", "--help"]}


class ReaderGone(Exception):
    """Whoever read our output has gone away (`| head`); to a filter that is no failure."""


@contextmanager
def _reader_may_go() -> Iterator[None]:
    """Tell of a closed pipe by `ReaderGone`: click and rich would make a failure of it."""
    try:
        yield
    except BrokenPipeError as gone:
        raise ReaderGone from gone
    except SystemExit as end:
        if isinstance(end.__context__, BrokenPipeError):
            raise ReaderGone from end
        raise


class LateCommands(click.Group):
    """A group that imports a command's file when the command is called, so that help is instant."""

    def make_context(self, *words: Any, **settings: Any) -> click.Context:
        """Read the words; help is printed here."""
        with _reader_may_go():
            return super().make_context(*words, **settings)

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command that was called."""
        with _reader_may_go():
            return super().invoke(ctx)

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Return the names in the order people need them."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """Import and return one command, `None` for a name we don't have."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = importlib.import_module(f"matcher.command.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        """List every command in one line each without importing any."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()), col_max=12)


@click.group(cls=LateCommands, invoke_without_command=True, context_settings=_HELP)
@click.version_option(__version__, prog_name="samespin")
@click.option(
    "--store",
    type=click.Path(dir_okay=False, path_type=Path),
    help="The file that holds the saved jobs; by default one in your data folder.",
)
@click.pass_context
def samespin(ctx: click.Context, store: Path | None) -> None:
    """Find a stand-in for a failed blower or fan motor; alone, it opens the window."""
    ctx.obj = store
    if ctx.invoked_subcommand is None:
        ctx.invoke(importlib.import_module("matcher.command.window").command)


def complain(line: str) -> None:
    """Write one line to standard error, safe for any terminal."""
    click.echo(f"samespin: {line}", err=True)


def main(words: list[str] | None = None) -> None:
    """Run the command and exit; no traceback reaches the user."""
    _write_anything()
    sys.exit(_status(words))


def _status(words: list[str] | None) -> int:
    """Run the command and return its exit status; whatever stopped it was told in one line."""
    status: object = 0
    try:
        status = samespin.main(args=words, prog_name="samespin", standalone_mode=False)
    except ReaderGone:
        _close_quietly()
    except click.exceptions.Exit as end:
        status = end.exit_code
    except click.ClickException as wrong:
        wrong.show()
        status = 2
    except click.Abort:
        complain("stopped")
        status = 1
    except SamespinError as fault:
        complain(str(fault))
        status = 1
    except OSError as fault:
        # What stands in files is dealt with where it is read; this is the way out that failed.
        _close_quietly()
        where = fault.filename or "the output"
        complain(f"{where}: it can't be written ({(fault.strerror or str(fault)).lower()})")
        status = 1
    except Exception as fault:  # noqa: BLE001 - the last place that can keep a traceback from the user
        complain(_own_fault(fault))
        status = 1
    return status if isinstance(status, int) else 0


def _write_anything() -> None:
    """Let a terminal that knows few letters show a mark for the others, whatever a listing holds."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _close_quietly() -> None:
    """Keep the interpreter from complaining again about an output that can't be written (`| head`)."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _own_fault(fault: Exception) -> str:
    """Keep the details of a fault of ours in a file and return the line that says so."""
    import traceback

    from platformdirs import user_log_path

    line = f"the program itself failed ({type(fault).__name__}: {fault})".splitlines()[0]
    try:
        log = user_log_path("samespin", ensure_exists=True) / "faults.log"
        with log.open("a", encoding="utf-8", errors="backslashreplace") as out:
            traceback.print_exception(fault, file=out)
    except OSError:
        return line
    return f"{line}; please report it with the details in {log}"
