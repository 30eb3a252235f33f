#include "ui/views/notes_field.h"

#include <QKeyEvent>
#include <algorithm>
#include <utility>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

constexpr int kPadding_px = 8;  // of the style sheet, above and below
constexpr int kFewestLines = 2;
constexpr int kMostLines = 12;  // longer notes scroll

}  // namespace

NotesField::NotesField(Workbench* bench, std::string key, QWidget* parent)
    : QPlainTextEdit(parent), bench_(bench), key_(std::move(key)) {
  setObjectName(QStringLiteral("field.") + QString::fromStdString(key_));
  setTabChangesFocus(true);
  if (const Quantity* quantity = find_quantity(key_)) {
    setToolTip(QString::fromStdString(quantity->meaning));
    setAccessibleName(QString::fromStdString(quantity->label));
    setPlaceholderText(QString::fromStdString(quantity->meaning));
  }
  connect(bench_, &Workbench::bookChanged, this, &NotesField::follow);
  connect(bench_, &Workbench::valuesChanged, this, &NotesField::follow);
  connect(this, &QPlainTextEdit::textChanged, this, &NotesField::fitHeight);
  follow();
  fitHeight();
}

void NotesField::fitHeight() {
  // The document counts its lines as they are broken at the width of the field.
  const int lines = std::clamp(static_cast<int>(document()->size().height()), kFewestLines, kMostLines);
  const int around = 2 * frameWidth() + contentsMargins().top() + contentsMargins().bottom() + kPadding_px;
  setFixedHeight(lines * fontMetrics().lineSpacing() + static_cast<int>(2 * document()->documentMargin()) +
                 around);
}

void NotesField::resizeEvent(QResizeEvent* event) {
  QPlainTextEdit::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) fitHeight();
}

void NotesField::follow() {
  const QString text = QString::fromStdString(value_text(bench_->values(), key_));
  setReadOnly(!bench_->hasBook() || bench_->book().read_only());
  const bool half_typed = hasFocus() && document()->isModified();
  if (half_typed || text == toPlainText()) return;
  setPlainText(text);
}

void NotesField::send() {
  const std::string text = toPlainText().toStdString();
  if (isReadOnly() || text == value_text(bench_->values(), key_)) return;
  const Assignment assignment{key_, text};
  if (bench_->assign({&assignment, 1}, {})) document()->setModified(false);
}

/// Undo belongs to the typing only while something is being typed; else it takes the book's last step back.
bool NotesField::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && !document()->isModified()) {
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  return QPlainTextEdit::event(event);
}

void NotesField::focusOutEvent(QFocusEvent* event) {
  QPlainTextEdit::focusOutEvent(event);
  send();
}

}  // namespace prismwright
