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

#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/plate_dxf.h"
#include "geometry/safe_file.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

HouseWords words_of(const LensValues& values, bool inches) {
  HouseWords words = house_words(values, QDate::currentDate().toString(Qt::ISODate).toStdString(), "");
  words.inches = inches;
  return words;
}

}  // namespace

Done save_part_drawing(const Drawing& drawing, std::size_t sheet, const FlatPart* flat,
                       const std::vector<std::string>& marks, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  const std::string file = path.toStdString();
  if (ending == "dxf" && flat) return write_whole(file, plate_dxf(*flat, marks));
  if (ending == "dxf")
    return file_problem("ending", file,
                        marks.front() + " is turned, not cut from a plate: save it as .pdf or .svg.");
  if (ending != "pdf" && ending != "svg")
    return file_problem("ending", file,
                        "\"" + file + "\" does not end in .pdf, .svg or .dxf: give it one of these endings.");
  if (ending == "svg") return write_whole(file, svg_text(drawing.sheets.at(sheet), marks.front()));
  const Outcome<std::string> bytes = pdf_bytes(drawing);
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
  before_ = addTurner(QStringLiteral("frame.drawing.before"), Qt::LeftArrow, tr("Sheet before"), -1);
  next_ = addTurner(QStringLiteral("frame.drawing.next"), Qt::RightArrow, tr("Next sheet"), 1);
  head->addWidget(before_);
  head->addWidget(next_);
  head->addWidget(save_);
  column->addLayout(head);
  column->addWidget(picture_, 1);
  connect(bench_, &Workbench::unitsChanged, this, [this] { draw(true); });
  setPart(nullptr, {});
}

QToolButton* PartDrawing::addTurner(const QString& name, Qt::ArrowType arrow, const QString& tip, int by) {
  auto* turner = new QToolButton(this);
  turner->setObjectName(name);
  turner->setArrowType(arrow);
  turner->setProperty("tool", true);
  turner->setFocusPolicy(Qt::TabFocus);
  turner->setToolTip(tip);
  turner->setAccessibleName(tip);
  connect(turner, &QToolButton::clicked, this,
          [this, by] { turnTo(sheet_ + static_cast<std::size_t>(by), false); });
  return turner;
}

void PartDrawing::setPart(const std::shared_ptr<const MadeLens>& made, const PartsLine& alike) {
  const std::string mark = alike.marks.empty() ? std::string() : alike.marks.front();
  const bool same_mark = !alike_.marks.empty() && alike_.marks.front() == mark;
  if (made_ != made)
    landings_ = made && made->frame ? landings(*made->frame, *made->plan) : std::vector<Landing>();
  made_ = made;
  alike_ = alike;
  flat_ = nullptr;
  if (made_ && made_->frame) {
    const auto& flats = made_->frame->flats;
    const auto found =
        std::find_if(flats.begin(), flats.end(), [&](const FlatPart& part) { return part.mark == mark; });
    if (found != flats.end()) flat_ = &*found;
  }
  if (!same_mark) sheet_ = 0;
  draw(same_mark);
}

void PartDrawing::draw(bool keeps_view) {
  drawing_.reset();
  if (made_ && made_->frame)
    drawing_ = drawing_of(*made_->frame, alike_, words_of(made_->plan->values, bench_->inches()), landings_);
  save_->setEnabled(drawing_.has_value());
  if (drawing_) return turnTo(std::min(sheet_, drawing_->drawing.sheets.size() - 1), keeps_view);
  before_->hide();
  next_->hide();
  told_->clear();
  if (alike_.marks.empty())
    return picture_->setReason(made_ ? tr("Choose a part in the table: its drawing stands here.") : QString());
  picture_->setReason(tr("%1 is bought: it has no drawing.").arg(marks_words(marks_of(alike_))));
}

void PartDrawing::turnTo(std::size_t sheet, bool keeps_view) {
  const std::vector<Sheet>& sheets = drawing_->drawing.sheets;
  sheet_ = sheet;
  before_->setVisible(sheets.size() > 1);
  next_->setVisible(sheets.size() > 1);
  before_->setEnabled(sheet > 0);
  next_->setEnabled(sheet + 1 < sheets.size());
  const QString marks = marks_words(marks_of(alike_));
  told_->setText(sheets.size() > 1 ? tr("%1, sheet %2 of %3").arg(marks).arg(sheet + 1).arg(sheets.size())
                                   : marks);
  picture_->setSheet(sheets[sheet], keeps_view);
}

void PartDrawing::save() {
  QFileDialog dialog(this, tr("Save the drawing"));
  dialog.setObjectName(QStringLiteral("frame.drawing.saveTo"));
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  QStringList filters{tr("Drawing (*.pdf)"), tr("This sheet (*.svg)")};
  if (flat_) filters << tr("Plate to be cut (*.dxf)");
  dialog.setNameFilters(filters);
  dialog.setDefaultSuffix(QStringLiteral("pdf"));
  connect(&dialog, &QFileDialog::filterSelected, &dialog, [&dialog](const QString& filter) {
    dialog.setDefaultSuffix(filter.section(QStringLiteral("*."), 1).chopped(1));
  });
  dialog.setDirectory(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  dialog.selectFile(QString::fromStdString(alike_.marks.front()));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().constFirst();
  const Done saved = save_part_drawing(drawing_->drawing, sheet_, flat_, alike_.marks, path);
  told_->setText(saved ? tr("Saved as %1").arg(QDir::toNativeSeparators(path)) : sentence_of(saved.problem()));
  told_->setToolTip(told_->text());
}

}  // namespace prismwright
