"""Whole models compared with plain data."""

import pytest
from PySide6.QtCore import QAbstractItemModel, QModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester

from matcher.job import Fallback, Job, Listing
from matcher.record import Origin
from ui.answers import Answers, answer
from ui.lot import Lot, LotRow
from ui.lot_out import lines
from ui.models.facts import IS_CONFLICT, ORIGIN, VALUE, Facts
from ui.models.figures import FIGURE, Figures
from ui.models.lot_columns import CHANCE, LANDED, MARK, QUANTITY, RANGE, RETURNS, sorted_rows
from ui.models.lot_table import LotTable
from ui.models.pile import PRICE, STATE, VERDICT, Pile
from ui.models.questions import Questions
from ui.models.side import OUTCOME, Side
from ui.units import Units

PLATE = "Velmarrow VM-1 1/2 HP 208-230V 60HZ 1PH 1075 RPM 3.4A CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia"
GOOD = PLATE.replace("VM-1", "VM-9") + " used $50 shipping $10"
BARE = "Fan motor 1/2 HP 208-230V 60Hz 1ph 1075 rpm CW belly band 1/2 shaft PSC $30 free shipping"
TWICE = "1/2 HP 1075 RPM 208-230V 1PH 60HZ CCWLE. Rotation: CWLE. belly band 1/2 in shaft PSC $20"


def listing(text: str, name: str) -> Listing:
    return Listing(text=text, title=name)


@pytest.fixture
def answers() -> Answers:
    job = Job(
        plate_text=PLATE,
        listings=(listing(TWICE, "twice"), listing(GOOD, "good"), listing(BARE, "bare")),
        fallback=Fallback(price=400.0),
    )
    return answer(lambda _share: None, job)


def plain(model: QAbstractItemModel, role: int = Qt.ItemDataRole.DisplayRole) -> list[list[object]]:
    rows, columns = model.rowCount(), model.columnCount(QModelIndex())
    return [[model.index(row, column).data(role) for column in range(columns)] for row in range(rows)]


def watched(model: QAbstractItemModel) -> QAbstractItemModelTester:
    return QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Warning)


def test_the_pile_says_name_verdict_price_and_conflicts(qapp, answers):
    pile = Pile()
    tester = watched(pile)
    pile.show_job(answers.job)
    assert [pile.index(row).data(VERDICT) for row in range(3)] == ["waiting"] * 3
    pile.show_answers(answers)
    roles = (Qt.ItemDataRole.DisplayRole, VERDICT, STATE, PRICE)
    told = [tuple(pile.index(r).data(role) for role in roles) for r in range(3)]
    assert told == [
        ("twice", "ask", "Ask first · 1 conflict", "20.00 USD"),
        ("good", "fits", "Fits", "50.00 USD"),
        ("bare", "ask", "Ask first", "30.00 USD"),
    ]
    del tester


def test_the_comparison_has_the_old_motor_first_and_the_best_beside_it(qapp, answers):
    side = Side()
    tester = watched(side)
    side.show_answers(answers, answers.best_first)
    heads = [side.headerData(column, Qt.Orientation.Horizontal) for column in range(4)]
    assert heads[:2] == ["Old motor", "good"]
    labels = [row.label for row in side.rows if row.kind == "head"]
    assert labels == ["Must match", "Costs points", "Money"]
    rotation = next(at for at, row in enumerate(side.rows) if row.key == "rotation")
    assert side.index(rotation, 1).data(OUTCOME) == "same"
    assert {side.index(rotation, column).data(OUTCOME) for column in (2, 3)} == {"unknown"}
    told = {line[0]: line[2:] for line in side.plain()}
    assert told["Verdict"][0] == "Fits"
    assert all(told["Score"])
    assert all(told["Why"])
    assert "not known (not known)" not in {cell for line in side.plain() for cell in line}
    landed = next(line for line in side.plain() if line[0] == "Landed cost")
    assert landed[2] == "60.00 USD"
    lost, shipping = (
        next(line for line in side.plain() if line[0] == name) for name in ("Lost if it fails", "Shipping")
    )
    for place, words in enumerate(shipping[2:], 2):
        presumed = words.endswith("presumed")
        assert landed[place].startswith("~") is lost[place].startswith("~") is presumed
    assert any(words.endswith("presumed") for words in shipping)
    del tester


def test_only_differences_folds_what_all_share(qapp, answers):
    side = Side()
    side.only_differences = True
    side.show_answers(answers, answers.best_first)
    keys = {row.key for row in side.rows if row.kind == "check"}
    assert "rotation" in keys
    assert "phase" not in keys


