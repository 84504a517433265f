"""The visible text of a page as a person reads it: a line for each block, `label: value` for pairs.

Definition lists, tables of two columns and pairs of small elements become `label: value` lines; a
struck or former price is left out by what its element is called.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from matcher.reading.cell_words import meanings
from matcher.reading.page_pairs import LONGEST_LABEL, Pair, are_labels, grid, inside_groups, pairs
from matcher.reading.page_speeds import lists_of_one
from matcher.reading.page_tree import Element
from matcher.reading.page_words import any_name
from matcher.reading.table_headers import folded, header

_INLINE = frozenset(
    [
        "a",
        "abbr",
        "acronym",
        "b",
        "bdi",
        "bdo",
        "big",
        "cite",
        "code",
        "data",
        "dfn",
        "em",
        "font",
        "i",
        "img",
        "ins",
        "kbd",
        "label",
        "mark",
        "nobr",
        "output",
        "q",
        "rp",
        "rt",
        "ruby",
        "samp",
        "small",
        "span",
        "strong",
        "sub",
        "sup",
        "time",
        "tt",
        "u",
        "var",
        "wbr",
        "button",
        "select",
        "option",
        "input",
        "picture",
        "source",
    ]
)
_NAME_PARTS = re.compile(r"[^a-z0-9]+|(?<=[a-z])(?=[A-Z])")
_MOST_SPEEDS = 14
_LONGEST_CELL = 40
_SPACES = re.compile(r"\s+")
_WHOLE_SUM = re.compile(r"[$€£] ?[\d,]{1,9}$")


@dataclass(slots=True)
class Writer:
    """Puts text together as a browser would: blanks squeezed, blocks on lines of their own."""

    lines: list[str] = field(default_factory=list)
    line: list[str] = field(default_factory=list)
    tail: str = ""

    @property
    def last(self) -> str:
        """The last character of the line, empty at its start."""
        return self.tail[-1:]

    def write(self, text: str) -> None:
        """Add running text."""
        squeezed = _SPACES.sub(" ", text)
        if not squeezed:
            return
        if squeezed[0] == " " and self.last in {"", " "}:
            squeezed = squeezed[1:]
        if squeezed:
            self.line.append(squeezed)
            self.tail = (self.tail + squeezed)[-16:]

    def part(self, following: str) -> None:
        """Keep what follows in an element of its own from growing into one word with what stands there."""
        if (
            self.last
            and (self.last.isalnum() or self.last in ".%")
            and (following.isalnum() or following in "$€£")
        ):
            self.write(" ")

    def end(self) -> None:
        """End the line."""
        line = "".join(self.line).strip()
        if line:
            self.lines.append(line)
        self.line.clear()
        self.tail = ""


def visible_lines(element: Element, skip: Element | None = None) -> list[str]:
    """Return the lines of an element's text; `skip` (its title) is left out."""
    writer = Writer()
    _element(element, writer, skip)
    writer.end()
    return writer.lines


def flat(element: Element) -> str:
    """Return an element's text on one line, its blocks parted by semicolons."""
    return "; ".join(line.rstrip(";") for line in visible_lines(element))


def _element(element: Element, writer: Writer, skip: Element | None) -> None:
    if element is skip or element.tag in {"script", "head", "title"} or _is_struck(element):
        return
    if element.tag in {"br", "hr"}:
        writer.end()
    elif element.tag == "img":
        return
    elif element.tag in {"sup", "sub"}:
        _raised(element, writer, "")
    elif element.tag in _INLINE and not pairs(element):
        _children(element, writer, skip)
    else:
        writer.end()
        _block(element, writer, skip)
        writer.end()


def _block(element: Element, writer: Writer, skip: Element | None) -> None:
    found = pairs(element) if skip is None or not _is_around(element, skip) else []
    if element.tag == "dl" or found:
        _write_pairs(found or list(_definitions(element)), writer)
    elif element.tag == "table" and (rows := grid(element)):
        _writegrid(rows, writer)
    elif element.tag == "tr":
        _row(element, writer)
    else:
        _children(element, writer, skip)


def _is_around(element: Element, inner: Element) -> bool:
    return any(above is element for above in inner.ancestors())


