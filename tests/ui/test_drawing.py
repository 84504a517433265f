"""The drawing is to scale, and what clashes is where it should be."""

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from matcher.motor import Motor
from ui.drawing import Drawing, Scene
from ui.end_view import ways
from ui.geometry import USUAL, clash, outline

OLD = Motor(
    body_diameter_in=5.625, body_length_in=5.5, shaft_diameter_in=0.5, shaft_length_in=5.0, mounting=("band",)
)


def test_the_outline_is_to_scale_and_meets_at_the_shafts_face():
    drawn = outline(OLD)
    body, shaft = drawn.body.boundingRect(), drawn.shaft.boundingRect()
    assert (body.width(), body.height(), body.right()) == pytest.approx((5.5, 5.625, 0.0))
    assert (shaft.left(), shaft.width(), shaft.height()) == pytest.approx((0.0, 5.0, 0.5))
    assert drawn.unknown == frozenset()


def test_what_is_not_known_is_drawn_at_a_usual_size_and_said():
    drawn = outline(Motor())
    assert drawn.unknown == frozenset(USUAL)
    assert drawn.body.boundingRect().width() == pytest.approx(USUAL["body_length_in"])


def test_a_longer_body_clashes_where_it_is_longer():
    longer = OLD.model_copy(update={"body_length_in": 7.5})
    where = clash(outline(OLD), outline(longer), "body").boundingRect()
    assert where.left() == pytest.approx(-7.5)


def test_a_part_that_differs_only_in_kind_clashes_as_a_whole():
    where = clash(outline(OLD), outline(OLD), "mounting")
    assert where.boundingRect() == outline(OLD).mounting.boundingRect()


@pytest.mark.parametrize(
    ("turn", "view", "lead", "shaft"),
    [
        ("cw", "lead_end", (-1,), (1,)),
        ("ccw", "lead_end", (1,), (-1,)),
        ("cw", "shaft_end", (1,), (-1,)),
        ("cw", None, (), ()),
        (None, None, (), ()),
        ("either", None, (-1, 1), (-1, 1)),
    ],
)
def test_both_ends_show_the_turn_mirrored_or_a_question(turn, view, lead, shaft):
    motor = Motor(turn=turn, seen_from=view)
    assert (ways(motor, "lead_end"), ways(motor, "shaft_end")) == (lead, shaft)


@pytest.mark.parametrize("width", [434, 700])
@pytest.mark.parametrize("points", [10, 14])
def test_what_is_not_known_is_written_whole_into_a_small_body(qtbot, monkeypatch, width, points):
    drawing, cut = Drawing(lambda _name, _motor: ""), []

    class Heard(QPainter):
        def drawText(self, box, flags, words):
            if words.startswith("⌀") and self.boundingRect(box, flags, words).width() > box.width() + 1:
                cut.append(words)

    monkeypatch.setattr("ui.drawing.QPainter", Heard)
    qtbot.addWidget(drawing)
    font = drawing.font()
    font.setPointSize(points)
    drawing.setFont(font)
    drawing.show_scene(Scene(Motor()))
    drawing.resize(width, 220)
    drawing.grab()
    assert cut == []


@pytest.mark.parametrize("motor", [OLD, Motor(), Motor(shaft_length_in=12.0, body_length_in=3.0)])
@pytest.mark.parametrize("width", [300, 434, 560, 700, 1100])
@pytest.mark.parametrize("height", [200, 254, 340, 560])
def test_both_ends_and_their_labels_stay_inside(qtbot, motor, width, height):
    drawing = Drawing(lambda _name, _motor: "")
    qtbot.addWidget(drawing)
    drawing.show_scene(Scene(motor))
    room = QRectF(0, 0, width, height)
    layout = drawing.layout_in(room)
    half = max(layout.label / 2 - 8, layout.new.sizes.body_diameter * layout.scale / 2)
    lead, shaft = layout.ends["lead_end"].x(), layout.ends["shaft_end"].x()
    assert lead - half >= 0
    assert shaft + half <= width
    assert shaft - lead >= layout.label - 16
    assert layout.end_label + layout.line <= height + 0.01
