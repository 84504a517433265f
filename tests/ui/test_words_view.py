"""Words of a listing as found: broken only where nobody could read them and the window would stall."""

import pytest

from matcher.reading import read_listing
from matcher.record import Record
from ui.bench import LISTINGS
from ui.words_view import LONGEST, WordsView


@pytest.fixture
def view(qtbot) -> WordsView:
    made = WordsView()
    qtbot.addWidget(made)
    return made


@pytest.mark.parametrize("sign", ["\0", "x", "\ufffd", "é", "\U0001f525"])
def test_no_line_without_a_blank_gets_longer_than_qt_lays_out_at_once(view, sign):
    text = f"1/2 HP {sign * 9_000} 208-230V"
    view.show_record(Record("a", text=text))
    assert max(len(line) for line in view.toPlainText().splitlines()) < 2_100
    assert len(view.toPlainText()) == len(text)
    assert "broken into lines" in view.note


def test_spans_hold_behind_a_broken_run(view):
    record = read_listing("x" * 9_000 + " 208-230V blower motor", "")
    view.show_record(record)
    view.light("volts")
    lit = [one.cursor.selectedText() for one in view.extraSelections()]
    assert "208-230V" in lit


def test_an_ordinary_listing_stands_as_it_is(view):
    text = "1/2 HP 208-230V " * 500
    view.show_record(Record("a", text=text))
    assert (view.toPlainText(), view.note) == (text, "")


def test_a_cut_text_says_so(view):
    view.show_record(Record("a", text="word " * (LONGEST // 5 + 10)))
    assert "all were read" in view.note


def test_the_page_says_that_something_is_shown_otherwise(bench, settle):
    from matcher.job import Listing

    page = bench.pages[LISTINGS]
    bench.window.go_to(LISTINGS)
    bench.session.edit("adding", bench.session.job.with_listing(Listing(text="\0" * 5_000)))
    settle(bench)
    assert page.note.isVisible()
    bench.session.edit("adding", bench.session.job.with_listing(Listing(text="1/2 HP motor")))
    page.choose(bench.session.job.listings[1].id)
    assert not page.note.isVisible()
