#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/drawing/arc_chain.h"
#include "core/works/greatest_circle.h"
#include "core/works/inspection.h"
#include "core/works/prism_reach.h"
#include "core/works/section_corners.h"
#include "core/works/whole_face.h"

namespace prismwright {

namespace {

constexpr double kPercent = 100;
constexpr double kFlat_mm = 1e6;  ///< a face of a greater radius is measured with a straight edge
constexpr double kChord_mm = 2e-4;
constexpr double kLeastWidth_mm = 1e-3;

/// Lists what there is to measure on one prism.
class FeatureList {
 public:
  FeatureList(const PlannedPrism& prism, const WorksSettings& works)
      : prism_(prism), works_(works), corners_(lettered_corners(prism.profile)) {}

  std::vector<Feature> list() {
    const std::size_t count = prism_.profile.faces.size();
    for (std::size_t i = 0; i < count; ++i) add_width(i);
    for (std::size_t i = 0; i < count; ++i) add_angle(i);
    for (std::size_t i = 0; i < count; ++i) add_radius(i);
    add_lengths();
    add_thickness();
    add("laser", FeatureKind::laser, "departure of the bench laser's beam", 0, works_.laser_within_deg,
        "On the laser bench: the angle between the beam and its way, up and sideways together.");
    return std::move(features_);
  }

 private:
  Feature& add(std::string key, FeatureKind kind, std::string name, double drawn, double within,
               std::string how) {
    Feature feature;
    feature.key = std::move(key);
    feature.kind = kind;
    feature.name = std::move(name);
    feature.drawn = drawn;
    feature.unit = kind == FeatureKind::angle || kind == FeatureKind::laser ? "deg" : "mm";
    feature.within = within;
    feature.how = std::move(how);
    features_.push_back(std::move(feature));
    return features_.back();
  }

  [[nodiscard]] const SectionCorner& start_of(std::size_t face) const { return corners_[face]; }
  [[nodiscard]] const SectionCorner& end_of(std::size_t face) const {
    return corners_[(face + 1) % corners_.size()];
  }

  void add_width(std::size_t i) {
    const Face& face = prism_.profile.faces[i];
    const SectionCorner& from = start_of(i);
    const SectionCorner& to = end_of(i);
    const bool middle = face.role == FaceRole::axis;
    // Faces that end in a centre's middle are halves of what can be measured: their discs have diameters.
    if (!middle && (from.on_axis || to.on_axis)) return;
    const double width = distance(from.place, to.place);
    if (width < kLeastWidth_mm) return;
    const std::string key = fmt::format("width.{}-{}", from.letter, to.letter);
    if (middle) {
      add(key, FeatureKind::width, "thickness at the middle", width, works_.width_within_mm,
          "Outside calipers over the middle of both faces.");
    } else if (face.role == FaceRole::land) {
      add(key, FeatureKind::width, fmt::format("width of the land {} to {}", from.letter, to.letter), width,
          works_.width_within_mm, "Loupe with a scale laid across the land, at the middle of the length.");
    } else {
      add(key, FeatureKind::width,
          fmt::format("width of the {} face, corner {} to corner {}", words_of(face.role), from.letter,
                      to.letter),
          width, works_.width_within_mm,
          "Calipers with a jaw on each corner, straight across the face, at the middle of the length.");
    }
  }

  void add_angle(std::size_t i) {
    if (corners_[i].on_axis) return;
    const std::size_t count = prism_.profile.faces.size();
    const Face& before = prism_.profile.faces[(i + count - 1) % count];
    const Face& after = prism_.profile.faces[i];
    const bool curved = before.kind != FaceKind::straight || after.kind != FaceKind::straight;
    const double angle = corner_angle_deg(prism_.profile, i);
    add("angle." + corners_[i].letter, FeatureKind::angle,
        fmt::format("angle at corner {}, {} to {}", corners_[i].letter, words_of(before.role),
                    words_of(after.role)),
        angle, works_.angle_within_deg,
        fmt::format("Bevel protractor over the corner, square to the length, against the light{}.",
                    curved ? "; on a curved face its blade touches right at the corner (tangent)" : ""));
  }

