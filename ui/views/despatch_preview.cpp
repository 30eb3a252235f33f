#include "ui/views/despatch_preview.h"

#include <QDir>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QImageWriter>
#include <QKeyEvent>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/image_picture.h"
#include "ui/views/named.h"
#include "ui/views/sheet_files.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

constexpr double kZoomStep = 1.25;

}  // namespace

DespatchPreview::DespatchPreview(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(4);
  column->addWidget(makeHead());
  stack_ = new QStackedWidget(this);
  paper_ = named(new SheetPicture(stack_), "despatch.preview");
  paper_->setAccessibleName(tr("Sheet"));
  picture_ = named(new ImagePicture(stack_), "despatch.picture");
  picture_->setAccessibleName(tr("Picture"));
  words_ = named(new QLabel(stack_), "despatch.words");
  words_->setWordWrap(true);
  words_->setTextFormat(Qt::PlainText);
  words_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  words_->setMargin(32);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  auto* scroll = new QScrollArea(stack_);
  scroll->setWidget(words_);
  scroll->setWidgetResizable(true);
  stack_->addWidget(paper_);
  stack_->addWidget(picture_);
  stack_->addWidget(scroll);
  column->addWidget(stack_, 1);
  setSight({}, {});
}

QToolButton* DespatchPreview::addButton(const char* name, const QString& words, const QString& tip) {
  auto* button = named(new QToolButton(this), name);
  button->setText(words);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  button->setProperty("tool", true);
  button->setFocusPolicy(Qt::TabFocus);
  return button;
}

QWidget* DespatchPreview::makeHead() {
  auto* head = new QWidget(this);
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(8, 0, 0, 0);
  row->setSpacing(4);
  title_ = named(new QLabel(head), "despatch.title");
  title_->setProperty("head", true);
  title_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);  // a long name never widens the window
  previous_ = addButton("despatch.previous", QStringLiteral("‹"), tr("Previous sheet (Page Up)"));
  of_ = named(new QLabel(head), "despatch.sheet");
  of_->setAlignment(Qt::AlignCenter);
  next_ = addButton("despatch.next", QStringLiteral("›"), tr("Next sheet (Page Down)"));
  smaller_ = addButton("despatch.smaller", QStringLiteral("−"), tr("Reduce (−)"));
  larger_ = addButton("despatch.larger", QStringLiteral("+"), tr("Enlarge (+)"));
  whole_ = addButton("despatch.whole", tr("Whole"), tr("The whole sheet in sight (Home)"));
  save_ = addButton("despatch.sheet.save", tr("Save…"), tr("Saves the sheet in sight as PDF or SVG"));
  save_->setIcon(drawn_icon(QStringLiteral("save")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  row->addWidget(title_, 1);
  for (QWidget* widget :
       {static_cast<QWidget*>(previous_), static_cast<QWidget*>(of_), static_cast<QWidget*>(next_)})
    row->addWidget(widget);
  row->addSpacing(12);
  for (QToolButton* button : {smaller_, larger_, whole_}) row->addWidget(button);
  row->addSpacing(12);
  row->addWidget(save_);
  head->setMinimumHeight(save_->sizeHint().height());
  connect(previous_, &QToolButton::clicked, this, [this] { turn(-1); });
  connect(next_, &QToolButton::clicked, this, [this] { turn(1); });
  connect(smaller_, &QToolButton::clicked, this, [this] { canvas()->zoom(1 / kZoomStep); });
  connect(larger_, &QToolButton::clicked, this, [this] { canvas()->zoom(kZoomStep); });
  connect(whole_, &QToolButton::clicked, this, [this] { canvas()->fitAll(); });
  connect(save_, &QToolButton::clicked, this, &DespatchPreview::save);
  return head;
}

ZoomCanvas* DespatchPreview::canvas() const {
  return stack_->currentIndex() == 1 ? static_cast<ZoomCanvas*>(picture_) : static_cast<ZoomCanvas*>(paper_);
}

void DespatchPreview::setSight(const DespatchSight& sight, const QString& words) {
  const bool same = sight.piece.group == sight_.piece.group && sight.piece.name == sight_.piece.name;
  sight_ = sight;
  const std::size_t sheets = sight_.drawing ? sight_.drawing->sheets.size() : 0;
  if (!same || sheet_ >= sheets) sheet_ = 0;
  const QString piece = QString::fromStdString(sight_.piece.words);
  showTitle(piece.isEmpty() && sight_.drawing ? QString::fromStdString(sight_.drawing->title) : piece);
  if (sheets > 0) {
    stack_->setCurrentIndex(0);
    showSheet(same);
  } else if (!sight_.picture.isNull()) {
    picture_->setImage(sight_.picture);
    stack_->setCurrentIndex(1);
  } else {
    words_->setText(words);
    stack_->setCurrentIndex(2);
  }
  followSheets();
}

void DespatchPreview::await(const DespatchPiece& piece) {
  if (piece.group == sight_.piece.group && piece.name == sight_.piece.name) return;
  showTitle(tr("%1: being drawn").arg(QString::fromStdString(piece.words)));
}

void DespatchPreview::showTitle(const QString& title) {
  title_->setText(title);
  title_->setToolTip(title);
}

void DespatchPreview::setSaveBeside(const QString& folder, const QString& book) {
  folder_ = folder;
  book_ = book;
}

void DespatchPreview::turn(int by) {
  const int sheets = sight_.drawing ? static_cast<int>(sight_.drawing->sheets.size()) : 0;
  const int wanted = static_cast<int>(sheet_) + by;
  if (wanted < 0 || wanted >= sheets) return;
  sheet_ = static_cast<std::size_t>(wanted);
  showSheet(false);
  followSheets();
}

void DespatchPreview::showSheet(bool keeps_view) {
  paper_->setSheet(sight_.drawing->sheets[sheet_], keeps_view);
}

void DespatchPreview::followSheets() {
  const std::size_t sheets = stack_->currentIndex() == 0 && sight_.drawing ? sight_.drawing->sheets.size() : 0;
  const bool to_see = stack_->currentIndex() != 2;
  of_->setText(sheets > 0 ? tr("Sheet %1 of %2").arg(sheet_ + 1).arg(sheets) : QString());
  previous_->setEnabled(sheets > 0 && sheet_ > 0);
  next_->setEnabled(sheet_ + 1 < sheets);
  for (QWidget* widget :
       {static_cast<QWidget*>(previous_), static_cast<QWidget*>(of_), static_cast<QWidget*>(next_)})
    widget->setVisible(sheets > 0);
  for (QToolButton* button : {smaller_, larger_, whole_, save_}) button->setVisible(to_see);
  save_->setToolTip(sheets > 0 ? tr("Saves the sheet in sight as PDF or SVG") : tr("Saves the picture as PNG"));
}

void DespatchPreview::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_PageUp) return turn(-1);
  if (event->key() == Qt::Key_PageDown) return turn(1);
  QWidget::keyPressEvent(event);
}

