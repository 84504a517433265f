"""The commands for the rest of the job: what they print, and how they end."""

import io
import json
from pathlib import Path

import pytest

from matcher.command import main

LISTING = {
    "id": "a",
    "title": "Ossenby OB-5107 1/2 HP 208-230V 1075 RPM",
    "text": "CCWLE, shaft 1/2 x 5 in flat, 5-5/8 in diameter, belly band, PSC 7.5 MFD 370 VAC. "
    "$55 + $12 shipping, 30 day returns, buyer pays return shipping.",
}


@pytest.fixture
def old(tmp_path: Path) -> str:
    path = tmp_path / "old.toml"
    path.write_text(
        '[motor]\nbrand = "Velmarrow"\npower_hp = 0.5\nvolts = "208-230"\nturn = "ccw"\nseen_from = "lead_end"\n'
        'shaft_diameter_in = 0.5\nmounting = ["band"]\nmotor_type = "psc"\nrpm = [1075]\n[site]\nsupply_volts = 230\n',
        encoding="utf-8",
    )
    return str(path)


@pytest.fixture
def ecm(tmp_path: Path) -> str:
    path = tmp_path / "ecm.json"
    path.write_text(
        '{"motor": {"motor_type": "ecm_airflow"}, "site": {"supply_volts": 240}}', encoding="utf-8"
    )
    return str(path)


@pytest.fixture
def new(tmp_path: Path) -> str:
    path = tmp_path / "new.jsonl"
    path.write_text(json.dumps(LISTING) + "\n", encoding="utf-8")
    return str(path)


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]):  # type: ignore[no-untyped-def]
    def call(*words: str) -> tuple[int, str, str]:
        with pytest.raises(SystemExit) as end:
            main(list(words))
        out, err = capsys.readouterr()
        return int(end.value.code or 0), out, err

    return call


def test_triage_names_the_part_and_changes_the_site(run, ecm: str) -> None:  # type: ignore[no-untyped-def]
    status, out, _ = run("triage", "--old", ecm, "ran_until_now=yes", "grinds=yes", "--json")
    found = json.loads(out)
    assert status == 0
    assert (found["part"], found["site"]["module_health"]) == ("motor", "good")
    assert found["site"]["supply_volts"] == 240


@pytest.mark.parametrize(
    "words",
    [
        ("rank", "--old", "-", "NEW", "--json"),
        ("triage", "--old", "-", "grinds=yes", "--json"),
        ("arrival", "--old", "-", "--new", "NEW", "--json"),
        ("sheet", "--old", "-", "--new", "NEW", "--json"),
        ("airflow", "proof", "--old", "-", "tons=3", "--json"),
    ],
    ids=lambda words: " ".join(words[:2]),
)
def test_the_old_motor_may_come_from_standard_input(  # type: ignore[no-untyped-def]
    run, old: str, new: str, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    words = tuple(new if word == "NEW" else word for word in words)
    expected = run(*(old if word == "-" else word for word in words))
    assert expected[0] == 0
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(Path(old).read_bytes())))
    assert run(*words) == expected


@pytest.mark.parametrize(
    "words",
    [
        ("rank", "--old", "-", "-"),
        ("arrival", "--old", "-", "--new", "-"),
        ("sheet", "--old", "-", "--new", "-"),
        ("airflow", "proof", "--old", "-", "--new", "-"),
    ],
    ids=lambda words: words[0],
)
def test_standard_input_serves_one_place(run, words: tuple[str, ...]) -> None:  # type: ignore[no-untyped-def]
    status, out, message = run(*words)
    assert (status, out) == (2, "")
    assert "only one of them" in message


def test_triage_asks_the_next_test(run) -> None:  # type: ignore[no-untyped-def]
    status, out, _ = run("triage", "--ecm", "ran_until_now=no")
    assert status == 0
    assert "next test: Does anything block" in out


def test_triage_lists_its_tests(run) -> None:  # type: ignore[no-untyped-def]
    _, out, _ = run("triage", "--tests", "--json")
    tests = [json.loads(line) for line in out.splitlines()]
    assert [test["live"] for test in tests] == sorted(test["live"] for test in tests)


