#include "geometry/pictures/contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace prismwright {

namespace {

constexpr double kEdgeOn = 1e-9;
constexpr int kSteps = 12;

using NodePair = std::pair<std::uint32_t, std::uint32_t>;

/// The contours of one face: crossings of facet sides, joined through the facets.
class FaceContours {
 public:
  FaceContours(const PicturedSolid& solid, const FaceSurface& surface, SpaceVector eye)
      : solid_(solid), surface_(surface), eye_(eye) {}

  void add(const PicturedSolid::Facet& facet, const std::vector<double>& facing) {
    std::vector<std::size_t> ends;
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t a = facet.corners[i];
      const std::uint32_t b = facet.corners[(i + 1) % 3];
      if ((facing[a] < 0) == (facing[b] < 0)) continue;
      if (ends.empty() && !bulges(facet, facing)) return;
      ends.push_back(crossing(std::min(a, b), std::max(a, b), facing));
    }
    if (ends.size() != 2) return;
    links_[ends[0]].push_back(ends[1]);
    links_[ends[1]].push_back(ends[0]);
  }

  void take(std::vector<Contour>& contours) {
    used_.assign(nodes_.size(), false);
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (links_[i].size() == 1) walk(i, contours);
    }
    for (std::size_t i = 0; i < nodes_.size(); ++i) walk(i, contours);
  }

 private:
  /// Whether the face, followed towards the eye, turns towards it: only then it hides itself beyond the line.
  [[nodiscard]] bool bulges(const PicturedSolid::Facet& facet, const std::vector<double>& facing) const {
    const auto& [a, b, c] = facet.corners;
    const SpaceVector p = solid_.nodes[b].place - solid_.nodes[a].place;
    const SpaceVector q = solid_.nodes[c].place - solid_.nodes[a].place;
    const SpaceVector n = cross(p, q);
    // The slope of a linear function over a triangle is (df_q (p x n) ...): here along the eye's direction.
    const double along_p = dot(cross(eye_, q), n);
    const double along_q = dot(cross(p, eye_), n);
    return along_p * (facing[b] - facing[a]) + along_q * (facing[c] - facing[a]) > 0;
  }

  std::size_t crossing(std::uint32_t a, std::uint32_t b, const std::vector<double>& facing) {
    const auto [known, fresh] = known_.try_emplace(NodePair(a, b), nodes_.size());
    if (fresh) {
      nodes_.push_back(found(solid_.nodes[a], solid_.nodes[b], facing[a], facing[b]));
      links_.emplace_back();
    }
    return known->second;
  }

  /// By false position between two nodes of the face, on the exact surface.
  [[nodiscard]] ContourNode found(const PicturedSolid::Node& a, const PicturedSolid::Node& b, double at_a,
                                  double at_b) const {
    double low = 0, high = 1, at_low = at_a, at_high = at_b;
    FaceSurface::Point point;
    for (int i = 0; i < kSteps; ++i) {
      const double t = low + (high - low) * at_low / (at_low - at_high);
      point = surface_.at(a.u + t * (b.u - a.u), a.v + t * (b.v - a.v));
      const double here = dot(point.normal, eye_);
      if (std::abs(here) < kEdgeOn) break;
      if ((here < 0) == (at_low < 0)) {
        low = t, at_low = here, at_high /= 2;
      } else {
        high = t, at_high = here, at_low /= 2;
      }
    }
    return {point.place, point.normal};
  }

  void walk(std::size_t from, std::vector<Contour>& contours) {
    if (used_[from]) return;
    Contour line = {nodes_[from]};
    used_[from] = true;
    std::size_t at = from;
    for (auto next = unused(at); next; next = unused(at)) {
      at = *next;
      used_[at] = true;
      line.push_back(nodes_[at]);
    }
    // A ring is closed.
    if (line.size() > 2 && links_[from].size() == 2 && links_[at].size() == 2) line.push_back(line.front());
    if (line.size() > 1) contours.push_back(std::move(line));
  }

  [[nodiscard]] std::optional<std::size_t> unused(std::size_t at) const {
    for (const std::size_t next : links_[at]) {
      if (!used_[next]) return next;
    }
    return std::nullopt;
  }

  const PicturedSolid& solid_;
  const FaceSurface& surface_;
  SpaceVector eye_;
  std::map<NodePair, std::size_t> known_;
  std::vector<ContourNode> nodes_;
  std::vector<std::vector<std::size_t>> links_;
  std::vector<bool> used_;
};

}  // namespace

std::vector<Contour> contours_of(const PicturedSolid& solid, SpaceVector eye) {
  std::vector<double> facing;
  facing.reserve(solid.nodes.size());
  for (const PicturedSolid::Node& node : solid.nodes) {
    // Exactly edge-on counts as facing the eye on either side of a seam, whatever the rounding.
    const double f = dot(node.normal, eye);
    facing.push_back(std::abs(f) < kEdgeOn ? 0 : f);
  }
  std::vector<Contour> contours;
  for (std::size_t i = 0; i < solid.facets.size();) {
    const std::uint32_t face = solid.facets[i].face;
    FaceContours own(solid, solid.faces[face], eye);
    for (; i < solid.facets.size() && solid.facets[i].face == face; ++i) own.add(solid.facets[i], facing);
    own.take(contours);
  }
  return contours;
}

}  // namespace prismwright
