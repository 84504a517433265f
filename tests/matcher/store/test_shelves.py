"""Saved stock: added whole, read page by page, found while typing, corrected one fact at a time."""

from collections.abc import Callable, Iterator

import pytest

from matcher.errors import BadValue
from matcher.job import Given
from matcher.record import Record
from matcher.store import NotInStore, Store, shelves

MakeRecord = Callable[..., Record]


@pytest.fixture
def shelf(store: Store, new_record: MakeRecord) -> str:
    shelf = store.add_shelf("Back room")
    assert store.add_offers(shelf, (new_record(n) for n in range(25))) == 25
    return shelf


def test_offers_come_back_as_they_were(store: Store, shelf: str, new_record: MakeRecord) -> None:
    records = list(store.records(shelf))
    assert [record.facts for record in records] == [new_record(n).facts for n in range(25)]
    first, made = records[0], new_record(0)
    assert (first.where, first.title, first.text) == (made.where, made.title, made.text)
    assert [record.facts for record in store.records(shelf, words=False)] == [
        record.facts for record in records
    ]


def test_pages_follow_each_other(store: Store, shelf: str) -> None:
    seen: list[int] = []
    while page := store.offers(shelf, after=seen[-1] if seen else 0, limit=10):
        seen += [line.n for line in page]
    assert len(seen) == len(set(seen)) == 25


@pytest.mark.parametrize(
    ("query", "count"),
    [
        ("mot", 25),
        ("QV-00007", 1),
        ("qv0001", 10),
        ("unit wor", 25),
        ("zebra", 0),
        ('"', 0),
    ],
)
def test_offers_are_found_while_typing(store: Store, shelf: str, query: str, count: int) -> None:
    assert len(store.offers(shelf, query)) == count


def test_a_number_typed_with_a_letter_for_a_figure_finds_the_likeliest_first(
    store: Store, shelf: str
) -> None:
    found = store.offers(shelf, "QV-00O07")
    assert [line.facts.part_number for line in found] == ["QV-00007", "QV-00017"]


def test_shelves_keep_apart(store: Store, shelf: str, new_record: MakeRecord) -> None:
    other = store.add_shelf("Front")
    store.add_offers(other, [new_record(99)])
    assert [line.facts.part_number for line in store.offers(other, "motor")] == ["QV-00099"]
    assert {line.name: line.offers for line in store.shelves()} == {"Back room": 25, "Front": 1}
    store.edit_shelf(other, name="Front", removed=True)
    assert [line.name for line in store.shelves()] == ["Back room"]
    assert [line.name for line in store.shelves(removed=True)] == ["Front"]


@pytest.mark.parametrize("at_once", [5, 1000], ids=["in steps", "at once"])
def test_a_failing_source_leaves_nothing_behind(
    store: Store, shelf: str, new_record: MakeRecord, monkeypatch: pytest.MonkeyPatch, at_once: int
) -> None:
    def source() -> Iterator[Record]:
        yield from (new_record(n) for n in range(100, 118))
        raise RuntimeError("cancelled")

    monkeypatch.setattr(shelves, "AT_ONCE", at_once)
    with pytest.raises(RuntimeError):
        store.add_offers(shelf, source())
    assert len(list(store.records(shelf))) == 25
    assert [line.name for line in store.shelves()] == ["Back room"]
    assert store.shelves(removed=True) == ()
    assert store.offers(shelf, "QV-00105", limit=1)[0].facts.part_number != "QV-00105"


def test_many_offers_go_in_steps(
    store: Store, shelf: str, new_record: MakeRecord, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(shelves, "AT_ONCE", 5)
    assert store.add_offers(shelf, (new_record(n) for n in range(100, 118))) == 18
    assert [line.offers for line in store.shelves()] == [43]
    assert store.offers(shelf, "QV-00117")[0].facts.part_number == "QV-00117"


def test_a_correction_is_kept_and_found(store: Store, shelf: str) -> None:
    n = store.offers(shelf, limit=1)[0].n
    assert store.correct_offer(n, "part_number", Given(value="RRX-1")) is None
    assert store.offers(shelf, "RRX-1")[0].facts.part_number == "RRX-1"
    assert next(store.records(shelf)).where["part_number"].origin == "typed"
    assert store.offer(n).record().facts.part_number == "RRX-1"
    assert store.correct_offer(n, "part_number", None, store.offer(n).corrections["part_number"]) is None
    assert store.offer(n).corrections == {}


def test_a_correction_that_another_window_changed_is_shown(store: Store, shelf: str) -> None:
    n = store.offers(shelf, limit=1)[0].n
    store.correct_offer(n, "volts", Given(value="115"))
    clash = store.correct_offer(n, "volts", Given(value="460"))
    assert clash is not None
    assert clash.field == "volts"
    assert store.offer(n).corrections["volts"].value == "115"


def test_bad_corrections_are_refused(store: Store, shelf: str) -> None:
    n = store.offers(shelf, limit=1)[0].n
    with pytest.raises(BadValue, match="volts: "):
        store.correct_offer(n, "volts", Given(value="lots"))
    with pytest.raises(NotInStore):
        store.correct_offer(10**9, "volts", Given(value="115"))


def test_half_characters_are_stored_plainly(store: Store, shelf: str) -> None:
    store.add_offers(shelf, [Record("x\ud800", title="t\ud800", text="zebra\0\u202e\ud800")])
    (line,) = store.offers(shelf, "zebra")
    assert line.title == "t\ufffd"
    assert store.offer(line.n).text == "zebra\0\u202e\ufffd"


def test_offers_can_be_removed(store: Store, shelf: str) -> None:
    store.remove_offers(line.n for line in store.offers(shelf, limit=20))
    assert len(store.offers(shelf)) == 5
    assert not store.offers(shelf, "QV-00000", limit=1) or store.offers(shelf, "QV-00000")[0].n > 20


def test_the_same_lot_is_kept_once(store: Store, shelf: str, new_record: MakeRecord) -> None:
    again = [new_record(n) for n in range(25)]
    assert store.not_kept(again) == []
    assert store.not_kept([*again, new_record(3), new_record(30)]) == [new_record(3), new_record(30)]
    store.edit_shelf(shelf, name="Back room", removed=True)
    assert len(store.not_kept(again)) == 25


def test_offers_are_taken_out_and_put_back_as_they_were(store: Store, shelf: str) -> None:
    before = list(store.records(shelf))
    out = store.add_shelf("out")
    store.edit_shelf(out, name="out", removed=True)
    numbers = [line.n for line in store.offers(shelf)][3:6]
    names = store.source_names(shelf)
    store.move_offers(numbers, out)
    assert len(list(store.records(shelf))) == 22
    assert set(store.source_names(out)) == set(numbers)
    store.move_offers(numbers, shelf)
    assert list(store.records(shelf)) == before
    assert store.source_names(shelf) == names
    with pytest.raises(NotInStore):
        store.move_offers(numbers, "nowhere")