@pytest.mark.parametrize(
    ("words", "status", "message"),
    [
        (("triage", "grinds"), 1, "write it as name=value, such as grinds=yes"),
        (("triage", "grinds=loud"), 1, "choose no, yes or skip"),
        (("triage", "--tolerance", "80"), 2, "tolerance"),
        (("airflow", "heat", "--rise", "0", "--watts", "9600"), 1, "heat rise: 0 F can't be"),
        (("airflow", "heat", "--rise=-4", "--watts", "9600"), 1, "heat rise: -4 F can't be"),
        (("airflow", "heat", "--rise", "20"), 2, "give --watts"),
        (("airflow", "static", "--supply", "40", "--return", "0"), 1, "40 in. w.c. can't be"),
        (("airflow", "fan", "--rpm", "0", "--to", "5", "--cfm", "5"), 1, "the speed: 0 rpm can't be"),
        (("airflow", "proof", "rise=3"), 1, "'rise' is no entry"),
    ],
)
def test_what_is_wrong_is_told_in_one_line(  # type: ignore[no-untyped-def]
    run, words: tuple[str, ...], status: int, message: str
) -> None:
    ended, _, err = run(*words)
    assert ended == status
    assert message in err
    assert "Traceback" not in err


def test_airflow_from_heat_at_altitude(run) -> None:  # type: ignore[no-untyped-def]
    _, out, _ = run("airflow", "heat", "--watts", "9600", "--rise", "25", "--altitude", "5000", "--json")
    assert json.loads(out)["cfm"] == pytest.approx(9600 * 3.412 / (1.08 * 25 * 0.832), rel=1e-3)


def test_fan_laws_for_several_speeds(run) -> None:  # type: ignore[no-untyped-def]
    words = ("--rpm", "1075", "--to", "825", "--to", "1200", "--cfm", "1000", "--static", "0.5", "--json")
    _, out, _ = run("airflow", "fan", *words)
    first, second = (json.loads(line) for line in out.splitlines())
    assert (first["cfm"], first["static_in_wc"]) == (767.4, 0.2945)
    assert second["rpm"] == 1200


def test_a_proof_run_does_what_can_be_done(run, old: str) -> None:  # type: ignore[no-untyped-def]
    status, out, err = run("airflow", "proof", "--old", old, "unit_cfm=1180", "tons=3", "rise_f=-2", "--json")
    found = json.loads(out)
    assert (status, found["outcome"], found["cfm"]) == (1, "good", 1180)
    assert "Heat rise: -2 F can't be" in err


def test_arrival_judges_again_and_writes_the_note(run, old: str, new: str) -> None:  # type: ignore[no-untyped-def]
    dates = ("--bought", "2030-04-01", "--delivered", "2030-04-08", "--today", "2030-04-20")
    status, out, _ = run("arrival", "--old", old, "--new", new, *dates, "shaft_diameter_in=5/8", "--json")
    found = json.loads(out)
    assert status == 0
    assert (found["send_by"], found["days_left"]) == ("2030-05-03", 13)
    assert (found["advice"], found["verdict"]) == ("send_back", "wont_fit")
    assert found["differs"][0]["measured"] == "5/8 in"
    assert found["differs"][0]["said"] in LISTING["text"]
    assert "it measures 5/8 in" in found["note"]


