#include "geometry/fit_changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/drawing/lengths.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

constexpr double kMore_mm = 0.1;         // beyond what was found, as places of a skin stand apart
constexpr double kLeastPocket_mm = 0.3;  // under the end gap and this, a pocket holds nothing
constexpr std::string_view kCrossRibUpper = "rib-upper";
constexpr std::string_view kCrossRibLower = "rib-lower";

double tenths_above(double mm) { return std::ceil(10 * mm - 1e-6) / 10; }
double tenths_below(double mm) { return std::floor(10 * mm + 1e-6) / 10; }

bool is_side_rib(const std::string& mark, const PanelFit& fit) {
  return mark == fit.first_rib || mark == fit.second_rib;
}

class Changes {
 public:
  Changes(const FitBlocked& blocked, const PanelFit& fit, const LensPlan& plan)
      : blocked_(blocked), fit_(fit), plan_(plan), values_(plan.values) {}

  std::vector<FitChange> find() {
    if (blocked_.deep_mm > 0) {
      of_clash();
    } else {
      of_pocket();
    }
    return std::move(changes_);
  }

 private:
  void set_length(const std::string& key, double now_mm, double to_mm) {
    const Quantity* quantity = find_quantity(key);
    if (quantity) changes_.push_back({key, quantity->label, now_mm, to_mm, "", ""});
  }

  void set_choice(const std::string& key, const std::string& now, const std::string& to) {
    const Quantity* quantity = find_quantity(key);
    if (quantity) changes_.push_back({key, quantity->label, 0, 0, now, to});
  }

  void of_clash() {
    const PlannedPrism* own = plan_.find(blocked_.marks.front());
    const PlannedPrism* other = plan_.find(blocked_.blocked_by);
    if (own && other) return of_prisms(band_of(own->kind), band_of(other->kind));
    const PlannedPrism* prism = own ? own : other;
    const std::string& brass = own ? blocked_.blocked_by : blocked_.marks.front();
    if (!prism) return;
    if (is_side_rib(brass, fit_)) {
      const double now_mm = values_.frame.setting_gap_mm;
      return set_length("frame.setting_gap_mm", now_mm, tenths_above(now_mm + blocked_.deep_mm));
    }
    of_brass(band_of(prism->kind), brass);
  }

  void of_prisms(Band first, Band second) {
    if (first == second) {
      const double now_mm = values_.section.gap_mm;
      return set_length("section.gap_mm", now_mm, tenths_above(now_mm + blocked_.deep_mm + kMore_mm));
    }
    if (first != Band::refracting && second != Band::refracting) return turn_off_panel(first, second);
    of_reflecting(first == Band::refracting ? second : first);
  }

  // A reflecting band beside the refracting one.
  void of_reflecting(Band band) {
    if (turn_alike(band) || aim_alike(band)) return;
    const bool upper = band == Band::upper;
    const double now_mm = upper ? values_.section.upper_rib_mm : values_.section.lower_rib_mm;
    set_length(upper ? "section.upper_rib_mm" : "section.lower_rib_mm", now_mm,
               tenths_above(now_mm + blocked_.deep_mm + kMore_mm));
  }

  void of_brass(Band band, const std::string& brass) {
    const bool upper = brass.ends_with(kCrossRibUpper);
    if (upper || brass.ends_with(kCrossRibLower)) {
      turn_alike(band == Band::refracting ? (upper ? Band::upper : Band::lower) : band);
      return;
    }
    if (brass.find("-rail-") == std::string::npos) return;
    const double now_mm = values_.frame.rib_margin_mm;
    set_length("frame.rib_margin_mm", now_mm, tenths_above(now_mm + blocked_.deep_mm + kMore_mm));
  }

  bool turn_alike(Band band) {
    const bool about_lens = values_.turns_about_lens(Band::refracting);
    if (values_.turns_about_lens(band) == about_lens) return false;
    turn(band, about_lens);
    return true;
  }

  // Rings about axes that cross or stand over each other run into each other at the panel's sides.
  bool aim_alike(Band band) {
    if (values_.turns_about_lens(Band::refracting)) return false;
    const BandAim first = band_aim(plan_.section.input, Band::refracting);
    const BandAim own = band_aim(plan_.section.input, band);
    if (own.focus_z_mm != first.focus_z_mm) {
      set_length(fmt::format("section.{}_focus_mm", name_of(band)), own.focus_z_mm, first.focus_z_mm);
    }
    if (own.aim_deg != first.aim_deg) {
      set_choice(fmt::format("section.{}_aim_deg", name_of(band)), shortest(own.aim_deg),
                 shortest(first.aim_deg));
    }
    return !changes_.empty();
  }

  // Halves of bands that are turned about the panel's axis come down to the level of the focus at its sides.
  void turn_off_panel(Band first, Band second) {
    for (const Band band : {first, second}) {
      if (!values_.turns_about_lens(band)) turn(band, true);
    }
  }

  void turn(Band band, bool about_lens) {
    const std::string key = fmt::format("section.{}_turning", name_of(band));
    set_choice(key, value_text(values_, key), about_lens ? "lens" : "panel");
  }

  void of_pocket() {
    const FrameSettings& frame = values_.frame;
    const bool is_rib = blocked_.marks.front() == fit_.second_rib;
    const double off_mm = is_rib ? frame.pocket_mm - frame.end_gap_mm : blocked_.off_rib_mm;
    if (blocked_.left_mm >= off_mm) return;
    const double to_mm = tenths_below(frame.pocket_mm - (off_mm - blocked_.left_mm) - kMore_mm);
    if (to_mm < frame.end_gap_mm + kLeastPocket_mm) return;
    set_length("frame.pocket_mm", frame.pocket_mm, to_mm);
  }

  const FitBlocked& blocked_;
  const PanelFit& fit_;
  const LensPlan& plan_;
  const LensValues& values_;
  std::vector<FitChange> changes_;
};

}  // namespace

std::vector<FitChange> changes_for(const FitBlocked& blocked, const PanelFit& fit, const LensPlan& plan) {
  return Changes(blocked, fit, plan).find();
}

}  // namespace prismwright
