"""The two standards' views of one turn."""

import pytest

from matcher.motor import Motor
from matcher.trade.turns import lead_end

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("turn", "view", "from_lead_end"),
    [
        # NEMA MG 1 (from memory): seen from the end opposite the drive end, which is the lead end.
        ("cw", "lead_end", "cw"),
        ("ccw", "lead_end", "ccw"),
        # IEC 60034-8: seen facing the drive end, so that its clockwise is NEMA's counter-clockwise.
        ("cw", "shaft_end", "ccw"),
        ("ccw", "shaft_end", "cw"),
    ],
)
def test_abbreviations(turn: str, view: str, from_lead_end: str) -> None:
    """CWLE = CCWSE and CCWLE = CWSE."""
    assert lead_end(Motor(turn=turn, seen_from=view)) == from_lead_end


def test_reversible_stays_reversible_from_any_end() -> None:
    assert lead_end(Motor(turn="either", seen_from="shaft_end")) == "either"
