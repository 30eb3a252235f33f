// Pictures of simple solids, held against their closed forms.
#include "geometry/picture_studio.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeSphere.hxx>
#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.02;

TopoDS_Shape box(gp_Pnt low, gp_Pnt high) { return BRepPrimAPI_MakeBox(low, high).Shape(); }
TopoDS_Shape cube(double side) {
  return box({-side / 2, -side / 2, -side / 2}, {side / 2, side / 2, side / 2});
}

PictureStudio studio_of(const std::vector<PicturePart>& parts) {
  auto studio = PictureStudio::of(parts, kChord_mm);
  EXPECT_TRUE(studio.ok()) << (studio.ok() ? "" : studio.problem().text);
  return std::move(studio).value();
}
PictureStudio studio_of(const TopoDS_Shape& shape, PartStuff stuff = PartStuff::glass) {
  return studio_of(std::vector<PicturePart>{{"solid", shape, stuff}});
}

bool is_white(const PointImage& image, int x, int y) {
  const auto at = 3 * static_cast<std::size_t>(y * image.wide + x);
  return std::all_of(image.rgb.begin() + static_cast<std::ptrdiff_t>(at),
                     image.rgb.begin() + static_cast<std::ptrdiff_t>(at + 3), [](int v) { return v == 255; });
}

/// What of a picture is not paper: the rectangle round it, in points, and how many points it has.
struct Covered {
  int left = 1 << 20, right = -1, top = 1 << 20, foot = -1;
  int points = 0;
  [[nodiscard]] int wide() const { return right - left + 1; }
  [[nodiscard]] int high() const { return foot - top + 1; }
};
Covered covered_by(const PointImage& image) {
  Covered c;
  for (int y = 0; y < image.high; ++y) {
    for (int x = 0; x < image.wide; ++x) {
      if (is_white(image, x, y)) continue;
      c.left = std::min(c.left, x), c.right = std::max(c.right, x);
      c.top = std::min(c.top, y), c.foot = std::max(c.foot, y);
      ++c.points;
    }
  }
  return c;
}

struct Colour {
  int red, green, blue;
};
Colour middle_of(const PointImage& image) {
  const auto at = 3 * static_cast<std::size_t>(image.high / 2 * image.wide + image.wide / 2);
  return {image.rgb[at], image.rgb[at + 1], image.rgb[at + 2]};
}

double length_of(const ViewLine& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    sum += std::hypot(line.points[i].x - line.points[i - 1].x, line.points[i].y - line.points[i - 1].y);
  }
  return sum;
}
double length_of(const LineView& view) {
  double sum = 0;
  for (const ViewLine& line : view.lines) sum += length_of(line);
  return sum;
}
double outline_of(const LineView& view) {
  double sum = 0;
  for (const ViewLine& line : view.lines) sum += line.outline ? length_of(line) : 0;
  return sum;
}

void expect_box(const LineView& view, PaperPoint low, PaperPoint high) {
  constexpr double kNear_mm = 1e-4;
  EXPECT_NEAR(view.low.x, low.x, kNear_mm);
  EXPECT_NEAR(view.low.y, low.y, kNear_mm);
  EXPECT_NEAR(view.high.x, high.x, kNear_mm);
  EXPECT_NEAR(view.high.y, high.y, kNear_mm);
}

/// The corner of a cube that points at this eye lies on the middle of the picture.
const PictureEye kCorner{45, degrees(std::atan(1 / std::sqrt(2.0)))};

// A picture leaves a twentieth of its shorter side free all round; an edge is about a point wide, half of it
// outside of its face.
TEST(PictureOfABox, HasItsWidthHeightAndArea) {
  const auto image = studio_of(box({0, 0, 0}, {40, 20, 30})).picture({0, 0}, 300, 400);
  ASSERT_TRUE(image.ok());
  const double points_per_mm = (400 - 2 * 0.05 * 300) / 30;
  const Covered c = covered_by(*image);
  EXPECT_NEAR(c.high(), 30 * points_per_mm, 2);
  EXPECT_NEAR(c.wide(), 20 * points_per_mm, 2);
  EXPECT_EQ(c.points, c.wide() * c.high());
  EXPECT_NEAR(c.left + c.right, 299, 1);
  EXPECT_NEAR(c.top + c.foot, 399, 1);
}

TEST(PictureOfASphere, IsADiscFromEverywhere) {
  const PictureStudio studio = studio_of(BRepPrimAPI_MakeSphere(10).Shape());
  for (const PictureEye eye : {PictureEye{0, 0}, PictureEye{70, 30}, PictureEye{0, 90}}) {
    const auto image = studio.picture(eye, 300, 200);
    ASSERT_TRUE(image.ok());
    const double radius = 90;
    const Covered c = covered_by(*image);
    EXPECT_NEAR(c.wide(), 2 * radius, 2);
    EXPECT_NEAR(c.high(), 2 * radius, 2);
    // The outer half of the outline, up to a point wide, is covered too.
    EXPECT_GT(c.points, kPi * radius * radius);
    EXPECT_LT(c.points, kPi * (radius + 1.2) * (radius + 1.2));
  }
}

