"""What of a saved page is not said to the buyer, or not about the thing for sale, taken out of it.

That is hidden and struck-out text (`page_hidden`), options that aren't chosen (`page_options`), answers
of a thread (`page_thread`), navigation, related goods, reviews and questions (`page_asides`).
"""

from matcher.reading.page_asides import drop_asides
from matcher.reading.page_hidden import Styles, is_hidden
from matcher.reading.page_options import keep_chosen
from matcher.reading.page_thread import drop_answers
from matcher.reading.page_tree import Element, drop


def sift(root: Element, sheet: Styles, *, about_one: bool = False) -> None:
    """Take out of the tree all that gives nothing; `root` stays.

    On a page that is known to be `about_one` thing, sections such as `Popular` are about others.
    """
    # Options first: what is chosen is told by attributes that the other rules don't look at.
    keep_chosen(root)
    drop(root, lambda element: is_hidden(element, sheet))
    drop_answers(root)
    drop_asides(root, about_one=about_one)
