#include "ui/views/inspection_tab.h"

#include <QHBoxLayout>
#include <QInputDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QShowEvent>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/works/log_checks.h"
#include "ui/models/inspection_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/models/typed_number.h"
#include "ui/views/filtered_table.h"
#include "ui/views/named.h"
#include "ui/views/refusal_label.h"

namespace prismwright {
namespace {

QString decision_title(DecisionKind kind) {
  switch (kind) {
    case DecisionKind::accept:
      return InspectionTab::tr("Accept as it is");
    case DecisionKind::shim:
      return InspectionTab::tr("Set with a shim");
    case DecisionKind::scrap:
      return InspectionTab::tr("Scrap");
  }
  return {};
}

}  // namespace

InspectionTab::InspectionTab(WorksDesk* desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(8);
  told_ = named(new QLabel(this), "works.inspect.told");
  column->addWidget(told_);
  auto* halves = new QSplitter(Qt::Horizontal, this);
  halves->setChildrenCollapsible(false);
  prisms_ = new FilteredTable(QStringLiteral("works.inspected"), tr("Prisms"), halves);
  prisms_->setHint(tr("Filter: P03-U07"));
  prisms_->addChoice(2, tr("all prisms"));
  halves->addWidget(prisms_);
  halves->addWidget(makeFeatures());
  halves->setStretchFactor(0, 1);
  halves->setStretchFactor(1, 1);
  column->addWidget(halves, 1);
  connect(desk_, &WorksDesk::changed, this, &InspectionTab::follow);
  connect(desk_->bench(), &Workbench::selectionChanged, this, &InspectionTab::followSelection);
  connect(prisms_, &FilteredTable::chosen, this, [this](int line) {
    desk_->bench()->select(prisms_->sheet().rows[static_cast<std::size_t>(line)].marks);
  });
  connect(features_, &FilteredTable::chosen, this, &InspectionTab::showFeature);
}

QWidget* InspectionTab::makeFeatures() {
  auto* holder = new QWidget(this);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(8, 0, 0, 0);
  column->setSpacing(8);
  prism_ = named(new QLabel(holder), "works.inspect.prism");
  prism_->setWordWrap(true);
  column->addWidget(prism_);
  features_ = new FilteredTable(QStringLiteral("works.features"), tr("Measures"), holder);
  features_->setHint(tr("Filter: width, angle"));
  column->addWidget(features_, 1);
  how_ = named(new QLabel(holder), "works.inspect.how");
  how_->setWordWrap(true);
  how_->setProperty("muted", true);
  column->addWidget(how_);
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  reading_ = named(new QLineEdit(holder), "works.inspect.reading");
  reading_->setPlaceholderText(tr("Read"));
  by_ = named(new QLineEdit(QSettings().value(QStringLiteral("recordedBy")).toString(), holder),
              "works.inspect.by");
  by_->setPlaceholderText(tr("By"));
  record_ = named(new QPushButton(tr("Record reading"), holder), "works.inspect.record");
  record_->setProperty("brass", true);
  row->addWidget(reading_, 1);
  row->addWidget(by_, 1);
  row->addWidget(record_);
  column->addLayout(row);
  auto* decisions = new QHBoxLayout;
  decisions->setSpacing(8);
  auto* label = new QLabel(tr("Out of tolerance:"), holder);
  label->setProperty("muted", true);
  decisions->addWidget(label);
  addDecision(decisions, tr("Accept…"), "works.inspect.accept", DecisionKind::accept);
  addDecision(decisions, tr("Shim…"), "works.inspect.shim", DecisionKind::shim);
  addDecision(decisions, tr("Scrap…"), "works.inspect.scrap", DecisionKind::scrap);
  decisions->addStretch(1);
  column->addLayout(decisions);
  refusal_ = new RefusalLabel("works.inspect.refusal", holder);
  column->addWidget(refusal_);
  connect(record_, &QPushButton::clicked, this, &InspectionTab::record);
  connect(reading_, &QLineEdit::returnPressed, this, &InspectionTab::record);
  return holder;
}

QPushButton* InspectionTab::addDecision(QHBoxLayout* row, const QString& words, const char* name,
                                        DecisionKind kind) {
  auto* button = named(new QPushButton(words, this), name);
  connect(button, &QPushButton::clicked, this, [this, kind] { decide(kind); });
  row->addWidget(button);
  decisions_.push_back(button);
  return button;
}

void InspectionTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  follow();
}

void InspectionTab::follow() {
  if (!isVisible()) return;
  prisms_->setSheet(inspected_sheet(desk_->inspected()));
  const QString words = inspection_words(desk_->inspected());
  told_->setText(desk_->benchIsPending()
                     ? tr("%1. Readings of the laser bench are still being worked out.").arg(words)
                     : words);
  followSelection();
}

