"""What a command reads: files, `-` for standard input, and what was wrong with them, told as it comes."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from matcher.command import complain
from matcher.record import Record

if TYPE_CHECKING:
    from matcher.reading.problem import Problem


LISTINGS = click.Path(path_type=Path, allow_dash=True)
"""Where listings or plates stand, any number of them."""
MOTOR = click.Path(path_type=Path, allow_dash=True, dir_okay=False)
"""The file of one motor and its place."""


def refuse_same_dash(*paths: Path | None) -> None:
    """Refuse standard input in two places, as wrong usage: it can be read only once."""
    if sum(str(path) == "-" for path in paths) > 1:
        raise click.UsageError("- stands in two places; standard input can be only one of them")


class Inputs:
    """The records of some files; each problem is told on standard error and remembered."""

    def __init__(self, paths: Iterable[Path], *, plate: bool = False) -> None:
        self._paths, self._plate = paths, plate
        self.had_problems = False

    def __iter__(self) -> Iterator[Record]:
        from matcher.reading.sources import records  # late: help must not pay for the readers

        return records(
            ["-" if str(path) == "-" else path for path in self._paths],
            plate=self._plate,
            on_problem=self._tell,
        )

    def _tell(self, problem: "Problem") -> None:
        self.had_problems = self.had_problems or not problem.is_note
        complain(str(problem))

    @property
    def status(self) -> int:
        """The command's exit status: 1 where some input was at fault."""
        return 1 if self.had_problems else 0
