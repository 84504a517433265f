"""A job's file: whole, documented, and no way in for tricks."""

import base64
import hashlib
import json
from pathlib import Path

import pytest

from matcher.errors import UnreadableInput
from matcher.job import Attachment, Job
from matcher.store import NotInStore, Store
from matcher.store.job_file import dump_job, is_job_file, parse_job

PICTURE = b"\x89PNG picture"
DIGEST = hashlib.sha256(PICTURE).hexdigest()


def _document(**parts: object) -> bytes:
    job = {"id": "0" * 32, **parts}
    return json.dumps({"samespin_job": 1, "job": job}).encode()


def test_export_and_import_between_stores(store: Store, job: Job, path: Path) -> None:
    job = job.edited(pictures=(Attachment(name="../front.png", digest=store.attach(PICTURE)),))
    store.export_job(job, path.with_name("job.json"))
    with Store.open(path.with_name("other.db")) as other:
        held = other.import_job(path.with_name("job.json"))
        assert held.job.edited(changed=job.changed) == job
        assert other.attachment(DIGEST) == PICTURE
        assert other.import_job(path.with_name("job.json")).job.id != job.id
        assert len(other.jobs()) == 2


@pytest.mark.parametrize(
    ("name", "content", "is_one"),
    [
        ("a.json", dump_job(Job(), {}), True),
        ("a.JSON", _document(), True),
        ("a.json", b'{"id": "a", "text": "1/2 HP"}', False),
        ("a.jsonl", dump_job(Job(), {}), False),
        ("a.json", b"", False),
    ],
)
def test_a_job_s_file_is_known_by_its_beginning(
    tmp_path: Path, name: str, content: bytes, is_one: bool
) -> None:
    (tmp_path / name).write_bytes(content)
    assert is_job_file(tmp_path / name) is is_one
    assert not is_job_file(tmp_path / "gone.json")


def test_a_missing_picture_is_told(store: Store, job: Job, path: Path) -> None:
    job = job.edited(pictures=(Attachment(name="x.png", digest="0" * 64),))
    with pytest.raises(NotInStore, match="its content isn't in this store"):
        store.export_job(job, path.with_name("job.json"))
    assert not path.with_name("job.json").exists()


def test_names_in_the_file_are_only_for_showing() -> None:
    tricks = ["../../.bashrc", "/etc/passwd", "C:\\x\\aux.png", "a\0.png", "\u202egpj.exe", "\ud800"]
    job, _ = parse_job(_document(pictures=[{"name": name, "digest": DIGEST} for name in tricks]))
    for picture in job.pictures:
        assert not set(picture.name) & set("/\\\0\u202e\ud800")
    assert [one.name for one in job.pictures][:3] == ["bashrc", "passwd", "_aux.png"]


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "this is no job of Samespin"),
        (b"\xff\xfe\x00", "this is no job of Samespin"),
        (b"[]", "this is no job of Samespin"),
        (b'{"a": 1}', "choose a file that was exported"),
        (b'{"samespin_job": 2, "job": {}}', "a newer Samespin may read it"),
        (b'{"samespin_job": 1}', "the job can't be taken"),
        (b"[" * 100_000, "nested too deeply"),
        (b'{"samespin_job": 1, "job": {"proof": ' + b'{"a":' * 60 + b"1" + b"}" * 62, "nested deeper"),
        (_document(id="../../etc"), "id: "),
        (_document(fallback={"price": float("nan")}), "NaN is no number"),
        (_document(proof={"a": float("-inf")}), "-Infinity is no number"),
        (_document(fallback={"price": -5}), "fallback.price: "),
        (_document(fallback={"price": 1e308}), "fallback.price: "),
        (_document(given={"power_hp": {"value": 1e308}}), "power_hp: 1e+308 can't be right"),
        (_document(given={"power": {"value": 1}}), "did you mean 'power_hp'?"),
        (_document(listings=[{"id": "x"}]), "listings.0.id: "),
        (_document(listings=[{"id": "1" * 32}] * 2), "two listings have the same id"),
        (_document(listings=[{"text": "x" * 5_000_001}]), "listings.0.text: "),
        (_document(macros="rm -rf"), "macros: "),
        (b'{"samespin_job": 1, "job": {}, "files": []}', "its pictures aren't named"),
        (b'{"samespin_job": 1, "job": {}, "files": {"00": "!!"}}', "can't be read"),
        (b'{"samespin_job": 1, "job": {}, "files": {"00": "QUJD"}}', "isn't what was exported"),
        (b'{"samespin_job": 1' + b"0" * 5000 + b"}", "this is no job"),
    ],
    ids=lambda value: repr(value)[:40],
)
def test_what_is_no_job_is_refused_with_one_line(content: bytes, words: str) -> None:
    with pytest.raises(UnreadableInput) as error:
        parse_job(content)
    assert words in str(error.value)
    assert "\n" not in str(error.value)
    assert len(str(error.value)) < 500


def test_hostile_text_comes_through_plainly() -> None:
    words = "\ud800 \u202e =cmd() \0 </script>"
    job, _ = parse_job(_document(note=words, proof={words: words}, listings=[{"text": words}]))
    plain = words.replace("\ud800", "\ufffd")
    assert job.note == job.listings[0].text == plain
    assert job.proof == {plain: plain}
    assert parse_job(dump_job(job, {}))[0] == job


def test_a_refused_file_names_itself_and_changes_nothing(store: Store, path: Path) -> None:
    bad = path.with_name("bad.json")
    bad.write_bytes(b"{}")
    with pytest.raises(UnreadableInput, match=r"bad\.json: this is no job"):
        store.import_job(bad)
    with pytest.raises(UnreadableInput, match="no such file"):
        store.import_job(path.with_name("none.json"))
    assert store.jobs() == ()


def test_the_file_says_what_it_is(job: Job) -> None:
    document = json.loads(dump_job(job, {DIGEST: PICTURE}))
    assert set(document) == {"samespin_job", "written_by", "job", "files"}
    assert base64.b64decode(document["files"][DIGEST]) == PICTURE
    assert document["job"]["given"]["part_number"]["value"] == "TRK-88120"
    assert "brand" in document["job"]["listings"][0]["reading"]["facts"]
    assert "frame" not in document["job"]["listings"][0]["reading"]["facts"]
