"""Files that no honest seller saves, through `samespin read`: a clear line for each, and never a traceback."""

import json
import random
import zipfile
from io import BytesIO
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from matcher.command.read import command

TABLE = "Brand,Model,HP,Volts,Price\nKeldwyn,KX-1,1/2,115,$40\n"
PAGE = "<html><body><h1>Keldwyn KX-1 motor, 115 V</h1><p>$40</p></body></html>"
_NEST = b"".join(b'<!ENTITY e%d "%s">' % (n, b"&e%d;" % (n - 1) * 10) for n in range(1, 12))


def zipped() -> bytes:
    held = BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        archive.writestr("motors.csv", TABLE)
    return held.getvalue()


def read(path: Path) -> Result:
    result = CliRunner().invoke(command, [str(path), "--json"])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("empty.html", b"", "it is empty"),
        ("empty.csv", b"", "it is empty"),
        ("blank.txt", b" \n\t\n", "it is empty"),
        ("noise.html", random.Random(1).randbytes(50_000), "binary data"),
        ("noise.csv", random.Random(2).randbytes(50_000), "binary data"),
        ("noise.txt", random.Random(3).randbytes(50_000), "binary data"),
        ("archive.csv", zipped(), "zip archive"),
        ("archive.html", zipped(), "zip archive"),
        ("paper.csv", b"%PDF-1.7\n1 0 obj", "it is a PDF"),
        ("digits.html", b"<html><body>" + b"1234567890" * 50_000, "nothing for sale"),
        ("signs.html", b"<" * 200_000, "nothing for sale"),
        ("bomb.html", b"<!DOCTYPE x [" + _NEST + b"]><p>" + b"&e11;" * 999, "nothing for sale"),
        ("line.csv", b"brand,model,hp,volts\n" + b"x" * 2_000_000, "longer than any row"),
        ("name\n\x1b[31m.csv", b"brand,hp,volts\na,1/2,115,x\n", "more filled cells"),
    ],
)
def test_what_cannot_be_read_is_said_in_one_line(tmp_path: Path, name: str, data: bytes, said: str) -> None:
    (tmp_path / name).write_bytes(data)
    result = read(tmp_path / name)
    assert result.exit_code == 1
    assert result.stdout == ""
    (line,) = result.stderr.splitlines()
    assert said in line
    assert line.isprintable()


@pytest.mark.parametrize(
    ("name", "said"), [("missing.html", "no such file"), ("folder.csv", "is a directory")]
)
def test_what_is_not_there_is_said_in_one_line(tmp_path: Path, name: str, said: str) -> None:
    (tmp_path / "folder.csv").mkdir()
    result = read(tmp_path / name)
    assert (result.exit_code, result.stdout) == (1, "")
    assert said in result.stderr
    assert result.stderr.count("\n") == 1


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("le.csv", TABLE.encode("utf-16-le")),
        ("be.csv", TABLE.encode("utf-16-be")),
        ("wide.csv", TABLE.encode("utf-32")),
        ("le.html", PAGE.encode("utf-16-le")),
        ("rtl.csv", TABLE.replace("115", "\u200f115\u200e").replace("$40", "\u2066$40\u2069").encode()),
        ("rtl.html", PAGE.replace("115 V", "\u200f115 V\u200e").encode()),
        ("surrogates.html", PAGE.replace(" motor", " motor \ud800").encode("utf-8", "surrogatepass")),
        ("deep.html", b"<div>" * 20_000 + PAGE.encode()),
        ("unclosed.html", b"<table><tr><td>" * 5_000 + PAGE.encode()),
        ("data.html", b'<script type="application/ld+json">' + b"[" * 100_000 + b"</script>" + PAGE.encode()),
    ],
)
def test_odd_dress_hides_no_facts(tmp_path: Path, name: str, data: bytes) -> None:
    (tmp_path / name).write_bytes(data)
    result = read(tmp_path / name)
    assert (result.exit_code, result.stderr) == (0, "")
    (line,) = result.stdout.splitlines()
    facts = json.loads(line)["facts"]
    due = {"brand": "Keldwyn", "part_number": "KX-1", "volts": "115", "price": 40.0, "currency": "USD"}
    assert due.items() <= facts.items()


def test_figures_beyond_any_motor_give_nothing(tmp_path: Path) -> None:
    offer = '{"@type": "Offer", "price": 1e999, "priceCurrency": "USD"}'
    figures = ", ".join(
        f'{{"name": "{name}", "value": {value}}}'
        for name, value in [
            ("Volts", "NaN"),
            ("Amps", "-5"),
            ("RPM", "1e300"),
            ("HP", "1e308"),
            ("Phase", "true"),
        ]
    )
    product = f'{{"@type": "Product", "name": "Keldwyn KX-1 motor", "offers": {offer}, '
    page = f'<script type="application/ld+json">{product}"additionalProperty": [{figures}]}}</script>'
    (tmp_path / "page.html").write_text(page)
    (line,) = read(tmp_path / "page.html").stdout.splitlines()
    assert json.loads(line)["facts"] == {"brand": "Keldwyn", "part_number": "KX-1"}