QString DespatchPreview::offeredName() const {
  const QString of_piece = QStringLiteral("%1-%2").arg(book_, QString::fromStdString(sight_.piece.name));
  const bool several = sight_.drawing && sight_.drawing->sheets.size() > 1;
  return several ? QStringLiteral("%1-%2").arg(of_piece).arg(sheet_ + 1) : of_piece;
}

void DespatchPreview::save() {
  const bool is_picture = stack_->currentIndex() == 1;
  QFileDialog dialog(this, is_picture ? tr("Save the picture") : tr("Save the sheet"));
  dialog.setObjectName(QStringLiteral("despatch.sheet.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters(is_picture ? QStringList{tr("PNG (*.png)")}
                                   : QStringList{tr("PDF (*.pdf)"), tr("SVG (*.svg)")});
  dialog.setDefaultSuffix(is_picture ? QStringLiteral("png") : QStringLiteral("pdf"));
  connect(&dialog, &QFileDialog::filterSelected, &dialog, [&dialog](const QString& filter) {
    dialog.setDefaultSuffix(filter.contains(QLatin1String("svg")) ? QStringLiteral("svg")
                                                                  : QStringLiteral("pdf"));
  });
  dialog.setDirectory(folder_);
  dialog.selectFile(offeredName());
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  const QString shown = QDir::toNativeSeparators(path);
  if (is_picture) {
    QImageWriter writer(path);
    if (writer.write(sight_.picture))
      emit told(tr("Saved as %1.").arg(shown));
    else
      emit refused(
          tr("The picture could not be written to %1: choose a folder that can be written.").arg(shown));
    return;
  }
  const Done saved = save_sheet(*sight_.drawing, sheet_, path);
  if (saved)
    emit told(tr("Saved as %1.").arg(shown));
  else
    emit refused(sentence_of(saved.problem()));
}

}  // namespace prismwright
