"""A saved page as a small tree of its own: elements and text, nothing else, never deep.

The parser follows the HTML standard, whose work grows with the square of the nesting; so nesting is
capped before parsing, as browsers do. Pictures written into the page (`data:`) are dropped first.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from itertools import islice

from selectolax.lexbor import LexborHTMLParser, LexborNode

DEEPEST = 100
"""Levels of elements that are kept; what lies deeper moves up to that level."""
_FORMATTING_DEEPEST = 16
_LONGEST_TAG = 20_000
LARGEST = 24_000_000
"""Characters of markup, pictures not counted, that are parsed; a page of listings is far below."""

_DATA_URI = re.compile(r"data:[a-zA-Z0-9.+/-]{0,60}(?:;[a-zA-Z0-9=-]{0,40}){0,4},[^\"'\s<>)]{200,}")
_TAG = re.compile(r"<(/?)([a-zA-Z][a-zA-Z0-9-]{0,30})")
_VOID = frozenset(
    [
        "area",
        "base",
        "br",
        "col",
        "embed",
        "hr",
        "img",
        "input",
        "link",
        "meta",
        "param",
        "source",
        "track",
        "wbr",
    ]
)
# Their end tags may be left out, so an open one is no nesting; they nest only inside counted elements.
_SELF_ENDING = frozenset(
    [
        "p",
        "li",
        "dt",
        "dd",
        "td",
        "th",
        "tr",
        "tbody",
        "thead",
        "tfoot",
        "option",
        "optgroup",
        "colgroup",
        "caption",
        "rt",
        "rp",
        "html",
        "body",
        "head",
    ]
)
# The standard opens these again in every later block until they are closed: unclosed ones multiply.
_FORMATTING = frozenset(
    ["b", "big", "code", "em", "font", "i", "nobr", "s", "small", "strike", "strong", "tt", "u"]
)
_DROPPED = frozenset(
    [
        "style",
        "template",
        "noscript",
        "svg",
        "math",
        "iframe",
        "object",
        "canvas",
        "video",
        "audio",
        "map",
        "datalist",
        "frameset",
        "frame",
        "noframes",
        "noembed",
        "meter",
        "progress",
        "textarea",
    ]
)


@dataclass(slots=True, eq=False)
class Element:
    """An element: its tag, attributes (names in lower case) and what it holds, in order."""

    tag: str
    attributes: Mapping[str, str]
    parent: "Element | None" = None
    children: "list[Element | str]" = field(default_factory=list)

    def elements(self) -> "Iterator[Element]":
        """Yield the child elements."""
        for child in self.children:
            if isinstance(child, Element):
                yield child

    def walk(self) -> "Iterator[Element]":
        """Yield this element and all below it, in reading order."""
        stack = [self]
        while stack:
            element = stack.pop()
            yield element
            stack.extend(child for child in reversed(element.children) if isinstance(child, Element))

    def near(self, count: int = 200) -> "Iterator[Element]":
        """Yield this element and the first ones below it: enough to tell a small element's kind."""
        yield from islice(self.walk(), count)

    def ancestors(self) -> "Iterator[Element]":
        """Yield the elements around this one, the nearest first."""
        above = self.parent
        while above is not None:
            yield above
            above = above.parent

    def text(self, limit: int = 100_000) -> str:
        """Return all text below, blanks squeezed, cut at about `limit` characters (or 8 `limit` nodes)."""
        parts: list[str] = []
        size = nodes = 0
        stack: list[Element | str] = [self]
        while stack and size < limit and nodes < 8 * limit:
            node = stack.pop()
            nodes += 1
            if isinstance(node, str):
                parts.append(node)
                size += 0 if node.isspace() else len(node)
            elif node.tag != "script":
                parts.append(" ")
                stack.append(" ")
                stack.extend(reversed(node.children))
        return " ".join("".join(parts).split())

    @property
    def names(self) -> str:
        """Class and id, as written."""
        return f"{self.attributes.get('class', '')} {self.attributes.get('id', '')}"


def tree(page: str) -> Element:
    """Parse a page; whatever the text, an element `html` comes back."""
    page = _DATA_URI.sub("data:,", page)[:LARGEST]
    parser = LexborHTMLParser(_flattened(page))
    root = Element("html", {})
    if parser.root is not None:
        _grow(root, parser.root)
    return root


