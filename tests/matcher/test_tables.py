"""Every row of every table on trial: keys valid and unique, counts and sums pinned."""

from fractions import Fraction
from itertools import product
from typing import get_args

import pytest

from matcher import motor, tables
from matcher.checks import CHECKS
from matcher.errors import TableFault
from matcher.judging.asking import question
from matcher.motor import MOTOR_FIELDS, OFFER_FIELDS, SITE_FIELDS
from matcher.trade.frames import Kinship, kinship, slot_loss
from matcher.trade.rated import ratings
from matcher.trade.supply import system
from matcher.trade.swaps import moved, torque_place

# table, key columns, rows, summed column, sum
TABLES = [
    ("systems", ("hertz", "called"), 21, "nominal", 6580),
    ("sixty_hertz_ratings", ("rating",), 14, None, 0),
    ("ratings", ("said",), 21, "hp", 92.625),
    ("starting_torque", ("motor_type",), 4, "place", 10),
    ("mounting", ("old", "new"), 49, "loss", 2.6),
    ("frame_pairs", ("one", "other"), 2, "base_loss", 0.6),
    ("drive", ("old", "new"), 25, "loss", 0.5),
    ("module", ("comes", "numbers", "health", "motor_health"), 18, "loss", 8.1),
    ("weights", ("check",), 21, "weight", 186),
    ("priors", ("name",), 13, "chance", 8.12),
    ("conditions", ("condition",), 7, "chance", 5.35),
    ("swap_costs", ("name",), 8, "price", 295),
    ("looks_alike", ("characters",), 6, None, 0),
    ("placeholders", ("written",), 14, None, 0),
    ("questions", ("key",), 88, None, 0),
    ("seller_words", ("words", "means"), 47, None, 0),
    ("frames", ("frame",), 9, "u", 6.625),
    ("faces", ("frame",), 7, "aj", 39.625),
    ("iec_frames", ("frame",), 6, "d", 101),
    ("full_load_amps", ("phase", "hp", "volts"), 98, "amps", 1422.0),
    ("efficiencies", ("motor_type", "poles", "hp"), 42, "percent", 3255.8),
    ("service_factors", ("hp", "rpm"), 40, "factor", 52.1),
    ("unbalance", ("percent",), 10, "factor", 8.95),
]


@pytest.mark.parametrize(("name", "keys", "count", "column", "total"), TABLES, ids=str)
def test_each_table(name: str, keys: tuple[str, ...], count: int, column: str | None, total: float) -> None:
    rows = tables.rows(name)
    assert len(rows) == count
    assert len({tuple(row[key] for key in keys) for row in rows}) == count
    assert all(row["source"] for row in rows)
    assert any("ource" in line for line in tables.head(name)), "the head must name the source"
    if column:
        assert sum(float(row[column]) for row in rows) == pytest.approx(total, abs=1e-6)


def test_systems_bands_hold_their_nominal() -> None:
    for row in tables.rows("systems"):
        found = system(float(row["called"]), float(row["hertz"]))
        assert (found.nominal, found.low, found.high) == tuple(
            float(row[name]) for name in ("nominal", "low", "high")
        )
        assert found.low < found.nominal < found.high


def test_power_steps_ascend_and_equal_what_is_said() -> None:
    steps = [float(row["hp"]) for row in tables.rows("ratings")]
    assert steps == sorted(steps)
    for row in tables.rows("ratings"):
        said = sum(Fraction(part) for part in row["said"].split("-"))
        assert float(row["hp"]) == pytest.approx(float(said), abs=1e-9)


def test_sixty_hertz_ratings_are_ratings() -> None:
    assert all(len(ratings(row["rating"])) == 1 for row in tables.rows("sixty_hertz_ratings"))


