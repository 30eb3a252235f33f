#include "ui/views/quantity_editor.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <map>

#include "core/lens/orders.h"
#include "core/optics/medium.h"
#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

constexpr int kShortestChoice = 12;  // letters; a form may be narrow

bool is_number(const Quantity& quantity) {
  return quantity.form == QuantityForm::number || quantity.form == QuantityForm::count;
}

/// What a maker reads for a choice's key word.
QString choice_words(const std::string& key, const std::string& choice) {
  if (key == "brief.order")
    if (const Order* order = find_order(choice))
      return QString::fromUtf8(order->words.data(), static_cast<qsizetype>(order->words.size()));
  if (key == "material.name")
    if (const Medium* medium = find_medium(choice)) return QString::fromStdString(medium->words());
  static const std::map<std::string, const char*> kWords = {
      {"bullseye", QT_TR_NOOP("bull's-eye")},
      {"belt", QT_TR_NOOP("belt")},
      {"true", QT_TR_NOOP("true curve")},
      {"arc", QT_TR_NOOP("historic arc")},
      {"along_ray", QT_TR_NOOP("along the ray")},
      {"level", QT_TR_NOOP("level")},
      {"horizon", QT_TR_NOOP("the sea horizon")},
      {"side", QT_TR_NOOP("one entry side")},
      {"thickness", QT_TR_NOOP("greatest thickness")},
      {"count", QT_TR_NOOP("count")},
      {"area", QT_TR_NOOP("equal area")},
      {"height", QT_TR_NOOP("equal height")},
      {"by_hand", QT_TR_NOOP("hand, zone by zone")},
      {"reflecting", QT_TR_NOOP("reflecting face")},
      {"entry", QT_TR_NOOP("entry face")},
      {"exit", QT_TR_NOOP("exit face")},
      {"hollow_entry", QT_TR_NOOP("pair, entry hollow")},
      {"hollow_exit", QT_TR_NOOP("pair, exit hollow")},
      {"as_section", QT_TR_NOOP("as the section")},
      {"as_work", QT_TR_NOOP("as the work")},
      {"panel", QT_TR_NOOP("panel's axis")},
      {"lens", QT_TR_NOOP("lens axis")},
      {"flat", QT_TR_NOOP("flat")},
      {"cylinder", QT_TR_NOOP("upright cylinder")},
      {"one", QT_TR_NOOP("one, in the focus")},
      {"ring", QT_TR_NOOP("a ring, all alight")},
      {"changer", QT_TR_NOOP("a changer")},
      {"black_body", QT_TR_NOOP("black body")},
      {"illuminant_a", QT_TR_NOOP("illuminant A")},
      {"white_led", QT_TR_NOOP("white LED")},
      {"line", QT_TR_NOOP("a single line")},
      {"points", QT_TR_NOOP("by points")},
      {"radius", QT_TR_NOOP("radius")},
  };
  if (const auto found = kWords.find(choice); found != kWords.end()) return QuantityEditor::tr(found->second);
  return QString::fromStdString(choice);
}

}  // namespace

QuantityEditor::QuantityEditor(Workbench* bench, const std::string& key, QWidget* parent)
    : QWidget(parent), bench_(bench), quantity_(find_quantity(key)) {
  const QString name = QString::fromStdString(key);
  setObjectName("editor." + name);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  column->addLayout(row);
  if (quantity_->form == QuantityForm::choice)
    makeChoice();
  else
    makeLine();
  QWidget* field = choice_ ? static_cast<QWidget*>(choice_) : line_;
  field->setObjectName("field." + name);
  field->setToolTip(QString::fromStdString(quantity_->meaning));
  field->setAccessibleName(QString::fromStdString(quantity_->label));
  setFocusProxy(field);
  row->addWidget(field, is_number(*quantity_) ? 0 : 1);
  unit_ = new QLabel(this);
  range_ = new QLabel(this);
  range_->setObjectName("range." + name);
  range_->setProperty("muted", true);
  row->addWidget(unit_);
  row->addWidget(range_);
  if (is_number(*quantity_)) row->setStretchFactor(range_, 1);
  refusal_ = new QLabel(this);
  refusal_->setObjectName("refusal." + name);
  refusal_->setProperty("refusal", true);
  refusal_->setWordWrap(true);
  refusal_->hide();
  column->addWidget(refusal_);
  connect(bench_, &Workbench::bookChanged, this, &QuantityEditor::follow);
  connect(bench_, &Workbench::valuesChanged, this, &QuantityEditor::follow);
  connect(bench_, &Workbench::unitsChanged, this, &QuantityEditor::follow);
  follow();
}