TEST(PictureOfACylinder, IsADiscFromAboveAndARectangleFromTheSide) {
  const PictureStudio studio = studio_of(BRepPrimAPI_MakeCylinder(10, 30).Shape(), PartStuff::metal);
  const Covered above = covered_by(*studio.picture({0, 90}, 200, 200));
  EXPECT_NEAR(above.points, kPi * 90.6 * 90.6, kPi * 2 * 90 * 0.7);
  const Covered side = covered_by(*studio.picture({0, 0}, 200, 200));
  EXPECT_NEAR(side.high(), 180, 2);
  EXPECT_NEAR(side.wide(), 120, 2);
  EXPECT_EQ(side.points, side.wide() * side.high());
}

TEST(PictureOfBrassBehindGlass, ShowsTheBrassTinted) {
  const PicturePart glass{"glass", box({20, -10, -10}, {30, 10, 10}), PartStuff::glass};
  const PicturePart brass{"brass", box({0, -10, -10}, {10, 10, 10}), PartStuff::metal};
  const auto seen = [](const std::vector<PicturePart>& parts, double azimuth_deg) {
    return middle_of(*studio_of(parts).picture({azimuth_deg, 0}, 60, 60));
  };
  const Colour behind = seen({glass, brass}, 0);
  const Colour bare = seen({brass}, 0);
  const Colour clear = seen({glass}, 0);
  // Glass is green (#8CC0AE over white paper), brass yellow (#A9812F).
  EXPECT_GT(clear.green, clear.red);
  EXPECT_GT(bare.red, bare.green);
  EXPECT_GT(bare.green, bare.blue);
  EXPECT_GT(behind.blue, bare.blue + 10);
  EXPECT_LT(behind.red, clear.red - 10);
  EXPECT_LT(behind.blue, clear.blue - 10);
  // Looked at from the other side the brass stands before the glass and hides it.
  const Colour before = seen({glass, brass}, 180);
  EXPECT_NEAR(before.red, seen({brass}, 180).red, 12);
  EXPECT_GT(before.red, before.blue + 60);
}

TEST(Pictures, AreTheSameTwice) {
  const std::vector<PicturePart> parts = {{"ball", BRepPrimAPI_MakeSphere(10).Shape(), PartStuff::glass},
                                          {"box", box({-5, -20, -5}, {5, 20, 5}), PartStuff::metal}};
  const auto one = studio_of(parts).picture({30, 25}, 240, 180);
  const auto other = studio_of(parts).picture({30, 25}, 240, 180);
  ASSERT_TRUE(one.ok() && other.ok());
  EXPECT_EQ(one->rgb, other->rgb);
}

TEST(LinesOfACube, AreFourStraightOnAndNineFromACorner) {
  const PictureStudio studio = studio_of(cube(40));
  const auto front = studio.lines({0, 0});
  ASSERT_TRUE(front.ok());
  EXPECT_NEAR(length_of(*front), 4 * 40, 1e-3);
  EXPECT_NEAR(outline_of(*front), 4 * 40, 1e-3);
  expect_box(*front, {-20, -20}, {20, 20});
  const auto corner = studio.lines(kCorner);
  ASSERT_TRUE(corner.ok());
  // From a corner each edge is foreshortened by the root of two thirds; six of the nine are the outline.
  const double edge = 40 * std::sqrt(2.0 / 3);
  EXPECT_NEAR(length_of(*corner), 9 * edge, 0.05);
  EXPECT_NEAR(outline_of(*corner), 6 * edge, 0.05);
  // The three hidden ones would run from the middle away from the three seen ones: up, and down on either side.
  for (const ViewLine& line : corner->lines) {
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      const PaperPoint m = {(line.points[i - 1].x + line.points[i].x) / 2,
                            (line.points[i - 1].y + line.points[i].y) / 2};
      EXPECT_FALSE(std::abs(m.x) < 1 && m.y > 1 && m.y < edge - 1) << m.x << ' ' << m.y;
    }
  }
}

class LinesOfACylinder : public ::testing::TestWithParam<double> {};

// The solid's seam stands at azimuth 0: seen from 90 it lies on the outline.
TEST_P(LinesOfACylinder, AreARectangleFromTheSide) {
  const PictureStudio studio = studio_of(BRepPrimAPI_MakeCylinder(15, 50).Shape());
  const auto view = studio.lines({GetParam(), 0});
  ASSERT_TRUE(view.ok());
  int upright = 0;
  for (const ViewLine& line : view->lines) {
    const PaperPoint &a = line.points.front(), &b = line.points.back();
    EXPECT_TRUE(line.outline);
    if (std::abs(b.y - a.y) < 1) continue;
    ++upright;
    EXPECT_NEAR(std::abs(a.x), 15, 1e-6);
    EXPECT_NEAR(a.x, b.x, 1e-6);
    EXPECT_NEAR(length_of(line), 50, 1e-6);
    EXPECT_EQ(line.points.size(), 2u);
  }
  EXPECT_EQ(upright, 2);
  // The facets' corners need not fall on the outline: the ends' lines may stop short of it by a chord.
  EXPECT_NEAR(length_of(*view), 2 * 50 + 4 * 15, 8 * kChord_mm);
}

