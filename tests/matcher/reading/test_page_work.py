"""The work that nested pages cost grows with their length and no faster: elements and lines are counted."""

from collections import Counter

import pytest

from matcher.reading import page_text
from matcher.reading.page import read_page
from matcher.reading.page_tree import DEEPEST, _flattened, tree

HEAD = "<html><body><h1>Motor AW-4410 1/3 HP $40</h1>"
NESTED = {
    "tables": "<table><tr><td>x",
    "headed tables": "<div><table><tr><th>Brand</th><th>HP</th><th>Price</th></tr><tr><td>",
    "lists": "<ul><li><dl><dt>a<dd>b",
    "bare": "<div>",
    "flat rows": "<table><tr><td>1<td>2</table>",
}


def visits(page: str, monkeypatch: pytest.MonkeyPatch) -> int:
    """Return how often the text of an element is asked for while a page is read."""
    seen: Counter[str] = Counter()
    whole = page_text._element

    def counted(*given: object) -> None:
        seen["visits"] += 1
        whole(*given)  # type: ignore[arg-type]

    with monkeypatch.context() as patched:
        patched.setattr(page_text, "_element", counted)
        assert len(read_page(page, "page.html")) == 1
    return seen["visits"]


@pytest.mark.parametrize("kind", NESTED)
def test_work_is_linear(kind: str, monkeypatch: pytest.MonkeyPatch) -> None:
    short, long = (visits(HEAD + NESTED[kind] * count, monkeypatch) for count in (400, 800))
    assert long <= 2.2 * short + 100


@pytest.mark.parametrize("kind", NESTED)
def test_text_of_nested_pages_is_asked_for_a_few_times(kind: str, monkeypatch: pytest.MonkeyPatch) -> None:
    page = HEAD + NESTED[kind] * 600
    elements = sum(1 for _ in tree(page).walk())
    assert visits(page, monkeypatch) <= 6 * elements


def test_items_of_refused_lists_do_not_nest_in_each_other() -> None:
    assert _flattened(NESTED["lists"] * 600).count("<li") <= 3 * DEEPEST
