#include "core/lens/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <map>

#include "core/base/angle.h"
#include "core/lens/flat_inner_face.h"
#include "core/optics/band_frame.h"

namespace prismwright {

namespace {

/// FNV-1a over the numbers that make a solid.
class ShapeHash {
 public:
  void add(double number) { add_bits(std::bit_cast<std::uint64_t>(number == 0 ? 0.0 : number)); }
  void add(int number) { add_bits(static_cast<std::uint64_t>(number)); }
  [[nodiscard]] std::uint64_t value() const { return hash_; }

 private:
  void add_bits(std::uint64_t bits) {
    for (int shift = 0; shift < 64; shift += 8) {
      hash_ ^= (bits >> shift) & 0xff;
      hash_ *= 1099511628211ULL;
    }
  }
  std::uint64_t hash_ = 14695981039346656037ULL;
};

std::string shape_key_of(const PlannedPrism& prism) {
  ShapeHash hash;
  hash.add(static_cast<int>(prism.turning));
  for (const Face& face : prism.profile.faces) {
    hash.add(static_cast<int>(face.role));
    hash.add(static_cast<int>(face.kind));
    for (const SectionPoint p : face.points) {
      hash.add(p.r);
      hash.add(p.z);
    }
    hash.add(face.radius_mm);
  }
  const Trim& trim = prism.trim;
  for (const double number : {trim.clockwise_side_deg, trim.anticlockwise_side_deg, trim.set_back_mm,
                              trim.half_gap_mm, prism.axis_z_mm, prism.axis_dip_deg}) {
    // Azimuths of equal panels differ in their last bits; a tenth of a billionth of a degree does not make a
    // shape.
    hash.add(std::round(number * 1e10) / 1e10);
  }
  hash.add(static_cast<int>(trim.half));
  if (trim.flat_inner_mm) hash.add(*trim.flat_inner_mm);
  return fmt::format("{}-{:016x}", prism.zone, hash.value());
}

/// The upper half of a centre, closed along the panel's axis.
Profile half_of_centre(const Profile& whole) {
  const Face& outer = *whole.find(FaceRole::outer);
  const Face& inner = *whole.find(FaceRole::inner);
  const SectionPoint top = inner.start();
  Face upper = outer;
  if (outer.kind == FaceKind::true_curve) {
    const auto middle = static_cast<std::ptrdiff_t>(outer.points.size() / 2);
    upper.points.erase(upper.points.begin(), upper.points.begin() + middle);
    upper.tangents.erase(upper.tangents.begin(), upper.tangents.begin() + middle);
    upper.points.front().z = 0;
  } else {
    upper.points.front() = {outer.centre.r + outer.radius_mm, 0};
  }
  const SectionPoint foot{inner.start().r, 0};
  const SectionPoint vertex = upper.points.front();
  return Profile{{straight_face(FaceRole::axis, foot, vertex), upper,
                  straight_face(FaceRole::joint_upper, upper.end(), top),
                  straight_face(FaceRole::inner, top, foot)}};
}

/// Least or most room between a ring about an axis that falls by `dip` and a side plane, mm. All round the ring
/// the room is r sin s cos q less a wave whose height is z times the length of the plane's normal across the
/// axis.
double room_at_side(const Profile& profile, double side_deg, double set_back_mm, double dip, bool most) {
  const double side = radians(std::abs(side_deg));
  const double along = std::sin(side) * std::cos(dip);
  const double across = std::sqrt(std::max(0.0, 1 - along * along));
  double found = most ? -1e30 : 1e30;
  for (const SectionPoint p : polygon_of(profile, 0.01)) {
    const double room = p.r * along - std::abs(p.z) * across - set_back_mm;
    found = most ? std::max(found, room) : std::min(found, room);
  }
  return found;
}

class PanelPlanner {
 public:
  PanelPlanner(const LensPlan& plan, const PanelPlace& place) : plan_(plan), place_(place) {}

