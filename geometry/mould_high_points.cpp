#include "geometry/mould_high_points.h"

#include <algorithm>
#include <numeric>

namespace prismwright {

namespace {

/// Joins the skin's corners from the top down. Two regions that meet are one from there on: the lower of the
/// two tops is a high point of its own where it stands well above their meeting.
class Flood {
 public:
  Flood(const MouldSkin& skin, const gp_Vec& up, double trap_mm)
      : trap_mm_(trap_mm), neighbours_(skin.points.size()) {
    for (const gp_Pnt& p : skin.points) height_.push_back(p.XYZ() * up.XYZ());
    for (const SkinTriangle& t : skin.triangles) {
      for (std::size_t k = 0; k < 3; ++k) {
        neighbours_[std::size_t(t.corners[k])].push_back(t.corners[(k + 1) % 3]);
        neighbours_[std::size_t(t.corners[(k + 1) % 3])].push_back(t.corners[k]);
      }
    }
    top_.assign(skin.points.size(), -1);
  }

  std::vector<int> run() {
    std::vector<int> order(height_.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int m, int n) { return height(m) > height(n); });
    for (const int i : order) {
      top_[std::size_t(i)] = i;
      for (const int k : neighbours_[std::size_t(i)]) {
        if (top_[std::size_t(k)] >= 0) join(i, k);
      }
    }
    if (!order.empty()) found_.push_back(order.front());
    std::sort(found_.begin(), found_.end(), [&](int m, int n) { return height(m) > height(n); });
    return found_;
  }

 private:
  [[nodiscard]] double height(int i) const { return height_[std::size_t(i)]; }

  int top(int i) {
    while (top_[std::size_t(i)] != i) i = top_[std::size_t(i)] = top_[std::size_t(top_[std::size_t(i)])];
    return i;
  }

  void join(int at, int other) {
    const int one = top(at), two = top(other);
    if (one == two) return;
    const int lower = height(one) < height(two) ? one : two;
    if (height(lower) - height(at) > trap_mm_) found_.push_back(lower);
    top_[std::size_t(lower)] = lower == one ? two : one;
  }

  double trap_mm_;
  std::vector<double> height_;
  std::vector<std::vector<int>> neighbours_;
  std::vector<int> top_;
  std::vector<int> found_;
};

}  // namespace

std::vector<int> high_points(const MouldSkin& skin, const gp_Vec& up, double trap_mm) {
  return Flood(skin, up, trap_mm).run();
}

}  // namespace prismwright
