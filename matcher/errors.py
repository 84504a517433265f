"""What can go wrong that a person must be told of: one root, named leaves, the place inside.

Every message is one line that says what was wrong, where, and what to do.
"""


class SamespinError(Exception):
    """Root of all errors that are shown to people; `str(error)` is the whole message."""


class UnreadableInput(SamespinError, ValueError):
    """A file or record that can't be taken as what it claims to be."""


class UnknownField(SamespinError, ValueError):
    """A field name that isn't in the contract; the message names the field that was probably meant."""


class BadValue(SamespinError, ValueError):
    """A value that its field can't hold."""


class TableFault(SamespinError):
    """A table under `data/`, or a user's change to one, that breaks its own head."""


class StoreUnavailable(SamespinError):
    """The store can't be read or written: disk full, read-only, locked, gone or damaged."""


class UnwritableOutput(SamespinError):
    """A result can't be written where it was wanted."""
