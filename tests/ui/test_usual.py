"""Usual figures in the window: kept once, every new job starts with them, a job can go its own way."""

import pytest

from ui.bench import MONEY

FIGURE = 1


@pytest.fixture
def changed(open_bench, settle, tmp_path):
    bench = open_bench(tmp_path / "jobs.db")
    page = bench.pages[MONEY]
    bench.window.go_to(MONEY)
    settle(bench)
    page.figures.setData(page.figures.index(3, FIGURE), "33")
    settle(bench)
    return bench


def figure(bench) -> str:
    page = bench.pages[MONEY]
    return str(page.figures.index(3, FIGURE).data())


def test_a_new_job_starts_with_the_figures_kept(changed, settle):
    bar = changed.pages[MONEY].usual
    assert "of its own" in bar.says.text()
    changed.new_job()
    settle(changed)
    assert figure(changed) != "33"  # not kept yet
    changed.window.go_to(MONEY)
    changed.pages[MONEY].figures.setData(changed.pages[MONEY].figures.index(3, FIGURE), "33")
    settle(changed)
    bar.keep.click()
    settle(changed)
    assert "your usual" in bar.says.text()
    assert not bar.keep.isEnabled()
    changed.new_job()
    settle(changed)
    assert figure(changed) == "33"
    bar.reset.click()
    settle(changed)
    assert figure(changed) != "33"
    bar.take.click()
    settle(changed)
    assert figure(changed) == "33"


def test_the_next_window_knows_them_from_its_first_job_on(changed, open_bench, settle, tmp_path):
    changed.pages[MONEY].usual.keep.click()
    settle(changed)
    changed.window.close()
    again = open_bench(tmp_path / "jobs.db")
    settle(again)
    assert figure(again) == "33"


def test_a_broken_file_is_told_and_leaves_the_shipped_ones(open_bench, settle, tmp_path):
    (tmp_path / "figures.toml").write_text("[weights]\nrotation = 'much'\n", encoding="utf-8")
    bench = open_bench(tmp_path / "jobs.db")
    settle(bench)
    assert "figures.toml" in bench.window.message.text()
    assert "shipped" in bench.pages[MONEY].usual.says.text()
