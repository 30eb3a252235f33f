#include <gmock/gmock.h>

#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/drawing/arc_chain.h"
#include "core/lens/trimmed_ring.h"
#include "core/works/inspection.h"
#include "core/works/section_corners.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using Corners = std::vector<SectionPoint>;

Profile profile_of(const Corners& corners, const std::vector<FaceRole>& roles) {
  Profile profile;
  for (std::size_t i = 0; i < corners.size(); ++i)
    profile.faces.push_back(straight_face(roles[i], corners[i], corners[(i + 1) % corners.size()]));
  return profile;
}

PlannedPrism about_lens(Profile profile, ZoneKind kind = ZoneKind::upper) {
  PlannedPrism prism;
  prism.mark = "P01-U01";
  prism.kind = kind;
  prism.turning = TurningAxis::lens;
  prism.profile = std::move(profile);
  prism.trim = {-30, 30, 0, Half::whole, 0};
  return prism;
}

/// Legs of 30 and 40 along r and z: AB 30, BC 50, CA 40, the right angle at A.
PlannedPrism right_angled() {
  return about_lens(
      profile_of({{200, 100}, {200, 70}, {240, 100}}, {FaceRole::entry, FaceRole::reflecting, FaceRole::exit}));
}

double drawn(const std::vector<Feature>& features, const std::string& key) {
  const auto found = std::ranges::find(features, key, &Feature::key);
  return found == features.end() ? std::nan("") : found->drawn;
}
const Feature& feature(const std::vector<Feature>& features, const std::string& key) {
  return *std::ranges::find(features, key, &Feature::key);
}
std::vector<std::string> keys_of(const std::vector<Feature>& features) {
  std::vector<std::string> keys;
  for (const Feature& known : features) keys.push_back(known.key);
  return keys;
}

TEST(PrismFeatures, OfAThreeSidedPrismAreSidesAnglesAndLengths) {
  const auto features = features_of(right_angled(), WorksSettings{});
  EXPECT_THAT(keys_of(features),
              testing::ElementsAre("width.A-B", "width.B-C", "width.C-A", "angle.A", "angle.B", "angle.C",
                                   "length.outer", "length.inner", "thickness", "laser"));
  EXPECT_NEAR(drawn(features, "width.A-B"), 30, 1e-12);
  EXPECT_NEAR(drawn(features, "width.B-C"), 50, 1e-12);
  EXPECT_NEAR(drawn(features, "width.C-A"), 40, 1e-12);
  EXPECT_NEAR(drawn(features, "angle.A"), 90, 1e-9);
  EXPECT_NEAR(drawn(features, "angle.B"), degrees(std::atan2(40, 30)), 1e-9);
  EXPECT_NEAR(drawn(features, "angle.C"), degrees(std::atan2(30, 40)), 1e-9);
  // 60 degrees of rings of 240 and 200: chords as long as the radius.
  EXPECT_NEAR(drawn(features, "length.outer"), 240, 1e-9);
  EXPECT_NEAR(drawn(features, "length.inner"), 200, 1e-9);
  // The inscribed circle: (30 + 40 - 50) across.
  EXPECT_NEAR(drawn(features, "thickness"), 20, 1e-3);
  EXPECT_EQ(drawn(features, "laser"), 0);
}

TEST(PrismFeatures, TakeTheirTolerancesFromTheSettings) {
  WorksSettings works;
  works.width_within_mm = 0.11;
  works.angle_within_deg = 0.22;
  works.length_within_mm = 0.33;
  works.laser_within_deg = 0.44;
  const auto features = features_of(right_angled(), works);
  EXPECT_EQ(feature(features, "width.B-C").within, 0.11);
  EXPECT_EQ(feature(features, "angle.A").within, 0.22);
  EXPECT_EQ(feature(features, "length.outer").within, 0.33);
  EXPECT_EQ(feature(features, "laser").within, 0.44);
  EXPECT_EQ(feature(features, "angle.A").unit, "deg");
  EXPECT_EQ(feature(features, "length.outer").unit, "mm");
  EXPECT_FALSE(feature(features, "thickness").needed);
  for (const Feature& known : features) EXPECT_FALSE(known.how.empty() || known.name.empty()) << known.key;
}

