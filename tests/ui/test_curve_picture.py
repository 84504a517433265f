"""The labels of a proof run's chart: inside its field, and never on each other."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF

from matcher.airflow.chart import Chart, Curve, Spot
from ui.curve_picture import CurvePicture
from ui.label_places import LabelPlaces, around


def chart(others: int) -> Chart:
    """Return a chart as a run without a fan table gives it, with other speeds."""
    ducts = tuple((flow, 0.53 * (flow / 537) ** 2) for flow in range(0, 1070, 27))
    curves = [Curve(ducts, "ducts, filter, coil")]
    spots = []
    for n in range(others + 1):
        by = 1 - 0.15 * n
        words = f"{1075 * by:.0f} rpm" if n else "the fan"
        fan = tuple((by * x, by**2 * 0.53 * (1.5 - 0.5 * (x / 537) ** 2)) for x in range(0, 931, 31))
        curves.append(Curve(fan, f"{words} (shape only)", is_sketch=True))
        point = (537 * by, 0.53 * by**2)
        spots.append(Spot(point, f"{point[0]:.0f} CFM at {point[1]:.2f} in.", is_measured=not n))
    return Chart(tuple(curves), tuple(spots), 1070.0, 0.93, ())


@pytest.mark.parametrize("others", [0, 1, 3])
@pytest.mark.parametrize("points", [10, 14])
@pytest.mark.parametrize("size", [(300, 206), (370, 272), (472, 374), (900, 500)])
def test_no_two_labels_lie_on_each_other_or_leave_the_field(qtbot, others, points, size):
    picture = CurvePicture()
    qtbot.addWidget(picture)
    font = picture.font()
    font.setPointSize(points)
    picture.setFont(font)
    picture.show_chart(chart(others))
    field = QRectF(56, 16, size[0] - 72, size[1] - 56)
    boxes = picture.placed(field)
    assert len(boxes) == 2 * others + 3
    for label, box in boxes.items():
        assert field.contains(box), label
    if others < 3 or size[0] > 400:
        for (one, first), (other, second) in combinations(boxes.items(), 2):
            assert not first.intersects(second), (one, other)


def test_a_label_goes_where_nothing_stands_yet():
    places = LabelPlaces(QRectF(0, 0, 200, 100))
    wished = around(QPointF(100, 50), QSizeF(50, 10))
    assert places.take(wished) == wished[0]
    assert places.take(wished) == wished[1]
    assert places.take(wished, [wished[2].center()]) == wished[3]


def test_a_label_that_finds_no_wished_place_takes_another_free_one():
    places = LabelPlaces(QRectF(0, 0, 200, 100))
    places.keep_clear(QRectF(0, 0, 200, 70))
    taken = places.take([QRectF(50, 20, 40, 20)])
    assert taken.top() >= 70
    assert taken.bottom() <= 100
