#include "ui/models/master_looks.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>

#include "core/works/congruence.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr std::size_t kNth = 5;  ///< fills; later masters of a piece share the last

QString tr(const char* text) { return QCoreApplication::translate("MasterLooks", text); }

QColor fill_of(std::size_t nth) {
  const std::array<QColor, kNth> deep = {palette::glass_edge(), palette::brass(), palette::sea(),
                                         palette::muted_ink(), palette::amiss()};
  constexpr std::array<double, kNth> share = {0.30, 0.38, 0.30, 0.22, 0.26};
  return palette::between(palette::surface(), deep.at(nth), share.at(nth));
}

QString nth_words(std::size_t nth) {
  switch (nth) {
    case 0:
      return tr("first master of its piece");
    case 1:
      return tr("second");
    case 2:
      return tr("third");
    case 3:
      return tr("fourth");
    default:
      return tr("fifth or later");
  }
}

QString sharing_words(const Master& master) {
  const auto name = QString::fromStdString(master.name);
  QString words = master.uses.size() == 1
                      ? tr("master %1, for this prism alone").arg(name)
                      : tr("master %1, shared by %2 prisms").arg(name).arg(master.uses.size());
  if (!master.mirror_of.empty()) words += tr(", mirror of %1").arg(QString::fromStdString(master.mirror_of));
  if (!master.turned_twin_of.empty())
    words += tr(", %1 turned end for end").arg(QString::fromStdString(master.turned_twin_of));
  return words;
}

}  // namespace

MasterLooks::MasterLooks(const LensPlan& plan) {
  std::map<std::string, std::size_t> of_piece;
  std::size_t most = 0;
  bool mirrored = false;
  const std::vector<Master> masters = masters_of(plan);
  for (const Master& master : masters) {
    const std::size_t nth = std::min(of_piece[piece_of_mark(master.uses.front().mark)]++, kNth - 1);
    most = std::max(most, nth);
    PrismLook look{fill_of(nth), QString::fromStdString(master.name), sharing_words(master),
                   !master.mirror_of.empty(), QString::number(nth + 1)};
    // Hatching is drawn in the fill's own colour, which must be seen on the bare ground.
    if (look.hatched) look.fill = palette::between(look.fill, palette::ink(), 0.45);
    mirrored = mirrored || look.hatched;
    for (const MasterUse& use : master.uses) looks_[use.mark] = look;
  }
  if (masters.empty()) return;
  for (std::size_t nth = 0; nth <= most; ++nth)
    legend_.push_back({fill_of(nth), QString::number(nth + 1), nth_words(nth), false});
  if (mirrored)
    legend_.push_back(
        {palette::between(fill_of(0), palette::ink(), 0.45), {}, tr("mirror image of another"), true});
  legend_.push_back({palette::surface(), QStringLiteral("U07"),
                     tr("one name: one master, one kind of mould; %1 in all").arg(masters.size()), false});
}

PrismLook MasterLooks::look_of(const std::string& mark) const {
  const auto found = looks_.find(mark);
  if (found != looks_.end()) return found->second;
  return {palette::paper(), QStringLiteral("?"), tr("no master"), false};
}

std::vector<LegendRow> MasterLooks::legend() const { return legend_; }

const MasterLooks& master_looks(const std::shared_ptr<const LensPlan>& plan) {
  static std::weak_ptr<const LensPlan> of;
  static MasterLooks looks;
  const auto known = of.lock();
  if (known && known == plan) return looks;
  of = plan;
  looks = plan ? MasterLooks(*plan) : MasterLooks();
  return looks;
}

}  // namespace prismwright
