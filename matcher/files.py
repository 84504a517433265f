"""Files written whole or not at all, and read with a limit."""

import os
from pathlib import Path

from matcher.errors import UnreadableInput


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
        reason = (error.strerror or str(error)).lower()
        raise UnreadableInput(f"{path}: it can't be read ({reason}). Choose another file.") from error
    if len(content) > limit:
        raise UnreadableInput(f"{path}: larger than {limit // 2**20} MB. Choose another file.")
    return content


def sync_folder(folder: Path) -> None:
    """Make a new or renamed file's entry in its folder durable, where the system can."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
