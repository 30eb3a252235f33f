#include "ui/views/export_dialog.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "core/lens/quantities.h"
#include "geometry/exports.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {}  // namespace

ExportDialog::ExportDialog(Workbench* bench, const QString& folder, QWidget* parent)
    : WritingDialog(QStringLiteral("export"), tr("Export solids"), folder, parent),
      made_(bench->made()),
      selection_(bench->selection()) {
  step_ = named(new QCheckBox(tr("STEP, one file for each prism and lens.step for all"), this), "export.step");
  step_->setChecked(true);
  stl_ = named(new QCheckBox(tr("STL for printing, one file for each prism"), this), "export.stl");
  chord_ = named(new QLineEdit(QStringLiteral("0.05"), this), "export.chord");
  chord_->setAlignment(Qt::AlignRight);
  chord_->setFixedWidth(96);
  auto* chord_row = new QHBoxLayout;
  chord_row->addWidget(chord_);
  chord_row->addWidget(new QLabel(tr("mm, 0.001 to 1: greatest distance of a facet from its face"), this));
  chord_row->addStretch(1);
  selected_ =
      named(new QCheckBox(tr("Only the selected prisms (%1)").arg(selection_.size()), this), "export.selected");
  selected_->setEnabled(!selection_.isEmpty());
  form()->addRow(tr("Files"), step_);
  form()->addRow(QString(), stl_);
  form()->addRow(tr("&Chord tolerance"), chord_row);
  form()->addRow(tr("Prisms"), selected_);
  addFoot();
}

void ExportDialog::begin() {
  ExportChoice choice;
  choice.step = step_->isChecked();
  choice.stl = stl_->isChecked();
  if (!choice.step && !choice.stl)
    return finish(tr("No kind of file is chosen: choose STEP, STL or both."), false);
  const std::optional<double> chord = read_number(chord_->text().toStdString(), "mm");
  if (!chord || *chord < 0.001 || *chord > 1)
    return finish(tr("The chord tolerance \"%1\" is not between 0.001 and 1 mm: type a length in that range.")
                      .arg(chord_->text()),
                  false);
  choice.stl_chord_mm = *chord;
  if (selected_->isChecked())
    for (const QString& mark : selection_) choice.only.push_back(mark.toStdString());
  write([made = made_, choice](const std::string& into, const Progress& progress) {
    return export_bodies(*made->bodies, *made->metal, into, choice, progress);
  });
}

}  // namespace prismwright
