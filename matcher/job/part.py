"""What all parts of a job have in common: frozen, strict about names, edited by replacing."""

from typing import Any, Self

from pydantic import BaseModel, ConfigDict, ValidationError

from matcher.errors import BadValue
from matcher.refusal import first_fault


class Part(BaseModel):
    """A frozen part of a job's document; unknown names are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    def edited(self, **changes: Any) -> Self:
        """Return it with some of its parts replaced, checked as if read from a file.

        Raises `BadValue`, one line, for what a part can't hold.
        """
        try:
            return self.model_validate(dict(self) | changes)
        except ValidationError as fault:
            raise BadValue(first_fault(fault)) from None
