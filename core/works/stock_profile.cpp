#include "core/works/stock_profile.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include "core/works/stock_course.h"

namespace prismwright {

namespace {

constexpr double kLeastFace_mm = 0.01;   ///< a shorter face could be neither printed nor measured
constexpr double kLeastHollow_mm = 0.1;  ///< radius that the stock must leave of a hollow face
constexpr double kSmooth = 1e-6;         ///< sine of the angle up to which two faces touch smoothly
constexpr double kClosed_mm = 1e-11;
constexpr int kSteps = 60;
constexpr double kOnAxis_mm = 1e-9;

/// A corner of the moved outline: where two moved faces meet.
struct StockCorner {
  SectionPoint place;
  double before_mm = 0;  ///< that the face which runs into it is longer
  double after_mm = 0;   ///< that the face which leaves it is longer
};

std::optional<StockCorner> corner_of(const StockCourse& before, const StockCourse& after) {
  using End = StockCourse::End;
  const SectionPoint end = before.beyond(End::end, 0);
  const bool smooth = std::abs(cross(before.tangent(End::end), after.tangent(End::start))) < kSmooth;
  if (distance(end, after.beyond(End::start, 0)) < kClosed_mm) return StockCorner{end, 0, 0};
  if (smooth) {
    if (distance(end, after.beyond(End::start, 0)) > 1e-7) return std::nullopt;
    return StockCorner{end, 0, 0};
  }
  StockCorner corner;
  constexpr double kStep_mm = 1e-6;
  for (int i = 0; i < kSteps; ++i) {
    const SectionPoint a = before.beyond(End::end, corner.before_mm);
    const SectionPoint b = after.beyond(End::start, corner.after_mm);
    corner.place = a;
    const SectionOffset apart = b - a;
    if (apart.length() < kClosed_mm) return corner;
    const SectionOffset by_before = (1 / kStep_mm) * (before.beyond(End::end, corner.before_mm + kStep_mm) - a);
    const SectionOffset by_after = (1 / kStep_mm) * (after.beyond(End::start, corner.after_mm + kStep_mm) - b);
    const double whole = cross(by_before, by_after);
    if (std::abs(whole) < 1e-12) return std::nullopt;
    corner.before_mm += cross(apart, by_after) / whole;
    corner.after_mm += cross(apart, by_before) / whole;
    if (!std::isfinite(corner.before_mm) || !std::isfinite(corner.after_mm)) return std::nullopt;
  }
  const double left = distance(corner.place, after.beyond(End::start, corner.after_mm));
  return left < 1e-9 ? std::optional(corner) : std::nullopt;
}

class StockMaker {
 public:
  StockMaker(const PlannedPrism& prism, const WorksSettings& settings) : prism_(prism), settings_(settings) {}

  Outcome<PlannedPrism> make() {
    if (Done moved = move_faces(); !moved) return moved.problem();
    PlannedPrism stocked = prism_;
    if (Done joined = join(stocked.profile); !joined) return joined.problem();
    if (Done clear = check_axis(stocked.profile); !clear) return clear.problem();
    Trim& trim = stocked.trim;
    trim.set_back_mm -= stock_on_cuts(settings_);
    if (trim.half != Half::whole) trim.half_gap_mm -= stock_on_cuts(settings_);
    if (trim.flat_inner_mm) *trim.flat_inner_mm -= stock_on_flat_inner(settings_);
    stocked.shape_key = fmt::format("{}+{}{}", prism_.shape_key, settings_.stock_mm,
                                    settings_.stock_faces == StockFaces::all ? "all" : "");
    return stocked;
  }

 private:
  [[nodiscard]] const std::vector<Face>& faces() const { return prism_.profile.faces; }
  [[nodiscard]] std::size_t before(std::size_t i) const { return (i + faces().size() - 1) % faces().size(); }
  [[nodiscard]] std::size_t after(std::size_t i) const { return (i + 1) % faces().size(); }

