#include "core/frame/nest.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numeric>
#include <optional>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/nest_fit.h"

namespace prismwright {

namespace {

double box_area_mm2(const PlateExtent& box) { return (box.high.u - box.low.u) * (box.high.v - box.low.v); }

/// Turns in which a sheet takes a shape.
struct Turns {
  std::vector<int> quarters;  ///< all others too where none of these fits
  std::vector<int> all;
};

Turns turns_of(const NestShape& shape, double wide_mm, double high_mm) {
  constexpr int kQuarter = kTurnSteps / 4;
  constexpr double kJustFits_mm = 1e-6;
  Turns turns;
  for (int turn = 0; turn < kTurnSteps; ++turn) {
    const PlateExtent& box = shape.extents[static_cast<std::size_t>(turn)];
    if (box.high.u - box.low.u > wide_mm + kJustFits_mm || box.high.v - box.low.v > high_mm + kJustFits_mm)
      continue;
    turns.all.push_back(turn);
    if (turn % kQuarter == 0) turns.quarters.push_back(turn);
  }
  if (turns.quarters.empty()) turns.quarters = turns.all;
  return turns;
}

Problem stopped() {
  return {Trouble::stopped, "stopped", "", "Laying out the sheets was stopped; nothing is laid out."};
}

Done check_sheet(const FrameSettings& settings) {
  const double spacing = settings.sheet_spacing_mm;
  if (settings.sheet_width_mm > 0 && settings.sheet_height_mm > 0 && spacing >= 0) return {};
  return request_problem(
      "sheet", "frame.sheet_width_mm",
      fmt::format("Parts cannot be laid on sheets of {:g} mm by {:g} mm with {:g} mm between "
                  "them. Give a width and height above 0 mm and a spacing of 0 mm or more.",
                  settings.sheet_width_mm, settings.sheet_height_mm, spacing));
}

/// A way of filling sheets; turns by 15 deg steps take longer and are tried last.
struct Try {
  NestAim aim = NestAim::small_box;
  bool every_turn = false;
};
constexpr std::array<Try, 6> kTries = {{{NestAim::small_box, false},
                                        {NestAim::low, false},
                                        {NestAim::left, false},
                                        {NestAim::small_box, true},
                                        {NestAim::low, true},
                                        {NestAim::left, true}}};

/// Sheets filled in one way.
struct Filling {
  Try way;
  std::vector<OpenSheet> open;
  std::vector<NestSheet> sheets;
};

/// Fills the sheets of one metal and thickness.
class SheetFiller {
 public:
  SheetFiller(const std::vector<FlatPart>& flats, const FrameSettings& settings)
      : flats_(flats), settings_(settings), meetings_(shapes_) {}

  void add(const AlikePlates& alike) {
    const std::size_t first = alike.front();
    NestShape shape = nest_shape(flats_[first], settings_.sheet_spacing_mm);
    const double rim = 2 * settings_.sheet_spacing_mm;
    Turns turns = turns_of(shape, settings_.sheet_width_mm - rim, settings_.sheet_height_mm - rim);
    if (turns.all.empty()) return tell_too_large(alike, shape);
    shapes_.push_back(std::move(shape));
    turns_.push_back(std::move(turns));
    groups_.push_back(alike);
  }

  /// The plates on as few sheets as any way leads to. Answers false when `progress` stops it.
  bool fill(const Progress& progress, double from, double to) {
    std::vector<std::size_t> order(groups_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, std::greater<>(),
                             [&](std::size_t i) { return box_area_mm2(shapes_[i].extents.front()); });
    const double each = (to - from) / static_cast<double>(kTries.size());
    for (std::size_t i = 0; i < kTries.size(); ++i) {
      if (i > 0 && kTries[i].every_turn && best_.open.size() < 2) break;
      Filling filling{kTries[i], {}, {}};
      const double start = from + each * static_cast<double>(i);
      if (!fill(filling, order, progress, start, each)) return false;
      if (i == 0 || better(filling, best_)) best_ = std::move(filling);
    }
    return true;
  }

  void take(Nest& nest) {
    for (NestSheet& sheet : best_.sheets) nest.sheets.push_back(std::move(sheet));
    nest.too_large.insert(nest.too_large.end(), too_large_.begin(), too_large_.end());
    nest.left_over.insert(nest.left_over.end(), left_over_.begin(), left_over_.end());
  }

 private:
  void tell_too_large(const AlikePlates& alike, const NestShape& shape) {
    const PlateExtent& box = shape.extents.front();
    const FlatPart& first = flats_[alike.front()];
    const std::string others = alike.size() == 1 ? "" : fmt::format(" and {} like it", alike.size() - 1);
    too_large_.push_back(
        fmt::format("{}{}, {:.0f} mm by {:.0f} mm, {} no sheet of {:g} mm by {:g} mm with {:g} mm left free "
                    "along its edge. "
                    "Give larger sheets, or have {} cut elsewhere.",
                    first.mark, others, box.high.u - box.low.u, box.high.v - box.low.v,
                    alike.size() == 1 ? "fits" : "fit", settings_.sheet_width_mm, settings_.sheet_height_mm,
                    settings_.sheet_spacing_mm, alike.size() == 1 ? "it" : "them"));
    for (const std::size_t flat : alike) left_over_.push_back(flats_[flat].mark);
  }

