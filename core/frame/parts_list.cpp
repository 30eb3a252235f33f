#include "core/frame/parts_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/drawing/lengths.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/fasteners.h"
#include "core/frame/part_keys.h"
#include "core/lens/trimmed_volume.h"

namespace prismwright {
namespace {

// Lengths to 0.1 mm, without a nought behind the point.
std::string short_number(double mm) {
  std::string text = fmt::format("{:.1f}", mm);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text;
}

// A size in mm, or in inches.
struct SizeWords {
  bool inches = false;

  [[nodiscard]] std::string number(double mm) const {
    return inches ? LengthWords{true}.plain(mm) : short_number(mm);
  }
  [[nodiscard]] const char* unit() const { return LengthWords{inches}.unit(); }
};

std::string size_of(const FlatPart& part, SizeWords words) {
  const PlateExtent extent = extent_of(part.outline);
  const double wide = extent.high.u - extent.low.u;
  const double high = extent.high.v - extent.low.v;
  if (!words.inches) return fmt::format("{:.1f} x {:.1f} mm", wide, high);
  return fmt::format("{} x {} in", words.number(wide), words.number(high));
}

std::string size_of(const RoundPart& part, SizeWords words) {
  if (part.kind == PartKind::screw)
    return fmt::format("{} x {}{}", screw_name(part.diameter_mm), short_number(part.length_mm),
                       words.inches ? " mm" : "");
  std::string size =
      fmt::format("{} x {} {}", words.number(part.diameter_mm), words.number(part.length_mm), words.unit());
  if (part.bore_mm > 0) size += fmt::format(", bore {} {}", words.number(part.bore_mm), words.unit());
  return size;
}

std::string size_of(const TurnedBar& bar, SizeWords words) {
  SectionPoint low = bar.shape.profile.faces.front().start();
  SectionPoint high = low;
  for (const Face& face : bar.shape.profile.faces) {
    low = {std::min(low.r, face.start().r), std::min(low.z, face.start().z)};
    high = {std::max(high.r, face.start().r), std::max(high.z, face.start().z)};
  }
  return fmt::format("{} x {} {}, turned", words.number(high.r - low.r), words.number(high.z - low.z),
                     words.unit());
}

class ListMaker {
 public:
  explicit ListMaker(const KnownVolumes& known) : known_(known) {}

  template <class Part>
  void add(const Part& part, const std::string& key, double thickness_mm, std::optional<double> volume) {
    if (const auto found = known_.find(part.mark); found != known_.end()) volume = found->second;
    const std::string likeness = fmt::format("{} {} {} {}", static_cast<int>(part.kind),
                                             static_cast<int>(part.making), static_cast<int>(part.metal), key);
    const auto [place, is_new] = line_of_.try_emplace(likeness, lines_.size());
    if (is_new) {
      lines_.push_back({part.kind,
                        part.making,
                        part.metal,
                        thickness_mm,
                        size_of(part, {}),
                        {},
                        0,
                        std::nullopt,
                        size_of(part, {true})});
    }
    PartsLine& line = lines_[place->second];
    line.marks.push_back(part.mark);
    ++line.quantity;
    if (volume && !line.mass_g) line.mass_g = *volume / 1000 * density_g_cm3(part.metal);
  }

  std::vector<PartsLine> lines() {
    std::stable_sort(lines_.begin(), lines_.end(),
                     [](const PartsLine& a, const PartsLine& b) { return a.kind < b.kind; });
    return std::move(lines_);
  }

 private:
  const KnownVolumes& known_;
  std::vector<PartsLine> lines_;
  std::map<std::string, std::size_t> line_of_;
};

}  // namespace

std::vector<PartsLine> parts_list(const FramePlan& frame, const KnownVolumes& known) {
  ListMaker list(known);
  for (const FlatPart& part : frame.flats) list.add(part, part.shape_key, part.thickness_mm, volume_mm3(part));
  for (const TurnedBar& part : frame.bars) list.add(part, part_key(part), 0, std::nullopt);
  for (const RoundPart& part : frame.rounds) list.add(part, part.shape_key, 0, volume_mm3(part));
  return list.lines();
}

KnownVolumes drawn_volumes(const FramePlan& frame) {
  KnownVolumes known;
  for (const TurnedBar& bar : frame.bars) known[bar.mark] = trimmed_volume_mm3(bar.shape);
  return known;
}

PartsTotals totals_of(const std::vector<PartsLine>& lines) {
  PartsTotals totals;
  for (const PartsLine& line : lines) {
    totals.pieces += line.quantity;
    if (!line.mass_g) totals.unweighed += line.quantity;
    double& metal = line.metal == PartMetal::brass ? totals.brass_g : totals.steel_g;
    metal += line.quantity * line.mass_g.value_or(0);
  }
  return totals;
}

double volume_mm3(const RoundPart& part) {
  const double shank = part.diameter_mm / 2;
  const double bore = part.bore_mm / 2;
  double volume = kPi * (shank * shank - bore * bore) * part.length_mm;
  const double head = part.head_mm / 2;
  if (head > shank) {
    const double deep = head - shank;
    volume += kPi / 3 * deep * (head * head + head * shank + shank * shank) - kPi * shank * shank * deep;
  }
  return volume;
}

}  // namespace prismwright
