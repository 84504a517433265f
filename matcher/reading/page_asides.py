"""What on a page is not about the thing for sale: navigation, related goods, reviews, questions."""

import re

from matcher.reading.page_tree import Element, drop
from matcher.reading.page_words import has, is_just

_ROLES = frozenset(
    [
        "navigation",
        "banner",
        "contentinfo",
        "complementary",
        "search",
        "dialog",
        "alertdialog",
        "menu",
        "menubar",
        "tooltip",
        "alert",
        "status",
        "toolbar",
    ]
)
_TYPES = re.compile(
    r"(?:Review|Question|Answer|Comment|BreadcrumbList|WPFooter|WPHeader|SiteNavigationElement|WPSideBar|FAQPage)$",
    re.IGNORECASE,
)
_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})
_MOST_ASIDES = 300
"""Sections that are looked for; each one costs a walk along its neighbours."""


def drop_asides(root: Element, *, about_one: bool) -> None:
    """Take asides out of the tree; what holds the page's own title is never one."""
    protected = _around_titles(root)
    drop(root, lambda element: element not in protected and _is_aside(element))
    _drop_headed(root, protected, about_one)


def _around_titles(root: Element) -> set[Element]:
    """Return the elements that hold a main heading: whatever their names, they are the page itself."""
    around: set[Element] = {root}
    headings = [element for element in root.walk() if element.tag == "h1" and not _in_aside(element)]
    # A shop may put its own name into an h1 too: the one that names goods by a figure is the page's.
    telling = [heading for heading in headings if any(map(str.isdigit, heading.text(300)))]
    for element in (*(telling or headings), *root.elements()):
        around.add(element)
        around.update(element.ancestors())
    around.update(element for element in root.walk() if element.tag in {"body", "main"})
    return around


def _in_aside(element: Element) -> bool:
    return any(above.tag in {"nav", "footer", "aside"} for above in element.ancestors())


def _is_aside(element: Element) -> bool:
    """Say whether tag, role, type or name mark an element as not about the thing for sale."""
    tag, attributes = element.tag, element.attributes
    if tag in {"nav", "footer", "aside", "menu"} or attributes.get("role", "").lower() in _ROLES:
        return True
    if tag == "header" and not any(
        above.tag in {"article", "main", "section"} for above in element.ancestors()
    ):
        return True
    if _TYPES.search(attributes.get("itemtype", "").strip()) or attributes.get("itemprop") in {
        "review",
        "comment",
        "isRelatedTo",
        "isSimilarTo",
    }:
        return True
    label = attributes.get("aria-label", "")
    if label and len(label) <= 80 and has("heading", label):
        return True
    return bool(element.names.strip()) and _is_named_aside(element)


def _is_named_aside(element: Element) -> bool:
    return any(has("name", name) and not has("own_words", name) for name in element.names.split())


def _drop_headed(root: Element, protected: set[Element], about_one: bool) -> None:
    """Drop the sections whose heading says that they are about something else."""
    gone: set[Element] = set()
    count = 0
    for heading in list(root.walk()):
        if heading in protected or not _is_aside_heading(heading, about_one):
            continue
        if heading in gone or any(above in gone for above in heading.ancestors()):
            continue
        gone.update(_drop_section(heading, protected))
        count += 1
        if count >= _MOST_ASIDES:
            return


def _is_aside_heading(element: Element, about_one: bool) -> bool:
    words = element.text(400)
    if not words or has("own_words", words):
        return False
    if _is_heading(element):
        # A listing's own title may hold such a word: `Motor similar to GS-11, 1/2 HP`.
        is_title = has("goods", words) and any(map(str.isdigit, words))
        told = has("heading", words) or (about_one and has("soft_heading", words))
        return told and len(words.split()) <= 9 and not is_title
    if element.tag in {"p", "div", "strong", "b", "span", "dt", "th"} and len(words) <= 60:
        plain = words.rstrip(":?")
        return is_just("heading", plain) or (about_one and is_just("soft_heading", plain))
    return False


def _is_heading(element: Element) -> bool:
    is_named = element.attributes.get("role") == "heading"
    return is_named or element.tag in _HEADINGS or element.tag in {"legend", "summary", "caption"}


def _drop_section(heading: Element, protected: set[Element]) -> list[Element]:
    """Remove the section of a heading from the tree; return the elements that went."""
    block = heading
    while block.parent is not None and block.parent not in protected and _is_first(block):
        if _holds_next_heading(block.parent, block, heading):
            break
        block = block.parent
    if block is not heading and not _is_alone(block, heading):
        _remove(block)
        return [block]
    return _remove_following(block, heading)


def _is_first(element: Element) -> bool:
    """Say whether nothing that can be read stands before an element in its parent."""
    for child in element.parent.children if element.parent else ():
        if child is element:
            return True
        if isinstance(child, str) and child.strip():
            return False
        if isinstance(child, Element) and child.text(50):
            return False
    return False


def _is_alone(block: Element, heading: Element) -> bool:
    return block.text(500) == heading.text(500)


def _holds_next_heading(parent: Element, block: Element, heading: Element) -> bool:
    """Say whether another section of the same rank begins among an element's own children."""
    after = False
    for child in parent.children:
        if child is block:
            after = True
        elif after and isinstance(child, Element) and _ends_section(child, heading):
            return True
    return False


def _ends_section(element: Element, heading: Element) -> bool:
    """Say whether an element is a heading of the same or a higher rank that isn't one of an aside."""
    if element.tag not in _HEADINGS:
        return element.tag == "hr" if heading.tag not in _HEADINGS else False
    if heading.tag in _HEADINGS and element.tag > heading.tag:
        return False
    return not has("heading", element.text(200))


def _remove(element: Element) -> None:
    if element.parent is not None:
        element.parent.children = [child for child in element.parent.children if child is not element]


def _remove_following(block: Element, heading: Element) -> list[Element]:
    """Remove a heading and what follows it on its level, up to the next heading; return what went."""
    parent = block.parent
    if parent is None:
        return []
    kept: list[Element | str] = []
    gone: list[Element] = []
    dropping = False
    for child in parent.children:
        if child is block:
            dropping = True
        elif dropping and isinstance(child, Element) and _ends_section(child, heading):
            dropping = False
        if not dropping:
            kept.append(child)
        elif isinstance(child, Element):
            gone.append(child)
    parent.children = kept
    return gone