// A line with the focus says that its editing is finished while it is being destroyed, after this editor is
// gone.
QuantityEditor::~QuantityEditor() {
  if (line_) line_->disconnect(this);
}

QLabel* QuantityEditor::makeLabel(QWidget* parent) const {
  auto* label = new QLabel(QString::fromStdString(quantity_->label), parent);
  label->setToolTip(QString::fromStdString(quantity_->meaning));
  label->setBuddy(choice_ ? static_cast<QWidget*>(choice_) : line_);
  return label;
}

void QuantityEditor::setIdle(const QString& reason) {
  if (reason == idle_) return;
  idle_ = reason;
  follow();
}

QString QuantityEditor::refusal() const { return refusal_->text(); }

void QuantityEditor::makeLine() {
  line_ = new QLineEdit(this);
  if (is_number(*quantity_)) {
    line_->setAlignment(Qt::AlignRight);
    line_->setFixedWidth(96);
  }
  if (quantity_->may_be_blank) line_->setPlaceholderText(tr("automatic"));
  if (quantity_->form == QuantityForm::text) line_->setPlaceholderText({});
  if (quantity_->key.starts_with("panels.")) line_->setPlaceholderText(tr("none"));
  if (quantity_->key.ends_with("_screen")) line_->setPlaceholderText(tr("generic glass"));
  line_->installEventFilter(this);
  connect(line_, &QLineEdit::editingFinished, this, &QuantityEditor::send);
}

void QuantityEditor::makeChoice() {
  choice_ = new QComboBox(this);
  choice_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  choice_->setMinimumContentsLength(kShortestChoice);
  for (const std::string& choice : quantity_->choices)
    choice_->addItem(choice_words(quantity_->key, choice), QString::fromStdString(choice));
  connect(choice_, &QComboBox::activated, this, &QuantityEditor::send);
}

void QuantityEditor::follow() {
  const std::string text = value_text(bench_->values(), quantity_->key);
  const bool may_edit = bench_->hasBook() && !bench_->book().read_only();
  unit_->setText(shown_unit(*quantity_, bench_->inches()));
  unit_->setVisible(!unit_->text().isEmpty());
  range_->setText(idle_.isEmpty() ? range_words(*quantity_, bench_->inches()) : idle_);
  range_->setVisible(!range_->text().isEmpty());
  range_->setWordWrap(!idle_.isEmpty());  // a reason is longer than a range
  if (choice_) {
    const QSignalBlocker quiet(choice_);
    choice_->setCurrentIndex(choice_->findData(QString::fromStdString(text)));
    choice_->setEnabled(may_edit && idle_.isEmpty());
    shown_ = QString::fromStdString(text);
  } else {
    const QString fresh = shown_value(*quantity_, text, bench_->inches());
    const bool half_typed = line_->hasFocus() && line_->isModified() && fresh == shown_;
    shown_ = fresh;
    line_->setReadOnly(!may_edit);
    line_->setEnabled(idle_.isEmpty());
    if (half_typed) return;
    line_->setText(shown_);
    line_->setCursorPosition(0);
  }
  showRefusal({});
}

void QuantityEditor::send() {
  const QString typed = choice_ ? choice_->currentData().toString() : line_->text();
  if (typed == shown_) {
    showRefusal({});
    return;
  }
  const std::string value = choice_ ? typed.toStdString() : typed_value(*quantity_, typed, bench_->inches());
  const Assignment assignment{quantity_->key, value};
  // A refused text stays in the field; it is not sent again until it is changed.
  if (!refusal_->isHidden() && typed == refusal_->property("refused").toString()) return;
  const Done done = bench_->assign({&assignment, 1}, {});
  if (done) {
    if (line_) line_->setModified(false);
    follow();
    return;
  }
  showRefusal(sentence_of(done.problem()));
  refusal_->setProperty("refused", typed);
  if (choice_) follow();
}

void QuantityEditor::showRefusal(const QString& sentence) {
  refusal_->setText(sentence);
  refusal_->setProperty("refused", QVariant());
  refusal_->setVisible(!sentence.isEmpty());
}

bool QuantityEditor::eventFilter(QObject* watched, QEvent* event) {
  if (watched != line_ || (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride))
    return QWidget::eventFilter(watched, event);
  auto* key = static_cast<QKeyEvent*>(event);
  const bool untouched = line_->text() == shown_;
  // Undo belongs to the typing only while something is being typed; else it takes the book's last step back.
  if (untouched && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
    event->ignore();
    return event->type() == QEvent::ShortcutOverride;
  }
  if (event->type() == QEvent::KeyPress && key->key() == Qt::Key_Escape && !untouched) {
    line_->setText(shown_);
    line_->setModified(false);
    showRefusal({});
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace prismwright
