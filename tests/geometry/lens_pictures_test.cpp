// Pictures of a whole lens.
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/bodies.h"
#include "geometry/picture_studio.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

/// A belt of six equal panels, its glass alone: mirror-symmetric left and right of a panel's axis.
const PictureStudio& belt() {
  static const PictureStudio studio = [] {
    BodyShop shop;
    const auto bodies = shop.make(plan_of(sixth_order_belt(Faces::true_curve)));
    return std::move(PictureStudio::of(picture_parts(*bodies, {}), 0.1)).value();
  }();
  return studio;
}

bool is_paper(const PointImage& image, int x, int y) {
  const auto at = 3 * static_cast<std::size_t>(y * image.wide + x);
  return image.rgb[at] == 255 && image.rgb[at + 1] == 255 && image.rgb[at + 2] == 255;
}

TEST(PictureOfABelt, IsSymmetricAboutThePanelsAxis) {
  const auto image = belt().picture({0, 0}, 300, 300);
  ASSERT_TRUE(image.ok());
  int covered = 0, odd = 0;
  for (int y = 0; y < image->high; ++y) {
    for (int x = 0; x < image->wide; ++x) {
      covered += is_paper(*image, x, y) ? 0 : 1;
      odd += is_paper(*image, x, y) != is_paper(*image, image->wide - 1 - x, y) ? 1 : 0;
    }
  }
  EXPECT_GT(covered, 0.3 * 300 * 300);
  EXPECT_LT(odd, 0.01 * covered);
}

TEST(LinesOfABelt, AreSymmetricAboutThePanelsAxis) {
  const auto view = belt().lines({0, 0});
  ASSERT_TRUE(view.ok());
  EXPECT_NEAR(view->low.x, -view->high.x, 0.1);
  double left = 0, right = 0;
  for (const ViewLine& line : view->lines) {
    EXPECT_TRUE(line.glass);
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      const PaperPoint &a = line.points[i - 1], &b = line.points[i];
      const double size = std::hypot(b.x - a.x, b.y - a.y);
      // Of a piece across the middle each side gets its share.
      const double low = std::min(a.x, b.x), high = std::max(a.x, b.x);
      const double share = low >= 0 ? 1 : high <= 0 ? 0 : high / (high - low);
      right += share * size;
      left += (1 - share) * size;
    }
  }
  EXPECT_GT(left, 10 * view->high.x);
  EXPECT_NEAR(right, left, 0.003 * left);
}

TEST(LinesOfABelt, AreTheSameTwice) {
  const auto one = belt().lines({10, 20});
  const auto other = belt().lines({10, 20});
  ASSERT_TRUE(one.ok() && other.ok());
  ASSERT_EQ(one->lines.size(), other->lines.size());
  for (std::size_t i = 0; i < one->lines.size(); ++i) {
    const auto &a = one->lines[i].points, &b = other->lines[i].points;
    ASSERT_EQ(a.size(), b.size());
    for (std::size_t k = 0; k < a.size(); ++k) EXPECT_TRUE(a[k].x == b[k].x && a[k].y == b[k].y);
  }
}

}  // namespace
}  // namespace prismwright
