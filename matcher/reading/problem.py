"""What is wrong with a source or one record of it, told in one line."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One fault in the input: `where` names file, line or record, `why` what is wrong and what to do."""

    where: str
    why: str
    is_note: bool = False
    """Nothing is at fault and nothing left out: something is only worth knowing."""

    def __str__(self) -> str:
        line = f"{self.where}: {self.why}"
        return "".join(sign if sign.isprintable() else "?" for sign in line)


OnProblem = Callable[[Problem], None]
"""Takes each problem as it is met; the good records go on."""