  std::vector<PlannedPrism> plan() {
    for (const Zone& zone : plan_.section.zones) add_zone(zone);
    // From the top down.
    std::stable_sort(prisms_.begin(), prisms_.end(), [](const PlannedPrism& a, const PlannedPrism& b) {
      return centre_height(a) > centre_height(b);
    });
    return std::move(prisms_);
  }

 private:
  [[nodiscard]] bool about_lens(const Zone& zone) const {
    return plan_.values.turns_about_lens(band_of(zone.kind));
  }

  static double centre_height(const PlannedPrism& prism) {
    if (prism.kind == ZoneKind::centre) return 0;
    double sum = 0;
    double count = 0;
    for (const Face& face : prism.profile.faces) {
      for (const SectionPoint p : face.points) {
        sum += p.z;
        count += 1;
      }
    }
    return sum / count;
  }

  void add_zone(const Zone& zone) {
    switch (zone.kind) {
      case ZoneKind::centre:
        return add(zone, "", about_lens(zone) ? zone.profile : half_of_centre(on_axis(zone, zone.profile)),
                   Half::whole);
      case ZoneKind::ring:
        if (!about_lens(zone) && clears_sides(zone))
          return add(zone, "", on_axis(zone, zone.profile), Half::whole);
        add(zone, "a", on_axis(zone, zone.profile), Half::upper);
        return add(zone, "b", on_axis(zone, lower_image_of(zone)), Half::lower);
      case ZoneKind::upper:
        return add(zone, "", on_axis(zone, zone.profile), Half::upper);
      case ZoneKind::lower:
        return add(zone, "", on_axis(zone, zone.profile), Half::lower);
    }
  }

  /// The profile in the frame of its turning axis.
  [[nodiscard]] Profile on_axis(const Zone& zone, const Profile& profile) const {
    if (about_lens(zone)) return profile;
    return turning_frame(plan_.section.input, band_of(zone.kind)).out_of(profile);
  }

  /// Whether a ring turned about the panel's axis stands clear of both side planes all round.
  [[nodiscard]] bool clears_sides(const Zone& zone) const {
    const BandFrame frame = turning_frame(plan_.section.input, Band::refracting);
    const Profile profile = frame.out_of(zone.profile);
    const double set_back = plan_.values.frame.prism_set_back_mm();
    for (const double side : {place_.from_deg - place_.axis_deg, place_.to_deg - place_.axis_deg}) {
      if (room_at_side(profile, side, set_back, frame.aim(), false) < 0) return false;
    }
    return true;
  }

  void add(const Zone& zone, const char* part, Profile profile, Half half) {
    PlannedPrism prism;
    prism.panel = place_.number;
    prism.zone = zone.mark;
    prism.mark = fmt::format("P{:02}-{}{}", place_.number, zone.mark, part);
    prism.kind = zone.kind;
    prism.profile = std::move(profile);
    const bool about_lens_axis = about_lens(zone);
    prism.turning = about_lens_axis ? TurningAxis::lens : TurningAxis::panel;
    prism.axis_deg = place_.axis_deg;
    prism.trim.clockwise_side_deg = place_.from_deg - place_.axis_deg;
    prism.trim.anticlockwise_side_deg = place_.to_deg - place_.axis_deg;
    prism.trim.set_back_mm = plan_.values.frame.prism_set_back_mm();
    if (is_refracting(zone.kind) && has_flat_facets(plan_.values)) {
      prism.trim.flat_inner_mm = plan_.values.brief.focal_mm;
    }
    if (!about_lens_axis) {
      const BandFrame axis = turning_frame(plan_.section.input, band_of(zone.kind));
      prism.axis_z_mm = axis.focus_z_mm();
      prism.axis_dip_deg = degrees(axis.aim());
      prism.trim.half = half;
      prism.trim.half_gap_mm = half == Half::whole ? 0 : plan_.values.section.gap_mm / 2;
    }
    prism.shape_key = shape_key_of(prism);
    prisms_.push_back(std::move(prism));
  }