  /// A rounded land touches both its neighbours, and so grows with them.
  [[nodiscard]] double stock_of(std::size_t i) const {
    const Face& face = faces()[i];
    if (face.role != FaceRole::land || face.kind != FaceKind::arc) return stock_on(face.role, settings_);
    return std::min(stock_on(faces()[before(i)].role, settings_), stock_on(faces()[after(i)].role, settings_));
  }

  Done move_faces() {
    for (std::size_t i = 0; i < faces().size(); ++i) {
      const StockCourse course(faces()[i], stock_of(i));
      if (course.hollow_radius_mm() - course.stock_mm() < kLeastHollow_mm && course.stock_mm() > 0) {
        return request_problem(
            "stock.hollow", prism_.mark,
            fmt::format(
                "{}: its hollow {} face has a radius of {:.2f} mm, of which {:g} mm of sanding stock leave "
                "less than {:g} mm. Make the sanding stock smaller.",
                prism_.mark, name_of(faces()[i].role), course.hollow_radius_mm(), course.stock_mm(),
                kLeastHollow_mm));
      }
      courses_.push_back(course);
    }
    return {};
  }

  Done join(Profile& profile) const {
    std::vector<StockCorner> corners;  // where each face starts
    for (std::size_t i = 0; i < faces().size(); ++i) {
      const auto corner = corner_of(courses_[before(i)], courses_[i]);
      if (!corner) return too_narrow(i);
      corners.push_back(*corner);
    }
    for (std::size_t i = 0; i < faces().size(); ++i) {
      const StockCorner& from = corners[i];
      const StockCorner& to = corners[after(i)];
      const double length = courses_[i].length_mm();
      const double least = std::min(kLeastFace_mm, length);
      if (length + from.after_mm + to.before_mm < least) return too_narrow(i);
      profile.faces[i] = courses_[i].between_corners(from.after_mm, from.place, to.before_mm, to.place);
    }
    return {};
  }

  [[nodiscard]] Problem too_narrow(std::size_t i) const {
    return request_problem(
        "stock.narrow", prism_.mark,
        fmt::format(
            "{}: {:g} mm of sanding stock on the faces beside it leave nothing of its {} face, which is "
            "{:.2f} mm wide. Make the sanding stock smaller.",
            prism_.mark, settings_.stock_mm, name_of(faces()[i].role),
            distance(faces()[i].start(), faces()[i].end())));
  }

  /// Glass stays on its side of the turning axis.
  [[nodiscard]] Done check_axis(const Profile& profile) const {
    double side = 0;
    double least = std::numeric_limits<double>::infinity();
    for (const SectionPoint p : polygon_of(prism_.profile, 0.01)) side += off(p) > 0 ? 1 : -1;
    for (const SectionPoint p : polygon_of(profile, 0.01)) least = std::min(least, side > 0 ? off(p) : -off(p));
    if (least >= -kOnAxis_mm) return {};
    return request_problem(
        "stock.axis", prism_.mark,
        fmt::format(
            "{}: {:g} mm of sanding stock would carry its glass {:.2f} mm past the axis that it is turned "
            "about. Make the sanding stock smaller.",
            prism_.mark, settings_.stock_mm, -least));
  }

  [[nodiscard]] double off(SectionPoint p) const { return prism_.turning == TurningAxis::lens ? p.r : p.z; }

  const PlannedPrism& prism_;
  const WorksSettings& settings_;
  std::vector<StockCourse> courses_;
};

}  // namespace

double stock_on(FaceRole role, const WorksSettings& settings) {
  if (role == FaceRole::land || role == FaceRole::axis) return 0;
  return settings.stock_faces == StockFaces::all || is_optical(role) ? settings.stock_mm : 0;
}

double stock_on_cuts(const WorksSettings& settings) {
  return settings.stock_faces == StockFaces::all ? settings.stock_mm : 0;
}

double stock_on_flat_inner(const WorksSettings& settings) { return stock_on(FaceRole::inner, settings); }

Outcome<PlannedPrism> with_stock(const PlannedPrism& prism, const WorksSettings& settings) {
  if (settings.stock_mm <= 0) return prism;
  return StockMaker(prism, settings).make();
}

}  // namespace prismwright
