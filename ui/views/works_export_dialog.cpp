#include "ui/views/works_export_dialog.h"

#include <QCheckBox>
#include <QDate>
#include <QFormLayout>

namespace prismwright {
namespace {

constexpr int kNotesShown = 3;

QString name_of(WorksExportDialog::Files files) {
  return files == WorksExportDialog::Files::masters ? QStringLiteral("masters.exportTo")
                                                    : QStringLiteral("moulds.exportTo");
}

QString title_of(WorksExportDialog::Files files) {
  return files == WorksExportDialog::Files::masters ? WorksExportDialog::tr("Export masters")
                                                    : WorksExportDialog::tr("Export moulds");
}

}  // namespace

struct WorksExportDialog::Told {
  std::mutex mutex;
  std::vector<std::string> notes;
};

WorksExportDialog::WorksExportDialog(Files files, std::shared_ptr<const LensPlan> plan,
                                     std::vector<Master> masters, const QStringList& chosen, bool inches,
                                     const QString& folder, QWidget* parent)
    : WritingDialog(name_of(files), title_of(files), folder, parent),
      files_(files),
      plan_(std::move(plan)),
      masters_(std::move(masters)),
      chosen_(chosen),
      inches_(inches),
      told_(std::make_shared<Told>()) {
  if (files_ == Files::masters) {
    step_ = addBox("step", tr("STEP of every master, grown for shrinkage and sanding stock"), true);
    stl_ = addBox("stl", tr("STL of every printed part, as it lies in the printer"), true);
    three_mf_ = addBox("threeMf", tr("3MF of every printed part"), true);
    sheets_ = addBox("sheets", tr("What to measure before and after finishing, as PDF and CSV"), true);
  } else {
    step_ = addBox("step", tr("STEP of both halves of every mould"), true);
    stl_ = addBox("stl", tr("STL of the halves, for a printer"), false);
  }
  only_ = addBox("chosen", tr("Only %1").arg(chosen_.join(QStringLiteral(", "))), !chosen_.isEmpty());
  only_->setVisible(!chosen_.isEmpty());
  addFoot();
}

WorksExportDialog::~WorksExportDialog() = default;

QCheckBox* WorksExportDialog::addBox(const char* name, const QString& words, bool on) {
  auto* box = new QCheckBox(words, this);
  box->setObjectName(objectName() + QLatin1Char('.') + QLatin1String(name));
  box->setChecked(on);
  form()->addRow(form()->rowCount() == 1 ? tr("Files") : QString(), box);
  return box;
}

std::vector<std::string> WorksExportDialog::only() const {
  std::vector<std::string> names;
  if (only_->isChecked())
    for (const QString& name : chosen_) names.push_back(name.toStdString());
  return names;
}

QString WorksExportDialog::afterword() const {
  const std::lock_guard<std::mutex> guard(told_->mutex);
  QStringList words;
  for (std::size_t i = 0; i < told_->notes.size() && i < kNotesShown; ++i)
    words << QString::fromStdString(told_->notes[i]);
  const auto more = static_cast<int>(told_->notes.size()) - static_cast<int>(words.size());
  if (more > 0) words << tr("Notes that stand with the files: %1 more.").arg(more);
  return words.join(QLatin1Char(' '));
}

void WorksExportDialog::begin() {
  const auto keep = [told = told_](const Outcome<WorksFiles>& files) -> Outcome<std::vector<std::string>> {
    if (!files) return files.problem();
    const std::lock_guard<std::mutex> guard(told->mutex);
    told->notes = files->notes;
    return files->paths;
  };
  if (files_ == Files::masters) {
    MastersExportChoice choice;
    choice.only = only();
    choice.files.step = step_->isChecked();
    choice.files.stl = stl_->isChecked();
    choice.files.three_mf = three_mf_->isChecked();
    choice.sheets = sheets_->isChecked();
    choice.inches = inches_;
    choice.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    write([plan = plan_, masters = masters_, choice, keep](const std::string& into, const Progress& progress) {
      return keep(export_masters(*plan, masters, into, choice, progress));
    });
    return;
  }
  MouldsExportChoice choice;
  choice.only = only();
  choice.files.step = step_->isChecked();
  choice.files.stl = stl_->isChecked();
  write([plan = plan_, masters = masters_, choice, keep](const std::string& into, const Progress& progress) {
    return keep(export_master_moulds(*plan, masters, into, choice, progress));
  });
}

}  // namespace prismwright
