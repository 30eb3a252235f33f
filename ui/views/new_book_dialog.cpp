#include "ui/views/new_book_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>

#include "core/lens/orders.h"
#include "core/lens/quantities.h"
#include "core/optics/medium.h"
#include "ui/models/shown_numbers.h"
#include "ui/views/named.h"

namespace prismwright {
namespace {

QString from_view(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString free_name(const QString& folder) {
  const QDir dir(folder);
  for (int number = 1;; ++number) {
    const QString name = number == 1 ? NewBookDialog::tr("New lens.lensbook")
                                     : NewBookDialog::tr("New lens %1.lensbook").arg(number);
    if (!dir.exists(name)) return dir.filePath(name);
  }
}

}  // namespace

NewBookDialog::NewBookDialog(const QString& folder, QWidget* parent) : QDialog(parent) {
  setObjectName(QStringLiteral("new"));
  setWindowTitle(tr("New lensbook"));
  order_ = named(new QComboBox(this), "new.order");
  for (const Order& order : orders())
    order_->addItem(tr("%1, focal distance %2 mm").arg(from_view(order.words)).arg(order.focal_mm),
                    from_view(order.key));
  order_->setCurrentIndex(std::max(0, order_->findData(QStringLiteral("4"))));
  work_ = named(new QComboBox(this), "new.work");
  work_->addItem(tr("bull's-eye: a beam from each panel"), static_cast<int>(Work::bullseye));
  work_->addItem(tr("belt: light all round"), static_cast<int>(Work::belt));
  panels_ = named(new QSpinBox(this), "new.panels");
  const Quantity& count = *find_quantity("brief.panels");
  panels_->setRange(static_cast<int>(count.min), static_cast<int>(count.max));
  panels_->setValue(8);
  material_ = named(new QComboBox(this), "new.material");
  for (const Medium& medium : media())
    material_->addItem(QString::fromStdString(medium.words()), QString::fromStdString(medium.name()));
  title_ = named(new QLineEdit(this), "new.title");
  file_ = named(new QLineEdit(QDir::toNativeSeparators(free_name(folder)), this), "new.file");
  file_->setMinimumWidth(380);
  auto* browse = named(new QPushButton(tr("Browse…"), this), "new.browse");
  connect(browse, &QPushButton::clicked, this, &NewBookDialog::browse);
  auto* file_row = new QHBoxLayout;
  file_row->addWidget(file_, 1);
  file_row->addWidget(browse);
  refusal_ = named(new QLabel(this), "new.refusal");
  refusal_->setProperty("refusal", true);
  refusal_->setWordWrap(true);
  refusal_->hide();

  auto* form = new QFormLayout(this);
  form->setContentsMargins(24, 24, 24, 16);
  form->setVerticalSpacing(12);
  form->addRow(tr("&Title"), title_);
  form->addRow(tr("&Order"), order_);
  form->addRow(tr("&Work"), work_);
  form->addRow(tr("&Panels, %1 to %2").arg(panels_->minimum()).arg(panels_->maximum()), panels_);
  form->addRow(tr("&Material"), material_);
  form->addRow(tr("&File"), file_row);
  form->addRow(refusal_);
  auto* buttons = new QDialogButtonBox(this);
  auto* make = named(buttons->addButton(tr("Make the lensbook"), QDialogButtonBox::AcceptRole), "new.make");
  make->setProperty("brass", true);
  make->setDefault(true);
  named(buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole), "new.cancel");
  connect(buttons, &QDialogButtonBox::accepted, this, &NewBookDialog::make);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  form->addRow(buttons);
}

std::optional<Lensbook> NewBookDialog::takeBook() { return std::exchange(book_, std::nullopt); }

void NewBookDialog::browse() {
  const QString path = QFileDialog::getSaveFileName(this, tr("File of the new lensbook"), file_->text(),
                                                    tr("Lensbooks (*.lensbook)"));
  if (!path.isEmpty()) file_->setText(QDir::toNativeSeparators(path));
}

void NewBookDialog::make() {
  const auto refuse = [this](const Problem& problem) {
    refusal_->setText(sentence_of(problem));
    refusal_->show();
  };
  LensValues values = starting_values(order_->currentData().toString().toStdString(),
                                      static_cast<Work>(work_->currentData().toInt()), panels_->value());
  const std::vector<Assignment> chosen = {{"material.name", material_->currentData().toString().toStdString()},
                                          {"brief.title", title_->text().trimmed().toStdString()}};
  Outcome<LensValues> wanted = with_assignments(values, chosen);
  if (!wanted) return refuse(wanted.problem());
  QString path = QDir::fromNativeSeparators(file_->text().trimmed());
  if (!path.endsWith(QLatin1String(".lensbook"))) path += QStringLiteral(".lensbook");
  Outcome<Lensbook> made = Lensbook::create(path.toStdString(), *wanted);
  if (!made) return refuse(made.problem());
  book_.emplace(std::move(made).value());
  accept();
}

}  // namespace prismwright