def test_tables_are_complete() -> None:
    kinds = get_args(motor.Mounting)
    assert {(row["old"], row["new"]) for row in tables.rows("mounting")} == set(product(kinds, kinds))
    groups = ("line", "ecm_torque", "ecm_airflow", "ecm", "polyphase")
    assert {(row["old"], row["new"]) for row in tables.rows("drive")} == set(product(groups, groups))
    comes = (*get_args(motor.ModuleSupply), "not_said")
    health = get_args(motor.Health)
    for key in product(comes, ("equal", "differ", "not_said"), health, health):
        assert moved(*key).outcome in ("same", "loss", "unknown")
    typed = {row["motor_type"] for row in tables.rows("starting_torque")}
    assert {kind for kind in get_args(motor.MotorType) if torque_place(kind)} == typed
    conditions = {row["condition"] for row in tables.rows("conditions")}
    assert conditions == {*get_args(motor.Condition), "not_said"}


@pytest.mark.parametrize("name", ["mounting", "drive", "module"])
def test_a_loss_is_a_loss_and_nothing_else_is(name: str) -> None:
    for row in tables.rows(name):
        assert (row["outcome"] == "loss") == (float(row["loss"]) > 0)
        assert 0 <= float(row["loss"]) <= 1


def test_what_checks_need_has_a_price() -> None:
    prices = {row["name"] for row in tables.rows("swap_costs")}
    needs = {row["needs"] for row in tables.rows("mounting")} - {"-"}
    assert needs | {"capacitor", "harness", "band_kit", "module", "shipping_not_said", "way_back"} <= prices
    assert {row["when"] for row in tables.rows("swap_costs")} == {"yes", "wise", "no"}


def test_priors_are_of_checks() -> None:
    names = {row["name"] for row in tables.rows("priors")}
    asking = {check.name for check in CHECKS if check.hard or check.asks} | {"module"}
    assert names == asking | {"same_maker_and_number"}


def test_every_question_is_about_a_fact() -> None:
    for row in tables.rows("questions"):
        side, _, name = row["key"].rpartition(".")
        fields = {"": (*OFFER_FIELDS, "plate_photo"), "old": MOTOR_FIELDS, "site": SITE_FIELDS}[side]
        assert name in fields, row["key"]
        assert row["whom"] == ("home" if side else "seller")
        assert row["question"].endswith(("?", "."))
        assert row["unread"] in ("", "-") or row["unread"].endswith("?")
        assert not (side and row["unread"])


def test_every_fact_that_a_check_reads_can_be_asked() -> None:
    for check in CHECKS:
        for name in check.reads.old:
            assert question(f"old.{name}", check.name).whom == "home"
        for name in check.reads.new:
            assert question(name, check.name).whom == "seller"


def test_frame_pairs() -> None:
    assert kinship("143T", "145TC") is Kinship.KIN
    assert slot_loss("145", "143T") == 0.3
    assert kinship("Y48", "48") is Kinship.MISSING
    assert kinship(" iec 71", "IEC71") is Kinship.EQUAL_IEC


@pytest.mark.parametrize(
    ("text", "words"), [("a\tb\n1\n", "t.tsv, line 2: 1 cells"), ("# x\na\tb\n1\t2\t3\n", "line 3: 3 cells")]
)
def test_a_broken_row_is_named(text: str, words: str) -> None:
    with pytest.raises(TableFault, match=words):
        tables.parse(text, "t.tsv")


def test_a_missing_table_and_a_key_that_stands_twice() -> None:
    with pytest.raises(TableFault, match="no_such"):
        tables.rows("no_such")
    with pytest.raises(TableFault, match="stands there twice"):
        tables.frozen([("a", 1), ("a", 2)], "t")
    with pytest.raises(TableFault, match="t.tsv: no row for b; add one"):
        tables.complete({"a": 1}, ["a", "b"], "t")
    with pytest.raises(TableFault, match="no_such"):
        tables.head("no_such")


def test_a_cell_that_is_no_number_is_named_with_its_line() -> None:
    (row,) = tables.parse("# head\na\tb\tc\ny\t1.5\t\n", "t.tsv")
    assert tables.number(row, "b") == 1.5
    assert tables.number(row, "c", empty=0) == 0
    for column in ("a", "c", "d"):
        with pytest.raises(TableFault, match=f"t.tsv, line 3: {column} must be a number"):
            tables.number(row, column)


def test_a_table_reads_past_its_head_and_empty_lines() -> None:
    assert [dict(row) for row in tables.parse("# head\n\na\tb\n1\t2\n", "t")] == [{"a": "1", "b": "2"}]