  const LensPlan& plan_;
  const PanelPlace& place_;
  std::vector<PlannedPrism> prisms_;
};

/// Pairs of one panel: each chain of zones from the centre outward, and ring halves that meet at the level
/// plane.
class PanelPairs {
 public:
  PanelPairs(const LensPlan& plan, int panel) : plan_(plan) {
    for (std::size_t i = 0; i < plan.prisms.size(); ++i) {
      if (plan.prisms[i].panel == panel) by_name_[plan.prisms[i].mark.substr(4)] = i;
    }
  }

  void append(std::vector<NeighbourPair>& pairs) {
    chain("a", ZoneKind::upper, pairs);
    chain("b", ZoneKind::lower, pairs);
    for (const Zone& zone : plan_.section.zones) halves(zone, pairs);
  }

 private:
  [[nodiscard]] const std::size_t* find(const std::string& name) const {
    const auto found = by_name_.find(name);
    return found == by_name_.end() ? nullptr : &found->second;
  }

  void chain(const char* part, ZoneKind stack, std::vector<NeighbourPair>& pairs) const {
    const std::size_t* last = nullptr;
    for (const Zone& zone : plan_.section.zones) {
      if (!is_refracting(zone.kind) && zone.kind != stack) continue;
      const std::size_t* here = find(zone.mark + part);
      if (!here) here = find(zone.mark);
      if (last && here) push(pairs, *last, *here);
      if (here) last = here;
    }
  }

  void halves(const Zone& zone, std::vector<NeighbourPair>& pairs) const {
    const bool ring = zone.kind == ZoneKind::ring;
    if (!ring && zone.kind != ZoneKind::upper) return;
    const std::size_t* upper = find(ring ? zone.mark + "a" : zone.mark);
    const std::size_t* lower = find(ring ? zone.mark + "b" : "L" + zone.mark.substr(1));
    if (!upper || !lower) return;
    const PlannedPrism& above = plan_.prisms[*upper];
    if (above.turning == TurningAxis::lens || plan_.prisms[*lower].turning == TurningAxis::lens) return;
    const Trim& trim = above.trim;
    const double dip = radians(above.axis_dip_deg);
    for (const double side : {trim.clockwise_side_deg, trim.anticlockwise_side_deg}) {
      if (room_at_side(above.profile, side, trim.set_back_mm, dip, true) <= 0) continue;
      return push(pairs, *upper, *lower);
    }
  }

  static void push(std::vector<NeighbourPair>& pairs, std::size_t a, std::size_t b) {
    const NeighbourPair pair{std::min(a, b), std::max(a, b)};
    const bool known = std::any_of(pairs.begin(), pairs.end(), [&](const NeighbourPair& p) {
      return p.first == pair.first && p.second == pair.second;
    });
    if (!known) pairs.push_back(pair);
  }

  const LensPlan& plan_;
  std::map<std::string, std::size_t> by_name_;
};

}  // namespace

const PlannedPrism* LensPlan::find(std::string_view mark) const {
  const auto found =
      std::find_if(prisms.begin(), prisms.end(), [&](const PlannedPrism& p) { return p.mark == mark; });
  return found == prisms.end() ? nullptr : &*found;
}

std::vector<NeighbourPair> neighbours(const LensPlan& plan) {
  std::vector<NeighbourPair> pairs;
  for (const PanelPlace& place : plan.panels) {
    std::vector<NeighbourPair> own;
    PanelPairs(plan, place.number).append(own);
    pairs.insert(pairs.end(), own.begin(), own.end());
  }
  return pairs;
}

LensPlan plan_lens(const LensValues& values, Section section) {
  LensPlan plan{values, std::move(section), place_panels(values.panels), {}};
  for (const PanelPlace& place : plan.panels) {
    if (values.panels[static_cast<std::size_t>(place.number - 1)].blind) continue;
    for (PlannedPrism& prism : PanelPlanner(plan, place).plan()) plan.prisms.push_back(std::move(prism));
  }
  return plan;
}

Outcome<LensPlan> plan_lens(const LensValues& values) {
  auto section = solve_section(values.section_input());
  if (!section) return section.problem();
  if (const Done facets = check_flat_facets(values, *section); !facets) return facets.problem();
  return plan_lens(values, std::move(*section));
}

}  // namespace prismwright
