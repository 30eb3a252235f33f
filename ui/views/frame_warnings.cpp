#include "ui/views/frame_warnings.h"

#include <QKeyEvent>
#include <map>

#include "ui/models/shown_numbers.h"
#include "ui/style/dress.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kMostLines = 3;  // more are scrolled to
constexpr int kMark = Qt::UserRole;

/// What makes two warnings one: the same shape of part with the same fault.
using Alike = std::pair<std::string, std::pair<FrameWarning::Kind, long>>;

std::map<std::string, std::string> shape_keys(const FramePlan& frame) {
  std::map<std::string, std::string> keys;
  for (const RibPlan& rib : frame.ribs) keys[rib.mark] = rib.shape_key;
  for (const FlatPart& part : frame.flats) keys[part.mark] = part.shape_key;
  for (const RoundPart& part : frame.rounds) keys[part.mark] = part.shape_key;
  return keys;
}

}  // namespace

FrameWarnings::FrameWarnings(QWidget* parent) : QListWidget(parent) {
  setObjectName(QStringLiteral("frame.warnings"));
  setAccessibleName(tr("Warnings of the frame"));
  setWordWrap(false);
  setTextElideMode(Qt::ElideMiddle);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFrameShape(QFrame::NoFrame);
  connect(this, &QListWidget::itemClicked, this, &FrameWarnings::lead);
  setFrame(nullptr);
}

void FrameWarnings::setFrame(const FramePlan* frame) {
  clear();
  if (frame) {
    const auto keys = shape_keys(*frame);
    std::map<Alike, std::pair<const FrameWarning*, int>> groups;
    std::vector<Alike> order;
    for (const FrameWarning& warning : frame->warnings) {
      const auto key = keys.find(warning.mark);
      const std::string shape = key == keys.end() || key->second.empty() ? warning.mark : key->second;
      const Alike alike{shape, {warning.kind, std::lround(1000 * warning.value_mm)}};
      const auto [place, fresh] = groups.try_emplace(alike, std::pair(&warning, 0));
      ++place->second.second;
      if (fresh) order.push_back(alike);
    }
    for (const Alike& alike : order) {
      const auto& [warning, count] = groups.at(alike);
      QString words = sentence_of(request_problem({}, {}, warning->sentence));
      if (count > 1) words = tr("%1 alike: %2").arg(count).arg(words);
      auto* item = new QListWidgetItem(state_mark(MarkKind::amiss), words, this);
      item->setData(kMark, QString::fromStdString(warning->mark));
      item->setToolTip(words);
    }
    for (const std::string& note : frame->notes) {
      auto* item = new QListWidgetItem(state_mark(MarkKind::unknown), QString::fromStdString(note), this);
      item->setToolTip(item->text());
    }
  }
  setVisible(count() > 0);
  const int lines = std::min(count(), kMostLines);
  setFixedHeight(lines * std::max(sizeHintForRow(0), fontMetrics().height() + 6) + 4);
}

void FrameWarnings::lead(QListWidgetItem* item) {
  if (!item) return;
  const QString mark = item->data(kMark).toString();
  if (!mark.isEmpty()) emit partWanted(mark);
}

void FrameWarnings::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return lead(currentItem());
  QListWidget::keyPressEvent(event);
}

}  // namespace prismwright
