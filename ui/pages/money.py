"""Money: the plan as a sentence, its picture, questions by worth, and the figures behind it all."""

from functools import partial

from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from matcher.entry import amount, number
from matcher.job import Fallback, Job
from matcher.job.document import checked_currency
from matcher.job.found import with_found
from matcher.money.buying import Buying
from matcher.money.questions import message_to_seller
from matcher.money.weigh import gamble_in
from matcher.motor import Offer
from matcher.record import Origin
from ui.answers import Answers
from ui.asked import Asked, is_home
from ui.called import name_of
from ui.copy_button import CopyButton
from ui.desk import Desk, Page
from ui.fallback_bar import FallbackBar
from ui.fields import line_about
from ui.halves import Halves
from ui.line import Heading, Line, Soft, Strong, Trouble
from ui.listing_edits import LONGEST_NOTE
from ui.models.figures import FIGURE, NAME, Figures
from ui.models.questions import WHOM, WORTH, Questions
from ui.money_words import whole_money
from ui.plain_table import PlainTable
from ui.plan_picture import Bar, PlanPicture
from ui.theme import GRID
from ui.usual_bar import UsualBar
from ui.words import counted


class MoneyPage(Page):
    """What to try in which order, and what to ask first."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.fallback, self.sentence, self.beside = FallbackBar(), Strong(), Soft()
        self.picture = PlanPicture()
        self.questions, self.figures = Questions(), Figures()
        self.asked = PlainTable(self.questions, {WORTH: 8, WHOM: 24})
        self.table = PlainTable(self.figures, {NAME: 26, FIGURE: 7})
        self.message, self.answer = Line(), QLineEdit()
        self.copy_message = CopyButton(self.tr("&Copy the message"))
        self.unknown, self.more = QPushButton(self.tr("&Doesn't know")), QPushButton()
        self.trouble, self.figures_trouble = Trouble(), Trouble()
        self.usual = UsualBar(desk)
        self._lay_out()
        self._connect()
        self.starts_at(self.asked)

    def _lay_out(self) -> None:
        down = self.column()
        down.addWidget(Heading(self.tr("Money")))
        for widget in (self.fallback, self.sentence, self.beside, self.picture):
            down.addWidget(widget)
        down.addWidget(Halves(self._ask(), self._settings()), 1)

    def _ask(self) -> QWidget:
        whole = QWidget()
        down = QVBoxLayout(whole)
        down.setContentsMargins(0, GRID, GRID, 0)
        down.addWidget(Strong(self.tr("What to ask first")))
        self.asked.setAccessibleName(self.tr("Questions by worth"))
        down.addWidget(self.asked, 3)
        across = QHBoxLayout()
        self.answer.setPlaceholderText(self.tr("the seller's answer to the chosen question, then Enter"))
        self.answer.setAccessibleName(self.tr("The seller's answer"))
        across.addWidget(self.answer, 1)
        self.unknown.setToolTip(self.tr("The seller can't tell: it isn't asked again"))
        self.more.setCheckable(True)
        for button in (self.unknown, self.more, self.copy_message):
            across.addWidget(button)
        down.addLayout(across)
        down.addWidget(self.trouble)
        self.message.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.message.setAlignment(Qt.AlignmentFlag.AlignTop)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(self.message)
        area.setAccessibleName(self.tr("Message to the seller"))
        down.addWidget(area, 2)
        return whole

    def _settings(self) -> QWidget:
        whole = QWidget()
        down = QVBoxLayout(whole)
        down.setContentsMargins(GRID, GRID, 0, 0)
        down.addWidget(Strong(self.tr("Weights, chances and prices")))
        self.table.setAccessibleName(self.tr("Weights, chances and prices"))
        down.addWidget(self.table, 1)
        down.addWidget(self.figures_trouble)
        down.addWidget(self.usual)
        return whole

    def _connect(self) -> None:
        session = self.desk.session
        session.changed.connect(lambda job: self.fallback.show_fallback(job.fallback))
        session.answered.connect(self._show)
        self.fallback.entered.connect(self._set_fallback)
        self.figures.entered.connect(self._set_figure)
        self.asked.selectionModel().currentChanged.connect(lambda index, _before: self._show_message(index))
        self.copy_message.clicked.connect(self.copy)
        self.unknown.clicked.connect(self._does_not_know)
        self.more.toggled.connect(self._show_more)
        self.answer.returnPressed.connect(self._answered)

    def _show(self, answers: Answers) -> None:
        kept = self.asked.currentIndex().row()
        self.questions.show_answers(answers)
        self.more.setText(self.tr("{} &more questions").format(self.questions.left_out))
        self.more.setVisible(bool(self.questions.left_out))
        self.figures.show_settings(answers.settings)
        self._show_plan(answers)
        if self.questions.rows:
            self.asked.selectRow(min(max(kept, 0), len(self.questions.rows) - 1))
        else:
            self._show_message(QModelIndex())

    def _show_plan(self, answers: Answers) -> None:
        plan = answers.buying
        self.picture.setVisible(plan is not None and bool(answers.weighed))
        if plan is None:
            lacks_plate = bool(answers.job.listings and not answers.has_plate)
            self.sentence.setText(
                self.tr("No plan yet: type the plate of the old motor under Old motor first.")
                if lacks_plate
                else self.tr(
                    "Say what you would pay if nothing here works, and the plan shows what to try first."
                )
            )
            self.beside.setText("")
            first = (
                self.tr("type the plate first") if lacks_plate else self.tr("what does the fallback cost?")
            )
            self.state.emit(first)
            return
        self.sentence.setText(plan.sentence)
        waiting = sum(one.lacks_rate for one in plan.left_out)
        left = self.tr("{} in another currency left out.").format(counted(waiting, "candidate"))
        self.beside.setText(" ".join(filter(None, (plan.order, plan.bought, left if waiting else ""))))
        self.picture.show_plan(_bars(answers, plan), plan.fallback.price)
        self.state.emit(self._state(plan))

    def _state(self, plan: Buying) -> str:
        if plan.steps:
            words = self.tr("expected cost {} instead of {}")
            return words.format(whole_money(plan.expected_cost), whole_money(plan.fallback.price))
        if plan.is_over:
            return self.tr("nothing left to try")
        return self.tr("prices aren't known") if plan.unpriced else self.tr("nothing worth trying")

    def _chosen(self) -> Asked | None:
        row = self.asked.currentIndex().row()
        return self.questions.rows[row] if 0 <= row < len(self.questions.rows) else None

    def _show_message(self, _index: QModelIndex) -> None:
        answers, chosen = self.desk.session.answers, self._chosen()
        known = bool(answers and chosen and chosen.listing_id in answers.weighed)
        self.copy_message.setEnabled(known)
        home = bool(chosen and is_home(chosen.question))
        is_fact = bool(chosen and chosen.question.field in Offer.model_fields)
        self.answer.setEnabled(home or is_fact)
        self.unknown.setEnabled(is_fact and not home)
        self.answer.setPlaceholderText(
            self.tr("what you found at home, then Enter")
            if home
            else self.tr("the seller's answer to the chosen question, then Enter")
        )
        if answers is None or chosen is None or not known:
            self.message.setText(self.tr("Nothing to ask."))
            return
        if is_home(chosen.question):
            self.copy_message.setEnabled(False)
            no_seller = self.tr("No seller can tell that: look, and enter it here or under Old motor.")
            self.message.setText(f"{chosen.question.text}\n\n{no_seller}")
            return
        told = answers.job.listing(chosen.listing_id).told_unknown()
        one, whole = answers.weighed[chosen.listing_id], self.more.isChecked()
        self.message.setText(message_to_seller(one, answers.worths, told, whole=whole))

    def _show_more(self, on: bool) -> None:
        """Show the questions that matter less as well, in the table and in the message."""
        self.questions.shows_all = on
        if self.desk.session.answers is not None:
            self._show(self.desk.session.answers)

    def copy(self) -> None:
        """Put the message to the seller on the clipboard."""
        self.copy_message.copy(self.message.text())

    def _does_not_know(self) -> None:
        """Take it that the seller can't answer the chosen question."""
        self.answer.setText(self.tr("doesn't know"))
        self._answered()

    def _answered(self) -> None:
        chosen, text = self._chosen(), self.answer.text()
        if chosen is None or not text.strip():
            return
        field, session = chosen.question.field, self.desk.session
        home = field.partition(".")[2]
        if is_home(chosen.question):
            metric = self.desk.units.metric
            line = session.try_edit(
                self.tr("looking at home"), lambda job: with_found(job, field, text, metric=metric)
            )
        else:
            line = session.try_edit(
                self.tr("taking the seller's answer"),
                partial(self._with_answer, chosen.listing_id, field, text),
            )
        self.trouble.tell(line_about(home or field, line))
        if not line:
            self.answer.clear()

    def _with_answer(self, listing_id: str, field: str, text: str, job: Job) -> Job:
        metric, listing = self.desk.units.metric, job.listing(listing_id)
        return job.with_listing(
            listing.told(field, text, origin=Origin.ANSWERED, metric=metric, note=text[:LONGEST_NOTE])
        )

    def _set_fallback(self, price: str, currency: str, what: str) -> None:
        line = self.desk.session.try_edit(
            self.tr("setting the fallback"), partial(_with_fallback, price, currency, what)
        )
        if line:
            self.fallback.show_fallback(self.desk.session.job.fallback)
        self.fallback.trouble.tell(line)

    def _set_figure(self, group: str, name: str, text: str) -> None:
        answers = self.desk.session.answers
        line = self.desk.session.try_edit(
            self.tr("changing a figure"), partial(_with_figure, group, name, text, answers)
        )
        self.figures_trouble.tell(line)