  void add_radius(std::size_t i) {
    if (prism_.profile.faces[i].kind == FaceKind::straight) return;
    const Face face = whole_face(prism_.profile, i);
    const SingleArc best = face.kind == FaceKind::arc ? SingleArc{arcs_of(face).front(), 0} : best_arc(face);
    const double radius = best.piece.radius_mm;
    if (best.piece.straight() || !std::isfinite(radius) || radius > kFlat_mm) return;
    const double half = distance(face.start(), face.end()) / 2;
    const TemplateArc arc = {radius - std::sqrt(std::max(0.0, radius * radius - half * half)), best.departs_mm};
    const bool full = best.piece.turn > 0;
    std::string how = fmt::format(
        "Template of this radius, {}, held square to the length against the light: over "
        "its ends the face {} by {:.3f} mm",
        full ? "hollow" : "full", full ? "rises" : "sinks", arc.sagitta_mm);
    how += arc.departs_mm > 0
               ? fmt::format(", and the true curve departs from the template by {:.4f} mm at most.",
                             arc.departs_mm)
               : std::string(".");
    const bool land = face.role == FaceRole::land;
    const std::string where =
        land ? "land-" + start_of(i).letter.substr(0, 1) : std::string(name_of(face.role));
    const std::string what =
        land ? "rounded land at corner " + start_of(i).letter.substr(0, 1) : words_of(face.role) + " face";
    add("radius." + where, FeatureKind::radius,
        fmt::format("radius of the {}, {}", what, full ? "full" : "hollow"), radius,
        works_.radius_within_percent / kPercent * radius, std::move(how))
        .arc = arc;
  }

  struct Edge {
    double length = 0;
    std::string letter;
    bool round = false;
  };
  void add_lengths() {
    const PrismReach reach(prism_);
    std::vector<Edge> edges;
    for (const SectionCorner& corner : corners_) {
      if (corner.on_axis) continue;
      const auto ends = reach.ends_of(corner.place);
      if (!ends) continue;
      const double along = length(ends->last - ends->first);
      if (along > kLeastWidth_mm) edges.push_back({along, corner.letter, ends->whole_turn});
    }
    if (edges.empty()) return;
    const auto [inner, outer] = std::ranges::minmax(edges, {}, &Edge::length);
    add_length("length.outer", outer);
    if (inner.letter != outer.letter) add_length("length.inner", inner);
  }

  void add_length(const char* key, const Edge& edge) {
    if (edge.round) {
      add(key, FeatureKind::length, "diameter at corner " + edge.letter, edge.length, works_.length_within_mm,
          "Calipers across the round, the widest place.");
      return;
    }
    add(key, FeatureKind::length, fmt::format("length along corner {}, straight from end to end", edge.letter),
        edge.length, works_.length_within_mm,
        "Long calipers or a steel rule from one end of that edge to the other.");
  }

  void add_thickness() {
    const double thickest = greatest_circle(whole_section(prism_.profile, kChord_mm)).diameter_mm;
    if (!(thickest > 0)) return;
    add("thickness", FeatureKind::thickness, "thickest section: the greatest circle inside it", thickest,
        works_.width_within_mm,
        "A disc of this diameter lies on a square cut of a trial casting and nowhere stands over.")
        .needed = false;
  }

  const PlannedPrism& prism_;
  const WorksSettings& works_;
  std::vector<SectionCorner> corners_;
  std::vector<Feature> features_;
};

}  // namespace

const char* name_of(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::width:
      return "width";
    case FeatureKind::angle:
      return "angle";
    case FeatureKind::radius:
      return "radius";
    case FeatureKind::length:
      return "length";
    case FeatureKind::thickness:
      return "thickness";
    case FeatureKind::laser:
      return "laser";
  }
  return "width";
}

std::vector<Feature> features_of(const PlannedPrism& prism, const WorksSettings& works) {
  return FeatureList(prism, works).list();
}

}  // namespace prismwright
