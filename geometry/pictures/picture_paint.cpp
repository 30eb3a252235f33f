#include "geometry/pictures/picture_paint.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/pictures/two_threads.h"

namespace prismwright {

namespace {

constexpr double kMargin = 0.05;
constexpr double kBefore_mm = 1;
constexpr int kBand = 16;  ///< rows that are painted in one go
constexpr double kFaces = 0.45, kAll = 0.8;

struct Sample {
  PointColour tint;
  std::uint64_t faces = 0;
};

class FacePainter {
 public:
  FacePainter(const PictureScene& scene, const ViewPlane& plane, const PictureFit& fit)
      : scene_(scene),
        plane_(plane),
        fit_(fit),
        shade_(scene, plane, fit.near_mm - fit.far_mm),
        samples_(static_cast<std::size_t>(fit.wide) * static_cast<std::size_t>(fit.high)) {
    image_.wide = fit.wide;
    image_.high = fit.high;
    image_.rgb.resize(3 * samples_.size());
  }

  bool paint(const Progress& progress) {
    const auto bands = static_cast<std::size_t>((fit_.high + kBand - 1) / kBand);
    return in_two_threads(bands, {progress, "faces", 0, kFaces}, [&](std::size_t band) { look(band); }) &&
           in_two_threads(bands, {progress, "faces", kFaces, kAll}, [&](std::size_t band) { finish(band); });
  }

  PointImage take() { return std::move(image_); }

 private:
  struct Rows {
    int from;
    int to;
  };
  [[nodiscard]] Rows rows(std::size_t band) const {
    const int from = static_cast<int>(band) * kBand;
    return {from, std::min(from + kBand, fit_.high)};
  }
  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(fit_.wide) + static_cast<std::size_t>(x);
  }

  Sample sample(double x, double y, std::vector<Meeting>& met) const {
    const SpacePoint from =
        plane_.place(fit_.left_mm + x * fit_.mm_per_point, fit_.top_mm - y * fit_.mm_per_point) +
        (fit_.near_mm + kBefore_mm) * plane_.eye;
    scene_.meetings({from, -plane_.eye}, met);
    if (met.empty()) return {};
    return {shade_.colour(met), shade_.faces(met)};
  }

  void look(std::size_t band) {
    std::vector<Meeting> met;
    const auto [from, to] = rows(band);
    for (int y = from; y < to; ++y) {
      for (int x = 0; x < fit_.wide; ++x) samples_[index(x, y)] = sample(x + 0.25, y + 0.25, met);
    }
  }

  [[nodiscard]] bool is_plain(int x, int y) const {
    const std::uint64_t own = samples_[index(x, y)].faces;
    for (int j = std::max(0, y - 1); j <= std::min(fit_.high - 1, y + 1); ++j) {
      for (int i = std::max(0, x - 1); i <= std::min(fit_.wide - 1, x + 1); ++i) {
        if (samples_[index(i, j)].faces != own) return false;
      }
    }
    return true;
  }

  void finish(std::size_t band) {
    std::vector<Meeting> met;
    const auto [from, to] = rows(band);
    for (int y = from; y < to; ++y) {
      for (int x = 0; x < fit_.wide; ++x)
        set(x, y, is_plain(x, y) ? samples_[index(x, y)].tint : mean(x, y, met));
    }
  }

  [[nodiscard]] PointColour mean(int x, int y, std::vector<Meeting>& met) const {
    const PointColour tints[4] = {samples_[index(x, y)].tint, sample(x + 0.75, y + 0.25, met).tint,
                                  sample(x + 0.25, y + 0.75, met).tint, sample(x + 0.75, y + 0.75, met).tint};
    PointColour sum = {0, 0, 0};
    for (const PointColour& t : tints) sum.red += t.red / 4, sum.green += t.green / 4, sum.blue += t.blue / 4;
    return sum;
  }

  void set(int x, int y, const PointColour& tint) {
    std::size_t at = 3 * index(x, y);
    for (const float share : {tint.red, tint.green, tint.blue}) {
      image_.rgb[at++] = static_cast<std::uint8_t>(std::lround(255 * std::clamp(share, 0.0F, 1.0F)));
    }
  }

  const PictureScene& scene_;
  const ViewPlane& plane_;
  const PictureFit& fit_;
  PictureShade shade_;
  std::vector<Sample> samples_;
  PointImage image_;
};

}  // namespace

PictureFit fit_picture(const PictureScene& scene, const ViewPlane& plane, int wide, int high) {
  constexpr double kFar = std::numeric_limits<double>::max();
  PaperPoint low{kFar, kFar}, top{-kFar, -kFar};
  PictureFit fit{wide, high, 1, 0, 0, -kFar, kFar};
  for (const ScenePart& part : scene.parts()) {
    for (const PicturedSolid::Node& node : part.solid->nodes) {
      const SpacePoint place = part.place.out_of(node.place);
      const PaperPoint p = plane.flat(place);
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      top = {std::max(top.x, p.x), std::max(top.y, p.y)};
      fit.near_mm = std::max(fit.near_mm, plane.depth(place));
      fit.far_mm = std::min(fit.far_mm, plane.depth(place));
    }
  }
  const double margin = kMargin * std::min(wide, high);
  fit.mm_per_point = std::max((top.x - low.x) / (wide - 2 * margin), (top.y - low.y) / (high - 2 * margin));
  fit.left_mm = (low.x + top.x) / 2 - fit.mm_per_point * wide / 2;
  fit.top_mm = (low.y + top.y) / 2 + fit.mm_per_point * high / 2;
  return fit;
}

std::optional<PointImage> painted_faces(const PictureScene& scene, const ViewPlane& plane,
                                        const PictureFit& fit, const Progress& progress) {
  FacePainter painter(scene, plane, fit);
  if (!painter.paint(progress)) return std::nullopt;
  return painter.take();
}

}  // namespace prismwright
