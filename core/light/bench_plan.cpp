#include "core/light/bench_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/light/light_path.h"
#include "core/light/rigid_move.h"

namespace prismwright {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
// As large as setting errors are, and large beside what the cubic pieces of a curved face depart from it.
constexpr double kTilt_deg = 0.05;
constexpr double kMove_mm = 0.1;

bool lets_in(std::optional<FaceRole> role) { return role == FaceRole::inner || role == FaceRole::entry; }

/// Angle about the turning axis in the middle of the longest stretch that the cuts leave of a face's middle.
double middle_angle(const LightBody& body, const TurnedFace& face) {
  constexpr int kSteps = 720;
  const LightBody::Angles all = body.angles();
  const double step = (all.to - all.from) / kSteps;
  int best_from = 0;
  int best_to = 0;
  int from = 0;
  for (int i = 0; i < kSteps; ++i) {
    if (!body.place(face, 0.5, all.from + (i + 0.5) * step)) from = i + 1;
    if (i + 1 - from <= best_to - best_from) continue;
    best_from = from;
    best_to = i + 1;
  }
  // Unbroken all round: at its top.
  if (best_to - best_from == kSteps && all.to - all.from > 1.5 * kPi) return 0.5 * kPi;
  return all.from + 0.5 * (best_from + best_to) * step;
}

/// Aims at one prism; everything is in its panel's frame.
class Aimer {
 public:
  Aimer(const PathFinder& finder, const PanelInLight& panel, const LightBody& body, const PlannedPrism& prism)
      : finder_(finder), panel_(panel), body_(body), prism_(prism), frame_(panel.frame()) {}

  BenchAim aim(double focus_z_mm) {
    aim_.mark = prism_.mark;
    aim_.panel = prism_.panel;
    aim_.stands_over_mm = focus_z_mm;
    lay_face();
    point_laser();
    if (find_spot()) {
      lay_edges();
      move_prism();
    }
    return std::move(aim_);
  }

 private:
  [[nodiscard]] bool about_lens() const { return prism_.turning == TurningAxis::lens; }
  [[nodiscard]] bool centred() const { return prism_.kind == ZoneKind::centre && !about_lens(); }

  /// A place of the prism's section, in the half-plane aimed at.
  [[nodiscard]] SpacePoint place(TurnPoint p) const {
    return body_.frame().out_of(SpacePoint{p.along, p.off * std::cos(angle_), p.off * std::sin(angle_)});
  }

  /// The ends of the face where light enters, and the two ways of the half-plane aimed at: along the seaward
  /// axis and up across it.
  void lay_face() {
    const Face* face = prism_.profile.find(is_refracting(prism_.kind) ? FaceRole::inner : FaceRole::entry);
    const auto turned_face = std::find_if(body_.faces().begin(), body_.faces().end(),
                                          [&](const TurnedFace& each) { return each.role() == face->role; });
    angle_ = about_lens() ? radians(0.5 * (prism_.trim.clockwise_side_deg + prism_.trim.anticlockwise_side_deg))
             : centred()  ? 0.5 * kPi
                          : middle_angle(body_, *turned_face);
    const auto end = [&](SectionPoint p) {
      TurnPoint turned_end = turned(p, prism_.turning);
      turned_end.off = std::abs(turned_end.off);
      return place(turned_end);
    };
    ends_[0] = end(face->start());
    ends_[1] = end(face->end());
    if (centred()) complete_centre();
    const SpaceVector across{0, std::cos(angle_), std::sin(angle_)};
    seaward_ = about_lens() ? body_.frame().out_of(across) : body_.frame().first;
    up_ = about_lens() ? SpaceVector{0, 0, 1} : body_.frame().out_of(across);
    if (up_.z < -1e-9) up_ = -up_;
    nose_up_ = cross(seaward_, up_);
  }

