#include <algorithm>
#include <cmath>
#include <optional>

#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "core/lens/trimmed_ring.h"
#include "core/optics/band_frame.h"
#include "core/optics/proof.h"
#include "geometry/bodies.h"
#include "geometry/safe_file.h"
#include "geometry/step_writer.h"
#include "tests/support/empty_folder.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/step_tracer.h"

// Solids are written to STEP, read again and traced by code that shares nothing with the designer.

namespace prismwright {
namespace {

using step_tracer::StepTracer;
using step_tracer::TracedRay;
using step_tracer::Vector;

/// Even: the ray along the axis itself would meet the pole of a turned spline, a place without a normal that
/// the kernel's intersection loses.
constexpr int kElevations = 8;
constexpr double kSpread[] = {-0.6, 0.05, 0.7};  ///< of the half of the angles that the trim keeps

/// A ray for a prism: its angles in the panel's frame, and what the section says of it.
struct Aim {
  double off_axis = 0;  ///< belt: elevation; bull's-eye: angle off the panel's axis, never negative. Radians.
  double roll = 0;      ///< belt: azimuth from the panel's axis; bull's-eye: angle about it. Radians.
  double departure_deg = 0;
  double beam_deg = 0;  ///< elevation of the beam in the ray's plane: not 0 for an aimed belt
  int faces = 0;
};

/// The plane of the ray in the panel's frame: along the beam, and across it.
struct RayPlane {
  Vector along;
  Vector across;

  [[nodiscard]] Vector at(double angle) const {
    Vector v{};
    for (int i = 0; i < 3; ++i) v[i] = std::cos(angle) * along[i] + std::sin(angle) * across[i];
    return v;
  }
};

double dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

Vector turned(const Vector& v, double angle) {
  return {std::cos(angle) * v[0] - std::sin(angle) * v[1], std::sin(angle) * v[0] + std::cos(angle) * v[1],
          v[2]};
}

RayPlane plane_of(const PlannedPrism& prism, const Aim& aim) {
  const double axis = radians(prism.axis_deg);
  if (prism.turning == TurningAxis::lens) {
    return {turned({std::cos(aim.roll), std::sin(aim.roll), 0}, axis), {0, 0, 1}};
  }
  const double dip = radians(prism.axis_dip_deg);
  const double up = std::sin(aim.roll);
  return {turned({std::cos(dip), 0, -std::sin(dip)}, axis),
          turned({up * std::sin(dip), std::cos(aim.roll), up * std::cos(dip)}, axis)};
}

/// The angles at which the whole path of a ray lies inside the trimmed ring.
std::optional<TrimmedRing::Span> kept_along(const TrimmedRing& ring, const BandFrame& axis,
                                            const RayPath& path) {
  std::optional<TrimmedRing::Span> all;
  for (const RayMeeting& meeting : path.meetings) {
    SectionPoint place = meeting.place;
    if (ring.turning() == TurningAxis::panel) {
      place = axis.out_of(place);
      place.z = std::abs(place.z);
    }
    const auto here = ring.kept(place);
    if (!here) return std::nullopt;
    if (!all) all = here;
    all->from = std::max(all->from, here->from);
    all->to = std::min(all->to, here->to);
  }
  if (all && all->from >= all->to) return std::nullopt;
  return all;
}

/// Rays that the section says take the prism's own way.
std::vector<Aim> aims_for(const PlannedPrism& prism, const Zone& zone, const SectionTracer& section,
                          const SectionInput& input) {
  const TrimmedRing ring(prism);
  const Band band = band_of(zone.kind);
  const BandFrame axis = turning_frame(input, band);
  const bool panel = prism.turning == TurningAxis::panel;
  // A refracting ring below the axis of a belt is the mirror image of its zone.
  double low = 0;
  for (const SectionPoint& p : polygon_of(prism.profile, 1)) low += p.z;
  const bool image = !panel && zone.kind == ZoneKind::ring && low < 0;
  std::vector<Aim> aims;
  for (int i = 0; i < kElevations; ++i) {
    const double share = (i + 0.5) / kElevations;
    const double elevation = (zone.from_deg + share * (zone.to_deg - zone.from_deg)) * (image ? -1 : 1);
    const RayPath path = section.trace(elevation, band);
    if (!path.regular || path.zone != zone.mark) continue;
    const auto span = kept_along(ring, axis, path);
    if (!span) continue;
    const double off_axis = panel ? elevation + prism.axis_dip_deg : elevation;
    const bool mirror = panel && off_axis < 0;
    for (const double spread : kSpread) {
      Aim aim;
      aim.off_axis = radians(mirror ? -off_axis : off_axis);
      aim.roll = (span->from + span->to) / 2 + spread * (span->to - span->from) / 2;
      if (panel && prism.trim.half == Half::lower) aim.roll = -aim.roll;
      aim.departure_deg = mirror ? -path.departure_deg : path.departure_deg;
      aim.beam_deg = panel ? 0 : -path.aim_deg;
      aim.faces = static_cast<int>(path.meetings.size());
      aims.push_back(aim);
    }
  }
  return aims;
}

/// Angle between two unit vectors, degrees, good for small ones.
double angle_between_deg(const Vector& a, const Vector& b) {
  const double x = a[1] * b[2] - a[2] * b[1];
  const double y = a[2] * b[0] - a[0] * b[2];
  const double z = a[0] * b[1] - a[1] * b[0];
  return degrees(std::atan2(std::hypot(x, y, z), dot(a, b)));
}

struct Worst {
  double departure_deg = 0;  ///< from where the section sends the ray
  int rays = 0;
};

class RaysThroughSolids : public ::testing::Test {
 protected:
  /// Sends rays through every distinct prism of a lens; answers the worst angle between where a ray went and
  /// where `wanted_departure_deg` of its aim says it should go.
  template <class Wanted>
  Worst send_rays(const LensValues& values, Wanted wanted_departure_deg) {
    Worst worst;
    const auto plan = plan_lens(values);
    EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problem().text);
    BodyShop shop;
    const auto bodies = shop.make(*plan);
    EXPECT_TRUE(bodies.ok()) << (bodies.ok() ? "" : bodies.problem().text);
    if (!bodies) return worst;
    const SectionTracer section(plan->section);
    for (const PlannedPrism* prism : distinct_prisms(*plan)) {
      SCOPED_TRACE(prism->mark);
      const auto aims = aims_for(*prism, *plan->section.find(prism->zone), section, plan->section.input);
      EXPECT_GE(aims.size(), 9u) << "too few rays meet the prism to prove it";
      const std::string path = folder_.file(prism->mark + ".step");
      write(*bodies->find(prism->mark), path);
      const StepTracer solid(path);
      EXPECT_TRUE(solid.ready());
      if (!solid.ready()) continue;
      const double focus_z_mm = plan->section.aim_of(prism->kind).focus_z_mm;
      for (const Aim& aim : aims)
        send(solid, *prism, aim, plan->section.input.index, focus_z_mm, wanted_departure_deg(aim), worst);
    }
    return worst;
  }