  bool fill(Filling& filling, const std::vector<std::size_t>& order, const Progress& progress, double from,
            double share) {
    std::size_t done = 0;
    std::size_t all = 0;
    for (const AlikePlates& group : groups_) all += group.size();
    for (const std::size_t shape : order) {
      for (const std::size_t flat : groups_[shape]) {
        const double at = from + share * static_cast<double>(done++) / static_cast<double>(all);
        if (!goes_on(progress, at, flats_[flat].mark)) return false;
        lay(filling, shape, flat);
      }
    }
    return true;
  }

  void lay(Filling& filling, std::size_t shape, std::size_t flat) {
    std::size_t sheet = 0;
    std::optional<LaidShape> standing;
    for (; !standing; ++sheet) {
      if (sheet == filling.open.size()) start_sheet(filling, flats_[flat]);
      standing = filling.open[sheet].place(
          shape, shapes_, filling.way.every_turn ? turns_[shape].all : turns_[shape].quarters, meetings_);
    }
    --sheet;
    filling.open[sheet].put(*standing, shapes_);
    NestSheet& laid = filling.sheets[sheet];
    laid.parts.push_back(
        {flats_[flat].mark, flat, static_cast<double>(standing->turn * kTurnStep_deg), standing->shift});
    laid.used_share += face_area_mm2(flats_[flat]) / (laid.width_mm * laid.height_mm);
  }

  void start_sheet(Filling& filling, const FlatPart& part) {
    filling.open.emplace_back(settings_.sheet_width_mm, settings_.sheet_height_mm, settings_.sheet_spacing_mm,
                              filling.way.aim);
    filling.sheets.push_back(
        {part.metal, part.thickness_mm, settings_.sheet_width_mm, settings_.sheet_height_mm, {}, 0});
  }

  /// Fewer sheets, else more left of the last one.
  static bool better(const Filling& a, const Filling& b) {
    if (a.open.size() != b.open.size()) return a.open.size() < b.open.size();
    return !a.open.empty() && a.open.back().box_area_mm2() < b.open.back().box_area_mm2() - 1;
  }

  const std::vector<FlatPart>& flats_;
  const FrameSettings& settings_;
  std::vector<NestShape> shapes_;
  std::vector<Turns> turns_;
  std::vector<AlikePlates> groups_;
  MeetingPlaces meetings_;
  Filling best_;
  std::vector<std::string> too_large_;
  std::vector<std::string> left_over_;
};

/// Plates that can share a sheet, alike ones together.
std::vector<std::vector<AlikePlates>> by_sheet_metal(const std::vector<FlatPart>& flats) {
  std::vector<std::vector<AlikePlates>> stocks;
  for (AlikePlates& alike : alike_plates(flats)) {
    const FlatPart& part = flats[alike.front()];
    if (part.making != PartMaking::cut_flat || part.outline.empty()) continue;
    const auto same = std::ranges::find_if(stocks, [&](const std::vector<AlikePlates>& stock) {
      const FlatPart& other = flats[stock.front().front()];
      return other.metal == part.metal && other.thickness_mm == part.thickness_mm;
    });
    if (same == stocks.end()) {
      stocks.push_back({std::move(alike)});
    } else {
      same->push_back(std::move(alike));
    }
  }
  return stocks;
}

}  // namespace

double Nest::used_share() const {
  double used = 0;
  double all = 0;
  for (const NestSheet& sheet : sheets) {
    used += sheet.used_share * sheet.width_mm * sheet.height_mm;
    all += sheet.width_mm * sheet.height_mm;
  }
  return all > 0 ? used / all : 0;
}

Outcome<Nest> nest_flats(const std::vector<FlatPart>& flats, const FrameSettings& settings,
                         const Progress& progress) {
  if (const Done sound = check_sheet(settings); !sound) return sound.problem();
  Nest nest;
  const auto stocks = by_sheet_metal(flats);
  const double each = 1 / static_cast<double>(std::max<std::size_t>(1, stocks.size()));
  for (std::size_t i = 0; i < stocks.size(); ++i) {
    SheetFiller filler(flats, settings);
    for (const AlikePlates& alike : stocks[i]) filler.add(alike);
    const double from = each * static_cast<double>(i);
    if (!filler.fill(progress, from, from + each)) return stopped();
    filler.take(nest);
  }
  return nest;
}

FlatPart laid_out(const FlatPart& part, const NestedPart& nested) {
  const double turn = radians(nested.turn_deg);
  FlatPart laid = part;
  laid.outline = moved(part.outline, turn, nested.shift);
  for (PlateChain& opening : laid.openings) opening = moved(opening, turn, nested.shift);
  for (PlatePocket& pocket : laid.pockets) pocket.outline = moved(pocket.outline, turn, nested.shift);
  for (PlateHole& hole : laid.holes) {
    const PlatePoint c = hole.centre;
    hole.centre = {std::cos(turn) * c.u - std::sin(turn) * c.v + nested.shift.u,
                   std::sin(turn) * c.u + std::cos(turn) * c.v + nested.shift.v};
  }
  return laid;
}

}  // namespace prismwright
