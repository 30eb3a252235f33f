#include "ui/views/lens_edges.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <vector>

#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

namespace prismwright {
namespace {

using Chain = std::vector<int>;

/// Points of a soup of segments, welded where they coincide, with the neighbours of each.
class Web {
 public:
  explicit Web(const Graphic3d_ArrayOfSegments& lines) {
    const bool indexed = lines.EdgeNumber() > 0;
    const int corners = indexed ? lines.EdgeNumber() : lines.VertexNumber();
    for (int i = 1; i + 1 <= corners; i += 2) {
      const int a = nodeAt(lines.Vertice(indexed ? lines.Edge(i) : i));
      const int b = nodeAt(lines.Vertice(indexed ? lines.Edge(i + 1) : i + 1));
      if (a != b) join(a, b);
    }
  }

  [[nodiscard]] const gp_Pnt& place(int node) const { return places_[static_cast<std::size_t>(node)]; }

  /// Every segment once, in chains that end at ends and forks; closed chains end where they begin.
  std::vector<Chain> takeChains() {
    std::vector<Chain> chains;
    const int count = static_cast<int>(places_.size());
    for (int node = 0; node < count; ++node)
      if (degree_[static_cast<std::size_t>(node)] != 2)
        while (!near(node).empty()) chains.push_back(walk(node));
    for (int node = 0; node < count; ++node)
      while (!near(node).empty()) chains.push_back(walk(node));
    return chains;
  }

 private:
  std::vector<int>& near(int node) { return near_[static_cast<std::size_t>(node)]; }

  int nodeAt(const gp_Pnt& p) {
    constexpr double kWeld_mm = 1e-3;
    const std::array<long long, 3> key = {std::llround(p.X() / kWeld_mm), std::llround(p.Y() / kWeld_mm),
                                          std::llround(p.Z() / kWeld_mm)};
    const auto [at, fresh] = nodes_.emplace(key, static_cast<int>(places_.size()));
    if (fresh) {
      places_.push_back(p);
      near_.emplace_back();
      degree_.push_back(0);
    }
    return at->second;
  }

  void join(int a, int b) {
    if (std::find(near(a).begin(), near(a).end(), b) != near(a).end()) return;  // drawn twice: both its faces
    near(a).push_back(b);
    near(b).push_back(a);
    ++degree_[static_cast<std::size_t>(a)];
    ++degree_[static_cast<std::size_t>(b)];
  }

  Chain walk(int from) {
    Chain chain = {from};
    for (int at = from; !near(at).empty();) {
      const int next = near(at).back();
      near(at).pop_back();
      auto& back = near(next);
      back.erase(std::find(back.begin(), back.end(), at));
      chain.push_back(next);
      at = next;
      if (degree_[static_cast<std::size_t>(at)] != 2) break;
    }
    return chain;
  }

  std::map<std::array<long long, 3>, int> nodes_;
  std::vector<gp_Pnt> places_;
  std::vector<std::vector<int>> near_;
  std::vector<int> degree_;
};

double distance_to_chord(const gp_Pnt& p, const gp_Pnt& a, const gp_Pnt& b) {
  const gp_Vec chord(a, b);
  const double length = chord.Magnitude();
  if (length < 1e-9) return a.Distance(p);
  return chord.Crossed(gp_Vec(a, p)).Magnitude() / length;
}

/// Marks the points of chain[from..to] that must stay (Ramer, Douglas, Peucker), both ends excluded.
void keep_between(const Web& web, const Chain& chain, std::size_t from, std::size_t to, double within_mm,
                  std::vector<bool>& kept) {
  std::vector<std::pair<std::size_t, std::size_t>> open = {{from, to}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    std::size_t farthest = a;
    double distance = within_mm;
    for (std::size_t i = a + 1; i < b; ++i) {
      const double here = distance_to_chord(web.place(chain[i]), web.place(chain[a]), web.place(chain[b]));
      if (here <= distance) continue;
      distance = here;
      farthest = i;
    }
    if (farthest == a) continue;
    kept[farthest] = true;
    open.emplace_back(a, farthest);
    open.emplace_back(farthest, b);
  }
}

}  // namespace

Handle(Graphic3d_ArrayOfSegments)
    simplified(const Handle(Graphic3d_ArrayOfSegments) & lines, double within_mm) {
  if (lines.IsNull()) return lines;
  Web web(*lines);
  std::vector<gp_Pnt> ends;
  for (const Chain& chain : web.takeChains()) {
    std::vector<bool> kept(chain.size(), false);
    kept.front() = kept.back() = true;
    keep_between(web, chain, 0, chain.size() - 1, within_mm, kept);
    std::size_t last = 0;
    for (std::size_t i = 1; i < chain.size(); ++i) {
      if (!kept[i]) continue;
      ends.push_back(web.place(chain[last]));
      ends.push_back(web.place(chain[i]));
      last = i;
    }
  }
  if (ends.empty()) return nullptr;
  Handle(Graphic3d_ArrayOfSegments) fewer = new Graphic3d_ArrayOfSegments(static_cast<int>(ends.size()));
  for (const gp_Pnt& end : ends) fewer->AddVertex(end);
  return fewer;
}

}  // namespace prismwright
