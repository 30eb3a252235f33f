#include "ui/views/drawing_dialog.h"

#include <QComboBox>
#include <QDate>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>

#include "core/lens/orders.h"
#include "core/lens/whole_rings.h"
#include "core/optics/medium.h"
#include "geometry/section_drawing_files.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

/// What the title block says, from the values of the lens.
SectionSheetSettings settings_of(const LensValues& values) {
  SectionSheetSettings settings;
  settings.title = values.brief.title;
  settings.order = value_text(values, "brief.order");
  if (const Order* order = find_order(settings.order)) settings.order = std::string(order->words);
  settings.material = value_text(values, "material.name");
  if (const Medium* medium = find_medium(settings.material)) settings.material = medium->words();
  settings.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  return settings;
}

}  // namespace

DrawingDialog::DrawingDialog(Workbench* bench, const QString& path, QWidget* parent)
    : QDialog(parent), plan_(bench->plan()) {
  setObjectName(QStringLiteral("drawing"));
  setWindowTitle(tr("Save drawing of the section"));
  makeFields(path);
  unit_->setCurrentIndex(bench->inches() ? 1 : 0);
  message_ = named(new QLabel(this), "drawing.message");
  message_->setWordWrap(true);
  message_->setMinimumHeight(40);
  auto* form = static_cast<QFormLayout*>(layout());
  form->addRow(message_);
  auto* buttons = new QDialogButtonBox(this);
  auto* write = named(buttons->addButton(tr("Save the drawing"), QDialogButtonBox::ActionRole), "drawing.save");
  write->setProperty("brass", true);
  write->setDefault(true);
  named(buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole), "drawing.close");
  connect(write, &QPushButton::clicked, this, &DrawingDialog::save);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  form->addRow(buttons);
  followKind();
}

void DrawingDialog::makeFields(const QString& path) {
  auto* form = new QFormLayout(this);
  form->setContentsMargins(24, 24, 24, 16);
  form->setVerticalSpacing(12);
  kind_ = named(new QComboBox(this), "drawing.kind");
  kind_->addItem(tr("PDF, all sheets in one file"), QStringLiteral("pdf"));
  kind_->addItem(tr("SVG, one file for each sheet"), QStringLiteral("svg"));
  kind_->addItem(tr("DXF, outlines true to size in mm"), QStringLiteral("dxf"));
  file_ = named(new QLineEdit(QDir::toNativeSeparators(path), this), "drawing.file");
  file_->setMinimumWidth(420);
  auto* choose = named(new QPushButton(tr("Browse…"), this), "drawing.browse");
  connect(choose, &QPushButton::clicked, this, &DrawingDialog::browse);
  auto* file_row = new QHBoxLayout;
  file_row->addWidget(file_, 1);
  file_row->addWidget(choose);
  paper_ = named(new QComboBox(this), "drawing.paper");
  paper_->addItem(tr("as the scale asks: A4 or A3"), -1);
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter})
    paper_->addItem(QString::fromUtf8(name_of(paper)), static_cast<int>(paper));
  unit_ = named(new QComboBox(this), "drawing.unit");
  unit_->addItem(tr("millimetres"));
  unit_->addItem(tr("inches"));
  tolerance_ =
      named(new QLineEdit(QString::fromStdString(number_text(kArcTolerance_mm)), this), "drawing.tolerance");
  tolerance_->setAlignment(Qt::AlignRight);
  tolerance_->setFixedWidth(96);
  auto* tolerance_row = new QHBoxLayout;
  tolerance_row->addWidget(tolerance_);
  tolerance_row->addWidget(
      new QLabel(tr("mm, 0.0001 to 1: greatest distance of an arc from its true curve"), this));
  tolerance_row->addStretch(1);
  revision_ = named(new QLineEdit(this), "drawing.revision");
  form->addRow(tr("&Kind"), kind_);
  form->addRow(tr("&File"), file_row);
  form->addRow(tr("&Sheet"), paper_);
  form->addRow(tr("&Lengths in"), unit_);
  form->addRow(tr("&Tolerance"), tolerance_row);
  form->addRow(tr("&Revision"), revision_);
  connect(kind_, &QComboBox::activated, this, &DrawingDialog::followKind);
  connect(file_, &QLineEdit::textEdited, this, &DrawingDialog::followName);
}

/// The name takes the ending of the kind; a DXF has no sheet and is in mm.
void DrawingDialog::followKind() {
  const QString ending = kind_->currentData().toString();
  const QFileInfo file(file_->text());
  if (file.suffix().toLower() != ending)
    file_->setText(QDir::toNativeSeparators(file.dir().filePath(file.completeBaseName() + '.' + ending)));
  paper_->setEnabled(ending != QLatin1String("dxf"));
  unit_->setEnabled(ending != QLatin1String("dxf"));
}

void DrawingDialog::followName() {
  const int place = kind_->findData(QFileInfo(file_->text()).suffix().toLower());
  if (place < 0) return;
  kind_->setCurrentIndex(place);
  paper_->setEnabled(kind_->currentData() != QLatin1String("dxf"));
  unit_->setEnabled(paper_->isEnabled());
}

void DrawingDialog::browse() {
  const QString chosen = QFileDialog::getSaveFileName(this, tr("Save the drawing as"), file_->text(),
                                                      tr("Drawings (*.pdf *.svg *.dxf)"));
  if (chosen.isEmpty()) return;
  file_->setText(QDir::toNativeSeparators(chosen));
  followName();
}

void DrawingDialog::save() {
  const auto tolerance = read_number(tolerance_->text().toStdString(), "mm");
  if (!tolerance)
    return tell(tr("The tolerance \"%1\" is no length: type one from 0.0001 to 1 mm.").arg(tolerance_->text()),
                false);
  SectionSheetSettings settings = settings_of(plan_->values);
  settings.revision = revision_->text().trimmed().toStdString();
  if (const int paper = paper_->currentData().toInt(); paper >= 0) settings.paper = static_cast<Paper>(paper);
  settings.inches = unit_->isEnabled() && unit_->currentIndex() == 1;
  settings.tolerance_mm = *tolerance;
  settings.whole_rings = whole_rings(*plan_);
  const QString path = QDir::fromNativeSeparators(file_->text().trimmed());
  const auto written = write_section_drawing(plan_->section, settings, path.toStdString());
  if (!written) return tell(sentence_of(written.problem()), false);
  QStringList names;
  for (const std::string& each : *written) names << QFileInfo(QString::fromStdString(each)).fileName();
  tell(tr("Saved: %1.").arg(names.join(QStringLiteral(", "))), true);
}

void DrawingDialog::tell(const QString& message, bool well) {
  message_->setText(message);
  message_->setProperty("refusal", !well);
  message_->setStyleSheet(message_->styleSheet());  // takes the changed property up
}

void save_section_drawing(Workbench* bench, QWidget* parent) {
  if (!bench->plan()) return;
  const QFileInfo book(QString::fromStdString(bench->book().path()));
  DrawingDialog dialog(
      bench, book.dir().filePath(DrawingDialog::tr("%1 section.pdf").arg(book.completeBaseName())), parent);
  dialog.exec();
}

}  // namespace prismwright