def _with_fallback(price: str, currency: str, what: str, job: Job) -> Job:
    checked_currency(currency)
    if not price.strip():
        return job.edited(fallback=None)
    return job.edited(fallback=Fallback.of(amount(price), currency, what or "quote"))


def _with_figure(group: str, name: str, text: str, answers: Answers | None, job: Job) -> Job:
    """Return the job with one figure changed, once the engine has accepted it; emptied, the shipped one."""
    kept = job.settings_changes.get(group)
    own = dict(kept) if isinstance(kept, dict) else {}
    if text.strip():
        own[name] = number(text)
        if answers is not None:
            answers.settings.with_changes({group: own})
    else:
        own.pop(name, None)
    return job.edited(settings_changes=job.settings_changes | {group: own})


def _bars(answers: Answers, plan: Buying) -> list[Bar]:
    """Return the candidates with a price and a chance, those of the plan first in its order."""
    names = {listing.id: name_of(listing) for listing in answers.job.listings}
    order = {step.id: number for number, step in enumerate(plan.steps, 1)}
    bars = [
        Bar(
            names.get(one.id, ""),
            one.judgement.verdict,
            order.get(one.id, 0),
            gamble.landed,
            gamble.lost,
            one.fit_chance,
            one.cost is not None and one.cost.shipping_presumed,
        )
        for one in answers.to_try
        if one.fit_chance > 0
        and (gamble := gamble_in(one, plan.fallback.currency, answers.settings)) is not None
    ]
    return sorted(bars, key=lambda bar: bar.step or len(bars) + 1)
