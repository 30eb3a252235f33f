#include "ui/views/part_drawing.h"

#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/drawing/part_sheet.h"
#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/plate_dxf.h"
#include "geometry/safe_file.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

PartSheetWords words_of(const LensValues& values, const std::vector<std::string>& marks, bool inches) {
  PartSheetWords words;
  words.title = values.brief.title;
  words.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  words.marks = marks;
  words.inches = inches;
  return words;
}

}  // namespace

Done save_part_drawing(const FlatPart& part, const std::vector<std::string>& marks, const LensValues& values,
                       bool inches, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  const std::string file = path.toStdString();
  if (ending == "dxf") return write_whole(file, plate_dxf(part, marks));
  if (ending != "pdf" && ending != "svg")
    return file_problem("ending", file,
                        "\"" + file + "\" does not end in .pdf, .svg or .dxf: give it one of these endings.");
  const PartSheetWords words = words_of(values, marks, inches);
  const Sheet sheet = part_sheet(part, words);
  if (ending == "svg") return write_whole(file, svg_text(sheet, part.mark));
  const Outcome<std::string> bytes = pdf_bytes({part.mark, words.date, {sheet}});
  if (!bytes) return bytes.problem();
  return write_whole(file, *bytes);
}

PartDrawing::PartDrawing(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), picture_(new SheetPicture(this)) {
  picture_->setObjectName(QStringLiteral("frame.drawing"));
  picture_->setMinimumSize(240, 200);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  auto* head = new QHBoxLayout;
  head->setContentsMargins(8, 4, 0, 0);
  told_ = new QLabel(this);
  told_->setObjectName(QStringLiteral("frame.drawing.told"));
  told_->setProperty("muted", true);
  told_->setMinimumWidth(40);
  save_ = new QToolButton(this);
  save_->setObjectName(QStringLiteral("frame.drawing.save"));
  save_->setText(tr("Save drawing"));
  save_->setIcon(drawn_icon(QStringLiteral("sheet")));
  save_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  save_->setProperty("tool", true);
  save_->setFocusPolicy(Qt::TabFocus);
  save_->setToolTip(tr("Saves the drawing as PDF or SVG, or the plate to be cut as DXF"));
  connect(save_, &QToolButton::clicked, this, &PartDrawing::save);
  head->addWidget(told_, 1);
  head->addWidget(save_);
  column->addLayout(head);
  column->addWidget(picture_, 1);
  connect(bench_, &Workbench::unitsChanged, this, [this] { draw(true); });
  setPart(nullptr, {});
}

void PartDrawing::setPart(const std::shared_ptr<const MadeLens>& made, const PartsLine& alike) {
  const std::string mark = alike.marks.empty() ? std::string() : alike.marks.front();
  const bool same_mark = !alike_.marks.empty() && alike_.marks.front() == mark;
  made_ = made;
  alike_ = alike;
  part_ = nullptr;
  if (made_ && made_->frame) {
    const auto& flats = made_->frame->flats;
    const auto found =
        std::find_if(flats.begin(), flats.end(), [&](const FlatPart& part) { return part.mark == mark; });
    if (found != flats.end()) part_ = &*found;
  }
  draw(same_mark);
}

void PartDrawing::draw(bool keeps_view) {
  save_->setEnabled(part_ != nullptr);
  told_->setText(part_ ? marks_words(marks_of(alike_)) : QString());
  if (part_)
    return picture_->setSheet(part_sheet(*part_, words_of(made_->plan->values, alike_.marks, bench_->inches())),
                              keeps_view);
  if (alike_.marks.empty())
    return picture_->setReason(made_ ? tr("Choose a part in the table: its drawing stands here.") : QString());
  picture_->setReason(
      alike_.making == PartMaking::bought
          ? tr("%1 is bought: it has no drawing.").arg(marks_words(marks_of(alike_)))
          : tr("%1 is turned: its form stands in its STEP file.").arg(marks_words(marks_of(alike_))));
}

void PartDrawing::save() {
  QFileDialog dialog(this, tr("Save the drawing"));
  dialog.setObjectName(QStringLiteral("frame.drawing.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setNameFilters({tr("Drawing (*.pdf)"), tr("Drawing (*.svg)"), tr("Plate to be cut (*.dxf)")});
  dialog.setDefaultSuffix(QStringLiteral("pdf"));
  connect(&dialog, &QFileDialog::filterSelected, &dialog, [&dialog](const QString& filter) {
    dialog.setDefaultSuffix(filter.section(QStringLiteral("*."), 1).chopped(1));
  });
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(QString::fromStdString(alike_.marks.front()));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  const Done saved = save_part_drawing(*part_, alike_.marks, made_->plan->values, bench_->inches(), path);
  told_->setText(saved ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(saved.problem()));
  told_->setToolTip(told_->text());
}

}  // namespace prismwright