def test_facts_come_with_conflicts_first_and_their_origin(qapp, answers):
    facts = Facts(Units())
    tester = watched(facts)
    record = next(one for one in answers.records.values() if one.title == "twice")
    facts.show_record(record)
    assert facts.rows[0] == "turn"
    assert facts.index(0, 0).data(IS_CONFLICT) is True
    power = facts.row_of("power_hp")
    assert [facts.index(power, column).data() for column in range(3)] == ["Power", "1/2 hp", "1/2 HP"]
    assert facts.index(power, VALUE).data(ORIGIN) == "read"
    corrected = answers.job.listings[0].corrected("turn", "cw", origin=Origin.ANSWERED, note="clockwise")
    facts.show_record(corrected.record())
    turn = facts.row_of("turn")
    assert facts.index(turn, VALUE).data(ORIGIN) == "answered"
    assert facts.index(turn, 2).data() == "the seller's answer clockwise"
    del tester


def test_a_corrected_cell_passes_its_text_on_once(qtbot, qapp, answers):
    facts = Facts(Units())
    facts.show_record(next(iter(answers.records.values())))
    index = facts.index(facts.row_of("power_hp"), VALUE)
    entered = []
    facts.entered.connect(lambda *words: entered.append(words))
    facts.setData(index, index.data(Qt.ItemDataRole.EditRole))
    facts.setData(index, "1/3")
    assert entered == [("power_hp", "1/3")]


def test_questions_come_dearest_first(qapp, answers):
    questions = Questions()
    tester = watched(questions)
    questions.show_answers(answers)
    worths = [-1.0 if row.worth is None else row.worth for row in questions.rows]
    assert worths[0] > 0
    assert worths == sorted(worths, reverse=True)  # what has no worth stands last
    assert {row.question.field for row in questions.rows} >= {"seen_from"}
    del tester


def test_figures_show_what_is_changed_beside_what_is_shipped(qapp, answers):
    figures = Figures()
    changed = answers.settings.changed(weights={"power": 7.0})
    figures.show_settings(changed)
    told = next(row for row in plain(figures) if row[0] == "weight of: power")
    assert told[FIGURE:] == ["7", "20"]
    assert all(row[1] == row[2] for row in plain(figures) if row[0] != "weight of: power")


def row(at: int, name: str, verdict: str, landed: float) -> LotRow:
    return LotRow(
        at=at,
        id=f"lot.csv#{at}",
        name=name,
        number="",
        words=name.casefold(),
        price=landed,
        currency="USD",
        shipping=5.0,
        condition="used",
        quantity=1200,
        return_days=30,
        source=f"lot.csv#{at}",
        verdict=verdict,
        low=50.0,
        score=60.0,
        high=70.0,
        landed=landed,
        chance=0.5,
        reason="why",
    )


def test_a_lot_filters_by_words_and_verdict_and_sorts(qapp):
    table = LotTable()
    tester = watched(table)
    rows = [row(0, "Velmarrow", "fits", 90), row(1, "Krellin", "ask", 20), row(2, "Ossenby", "wont_fit", 5)]
    table.show_rows(rows)
    assert plain(table)[0] == [
        *("Fits", "60 (50 to 70)", "90.00 USD", "50%", "Velmarrow"),
        *("used", "90.00 USD", "1,200", "30", "#0 lot.csv", "why"),
    ]
    table.filter("vel")
    assert [one.name for one in table.rows] == ["Velmarrow"]
    table.filter("ask first")
    assert [one.name for one in table.rows] == ["Krellin"]
    table.filter("")
    assert [one.at for one in sorted_rows(rows, LANDED)] == [2, 1, 0]
    assert [one.at for one in sorted_rows(rows, MARK)] == [0, 1, 2]
    del tester


def test_sums_are_sorted_within_their_currency_and_the_own_one_comes_first():
    rows = [
        row(0, "a", "fits", 30)._replace(currency="CAD"),
        row(1, "b", "fits", 22),
        row(2, "c", "fits", 21)._replace(currency="EUR"),
        row(3, "d", "fits", 20),
        row(4, "e", "fits", 0)._replace(landed=None, price=None),
        row(5, "f", "fits", 25)._replace(currency="EUR"),
    ]
    assert [one.at for one in sorted_rows(rows, LANDED, "USD")] == [3, 1, 0, 2, 5, 4]
    assert [one.at for one in sorted_rows(rows, LANDED, "EUR")] == [2, 5, 0, 3, 1, 4]
    assert [one.at for one in sorted_rows(rows, QUANTITY)] == [0, 1, 2, 3, 4, 5]


