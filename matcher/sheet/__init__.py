"""The swap sheet: this job's own cautions, tools and steps, and no step that it doesn't need."""

from matcher.sheet.conditions import Swap
from matcher.sheet.page import as_html
from matcher.sheet.sheet import Line, Sheet, swap_sheet

__all__ = ["Line", "Sheet", "Swap", "as_html", "swap_sheet"]
