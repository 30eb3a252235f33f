#include "ui/views/frame_figures.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <array>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr std::array<Verdict, 3> kVerdicts{Verdict::clash, Verdict::tight, Verdict::clear};
constexpr std::array<const char*, 3> kVerdictNames{"clash", "tight", "clear"};

}  // namespace

FrameFigures::FrameFigures(QWidget* parent) : QWidget(parent), grid_(new QGridLayout) {
  setObjectName(QStringLiteral("frame.figures"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  auto* title = new QLabel(tr("Frame"), this);
  title->setProperty("muted", true);
  column->addWidget(title);
  grid_->setHorizontalSpacing(12);
  grid_->setVerticalSpacing(3);
  grid_->setColumnStretch(0, 1);
  column->addLayout(grid_);
  add("mass", tr("Weighs"), tr("All parts with screws and dowels, without the prisms"));
  add("pieces", tr("Pieces"), tr("All parts of the frame; of how many different kinds"));
  for (std::size_t i = 0; i < kVerdicts.size(); ++i)
    add(kVerdictNames.at(i),
        palette::verdict_sign(kVerdicts.at(i)) + QLatin1Char(' ') + palette::verdict_words(kVerdicts.at(i)),
        tr("Clearances with this verdict"));
  add("door", tr("Door free to"), tr("The angle to which the door opens without touching anything"));
  add("fit", tr("Prisms that go in"), tr("Prisms that can be brought into their seats, of all"));
  add("sheets", tr("Sheets"), tr("That the flat parts are cut from, and how much of them is used"));
  setMade(nullptr, {});
  for (const char* name : {"door", "fit", "sheets"}) setFigure(name, {});
}

void FrameFigures::add(const char* name, const QString& label, const QString& meaning) {
  const int row = grid_->rowCount();
  auto* head = new QLabel(label, this);
  head->setToolTip(meaning);
  auto* value = new QLabel(this);
  value->setObjectName(QStringLiteral("figure.frame.") + QLatin1String(name));
  value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  value->setTextInteractionFlags(Qt::TextSelectableByMouse);
  value->setToolTip(meaning);
  grid_->addWidget(head, row, 0);
  grid_->addWidget(value, row, 1);
}

void FrameFigures::setFigure(const char* name, const QString& words) {
  if (auto* label = findChild<QLabel*>(QStringLiteral("figure.frame.") + QLatin1String(name)))
    label->setText(words.isEmpty() ? QStringLiteral("–") : words);
}

void FrameFigures::setMade(const MadeLens* made, const std::vector<PartsLine>& lines) {
  if (!made) {
    for (const char* name : {"mass", "pieces"}) setFigure(name, {});
  } else {
    const PartsTotals totals = totals_of(lines);
    setFigure("mass", mass_text(totals.brass_g + totals.steel_g));
    setFigure("pieces", tr("%1 of %2 kinds").arg(totals.pieces).arg(lines.size()));
  }
  setClearances(made);
}

void FrameFigures::setClearances(const MadeLens* made) {
  std::array<int, 3> counts{};
  const bool known = made && made->clearances_known;
  if (known)
    for (const Clearance& each : *made->clearances) ++counts.at(static_cast<std::size_t>(each.verdict));
  for (std::size_t i = 0; i < kVerdicts.size(); ++i)
    setFigure(kVerdictNames.at(i),
              known ? QString::number(counts.at(static_cast<std::size_t>(kVerdicts.at(i)))) : QString());
}

void FrameFigures::setStale(bool stale) { setEnabled(!stale); }

}  // namespace prismwright
