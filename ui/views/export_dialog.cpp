#include "ui/views/export_dialog.h"
#include "ui/models/shown_numbers.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <exception>

#include "core/lens/quantities.h"
#include "geometry/exports.h"

namespace prismwright {
namespace {

template <class Widget>
Widget* named(Widget* widget, const char* name) {
  widget->setObjectName(QLatin1String(name));
  return widget;
}

/// The outcome of writing as a sentence, and whether it is well.
std::pair<QString, bool> told(const Outcome<std::vector<std::string>>& written) {
  if (!written) return {sentence_of(written.problem()), false};
  return {ExportDialog::tr("%n file(s) written.", nullptr, static_cast<int>(written->size())), true};
}

}  // namespace

ExportDialog::ExportDialog(Workbench* bench, const QString& folder, QWidget* parent)
    : QDialog(parent), made_(bench->made()), selection_(bench->selection()) {
  setObjectName(QStringLiteral("export"));
  setWindowTitle(tr("Export solids"));
  folder_ = named(new QLineEdit(QDir::toNativeSeparators(folder), this), "export.folder");
  folder_->setMinimumWidth(420);
  auto* browse = named(new QPushButton(tr("Browse…"), this), "export.browse");
  connect(browse, &QPushButton::clicked, this, [this] {
    const QString chosen = QFileDialog::getExistingDirectory(this, tr("Folder for the files"), folder_->text());
    if (!chosen.isEmpty()) folder_->setText(QDir::toNativeSeparators(chosen));
  });
  auto* folder_row = new QHBoxLayout;
  folder_row->addWidget(folder_, 1);
  folder_row->addWidget(browse);
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
  bar_ = named(new QProgressBar(this), "export.bar");
  bar_->setRange(0, 1000);
  bar_->setTextVisible(false);
  message_ = named(new QLabel(this), "export.message");
  message_->setWordWrap(true);
  message_->setMinimumHeight(36);

  auto* form = new QFormLayout(this);
  form->setContentsMargins(24, 24, 24, 16);
  form->setVerticalSpacing(12);
  form->addRow(tr("&Folder"), folder_row);
  form->addRow(tr("Files"), step_);
  form->addRow(QString(), stl_);
  form->addRow(tr("&Chord tolerance"), chord_row);
  form->addRow(tr("Prisms"), selected_);
  form->addRow(bar_);
  form->addRow(message_);
  auto* buttons = new QDialogButtonBox(this);
  write_ = named(buttons->addButton(tr("Write the files"), QDialogButtonBox::ActionRole), "export.write");
  write_->setProperty("brass", true);
  write_->setDefault(true);
  close_ = named(buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole), "export.close");
  connect(write_, &QPushButton::clicked, this, &ExportDialog::write);
  connect(buttons, &QDialogButtonBox::rejected, this, &ExportDialog::reject);
  form->addRow(buttons);
}

ExportDialog::~ExportDialog() {
  stop_ = true;
  if (worker_.joinable()) worker_.join();
}

QString ExportDialog::folder() const { return QDir::fromNativeSeparators(folder_->text().trimmed()); }

/// While files are being written the button stops the work; the dialog closes when nothing runs.
void ExportDialog::reject() {
  if (isWriting())
    stop_ = true;
  else
    QDialog::reject();
}

void ExportDialog::write() {
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
  setWriting(true);
  const auto progress = [this](double share, std::string_view what) {
    const QString words = QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size()));
    QMetaObject::invokeMethod(
        this,
        [this, share, words] {
          bar_->setValue(static_cast<int>(1000 * share));
          message_->setText(words);
        },
        Qt::QueuedConnection);
    return !stop_.load();
  };
  worker_ = std::thread([this, choice, progress, into = folder().toStdString()] {
    std::pair<QString, bool> outcome;
    try {
      outcome = told(export_bodies(*made_->bodies, *made_->metal, into, choice, progress));
    } catch (const std::exception& error) {
      outcome = {tr("The files could not be written: %1.").arg(QString::fromUtf8(error.what())), false};
    }
    QMetaObject::invokeMethod(
        this,
        [this, outcome] {
          worker_.join();
          setWriting(false);
          finish(outcome.first, outcome.second);
        },
        Qt::QueuedConnection);
  });
}

void ExportDialog::finish(const QString& message, bool well) {
  message_->setText(message);
  message_->setProperty("refusal", !well);
  message_->setStyleSheet(message_->styleSheet());  // takes the changed property up
  bar_->setValue(well ? 1000 : 0);
}

void ExportDialog::setWriting(bool writing) {
  stop_ = false;
  write_->setEnabled(!writing);
  close_->setText(writing ? tr("Stop") : tr("Close"));
  message_->setProperty("refusal", false);
  message_->setStyleSheet(message_->styleSheet());
}

}  // namespace prismwright