const InspectedPrism* InspectionTab::prism() const {
  const QStringList& marks = desk_->bench()->selection();
  const std::vector<InspectedPrism>& all = desk_->inspected();
  if (marks.isEmpty()) return all.empty() ? nullptr : &all.front();
  const std::string mark = marks.front().toStdString();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const InspectedPrism& each) { return each.mark == mark; });
  return found == all.end() ? nullptr : &*found;
}

const CheckedFeature* InspectionTab::feature() const {
  const InspectedPrism* one = prism();
  const auto line = features_->line();
  if (one == nullptr || !line || static_cast<std::size_t>(*line) >= one->features.size()) return nullptr;
  return &one->features[static_cast<std::size_t>(*line)];
}

void InspectionTab::followSelection() {
  if (!isVisible()) return;
  const InspectedPrism* one = prism();
  const int line = features_->line().value_or(0);
  features_->setSheet(one != nullptr ? features_sheet(*one, desk_->bench()->inches()) : CellSheet{});
  prism_->setText(one != nullptr ? QStringLiteral("<b>%1</b> %2")
                                       .arg(QString::fromStdString(one->mark),
                                            QString::fromStdString(one->words).toHtmlEscaped())
                                 : tr("No prism."));
  prisms_->showLine(one != nullptr ? prisms_->lineOf(QString::fromStdString(one->mark)) : -1);
  features_->showLine(one != nullptr && !one->features.empty()
                          ? std::min(line, static_cast<int>(one->features.size()) - 1)
                          : -1);
  showFeature();
}

void InspectionTab::showFeature() {
  const CheckedFeature* one = feature();
  const bool writable = desk_->bench()->hasBook() && !desk_->bench()->book().read_only();
  how_->setText(one != nullptr ? QString::fromStdString(one->feature.how) : QString());
  reading_->setEnabled(one != nullptr && writable);
  record_->setEnabled(one != nullptr && writable);
  if (one != nullptr)
    reading_->setPlaceholderText(tr("Read, %1").arg(QString::fromStdString(one->feature.unit)));
  for (QPushButton* button : decisions_) button->setEnabled(prism() != nullptr && writable);
}

void InspectionTab::record() {
  const InspectedPrism* one = prism();
  const CheckedFeature* measured = feature();
  if (one == nullptr || measured == nullptr || !desk_->bench()->plan()) return;
  const auto value = typed_number(reading_->text(), measured->feature.unit, desk_->bench()->inches());
  if (!value) {
    refusal_->tell(request_problem("unread", reading_->text().toStdString(),
                                   tr("\"%1\" is no number. Type what was read, for instance %2.")
                                       .arg(reading_->text())
                                       .arg(measured->feature.drawn, 0, 'f', 2)
                                       .toStdString()));
    return;
  }
  Measurement entry;
  entry.mark = one->mark;
  entry.serial = one->serial;
  entry.feature = measured->feature.key;
  entry.measured = *value;
  entry.by = by_->text().trimmed().toStdString();
  if (const Done fit = check_measurement(*desk_->bench()->plan(), entry); !fit) {
    refusal_->tell(fit);
    return;
  }
  WorksLog more;
  more.measurements = {entry};
  const int next = features_->line().value_or(0) + 1;
  const Done done = desk_->bench()->addToWorks(more);
  refusal_->tell(done);
  if (!done) return;
  QSettings().setValue(QStringLiteral("recordedBy"), by_->text().trimmed());
  reading_->clear();
  const InspectedPrism* now = prism();
  if (now != nullptr && static_cast<std::size_t>(next) < now->features.size()) {
    features_->showLine(next);
    showFeature();
  }
}

void InspectionTab::decide(DecisionKind kind) {
  const InspectedPrism* one = prism();
  if (one == nullptr || !desk_->bench()->plan()) return;
  QInputDialog dialog(this);
  dialog.setObjectName(QStringLiteral("works.decide"));
  dialog.setWindowTitle(decision_title(kind));
  dialog.setLabelText(tr("%1: why?").arg(QString::fromStdString(one->mark)));
  if (dialog.exec() != QDialog::Accepted) return;
  const QString reason = dialog.textValue();
  Decision entry;
  entry.mark = one->mark;
  entry.serial = one->serial;
  entry.kind = kind;
  entry.by = by_->text().trimmed().toStdString();
  entry.note = reason.trimmed().toStdString();
  if (const Done fit = check_decision(*desk_->bench()->plan(), entry); !fit) {
    refusal_->tell(fit);
    return;
  }
  WorksLog more;
  more.decisions = {entry};
  if (kind != DecisionKind::scrap) {
    refusal_->tell(desk_->bench()->addToWorks(more));
    return;
  }
  StepRequest scrapped;
  scrapped.marks = {one->mark};
  scrapped.to = Stage::scrapped;
  scrapped.by = entry.by;
  scrapped.note = entry.note;
  refusal_->tell(desk_->bench()->record(scrapped, more));
}

}  // namespace prismwright
