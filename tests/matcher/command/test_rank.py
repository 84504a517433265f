"""`samespin rank` as it is called: several old motors, the plan, a trader's lots, changed figures, faults."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from plates import PLATE

from matcher.command import samespin
from matcher.errors import SamespinError


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    put("old.json", {"motor": PLATE})
    put("second.json", {"id": "second", "motor": PLATE | {"turn": "ccw"}, "pays": 300})
    put("third.json", {"id": "third", "motor": PLATE, "pays": 200})
    terms = {"price": 60, "shipping": 0, "condition": "used", "currency": "USD"}
    offers = [
        {"id": "good", "facts": PLATE | terms},
        {"id": "open", "facts": {k: v for k, v in PLATE.items() if k != "turn"} | terms | {"price": 20}},
        {"id": "back", "facts": PLATE | terms | {"turn": "ccw", "price": 30}},
        {"id": "euro", "facts": PLATE | terms | {"currency": "EUR"}},
    ]
    Path("offers.jsonl").write_text("".join(json.dumps(one) + "\n" for one in offers))
    return tmp_path


def put(name: str, content: object) -> None:
    Path(name).write_text(json.dumps(content))


def rank(*words: str) -> Result:
    return CliRunner().invoke(samespin, ["rank", *words, "offers.jsonl"])


def rows(result: Result) -> list[dict[str, object]]:
    assert result.exit_code == 0, result.output
    return [json.loads(line) for line in result.stdout.splitlines()]


@pytest.mark.usefixtures("folder")
def test_one_old_motor_names_no_old_id() -> None:
    found = rows(rank("--old", "old.json", "--json"))
    assert [row["id"] for row in found] == ["good", "euro", "open", "back"]
    assert all("old_id" not in row for row in found)


@pytest.mark.usefixtures("folder")
def test_several_old_motors_rank_pairs_by_the_files_ids_or_names() -> None:
    found = rows(rank("--old", "old.json", "--old", "second.json", "--json"))
    assert len(found) == 8
    assert [(row["old_id"], row["id"]) for row in found[:3]] == [
        ("second", "back"),
        ("old.json", "good"),
        ("old.json", "euro"),
    ]


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("top", [1, 3, 20])
def test_the_best_of_several_are_the_first_of_all(top: int) -> None:
    olds = ("--old", "old.json", "--old", "second.json", "--json")
    assert rows(rank(*olds, "--top", str(top))) == rows(rank(*olds))[:top]


@pytest.mark.usefixtures("folder")
def test_the_fallback_adds_the_plan() -> None:
    result = rank("--old", "old.json", "--fallback", "1180")
    assert result.exit_code == 0
    assert "Try open (ask first), then good; if both fail, pay the quote." in result.stdout
    assert "ask about open (worth " in result.stdout
    assert "left out: euro. Its price is in EUR" in result.stdout


@pytest.mark.usefixtures("folder")
def test_the_plan_alone_is_one_object() -> None:
    (plan,) = rows(rank("--old", "old.json", "--fallback", "1180", "--plan", "--json"))
    assert [step["id"] for step in plan["steps"]] == ["open", "good"]
    assert plan["fallback"] == {"price": 1180, "currency": "USD", "what": "quote"}
    # 0.5 x 0.75 of the first, then 0.75 of the second.
    assert plan["chance_of_fallback"] == pytest.approx(0.625 * 0.25, abs=1e-4)
    assert plan["questions"][0]["id"] == "open"


@pytest.mark.usefixtures("folder")
def test_json_lines_stay_one_for_each_candidate() -> None:
    assert len(rows(rank("--old", "old.json", "--fallback", "1180", "--json"))) == 4


@pytest.mark.usefixtures("folder")
def test_a_traders_lots() -> None:
    found = rows(rank("--old", "third.json", "--old", "second.json", "--margin", "--json"))
    assert [(row["old_id"], row["id"]) for row in found] == [("second", "back"), ("third", "good")]
    assert [row["margin"] for row in found] == [
        pytest.approx(0.75 * 270 - 0.25 * 30),
        pytest.approx(0.75 * 140 - 0.25 * 60),
    ]
    lines = rank("--old", "third.json", "--old", "second.json", "--old", "old.json", "--margin").stdout
    assert "third: buy good (fits, chance 75%), landed 60.00 USD; its owner pays 200.00; earns 90.00" in lines
    assert "old.json: no lot. What its owner would pay isn't said" in lines
    assert "Together 285.00 USD on average." in lines


@pytest.mark.usefixtures("folder")
def test_how_far_figures_may_move() -> None:
    result = rank("--old", "old.json", "--fallback", "900", "--sensitivity")
    assert result.exit_code == 0
    # With half the chance of a right turn, `open` costs 20 / (p x 0.75) for each success; `good` costs 80.
    assert "chance rotation, now 0.5: below 0.3333 the first three steps of the plan change" in result.stdout
    assert "weight power, now 20: the first three of the ranking stay whatever it is" in result.stdout
    (rooms,) = rows(rank("--old", "old.json", "--fallback", "900", "--sensitivity", "--json"))
    assert {room["group"] for room in rooms} == {"weights", "priors", "condition_chances"}


@pytest.mark.usefixtures("folder")
def test_changed_figures_change_the_answers() -> None:
    Path("mine.toml").write_text("[condition_chances]\nused = 0.5\n[exchange]\nEUR = 1.1\n")
    found = rows(rank("--old", "old.json", "--settings", "mine.toml", "--json"))
    assert found[0]["fit_chance"] == 0.5
    (plan,) = rows(
        rank("--old", "old.json", "--settings", "mine.toml", "--fallback", "900", "--plan", "--json")
    )
    assert [step["landed"] for step in plan["steps"]] == [20, 60, 66]


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize(
    "words",
    [
        ("--plan",),
        ("--old", "second.json", "--fallback", "5"),
        ("--fallback", "5", "--margin"),
        ("--sensitivity", "--margin"),
        ("--fallback", "-5"),
        ("--top", "0"),
    ],
)
def test_what_can_not_be_had_together_is_wrong_usage(words: tuple[str, ...]) -> None:
    assert rank("--old", "old.json", *words).exit_code == 2


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize(
    ("words", "line"),
    [
        (("--margin",), "write pays = 240"),
        (("--explain", "nothing"), "no listing has the id 'nothing'"),
        (("--fallback", "5", "--currency", "dollars"), "is no currency; write its three letters"),
        (("--fallback", "nan"), "the fallback: nan is no price"),
        (("--settings", "none.toml"), "none.toml: it can't be read"),
    ],
)
def test_faults_are_one_line(words: tuple[str, ...], line: str) -> None:
    fault = rank("--old", "old.json", *words).exception
    assert isinstance(fault, SamespinError)
    assert line in str(fault)
    assert "\n" not in str(fault)


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("pays", [-1, "much", True])
def test_what_an_owner_pays_must_be_a_sum(pays: object) -> None:
    put("bad.json", {"motor": PLATE, "pays": pays})
    fault = rank("--old", "bad.json").exception
    assert isinstance(fault, SamespinError)
    assert str(fault).startswith("bad.json: pays must be a sum of US dollars, 0 or more")


@pytest.mark.usefixtures("folder")
def test_a_negative_price_costs_its_own_record_only() -> None:
    with Path("offers.jsonl").open("a") as out:
        out.write(json.dumps({"id": "bad", "facts": PLATE | {"price": -5}}) + "\n")
    result = rank("--old", "old.json", "--json")
    assert result.exit_code == 1
    assert len(result.stdout.splitlines()) == 4
    (line,) = result.stderr.splitlines()
    assert "offers.jsonl, line 5: record bad: price" in line
    assert "it must be at least 0" in line
