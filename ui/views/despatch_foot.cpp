#include "ui/views/despatch_foot.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTimer>

#include "ui/views/named.h"

namespace prismwright {
namespace {

constexpr int kSteps = 1000;  // of the bar
constexpr int kMoment_ms = 400;

}  // namespace

DespatchFoot::DespatchFoot(QWidget* parent)
    : QWidget(parent),
      message_(named(new QLabel(this), "despatch.message")),
      bar_(named(new QProgressBar(this), "despatch.progress")),
      stop_(named(new QPushButton(this), "despatch.stop")),
      open_(named(new QPushButton(tr("&Open folder"), this), "despatch.open")),
      start_(named(new QPushButton(tr("Open s&tart page"), this), "despatch.start")),
      write_(named(new QPushButton(tr("&Write the pack"), this), "despatch.write")),
      moment_(new QTimer(this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  message_->setWordWrap(true);
  message_->setMinimumHeight(2 * message_->fontMetrics().lineSpacing() + 4);
  bar_->setRange(0, kSteps);
  bar_->setTextVisible(false);
  bar_->setFixedWidth(160);
  open_->setToolTip(tr("The folder of the last pack"));
  start_->setToolTip(tr("The last pack's own start page, in the browser"));
  write_->setProperty("brass", true);
  row->addWidget(message_, 1);
  row->addWidget(bar_);
  for (QPushButton* button : {stop_, open_, start_, write_}) row->addWidget(button);
  connect(write_, &QPushButton::clicked, this, &DespatchFoot::writeWanted);
  connect(stop_, &QPushButton::clicked, this, [this] {
    if (work_ == Work::halted) emit againWanted();
    if (work_ == Work::running) emit stopWanted();
  });
  connect(open_, &QPushButton::clicked, this, &DespatchFoot::folderWanted);
  connect(start_, &QPushButton::clicked, this, &DespatchFoot::startPageWanted);
  moment_->setSingleShot(true);
  moment_->setInterval(kMoment_ms);
  connect(moment_, &QTimer::timeout, this, &DespatchFoot::showWork);
  setWork(Work::none);
  setHasPack(false);
}

void DespatchFoot::tell(const QString& message, bool amiss) {
  message_->setText(message);
  message_->setToolTip(message);
  if (message_->property("refusal").toBool() == amiss) return;
  message_->setProperty("refusal", amiss);
  message_->setStyleSheet(message_->styleSheet());  // takes the changed property up
}

void DespatchFoot::setProgress(double share) { bar_->setValue(static_cast<int>(kSteps * share)); }

void DespatchFoot::setWork(Work work, bool at_once) {
  const bool begins = work == Work::running && work_ != Work::running;
  work_ = work;
  if (begins) bar_->setValue(0);
  if (begins && !at_once) return moment_->start();
  if (work != Work::running || at_once) moment_->stop();
  if (!moment_->isActive()) showWork();
}

void DespatchFoot::showWork() {
  const Work work = work_;
  bar_->setVisible(work == Work::running || work == Work::stopping);
  stop_->setVisible(work != Work::none);
  stop_->setEnabled(work != Work::stopping);
  stop_->setText(work == Work::halted     ? tr("List again")
                 : work == Work::stopping ? tr("Stopping")
                                          : tr("Stop"));
}

void DespatchFoot::setMayWrite(bool may, const QString& tip) {
  write_->setEnabled(may);
  write_->setToolTip(tip);
}

void DespatchFoot::setHasPack(bool has) {
  open_->setEnabled(has);
  start_->setEnabled(has);
}

}  // namespace prismwright
