r"""One job as one file, to hand on or to keep: JSON, format 1.

    {
      "samespin_job": 1,              the format's number; another one is refused
      "written_by": "0.1.0",          the program's version, for people
      "job": {...},                   the job, named as the fields of `matcher.job.Job`
      "files": {"<sha256>": "..."}    pictures and originals, base64 under their SHA-256, lower case hex
    }

Facts carry the contract's names and units. Times are UTC, `2030-01-31T23:59:59Z`. Every part may be
left out of `job` except `id`. Names of pictures are for showing only: nothing is ever written under a
name that stands in the file. What the format can't hold is refused with one line; half characters
become U+FFFD, file names lose their folders, and all other text stays as it is.
"""

import base64
import binascii
import hashlib
import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NoReturn

from pydantic import ValidationError

from matcher import __version__
from matcher.errors import UnreadableInput
from matcher.files import read_limited, write_whole
from matcher.job import Attachment, Job
from matcher.refusal import first_fault
from matcher.store.attachments import LARGEST

FORMAT = 1
_MARK = b'"samespin_job"'
_HEAD = 200
"""Bytes within which a job's file names itself: it is the first thing written."""
LARGEST_FILE = 1024 * 1024 * 1024
"""Bytes of a job's file with all its pictures."""


def attachments(job: Job) -> Iterator[Attachment]:
    """Yield every picture and original file that a job names."""
    yield from job.pictures
    for listing in job.listings:
        yield from listing.pictures
        if listing.original is not None:
            yield listing.original


def dump_job(job: Job, files: Mapping[str, bytes]) -> bytes:
    """Return the content of a job's file; `files` maps digests to bytes."""
    document = {
        "samespin_job": FORMAT,
        "written_by": __version__,
        "job": job.model_dump(mode="json"),
        "files": {digest: base64.b64encode(content).decode() for digest, content in files.items()},
    }
    return json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False).encode()


def write_job(path: Path, job: Job, files: Mapping[str, bytes]) -> None:
    """Write a job's file, whole or not at all. Raises `OSError`."""
    write_whole(path, dump_job(job, files))


def is_job_file(path: Path) -> bool:
    """Tell whether a `.json` file begins as a job's does; one that can't be read doesn't."""
    if path.suffix.lower() != ".json":
        return False
    try:
        with path.open("rb") as file:
            return _MARK in file.read(_HEAD)
    except OSError:
        return False


def read_job(path: Path) -> tuple[Job, dict[str, bytes]]:
    """Return the job in a file and its pictures by digest. Raises `UnreadableInput`, one line."""
    try:
        return parse_job(read_limited(path, LARGEST_FILE))
    except UnreadableInput as fault:
        line = str(fault)
        raise UnreadableInput(line if line.startswith(str(path)) else f"{path}: {line}") from None


def parse_job(content: bytes) -> tuple[Job, dict[str, bytes]]:
    """Return the job in a file's content and its pictures by digest. Raises `UnreadableInput`, one line."""
    document = _document(content)
    try:
        job = Job.model_validate(document.get("job"))
    except ValidationError as fault:
        raise UnreadableInput(f"the job can't be taken: {_short(first_fault(fault))}") from None
    except RecursionError:
        raise UnreadableInput("the job can't be taken: it is nested too deeply") from None
    return job, _files(document.get("files", {}))


def _short(line: str) -> str:
    return " ".join(line.split())[:300]


def _no_number(name: str) -> NoReturn:
    raise UnreadableInput(f"{name} is no number that a job can hold")


def _document(content: bytes) -> dict[str, object]:
    try:
        document = json.loads(content.decode("utf-8-sig"), parse_constant=_no_number)
    except RecursionError:
        raise UnreadableInput("nested too deeply to be a job") from None
    except UnreadableInput:
        raise
    except ValueError as fault:
        raise UnreadableInput(f"this is no job of Samespin ({_short(str(fault))})") from None
    if not isinstance(document, dict) or "samespin_job" not in document:
        raise UnreadableInput("this is no job of Samespin; choose a file that was exported from it")
    if document["samespin_job"] != FORMAT:
        number = str(document["samespin_job"])
        raise UnreadableInput(f"format {_short(number)!r:.20} isn't known here; a newer Samespin may read it")
    return document


def _files(entries: object) -> dict[str, bytes]:
    if not isinstance(entries, dict):
        raise UnreadableInput("its pictures aren't named as a job's are")
    files = {}
    for digest, text in entries.items():
        content = _decoded(text)
        if hashlib.sha256(content).hexdigest() != digest:
            raise UnreadableInput(
                f"picture {_short(str(digest)):.12} isn't what was exported; ask for it again"
            )
        files[digest] = content
    return files


def _decoded(text: object) -> bytes:
    try:
        content = base64.b64decode(text, validate=True) if isinstance(text, str) else None
    except (binascii.Error, ValueError):
        content = None
    if content is None or len(content) > LARGEST:
        raise UnreadableInput("one of its pictures can't be read; ask for the file again")
    return content