def test_arrival_without_a_delivery_sends_nothing_back(run, old: str, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    thick = tmp_path / "thick.jsonl"
    text = LISTING["text"].replace("shaft 1/2", "shaft 5/8")
    thick.write_text(json.dumps(LISTING | {"text": text}) + "\n", encoding="utf-8")
    _, out, _ = run("arrival", "--old", old, "--new", str(thick))
    assert "Not delivered yet" in out
    assert "Cancel it if you still can." in out
    assert "Send it back" not in out


def test_arrival_names_what_cannot_be(run, old: str, new: str) -> None:  # type: ignore[no-untyped-def]
    status, out, err = run(
        *("arrival", "--old", old, "--new", new, "--today", "2030-05-01"),
        *("--bought", "2030-04-09", "--delivered", "2030-04-08"),
    )
    assert status == 1
    assert "before the purchase" in err
    assert "To measure" in out


@pytest.mark.parametrize(
    ("word", "says"),
    [
        ("shaft_diameter_in=abc", "shaft_diameter_in: 'abc' is no number"),
        ("shaft_flats=7", "shaft_flats: '7' can't be right"),
        ("shaft=1", "'shaft' is no fact of a motor"),
    ],
)
def test_arrival_names_the_fact_that_was_measured_wrong(  # type: ignore[no-untyped-def]
    run, old: str, new: str, word: str, says: str
) -> None:
    status, _, err = run("arrival", "--old", old, "--new", new, word)
    assert status == 1
    assert err.count(word.partition("=")[0]) == 1
    assert says in err


def test_arrival_takes_the_listing_from_standard_input(  # type: ignore[no-untyped-def]
    run, old: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    stream = io.TextIOWrapper(io.BytesIO(json.dumps(LISTING).encode()), encoding="utf-8")
    monkeypatch.setattr("sys.stdin", stream)
    status, out, _ = run("arrival", "--old", old, "--new", "-", "--note", "--bad", "spins")
    assert status == 0
    assert "does not turn freely by hand" in out


@pytest.mark.parametrize("name", ["wheel", "bearing"])
def test_arrival_knows_what_can_be_bad(run, old: str, new: str, name: str) -> None:  # type: ignore[no-untyped-def]
    status, _, err = run("arrival", "--old", old, "--new", new, "--bad", name)
    assert status == 1
    assert "choose parcel, numbers, spins" in err


def test_a_sheet_as_text_page_and_json(run, old: str, new: str) -> None:  # type: ignore[no-untyped-def]
    _, text, _ = run("sheet", "--old", old, "--new", new)
    _, page, _ = run("sheet", "--old", old, "--new", new, "--html")
    _, line, _ = run("sheet", "--old", old, "--new", new, "--json")
    assert "Lock" in text or "lock out" in text
    assert page.startswith("<!doctype html>")
    assert json.loads(line)["title"].startswith("Swap sheet")


def test_several_listings_want_an_id(run, old: str, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    several = tmp_path / "several.jsonl"
    several.write_text("".join(json.dumps(LISTING | {"id": name}) + "\n" for name in "abc"), encoding="utf-8")
    status, _, err = run("sheet", "--old", old, "--new", str(several))
    assert (status, "3 listings in it; choose one with --id" in err) == (1, True)
    status, out, _ = run("sheet", "--old", old, "--new", str(several), "--id", "b")
    assert (status, out.startswith("Swap sheet")) == (0, True)
    status, _, err = run("sheet", "--old", old, "--new", str(several), "--id", "z")
    assert (status, "no listing has the id 'z'; the ids are a, b, c" in err) == (1, True)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            ("triage", "windings_ohm=2.1 2.1 9.2"),
            "windings_ohm: left out; it is for a motor with an electronic",
        ),
        (("triage", "windings_ohm=2.1 x 2.2"), "windings_ohm: left out"),
        (("triage", "--ecm", "windings_ohm=2.1 x 2.2"), "windings_ohm"),
        (("triage", "--ecm", "capacitor_uf=6"), "capacitor_uf: left out; it is for an ordinary motor"),
        (("triage", "grinds=yes", "grinds=no"), "grinds is given twice, as yes and as no"),
        (("airflow", "proof"), "nothing was entered; an airflow needs rise_f with heater_watts"),
        (("airflow", "proof", "rise_f=25"), "nothing follows from rise_f alone"),
        (("airflow", "proof", "tons=3", "tons=4"), "tons is given twice"),
    ],
)
def test_no_entry_is_passed_over_in_silence(run, words: tuple[str, ...], told: str) -> None:  # type: ignore[no-untyped-def]
    status, _, err = run(*words)
    assert status == 1
    assert told in err
    assert len(err.splitlines()) == 1


def test_a_test_given_twice_alike_is_one(run) -> None:  # type: ignore[no-untyped-def]
    assert run("triage", "grinds=yes", "grinds=yes")[0] == 0


def test_a_sheet_is_a_page_or_a_line(run, old: str, new: str) -> None:  # type: ignore[no-untyped-def]
    status, _, err = run("sheet", "--old", old, "--new", new, "--html", "--json")
    assert status == 2
    assert "not both" in err


def test_a_list_is_no_motor_and_no_toml(run, new: str, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    (tmp_path / "list.json").write_text("[]", encoding="utf-8")
    _, _, err = run("sheet", "--old", str(tmp_path / "list.json"), "--new", new)
    assert "list.json: it is no object" in err
