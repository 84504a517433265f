"""Files beside the store: written whole or not at all, read with a limit."""

import os
from pathlib import Path

from matcher.errors import UnreadableInput
from matcher.store.connection import sync_folder


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that at any moment, power cuts included, the old or the new content stands there.

    Raises `OSError`; the old content stays.
    """
    draft = path.with_name(f".{path.name[:100]}.{os.getpid()}.tmp")
    try:
        with draft.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        draft.replace(path)
    except BaseException:
        draft.unlink(missing_ok=True)
        raise
    sync_folder(path.parent)


def read_limited(path: Path, limit: int) -> bytes:
    """Return a file's bytes. Raises `UnreadableInput` where it can't be read or is larger than `limit`."""
    try:
        with path.open("rb") as file:
            content = file.read(limit + 1)
    except OSError as error:
        reason = error.strerror or "it can't be read"
        raise UnreadableInput(f"{path}: {reason}. Choose another file.") from error
    if len(content) > limit:
        raise UnreadableInput(f"{path}: larger than {limit // 2**20} MB. Choose another file.")
    return content
