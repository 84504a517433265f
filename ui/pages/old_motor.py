"""The old motor: the plate in one box, the form it fills, the drawing, and what is still missing."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from matcher.entry import model_of
from matcher.job import Job
from matcher.motor import Motor
from matcher.record import Origin
from ui.answers import Answers
from ui.desk import Desk, Page
from ui.drawing import Drawing, Scene
from ui.field_edit import FieldEdit
from ui.fields import fields, group
from ui.halves import Halves
from ui.how_to import HowTo
from ui.line import Heading, Strong
from ui.missing_list import MissingList
from ui.plate_box import PlateBox
from ui.theme import GRID
from ui.underline import Legend
from ui.words import counted


class OldMotorPage(Page):
    """Everything about the motor that failed, and the place it ran in."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.plate = PlateBox()
        self.edits: dict[str, FieldEdit] = {}
        self.drawing = Drawing(desk.units.of)
        self.how_to, self.missing = HowTo(), MissingList()
        self.in_mm = QPushButton(self.tr("mm"))
        self.example_button = QPushButton(self.tr("Show the &example"))
        self._lay_out()
        self.starts_at(self.plate)
        self._connect()

    def _lay_out(self) -> None:
        down = self.column()
        head = QHBoxLayout()
        head.addWidget(Heading(self.tr("The old motor"), wrap=False), 1)
        self.in_mm.setCheckable(True)
        self.in_mm.setToolTip(self.tr("Show lengths in millimetres"))
        self.in_mm.setAccessibleName(self.tr("Lengths in millimetres"))
        self.example_button.clicked.connect(self.example)
        head.addWidget(self.example_button)
        head.addWidget(self.in_mm)
        down.addLayout(head)
        down.addWidget(self.plate)
        down.addWidget(Halves(self._form(), self._right()), 1)

    def _form(self) -> QScrollArea:
        body = QWidget()
        down = QVBoxLayout(body)
        down.setContentsMargins(0, GRID, 2 * GRID, GRID)
        titles = {
            "plate": self.tr("On the plate"),
            "measure": self.tr("To measure or look at"),
            "place": self.tr("The place it runs in"),
        }
        for name, title in titles.items():
            down.addWidget(Strong(title))
            down.addLayout(self._group(name))
            down.addSpacing(GRID)
        down.addWidget(Legend())
        down.addStretch(1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(body)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setMinimumWidth(body.minimumSizeHint().width() + 2 * GRID)  # no column is cut; the page scrolls
        return area

    def _group(self, name: str) -> QGridLayout:
        """Lay the fields of a group in two columns, read downward."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(3 * GRID)
        grid.setVerticalSpacing(2)
        members = group(name)
        half = (len(members) + 1) // 2
        for place, one in enumerate(members):
            edit = FieldEdit(one, self.desk.units)
            self.edits[one.name] = edit
            grid.addWidget(edit, place % half, place // half)
        return grid

    def _right(self) -> QWidget:
        right = QWidget()
        down = QVBoxLayout(right)
        down.setContentsMargins(GRID, GRID, 0, 0)
        down.addWidget(self.drawing, 1)
        down.addWidget(self.how_to)
        down.addWidget(self.missing)
        return right

    def _connect(self) -> None:
        session = self.desk.session
        self.plate.typed.connect(self._type_plate)
        self.plate.entered.connect(session.ask_now)
        self.in_mm.toggled.connect(self.desk.units.use_metric)
        self.desk.units.changed.connect(self._show_again)
        for edit in self.edits.values():
            edit.entered.connect(self._enter)
            edit.focused.connect(self.how_to.show_field)
        self.missing.chosen.connect(self.focus_field)
        session.opened.connect(lambda _job: self._forget())
        session.changed.connect(self._show_job)
        session.answered.connect(self._show)

    def focus_field(self, name: str) -> None:
        """Put the keyboard into one field."""
        self.edits[name].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _type_plate(self, text: str) -> None:
        words = self.tr("typing the plate")
        line = self.desk.session.try_edit(words, lambda job: job.edited(plate_text=text), merge="plate")
        self.plate.trouble.tell(line)

    def _enter(self, name: str, text: str) -> None:
        words = self.tr("changing {}").format(fields()[name].label.lower())
        line = self.desk.session.try_edit(words, partial(self._given, name, text), merge=f"field {name}")
        self.edits[name].tell_fault(line)

    def _given(self, name: str, text: str, job: Job) -> Job:
        """Return the job with a field as typed; emptied, the plate's word is withdrawn or counts again."""
        value = self.desk.units.entered(name, text)
        on_motor = model_of(name) is not model_of("supply_volts")
        origin = Origin.MEASURED if fields()[name].group == "measure" else Origin.TYPED
        if on_motor:
            keep = value is not None or name not in job.given
            return job.with_given(name, value, origin=origin) if keep else job.without_given(name)
        return job.without_site(name) if value is None else job.with_site(name, value, origin=origin)

    def _forget(self) -> None:
        for edit in self.edits.values():
            edit.forget()
        self.plate.trouble.tell("")

    def _show_job(self, job: Job) -> None:
        self.plate.show_text(job.plate_text)
        self.example_button.setVisible(not job.plate_text and not job.given)

    def _show_again(self) -> None:
        if self.desk.session.answers is not None:
            self._show(self.desk.session.answers)

    def _show(self, answers: Answers) -> None:
        old, site = answers.old, answers.wanted.site
        self.plate.show_read(old)
        conflicts = {conflict.field: self.tr(" or ").join(conflict.said) for conflict in old.conflicts}
        for name, edit in self.edits.items():
            mark = old.where.get(name)
            value = getattr(old.facts if name in Motor.model_fields else site, name)
            origin = (
                mark.origin if mark else answers.job.site[name].origin if name in answers.job.site else ""
            )
            edit.show_value(value, origin)
            said = conflicts.get(name)
            edit.tell_conflict(self.tr("The plate says {}: which?").format(said) if said else "")
        self.drawing.show_scene(Scene(answers.wanted.motor))
        self.missing.show_missing(answers.missing)
        self.state.emit(self._words(answers))

    def _words(self, answers: Answers) -> str:
        if not answers.old.facts.said() and not answers.job.plate_text:
            return self.tr("type or paste the plate")
        count = len(answers.missing)
        return (
            self.tr("{} missing").format(counted(count, "fact"))
            if count
            else self.tr("all that counts is known")
        )