INSTANTIATE_TEST_SUITE_P(FromAround, LinesOfACylinder, ::testing::Values(0.0, 37.0, 90.0, 180.0, 270.0));

TEST(LinesOfASphere, AreOneCircle) {
  const auto view = studio_of(BRepPrimAPI_MakeSphere(25).Shape()).lines({20, 35});
  ASSERT_TRUE(view.ok());
  EXPECT_NEAR(length_of(*view), 2 * kPi * 25, 0.3);
  for (const ViewLine& line : view->lines) {
    EXPECT_TRUE(line.outline);
    for (const PaperPoint& p : line.points) EXPECT_NEAR(std::hypot(p.x, p.y), 25, 0.05);
  }
}

TEST(LinesOfTwoBoxes, LeaveOutWhatStandsBehind) {
  const TopoDS_Shape wall = box({10, -30, -30}, {20, 30, 30});
  const TopoDS_Shape hidden = box({-20, -10, -10}, {0, 10, 10});
  const auto alone = studio_of(wall).lines({0, 0});
  const auto both =
      studio_of({{"wall", wall, PartStuff::glass}, {"box", hidden, PartStuff::metal}}).lines({0, 0});
  ASSERT_TRUE(alone.ok() && both.ok());
  EXPECT_NEAR(length_of(*both), length_of(*alone), 1e-3);
  EXPECT_TRUE(std::ranges::all_of(both->lines, [](const ViewLine& line) { return line.glass; }));
  // Half seen: from y = 30 on 20 of 50 mm stand out, of three edges; a mm is found to a hundredth.
  const TopoDS_Shape half = box({-20, 0, -10}, {0, 50, 10});
  const auto some =
      studio_of({{"wall", wall, PartStuff::glass}, {"box", half, PartStuff::metal}}).lines({0, 0});
  ASSERT_TRUE(some.ok());
  double metal = 0;
  for (const ViewLine& line : some->lines) metal += line.glass ? 0 : length_of(line);
  EXPECT_NEAR(metal, 2 * 20 + 20, 0.02);
}

TEST(Views, LieAsTheEyeSees) {
  // Metal stands at +X +Y, glass at the origin.
  const PictureStudio studio = studio_of(
      {{"glass", cube(10), PartStuff::glass}, {"metal", box({30, 40, 50}, {31, 41, 51}), PartStuff::metal}});
  const auto place = [&](const PictureEye& eye) {
    const auto view = studio.lines(eye);
    for (const ViewLine& line : view->lines) {
      if (!line.glass) return line.points.front();
    }
    return PaperPoint{};
  };
  // From the sea Y runs to the right, from above X does and Y runs up.
  EXPECT_NEAR(place({0, 0}).x, 40.5, 0.6);
  EXPECT_NEAR(place({0, 0}).y, 50.5, 0.6);
  EXPECT_NEAR(place({0, 90}).x, 30.5, 0.6);
  EXPECT_NEAR(place({0, 90}).y, 40.5, 0.6);
  EXPECT_NEAR(place({180, 0}).x, -40.5, 0.6);
  EXPECT_NEAR(place({-90, 0}).x, 30.5, 0.6);
}

TEST(PictureStudios, RefuseWhatCannotBePictured) {
  EXPECT_EQ(PictureStudio::of({}, 0.1).problem().code, "empty");
  EXPECT_EQ(PictureStudio::of({{"cube", cube(1), PartStuff::glass}}, 0).problem().code, "chord");
  EXPECT_EQ(PictureStudio::of({{"none", TopoDS_Shape(), PartStuff::glass}}, 0.1).problem().where, "none");
  const PictureStudio studio = studio_of(cube(10));
  EXPECT_EQ(studio.picture({}, 0, 100).problem().code, "size");
  EXPECT_EQ(studio.picture({}, 100, 100000).problem().code, "size");
}

TEST(PictureStudios, StopWhenTold) {
  const Progress stop = [](double, std::string_view) { return false; };
  EXPECT_EQ(PictureStudio::of({{"cube", cube(1), PartStuff::glass}}, 0.1, stop).problem().trouble,
            Trouble::stopped);
  const PictureStudio studio = studio_of(cube(10));
  EXPECT_EQ(studio.picture({}, 100, 100, stop).problem().trouble, Trouble::stopped);
  EXPECT_EQ(studio.lines({}, stop).problem().trouble, Trouble::stopped);
}

}  // namespace
}  // namespace prismwright