def stylesheets(page: str) -> str:
    """Return the text of the page's own `<style>` blocks, at most 200,000 characters of them."""
    parts: list[str] = []
    at = 0
    lower = page[:LARGEST].lower()
    while (start := lower.find("<style", at)) >= 0 and len(parts) < 100:
        end = lower.find("</style", start)
        at = end if end >= 0 else len(lower)
        parts.append(page[start : min(at, start + 100_000)])
    return "\n".join(parts)[:200_000]


class _Nesting:
    """Counts open elements along the tags of a page and renames the tags that would nest too deep."""

    def __init__(self) -> None:
        self.depth = 0
        self.formatting = 0
        self.open: Counter[str] = Counter()
        self.refused: Counter[str] = Counter()

    def __call__(self, found: re.Match[str]) -> str:
        closing, name = found.group(1), found.group(2).lower()
        if name in _VOID or (name in _SELF_ENDING and self.depth < 3 * DEEPEST):
            return found.group()
        if name in _SELF_ENDING:
            # Inside elements that were refused they would nest in each other (`<li><dl><dd>` and so on).
            return "</wbr" if closing else "<br"
        return self._close(found.group(), name) if closing else self._open(found.group(), name)

    def _open(self, tag: str, name: str) -> str:
        inline = name in _FORMATTING
        if self.depth >= 3 * DEEPEST or (inline and self.formatting >= _FORMATTING_DEEPEST):
            self.refused[name] += 1
            return "<wbr"
        self.depth += 1
        self.formatting += inline
        self.open[name] += 1
        return tag

    def _close(self, tag: str, name: str) -> str:
        if self.refused[name]:
            self.refused[name] -= 1
            return "</wbr"
        if not self.open[name]:
            # An end tag without its start only makes the parser search.
            return "</wbr" if name not in {"br", "p"} else tag
        self.open[name] -= 1
        self.depth -= 1
        self.formatting -= name in _FORMATTING
        return tag


def _flattened(page: str) -> str:
    return _TAG.sub(_Nesting(), _without_endless_tags(page))


def _without_endless_tags(page: str) -> str:
    """Cut tags of more characters than any page needs: the parser compares all attributes of a tag."""
    parts: list[str] = []
    at = kept = 0
    while (start := page.find("<", at)) >= 0:
        end = page.find(">", start)
        if end < 0:
            break
        # A text full of lone `<` is no tag: the last one before the `>` counts.
        start = page.rfind("<", start, end)
        if end - start > _LONGEST_TAG:
            parts.append(page[kept : start + _LONGEST_TAG])
            kept = end
        at = end + 1
    return "".join([*parts, page[kept:]]) if parts else page


def _wanted(node: LexborNode) -> bool:
    tag = node.tag or ""
    if tag in _DROPPED:
        return False
    return tag != "script" or "ld+json" in (node.attributes.get("type") or "").lower()


def _attributes(node: LexborNode) -> dict[str, str]:
    return {str(name).lower(): (value or "")[:2000] for name, value in node.attributes.items()}


def _grow(root: Element, top: LexborNode) -> None:
    """Copy the parser's tree below `top` into `root`, without recursion."""
    stack: list[tuple[LexborNode | None, Element, int]] = [(top.first_child, root, 1)]
    while stack:
        node, parent, depth = stack.pop()
        while node is not None:
            if node.is_text_node:
                if node.text_content:
                    parent.children.append(node.text_content)
            elif node.is_element_node and _wanted(node):
                element = Element(node.tag or "", _attributes(node), parent)
                parent.children.append(element)
                child = node.first_child
                if child is not None and depth < DEEPEST:
                    stack.append((node.next, parent, depth))
                    node, parent, depth = child, element, depth + 1
                    continue
                if child is not None:
                    # Too deep: what it holds follows it on the same level.
                    stack.append((node.next, parent, depth))
                    node = child
                    continue
            node = node.next


def drop(root: Element, unwanted: Callable[[Element], bool]) -> None:
    """Take out of the tree, in one walk, all elements below `root` that are unwanted."""
    for element in list(root.walk()):
        if any(isinstance(child, Element) for child in element.children):
            element.children = [
                child for child in element.children if isinstance(child, str) or not unwanted(child)
            ]


def remove(root: Element, elements: AbstractSet[Element]) -> None:
    """Take elements out of the tree, all in one walk."""
    if elements:
        drop(root, lambda element: element in elements)