TEST(PrismFeatures, OfALandAreItsWidthAndTheAnglesAtBothItsEnds) {
  // Corner A cut off 3 mm down and 4 mm along: a land of 5.
  const auto prism =
      about_lens(profile_of({{200, 97}, {200, 70}, {240, 100}, {204, 100}},
                            {FaceRole::entry, FaceRole::reflecting, FaceRole::exit, FaceRole::land}));
  const auto features = features_of(prism, WorksSettings{});
  EXPECT_NEAR(drawn(features, "width.A1-A2"), 5, 1e-12);
  EXPECT_NEAR(drawn(features, "width.A2-B"), 27, 1e-12);
  EXPECT_NEAR(drawn(features, "width.C-A1"), 36, 1e-12);
  EXPECT_NEAR(drawn(features, "angle.A1"), 180 - degrees(std::atan2(3, 4)), 1e-9);
  EXPECT_NEAR(drawn(features, "angle.A2"), 180 - degrees(std::atan2(4, 3)), 1e-9);
  EXPECT_THAT(feature(features, "width.A1-A2").name, testing::HasSubstr("land"));
}

TEST(PrismFeatures, OfARingNameItsFourCornersFromTheUpperInnerOne) {
  auto prism =
      about_lens(profile_of({{200, 60}, {200, 40}, {212, 40}, {212, 60}},
                            {FaceRole::inner, FaceRole::joint_lower, FaceRole::outer, FaceRole::joint_upper}),
                 ZoneKind::ring);
  const auto features = features_of(prism, WorksSettings{});
  EXPECT_NEAR(drawn(features, "width.A-B"), 20, 1e-12);
  EXPECT_NEAR(drawn(features, "width.B-C"), 12, 1e-12);
  EXPECT_NEAR(drawn(features, "width.C-D"), 20, 1e-12);
  EXPECT_NEAR(drawn(features, "width.D-A"), 12, 1e-12);
  EXPECT_THAT(feature(features, "width.B-C").name, testing::HasSubstr("lower joint"));
}

TEST(PrismFeatures, OfARoundCentreAreDiametersAndThicknessAtTheMiddle) {
  // Flat inner face at 200, outer arc of radius 100 about (112, 0): 12 thick at the middle, at z = 30 it stands
  // at 112 + sqrt(9100).
  PlannedPrism prism;
  prism.mark = "P01-C";
  prism.kind = ZoneKind::centre;
  prism.trim = {-40, 40, 0, Half::whole, 0};
  const double rim = 112 + std::sqrt(9100.0);
  prism.profile.faces = {straight_face(FaceRole::axis, {200, 0}, {212, 0}),
                         arc_face(FaceRole::outer, {212, 0}, {rim, 30}, {112, 0}, 100),
                         straight_face(FaceRole::joint_upper, {rim, 30}, {200, 30}),
                         straight_face(FaceRole::inner, {200, 30}, {200, 0})};
  const auto features = features_of(prism, WorksSettings{});
  EXPECT_THAT(keys_of(features),
              testing::ElementsAre("width.M-V", "width.D-A", "angle.D", "angle.A", "radius.outer",
                                   "length.outer", "length.inner", "thickness", "laser"));
  EXPECT_NEAR(drawn(features, "width.M-V"), 12, 1e-12);
  EXPECT_NEAR(drawn(features, "width.D-A"), rim - 200, 1e-12);
  EXPECT_NEAR(drawn(features, "length.outer"), 60, 1e-9);
  EXPECT_NEAR(drawn(features, "radius.outer"), 100, 1e-12);
  EXPECT_NEAR(feature(features, "radius.outer").arc->sagitta_mm, 100 - std::sqrt(9100.0), 1e-9);
  // The radius meets the joint at asin(0.3): the angle of the glass there is 90 and that.
  EXPECT_NEAR(drawn(features, "angle.D"), 90 + degrees(std::asin(0.3)), 1e-9);
  EXPECT_NEAR(drawn(features, "angle.A"), 90, 1e-9);
  EXPECT_THAT(feature(features, "length.outer").name, testing::HasSubstr("diameter"));
}

/// A ring whose outer face is a true curve through these places, from C up to D.
PlannedPrism with_true_outer(const std::vector<SectionPoint>& points,
                             const std::vector<SectionDirection>& tangents) {
  Profile profile;
  const SectionPoint c = points.front();
  const SectionPoint d = points.back();
  profile.faces = {straight_face(FaceRole::inner, {200, d.z}, {200, c.z}),
                   straight_face(FaceRole::joint_lower, {200, c.z}, c),
                   true_face(FaceRole::outer, points, tangents),
                   straight_face(FaceRole::joint_upper, d, {200, d.z})};
  return about_lens(profile, ZoneKind::ring);
}

