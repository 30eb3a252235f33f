#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/frame/frame_csv.h"
#include "core/lens/trimmed_ring.h"
#include "core/optics/face_words.h"
#include "core/works/master_sheet.h"
#include "core/works/master_stretch.h"
#include "core/works/section_corners.h"

namespace prismwright {

namespace {

/// A prism in one of its states: its places in the panel's frame, stretched or not.
class MeasuredState {
 public:
  MeasuredState(const PlannedPrism& prism, const MasterStretch& stretch)
      : prism_(prism), stretch_(stretch), ring_(prism), dip_(radians(prism.axis_dip_deg)) {}

  [[nodiscard]] const Profile& profile() const { return prism_.profile; }

  /// A place of the section at the middle of the prism: depth and height.
  [[nodiscard]] SectionPoint at(SectionPoint p) const {
    const SectionOffset own = turned({p.r, p.z});
    return {stretch_.depth * own.r, stretch_.height * own.z};
  }
  [[nodiscard]] SectionOffset at(SectionDirection d) const {
    const SectionOffset own = turned({d.r(), d.z()});
    return {stretch_.depth * own.r, stretch_.height * own.z};
  }

  /// From end to end at a corner, straight; over the whole ring where nothing is cut; 0 where nothing is left.
  [[nodiscard]] double length_at(SectionPoint corner) const {
    const bool lens = prism_.turning == TurningAxis::lens;
    const SectionPoint p = lens ? corner : SectionPoint{corner.r, std::abs(corner.z)};
    const bool whole = !lens && prism_.trim.half == Half::whole;
    if (whole && ring_.clears_sides()) return 2 * p.z * stretch_.length;
    const auto kept = ring_.kept(p);
    if (!kept) return 0;
    return length(place(p, kept->to) - place(p, kept->from));
  }
  [[nodiscard]] bool is_whole_ring() const {
    return prism_.turning == TurningAxis::panel && prism_.trim.half == Half::whole && ring_.clears_sides();
  }

 private:
  [[nodiscard]] SectionOffset turned(SectionOffset p) const {
    if (prism_.turning == TurningAxis::lens) return p;
    return {p.r * std::cos(dip_) + p.z * std::sin(dip_), p.z * std::cos(dip_) - p.r * std::sin(dip_)};
  }

  [[nodiscard]] SpacePoint place(SectionPoint p, double angle) const {
    if (prism_.turning == TurningAxis::lens) {
      return stretch_.of_master({p.r * std::cos(angle), p.r * std::sin(angle), p.z});
    }
    const double up = (prism_.trim.half == Half::lower ? -1 : 1) * p.z * std::sin(angle);
    const SectionOffset own = turned({p.r, up});
    return stretch_.of_master({own.r, p.z * std::cos(angle), own.z});
  }

  const PlannedPrism& prism_;
  MasterStretch stretch_;
  TrimmedRing ring_;
  double dip_;
};

SectionDirection tangent_of(const Face& face, bool at_end) {
  if (face.kind == FaceKind::true_curve) return at_end ? face.tangents.back() : face.tangents.front();
  if (face.kind == FaceKind::straight) return SectionDirection::along(face.end() - face.start());
  const auto left = SectionDirection::along((at_end ? face.end() : face.start()) - face.centre).quarter_turn();
  return cross(face.start() - face.centre, face.end() - face.centre) > 0 ? left : left.reversed();
}

double inside_angle(const MeasuredState& state, const Face& before, const Face& after) {
  const SectionOffset back = -1 * state.at(tangent_of(before, true));
  const SectionOffset on = state.at(tangent_of(after, false));
  return degrees(std::atan2(cross(on, back), dot(on, back)));
}

/// Radius of the circle through the ends and the middle of an arc: what a template shows of it.
double template_radius(const MeasuredState& state, const Face& face) {
  const auto middle = SectionDirection::along(between(face.start(), face.end(), 0.5) - face.centre);
  const SectionPoint a = state.at(face.start());
  const SectionPoint b = state.at(face.centre + face.radius_mm * middle);
  const SectionPoint c = state.at(face.end());
  return distance(a, b) * distance(b, c) * distance(c, a) / (2 * std::abs(cross(b - a, c - a)));
}

/// Gathers the measures of a prism's three states.
class MeasureMaker {
 public:
  MeasureMaker(const PlannedPrism& prism, const PlannedPrism& stocked, const WorksSettings& settings)
      : states_{MeasuredState(stocked, master_stretch(prism, settings)), MeasuredState(stocked, {}),
                MeasuredState(prism, {})},
        corners_(lettered_corners(prism.profile)) {}

