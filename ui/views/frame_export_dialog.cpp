#include "ui/views/frame_export_dialog.h"

#include <QCheckBox>
#include <QDate>
#include <QFormLayout>

#include "geometry/frame_exports.h"

namespace prismwright {

FrameExportDialog::FrameExportDialog(std::shared_ptr<const MadeLens> made, std::shared_ptr<const Nest> nest,
                                     const QString& folder, bool inches, QWidget* parent)
    : WritingDialog(QStringLiteral("frame.exportTo"), tr("Export files of the frame"), folder, parent),
      made_(std::move(made)),
      nest_(std::move(nest)),
      inches_(inches) {
  plates_ = addBox("plates", tr("DXF of every shape of flat part"), true);
  nests_ = addBox("nests", tr("DXF of every sheet with its parts laid out"), true);
  step_ = addBox("step", tr("STEP of machined parts, and frame.step for all"), true);
  list_ = addBox("list", tr("Parts list and sheets as CSV"), true);
  drawings_ = addBox("drawings", tr("Drawings of parts and sheets, all in one PDF"), true);
  addFoot();
}

QCheckBox* FrameExportDialog::addBox(const char* name, const QString& words, bool on) {
  auto* box = new QCheckBox(words, this);
  box->setObjectName(objectName() + QLatin1Char('.') + QLatin1String(name));
  box->setChecked(on);
  form()->addRow(form()->rowCount() == 1 ? tr("Files") : QString(), box);
  return box;
}

void FrameExportDialog::begin() {
  FrameExportChoice choice = frame_export_choice(
      *made_->plan, *made_->frame, QDate::currentDate().toString(Qt::ISODate).toStdString(), inches_);
  choice.plates = plates_->isChecked();
  choice.nests = nests_->isChecked();
  choice.step = step_->isChecked();
  choice.list = list_->isChecked();
  choice.drawings = drawings_->isChecked();
  write([made = made_, nest = nest_, choice](const std::string& into,
                                             const Progress& progress) -> Outcome<std::vector<std::string>> {
    if (nest) return export_frame(*made->frame, *made->metal, *nest, into, choice, progress);
    const Outcome<Nest> own = nest_flats(made->frame->flats, made->plan->values.frame, progress);
    if (!own) return own.problem();
    return export_frame(*made->frame, *made->metal, *own, into, choice, progress);
  });
}

}  // namespace prismwright
