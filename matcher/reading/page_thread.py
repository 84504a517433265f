"""A thread of a forum: its first post is the listing, those below are what others say to it."""

from collections import defaultdict

from matcher.reading.page_cards import title_of
from matcher.reading.page_tree import Element
from matcher.reading.page_words import any_name, has

_SUBJECT = frozenset({"h1", "h2", "h3", "h4"})


def drop_answers(root: Element) -> None:
    """Take the later posts of a thread out of the tree, where its heading names what is for sale."""
    heads = (element for element in root.walk() if element.tag == "h1")
    heading = next((head.text(300) for head in heads if has("goods", head.text(300))), "")
    if not heading or has("results", heading):
        return
    for parent in list(root.walk()):
        posts = _posts(parent)
        if len(posts) > 1 and not any(_is_listing(post, heading) for post in posts):
            later = set(posts[1:])
            parent.children = [child for child in parent.children if child not in later]


def _posts(parent: Element) -> list[Element]:
    """Return the children that are posts of one thread: the same tag, the same class, named so."""
    kinds: dict[tuple[str, str], list[Element]] = defaultdict(list)
    for child in parent.elements():
        name = child.attributes.get("class", "").partition(" ")[0]
        if name and any_name("post", name):
            kinds[child.tag, name].append(child)
    return max(kinds.values(), key=len, default=[])


def _is_listing(post: Element, subject: str) -> bool:
    """Say whether a post has a heading of its own that names other goods: it is a card, not an answer."""
    title = title_of(post)
    words = title.text(300) if title is not None and title.tag in _SUBJECT else ""
    return has("goods", words) and words.casefold() not in subject.casefold() and subject not in words
