#include "ui/views/writing_dialog.h"

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

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;  // of the bar

/// The outcome of writing as a sentence, and whether it is well.
std::pair<QString, bool> told(const Outcome<std::vector<std::string>>& written) {
  if (!written) return {sentence_of(written.problem()), false};
  return {WritingDialog::tr("%n file(s) written.", nullptr, static_cast<int>(written->size())), true};
}

}  // namespace

WritingDialog::WritingDialog(const QString& name, const QString& title, const QString& folder, QWidget* parent)
    : QDialog(parent), name_(name), form_(new QFormLayout(this)) {
  setObjectName(name);
  setWindowTitle(title);
  form_->setContentsMargins(24, 24, 24, 16);
  form_->setVerticalSpacing(12);
  folder_ = new QLineEdit(QDir::toNativeSeparators(folder), this);
  folder_->setObjectName(name + ".folder");
  folder_->setMinimumWidth(420);
  auto* browse = new QPushButton(tr("Browse…"), this);
  browse->setObjectName(name + ".browse");
  connect(browse, &QPushButton::clicked, this, [this] {
    const QString chosen = QFileDialog::getExistingDirectory(this, tr("Folder for the files"), folder_->text());
    if (!chosen.isEmpty()) folder_->setText(QDir::toNativeSeparators(chosen));
  });
  auto* row = new QHBoxLayout;
  row->addWidget(folder_, 1);
  row->addWidget(browse);
  form_->addRow(tr("&Folder"), row);
}

void WritingDialog::addFoot() {
  bar_ = new QProgressBar(this);
  bar_->setObjectName(name_ + ".bar");
  bar_->setRange(0, kSteps);
  bar_->setTextVisible(false);
  message_ = new QLabel(this);
  message_->setObjectName(name_ + ".message");
  message_->setWordWrap(true);
  message_->setMinimumHeight(36);
  form_->addRow(bar_);
  form_->addRow(message_);
  auto* buttons = new QDialogButtonBox(this);
  write_ = buttons->addButton(tr("Write the files"), QDialogButtonBox::ActionRole);
  write_->setObjectName(name_ + ".write");
  write_->setProperty("brass", true);
  write_->setDefault(true);
  close_ = buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole);
  close_->setObjectName(name_ + ".close");
  connect(write_, &QPushButton::clicked, this, [this] { begin(); });
  connect(buttons, &QDialogButtonBox::rejected, this, &WritingDialog::reject);
  form_->addRow(buttons);
}

WritingDialog::~WritingDialog() {
  stop_ = true;
  if (worker_.joinable()) worker_.join();
}

QString WritingDialog::folder() const { return QDir::fromNativeSeparators(folder_->text().trimmed()); }

/// While files are being written the button stops the work; the dialog closes when nothing runs.
void WritingDialog::reject() {
  if (isWriting())
    stop_ = true;
  else
    QDialog::reject();
}

void WritingDialog::write(Work work) {
  setWriting(true);
  const Progress progress = [this](double share, std::string_view what) {
    const QString words = QString::fromUtf8(what.data(), static_cast<qsizetype>(what.size()));
    QMetaObject::invokeMethod(
        this,
        [this, share, words] {
          bar_->setValue(static_cast<int>(kSteps * share));
          message_->setText(words);
        },
        Qt::QueuedConnection);
    return !stop_.load();
  };
  worker_ = std::thread([this, work = std::move(work), progress, into = folder().toStdString()] {
    std::pair<QString, bool> outcome;
    try {
      outcome = told(work(into, progress));
    } catch (const std::exception& error) {
      outcome = {tr("The files could not be written: %1.").arg(QString::fromUtf8(error.what())), false};
    }
    QMetaObject::invokeMethod(
        this,
        [this, outcome] {
          worker_.join();
          setWriting(false);
          finish(outcome.second ? (outcome.first + QLatin1Char(' ') + afterword()).trimmed() : outcome.first,
                 outcome.second);
        },
        Qt::QueuedConnection);
  });
}

void WritingDialog::finish(const QString& message, bool well) {
  message_->setText(message);
  message_->setProperty("refusal", !well);
  message_->setStyleSheet(message_->styleSheet());  // takes the changed property up
  bar_->setValue(well ? kSteps : 0);
}

void WritingDialog::setWriting(bool writing) {
  stop_ = false;
  write_->setEnabled(!writing);
  close_->setText(writing ? tr("Stop") : tr("Close"));
  message_->setProperty("refusal", false);
  message_->setStyleSheet(message_->styleSheet());
}

}  // namespace prismwright