  std::vector<MasterMeasure> make() {
    for (std::size_t i = 0; i < count(); ++i) add_width(i);
    for (std::size_t i = 0; i < count(); ++i) add_angle(i);
    for (std::size_t i = 0; i < count(); ++i) add_radius(i);
    for (std::size_t i = 0; i < count(); ++i) add_length(i);
    return std::move(measures_);
  }

 private:
  [[nodiscard]] std::size_t count() const { return states_[0].profile().faces.size(); }
  [[nodiscard]] FaceRole role(std::size_t i) const { return states_[0].profile().faces[i].role; }
  [[nodiscard]] std::string letter(std::size_t i) const { return corners_[i % count()].letter; }

  template <class Of>
  void add(MasterMeasure::Kind kind, const std::string& name, Of of) {
    const char* unit = kind == MasterMeasure::Kind::angle ? "deg" : "mm";
    measures_.push_back({kind, name, unit, of(states_[0]), of(states_[1]), of(states_[2])});
  }

  void add_width(std::size_t i) {
    const std::string what = role(i) == FaceRole::axis ? "thickness on the axis" : words_of(role(i));
    add(MasterMeasure::Kind::width, fmt::format("{} to {}, {}", letter(i), letter(i + 1), what),
        [&](const MeasuredState& state) {
          const Face& face = state.profile().faces[i];
          return distance(state.at(face.start()), state.at(face.end()));
        });
  }

  /// Between a face and the next one that is no land.
  void add_angle(std::size_t i) {
    std::size_t next = (i + 1) % count();
    if (role(next) == FaceRole::land) next = (next + 1) % count();
    if (role(i) == FaceRole::land || role(i) == FaceRole::axis || role(next) == FaceRole::axis) return;
    add(MasterMeasure::Kind::angle, fmt::format("{} to {}", words_of(role(i)), words_of(role(next))),
        [&](const MeasuredState& state) {
          const auto& faces = state.profile().faces;
          return inside_angle(state, faces[i], faces[next]);
        });
  }

  void add_radius(std::size_t i) {
    if (states_[0].profile().faces[i].kind != FaceKind::arc) return;
    add(MasterMeasure::Kind::radius, words_of(role(i)),
        [&](const MeasuredState& state) { return template_radius(state, state.profile().faces[i]); });
  }

  void add_length(std::size_t i) {
    const std::string name =
        states_[0].is_whole_ring() ? "across at " + letter(i) : "from end to end at " + letter(i);
    const auto of = [&](const MeasuredState& state) {
      return state.length_at(state.profile().faces[i].start());
    };
    if (of(states_[2]) > 0) add(MasterMeasure::Kind::length, name, of);
  }

  std::array<MeasuredState, 3> states_;
  std::vector<SectionCorner> corners_;
  std::vector<MasterMeasure> measures_;
};

}  // namespace

const char* name_of(MasterMeasure::Kind kind) {
  switch (kind) {
    case MasterMeasure::Kind::width:
      return "width";
    case MasterMeasure::Kind::angle:
      return "angle";
    case MasterMeasure::Kind::radius:
      return "radius";
    case MasterMeasure::Kind::length:
      break;
  }
  return "length";
}

std::vector<MasterMeasure> master_measures(const PlannedPrism& prism, const PlannedPrism& stocked,
                                           const WorksSettings& settings) {
  return MeasureMaker(prism, stocked, settings).make();
}

std::string master_csv(const std::vector<MasterMeasure>& measures) {
  std::string text = "kind,measure,unit,as_printed,as_cast,as_finished\n";
  for (const MasterMeasure& m : measures) {
    text += fmt::format("{},{},{},{:.4f},{:.4f},{:.4f}\n", name_of(m.kind), csv_cell(m.name), m.unit, m.master,
                        m.casting, m.prism);
  }
  return text;
}

}  // namespace prismwright