 private:
  static void write(const PrismBody& body, const std::string& path) {
    const auto text = step_text({body.mark, body.shape, PartStuff::glass});
    ASSERT_TRUE(text.ok());
    ASSERT_TRUE(write_whole(path, *text).ok());
  }

  static void send(const StepTracer& solid, const PlannedPrism& prism, const Aim& aim, double index,
                   double focus_z_mm, double wanted_deg, Worst& worst) {
    const RayPlane plane = plane_of(prism, aim);
    const TracedRay ray = solid.trace(plane.at(aim.off_axis), index, {0, 0, focus_z_mm});
    const auto aimed = [&] {
      return ::testing::Message() << "off axis " << degrees(aim.off_axis) << " roll " << degrees(aim.roll);
    };
    EXPECT_TRUE(ray.left) << aimed();
    EXPECT_EQ(ray.faces, aim.faces) << aimed();
    EXPECT_EQ(ray.total, aim.faces - 2) << aimed();
    const double off = angle_between_deg(ray.direction, plane.at(radians(wanted_deg + aim.beam_deg)));
    worst.departure_deg = std::max(worst.departure_deg, off);
    ++worst.rays;
  }

  EmptyFolder folder_;
};

double level(const Aim&) { return 0; }
double as_proved(const Aim& aim) { return aim.departure_deg; }

// True curves: level, or along the panel's axis, within 0.001 deg (the figure that the lens is sold by).

TEST_F(RaysThroughSolids, TrueBullseyeOfTheFourthOrderSendsThemAlongThePanelAxis) {
  const Worst worst = send_rays(fourth_order_bullseye(Faces::true_curve), level);
  EXPECT_GT(worst.rays, 400);
  EXPECT_LT(worst.departure_deg, 0.001);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

TEST_F(RaysThroughSolids, TrueBeltOfTheSixthOrderSendsThemLevel) {
  const Worst worst = send_rays(sixth_order_belt(Faces::true_curve), level);
  EXPECT_GT(worst.rays, 300);
  EXPECT_LT(worst.departure_deg, 0.001);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

TEST_F(RaysThroughSolids, TrueUnequalPanelsOfTheFirstOrderSendThemAlongTheirAxes) {
  const Worst worst = send_rays(first_order_unequal(Faces::true_curve), level);
  EXPECT_GT(worst.rays, 400);
  EXPECT_LT(worst.departure_deg, 0.001);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

// Aimed beams: along the axes that dip towards the sea horizon, or as each band is told.

TEST_F(RaysThroughSolids, TrueBullseyeAimedAtTheSeaHorizonSendsThemThere) {
  const Worst worst = send_rays(aimed_at_the_horizon(fourth_order_bullseye(Faces::true_curve)), level);
  EXPECT_GT(worst.rays, 400);
  EXPECT_LT(worst.departure_deg, 0.001);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

TEST_F(RaysThroughSolids, EveryBandTurnedAndAimedByItselfSendsThemItsOwnWay) {
  const Worst worst = send_rays(every_band_its_own_way(), level);
  EXPECT_GT(worst.rays, 300);
  EXPECT_LT(worst.departure_deg, 0.001);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

// Historic arcs: the departure that the proof of the section states, within 0.005 deg.

TEST_F(RaysThroughSolids, HistoricBullseyeOfTheFourthOrderDepartsAsProved) {
  const Worst worst = send_rays(fourth_order_bullseye(Faces::arc), as_proved);
  EXPECT_GT(worst.rays, 400);
  EXPECT_LT(worst.departure_deg, 0.005);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

TEST_F(RaysThroughSolids, HistoricBeltOfTheSixthOrderDepartsAsProved) {
  const Worst worst = send_rays(sixth_order_belt(Faces::arc), as_proved);
  EXPECT_GT(worst.rays, 300);
  EXPECT_LT(worst.departure_deg, 0.005);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

TEST_F(RaysThroughSolids, HistoricUnequalPanelsOfTheFirstOrderDepartAsProved) {
  const Worst worst = send_rays(first_order_unequal(Faces::arc), as_proved);
  EXPECT_GT(worst.rays, 400);
  EXPECT_LT(worst.departure_deg, 0.005);
  RecordProperty("worst_deg", std::to_string(worst.departure_deg));
}

}  // namespace
}  // namespace prismwright