def test_a_presumed_shipping_cost_is_marked_in_the_landed_one(qapp):
    table = LotTable()
    table.show_rows([row(0, "a", "fits", 30), row(1, "b", "fits", 30)._replace(shipping=None)])
    assert [table.index(at, LANDED).data() for at in (0, 1)] == ["30.00 USD", "~30.00 USD"]
    assert not table.index(0, LANDED).data(Qt.ItemDataRole.ToolTipRole)
    assert "names no shipping" in table.index(1, LANDED).data(Qt.ItemDataRole.ToolTipRole)


def test_the_head_says_by_which_column_a_lot_is_sorted(qapp):
    table = LotTable()
    assert "▲" not in "".join(table.headings())
    table.call_sorted(LANDED, turned=True)
    assert table.headings()[LANDED] == "Landed ▼"


@pytest.mark.parametrize(
    ("column", "turned", "head"),
    [
        (MARK, False, "Verdict ▲"),
        (RANGE, False, "Score ▼"),
        (CHANCE, False, "Chance ▼"),
        (QUANTITY, False, "Qty ▼"),
        (QUANTITY, True, "Qty ▲"),
        (RETURNS, False, "Returns ▼"),
        (LANDED, False, "Landed ▲"),
    ],
)
def test_the_arrow_falls_where_the_largest_figure_stands_first(qapp, column, turned, head):
    table = LotTable()
    table.call_sorted(column, turned=turned)
    assert table.headings()[column] == head


def test_a_lot_says_with_a_fit_how_many_things_are_to_mind(qapp):
    table = LotTable()
    table.show_rows([row(0, "a", "fits", 9)._replace(minds=2), row(1, "b", "fits", 9), row(2, "c", "ask", 9)])
    assert [words[MARK] for words in plain(table)] == ["Fits, mind 2 things", "Fits", "Ask first"]
    assert lines(table.rows)[1][0] == "Fits, mind 2 things"
    table.filter("mind")
    assert [one.name for one in table.rows] == ["a"]
    table.filter("2")  # a figure is looked for in the offers
    assert table.rows == []
    table.filter("fits")
    assert [one.name for one in table.rows] == ["a", "b"]


def test_a_filter_finds_no_verdict_that_is_stale(qapp):
    table = LotTable()
    table.show_rows([row(0, "a", "wont_fit", 9), row(1, "b", "fits", 9)])
    table.filter("won't fit")
    assert [one.name for one in table.rows] == ["a"]
    table.call_stale(True)
    assert table.rows == []
    table.filter("not judged")
    assert [one.name for one in table.rows] == ["a", "b"]
    table.filter("won't fit")
    table.call_stale(False)
    assert [one.name for one in table.rows] == ["a"]


def test_a_lot_ranked_whole_says_what_one_pair_says(answers):
    lot = Lot()
    lot.gather(lambda _share: None, list(answers.records.values()))
    rows = lot.rank(answers.wanted, answers.settings)
    for one in rows:
        weighed = answers.weighed[lot.records[one.at].id]
        assert one.minds == weighed.judgement.minds
        assert (one.verdict, one.landed) == (weighed.judgement.verdict, weighed.landed_cost)
        assert one.reason == weighed.judgement.reason
        assert one.chance == pytest.approx(weighed.fit_chance)


@pytest.mark.parametrize(
    ("scores", "words"),
    [((61.0, 84.0, 97.0), "84 (61 to 97)"), ((100.0, 100.0, 100.0), "100"), ((40.0, None, 90.0), "40 to 90")],
)
def test_a_range_that_is_none_is_said_as_one_figure(scores, words):
    from ui.range_bar import range_words

    assert range_words(*scores) == words


def test_a_chance_says_in_words_what_it_takes_as_given(qapp):
    plate = "Fennadro FD-1 ECM 1/2 HP 120V 60HZ 1PH 1075 RPM CCWLE belly band shaft 1/2 x 5 5.6 in dia"
    other = f"{plate.replace('FD-1', 'FD-2')} without module used $90 shipping $10"
    side = Side()
    told = answer(lambda _share: None, Job(plate_text=plate, listings=(listing(other, "bare"),)))
    side.show_answers(told, told.best_first)
    chance = next(line for line in side.plain() if line[0] == "Chance it works")
    assert chance[2].endswith("% if the old module is good")
    assert "module_health" in {one.field for one in told.missing}