  /// A centre is planned as its upper half: the other end lies as far below the axis.
  void complete_centre() {
    SpacePoint& top = ends_[0];
    if (body_.frame().into(ends_[1]).z > body_.frame().into(top).z) top = ends_[1];
    SpacePoint below = body_.frame().into(top);
    below.z = -below.z;
    ends_[1] = body_.frame().out_of(below);
  }

  void point_laser() {
    const SpacePoint stand{0, 0, aim_.stands_over_mm};
    const SpacePoint middle = ends_[0] + 0.5 * (ends_[1] - ends_[0]);
    laser_ = {stand, unit(middle - stand)};
    const SpaceVector way = frame_.out_of(laser_.along);
    aim_.azimuth_deg = degrees(std::atan2(way.y, way.x));
    aim_.elevation_deg = degrees(std::asin(way.z));
    seat_ = middle;
    aim_.meets = frame_.out_of(middle);
  }

  [[nodiscard]] SpaceRay in_lens(const SpaceRay& ray) const {
    return {frame_.out_of(ray.from), frame_.out_of(ray.along)};
  }

  bool refuse(std::string why) {
    aim_.trouble = std::move(why);
    return false;
  }

  /// Sends the laser's light through the whole lens.
  bool find_spot() {
    const SpaceRay ray = in_lens(laser_);
    const auto met = finder_.lens().meet(ray, 0, kNever);
    if (!met || met->body != &body_ || !lets_in(met->role)) return refuse(in_the_way(met));
    seat_ = place_on(laser_, met->along_mm);
    outward_ = frame_.into(met->outward);
    aim_.meets = frame_.out_of(seat_);
    const LightPath path = finder_.follow(ray);
    aim_.leaves = frame_.into(path.last.from);
    aim_.beam = frame_.into(path.last.along);
    if (path.end == PathEnd::stopped)
      return refuse(fmt::format("The beam of {} runs into brass: it gives no spot in the whole lens.", mark()));
    if (path.end != PathEnd::free || !path.own_way || aim_.beam.x <= 0)
      return refuse(fmt::format("The beam of {} does not leave it by the way it is made for.", mark()));
    return true;
  }

  [[nodiscard]] std::string in_the_way(const std::optional<LightMeeting>& met) const {
    if (!met) return fmt::format("The laser misses {}.", mark());
    if (met->metal()) return fmt::format("Brass stands between the laser and the middle of {}.", mark());
    if (met->body == &body_) return fmt::format("The laser meets a face of {} that lets no light in.", mark());
    return fmt::format("{} stands between the laser and the middle of {}.", met->body->mark(), mark());
  }

  [[nodiscard]] const std::string& mark() const { return prism_.mark; }

  /// A shim lifts the glass off its seat: away from the light.
  void lay_edges() {
    const SpaceVector length_wise = ends_[0] - ends_[1];
    aim_.seat_mm = length(length_wise);
    const SpaceVector way = cross(nose_up_, length_wise);
    const bool first_is_nose_up = dot(way, outward_) < 0;
    const double rise = dot(length_wise, up_);
    const double run = dot(length_wise, seaward_);
    const bool steep = std::abs(rise) >= std::abs(run);
    const bool first_is_more = steep ? length_wise.z > 0 : run > 0;
    const char* more = steep ? "upper" : "outer";
    const char* less = steep ? "lower" : "inner";
    aim_.nose_up_edge = first_is_nose_up == first_is_more ? more : less;
    aim_.nose_down_edge = first_is_nose_up == first_is_more ? less : more;
  }

  void move_prism() {
    const auto tilted = change_deg({seat_, radians(kTilt_deg) * nose_up_, {}});
    const auto moved = change_deg({seat_, {}, kMove_mm * up_});
    if (!tilted || !moved) {
      refuse(fmt::format("The beam of {} slips off its faces when it is tilted by {} deg or moved by {} mm.",
                         mark(), kTilt_deg, kMove_mm));
      return;
    }
    aim_.turn_per_tilt = *tilted / (2 * kTilt_deg);
    aim_.turn_per_mm = *moved / (2 * kMove_mm);
  }