def _children(element: Element, writer: Writer, skip: Element | None) -> None:
    after_element = False
    for place, child in enumerate(element.children):
        if isinstance(child, str):
            writer.write(child)
            after_element = False
            continue
        if child.tag in {"sup", "sub"}:
            following = element.children[place + 1 : place + 2]
            _raised(child, writer, following[0] if following else "")
        else:
            if after_element and child.tag in _INLINE:
                writer.part(child.text(8)[:1] or "-")
            _element(child, writer, skip)
        after_element = True


def _raised(element: Element, writer: Writer, following: Element | str) -> None:
    """Write raised and lowered figures as they are meant: cents, a fraction; a footnote's mark is none."""
    words = element.text(40)
    if not words.isdigit():
        if any(sign.isalnum() for sign in words):
            writer.write(words)
        return
    after = following if isinstance(following, str) else following.text(20)
    if element.tag == "sub" or writer.last in {"/", "⁄", "∕"}:
        writer.write(words)
    elif after.lstrip()[:1] in {"/", "⁄", "∕"}:
        writer.write(f" {words}" if writer.last.isdigit() else words)
    elif len(words) == 2 and _WHOLE_SUM.search(writer.tail):
        writer.write(f".{words}")


def _is_struck(element: Element) -> bool:
    """Say whether an element's name says that its price isn't asked (`old-price`, `bid`)."""
    names = element.names.strip()
    if not names or not any_name("struck", names):
        return False
    words = element.text(200)
    return len(words) <= 60 and any(sign.isdigit() for sign in words) and not _is_named_now(names)


def _is_named_now(names: str) -> bool:
    return any(word in _NAME_PARTS.split(names.lower()) for word in ("now", "sale", "asking", "final"))


# Pairs


def _definitions(listed: Element) -> Iterator[Pair]:
    """Yield the terms of a definition list with all that is said of each."""
    label = ""
    values: list[str] = []
    for child in inside_groups(listed):
        if child.tag == "dt":
            if label or values:
                yield label, "; ".join(values)
            label, values = _label(child), []
        elif child.tag == "dd":
            values.append(flat(child))
    if label or values:
        yield label, "; ".join(value for value in values if value)


def _label(element: Element) -> str:
    return flat(element).rstrip(" :;.")


def _writegrid(rows: list[list[Element]], writer: Writer) -> None:
    """Write the one row of a table under its headers; several rows are several things, or speeds of one."""
    heads = [cell.text(LONGEST_LABEL + 10).rstrip(" :") for cell in rows[0]]
    if len(rows) == 2:
        _write_pairs(list(zip(heads, rows[1], strict=False)), writer)
    else:
        cells = [[cell.text(_LONGEST_CELL) for cell in row] for row in rows[1:_MOST_SPEEDS]]
        _write_pairs(list(lists_of_one(heads, cells)) if len(rows) < _MOST_SPEEDS else [], writer)


def _row(row: Element, writer: Writer) -> None:
    """Write a row of a table: one pair, several pairs side by side, or its cells parted by bars."""
    cells = [child for child in row.elements() if child.tag in {"td", "th"}]
    heads = [cell.text(LONGEST_LABEL + 10).rstrip(" :") for cell in cells]
    if len(cells) == 2 and 0 < len(heads[0]) <= LONGEST_LABEL:
        _write_pairs([(heads[0], cells[1])], writer)
    elif len(cells) == 3 and header(heads[0]) is not None and folded(heads[2]) in meanings("unit"):
        writer.write(f"{heads[0]}: {flat(cells[1])} {heads[2]}")
    elif len(cells) >= 4 and len(cells) % 2 == 0 and are_labels(cells[::2], heads[::2]):
        _write_pairs(list(zip(heads[::2], cells[1::2], strict=True)), writer)
    elif any(any(True for _ in cell.elements()) for cell in cells):
        for cell in cells:
            writer.end()
            _children(cell, writer, None)
    else:
        writer.write(" | ".join(text for text in map(flat, cells) if text))


def _write_pairs(found: list[Pair], writer: Writer) -> None:
    for label, value in found:
        said = value if isinstance(value, str) else flat(value)
        writer.end()
        writer.write(f"{label}: {said}" if label and said else label or said)
        writer.end()