TEST(PrismFeatures, OfATrueCurveThatIsACircleAreThatCircles) {
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i <= 16; ++i) {
    const double t = -0.2 + 0.4 * i / 16;
    points.push_back({140 + 80 * std::cos(t), 50 + 80 * std::sin(t)});
    tangents.push_back(SectionDirection::at(t + kPi / 2));
  }
  const auto features = features_of(with_true_outer(points, tangents), WorksSettings{});
  EXPECT_NEAR(drawn(features, "radius.outer"), 80, 0.02);
  EXPECT_NEAR(feature(features, "radius.outer").arc->sagitta_mm, 80 * (1 - std::cos(0.2)), 1e-4);
  EXPECT_LT(feature(features, "radius.outer").arc->departs_mm, 1e-4);
  EXPECT_NEAR(feature(features, "radius.outer").within, 0.005 * 80, 1e-3);
  EXPECT_THAT(feature(features, "radius.outer").name, testing::HasSubstr("full"));
}

TEST(PrismFeatures, OfAParabolaAreItsBestTemplateAndHowFarItStandsOff) {
  // r = 230 - (z - 40)^2 / 100 from z = 40 to 60. The best of all arcs through both ends is looked for by hand.
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i <= 32; ++i) {
    const double z = 20.0 * i / 32;
    points.push_back({230 - z * z / 100, 40 + z});
    tangents.push_back(SectionDirection::along({-z / 50, 1}));
  }
  const auto features = features_of(with_true_outer(points, tangents), WorksSettings{});
  const SectionPoint c = points.front();
  const SectionPoint d = points.back();
  const SectionPoint middle = between(c, d, 0.5);
  const SectionDirection across = SectionDirection::along(d - c).quarter_turn();
  const double half = distance(c, d) / 2;
  double least = 1e9;
  double best_radius = 0;
  for (double radius = 40; radius < 80; radius += 0.002) {
    const SectionPoint centre = middle + std::sqrt(radius * radius - half * half) * across;
    double worst = 0;
    for (int i = 0; i <= 200; ++i) {
      const double z = 20.0 * i / 200;
      worst = std::max(worst, std::abs(distance(centre, {230 - z * z / 100, 40 + z}) - radius));
    }
    if (worst >= least) continue;
    least = worst;
    best_radius = radius;
  }
  EXPECT_NEAR(drawn(features, "radius.outer"), best_radius, 0.02);
  EXPECT_NEAR(feature(features, "radius.outer").arc->departs_mm, least, 5e-4);
}

/// Turn of the tangent along a face, degrees: what its arcs sweep.
double turn_along(const Face& face) {
  double turn = 0;
  for (const ChainPiece& piece : arcs_of(face)) turn += degrees(piece.turn);
  return turn;
}

void expect_sound(const PlannedPrism& prism) {
  SCOPED_TRACE(prism.mark);
  const auto features = features_of(prism, WorksSettings{});
  std::set<std::string> keys;
  double corners = 0;
  for (const Feature& known : features) {
    EXPECT_TRUE(keys.insert(known.key).second) << known.key;
    EXPECT_TRUE(std::isfinite(known.drawn) && std::isfinite(known.within)) << known.key;
    EXPECT_GT(known.within, 0) << known.key;
    EXPECT_TRUE(known.drawn > 0 || known.kind == FeatureKind::laser) << known.key;
    if (known.kind == FeatureKind::angle) corners += 180 - known.drawn;
    EXPECT_TRUE(!known.arc || known.arc->departs_mm < known.arc->sagitta_mm + 1e-6) << known.key;
  }
  EXPECT_TRUE(keys.contains("length.outer") && keys.contains("thickness") && keys.contains("laser"));
  if (prism.profile.find(FaceRole::axis)) return;
  // Once round the outline the tangent turns once.
  for (const Face& face : prism.profile.faces) corners += turn_along(face);
  EXPECT_NEAR(corners, 360, 1e-3);
}

TEST(PrismFeatures, OfEverySampleAreSoundAndTurnOnceRound) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::true_curve), fourth_order_bullseye(Faces::arc),
                                   sixth_order_belt(Faces::true_curve), first_order_unequal(Faces::true_curve),
                                   every_band_its_own_way(), two_panels(Work::bullseye, Faces::arc)}) {
    const LensPlan plan = plan_of(values);
    for (const PlannedPrism* prism : distinct_prisms(plan)) expect_sound(*prism);
  }
}

TEST(PrismFeatures, OfRandomLensesAreSound) {
  Lot lot(74);
  int seen = 0;
  while (seen < 5) {
    const auto plan = plan_lens(random_lens(lot));
    if (!plan) continue;
    ++seen;
    for (const PlannedPrism* prism : distinct_prisms(*plan)) {
      if (TrimmedRing(*prism).kept_anywhere()) expect_sound(*prism);
    }
  }
}

}  // namespace
}  // namespace prismwright