  /// By how much the beam rises from the prism moved the other way to the prism moved this way, degrees.
  [[nodiscard]] std::optional<double> change_deg(const RigidMove& move) const {
    const auto up = beam_deg(move);
    const auto down = beam_deg({move.about, -move.turn, -move.shift});
    if (!up || !down) return std::nullopt;
    return *up - *down;
  }

  /// Elevation of the beam through the moved prism: the ray is moved back instead, and its beam forth.
  [[nodiscard]] std::optional<double> beam_deg(const RigidMove& move) const {
    SpaceRay ray = move.back(laser_);
    const auto hit = body_.meet(ray, 0, kNever);
    if (!hit || !lets_in(hit->role)) return std::nullopt;
    ray.from = place_on(ray, hit->along_mm);
    const LightPath path =
        finder_.cross_one(in_lens(ray), panel_, body_, frame_.out_of(hit->outward), hit->role);
    if (path.end != PathEnd::free || !path.own_way) return std::nullopt;
    return degrees(std::asin(move.turned(frame_.into(path.last.along)).z));
  }

  const PathFinder& finder_;
  const PanelInLight& panel_;
  const LightBody& body_;
  const PlannedPrism& prism_;
  SpaceFrame frame_;
  double angle_ = 0;
  SpacePoint ends_[2];
  SpaceVector seaward_, up_, nose_up_;
  SpaceRay laser_;
  SpacePoint seat_;
  SpaceVector outward_;
  BenchAim aim_;
};

/// The prisms of a lens in light and the plan's prisms stand in the same order, panel by panel.
std::vector<BenchAim> aim_at_all(const LensPlan& plan, const PathFinder& finder) {
  std::vector<BenchAim> aims;
  for (const PanelInLight& panel : finder.lens().panels()) {
    for (const LightBody& body : panel.bodies) {
      if (body.metal()) continue;
      const PlannedPrism& prism = *plan.find(body.mark());
      aims.push_back(Aimer(finder, panel, body, prism).aim(plan.section.aim_of(prism.kind).focus_z_mm));
    }
  }
  return aims;
}

Done check_board(const BenchPlan& bench) {
  double front = 0;
  const BenchAim* last = nullptr;
  for (const BenchAim& aim : bench.aims) {
    if (!aim.trouble.empty() || aim.leaves.x <= front) continue;
    front = aim.leaves.x;
    last = &aim;
  }
  if (!last || bench.board_mm > front) return {};
  return request_problem(
      "bench.board", "light.board_mm",
      fmt::format("The board stands {:g} mm from the focus, within the lens: {} lets its light "
                  "out at {:.0f} mm. Set light.board_mm well beyond that.",
                  bench.board_mm, last->mark, front));
}

}  // namespace

BoardPlace BenchAim::spot_at(double board_mm) const {
  const double along = (board_mm - leaves.x) / beam.x;
  return {leaves.z + along * beam.z, leaves.y + along * beam.y};
}

const BenchAim* BenchPlan::find(std::string_view mark) const {
  const auto found = std::find_if(aims.begin(), aims.end(), [&](const BenchAim& a) { return a.mark == mark; });
  return found == aims.end() ? nullptr : &*found;
}

Outcome<BenchPlan> bench_plan(const LensPlan& plan, const BenchSettings& settings) {
  const Material& material = plan.values.material;
  const LightLens lens(plan);
  const double index = settings.laser_nm ? material.index_at(*settings.laser_nm) : plan.section.input.index;
  BenchPlan bench{settings.board_mm.value_or(plan.values.light.board_mm),
                  settings.laser_nm.value_or(material.wavelength_nm),
                  aim_at_all(plan, PathFinder(lens, {index, 0}))};
  if (const Done beyond = check_board(bench); !beyond) return beyond.problem();
  return bench;
}

}  // namespace prismwright
