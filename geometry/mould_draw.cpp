#include "geometry/mould_draw.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>
#include <set>

#include "core/base/angle.h"
#include "geometry/mould_shadow.h"

namespace prismwright {

namespace {

constexpr std::size_t kPlacesLooked = 1200;
constexpr std::size_t kPlacesShown = 40;
constexpr int kOverHalfSphere = 48;
constexpr int kBetterings = 200;
constexpr double kNought = 4e-3;  ///< a part of a direction that is left out where that does no harm
constexpr double kAmpleDraft_deg = 3;
constexpr double kUpright = 1e-6;  ///< sine of a lean that is none: a wall along the draw
constexpr double kAxisGift = 0.03;
constexpr std::size_t kLookedAtClosely = 12;

SpaceVector vector_of(const gp_Vec& v) { return {v.X(), v.Y(), v.Z()}; }

double draft_deg_of(double cosine) { return degrees(std::asin(std::clamp(cosine, -1.0, 1.0))); }

/// On which side of the draw a face lies: by the sum of its normals.
double side_of(const SkinFace& face, SpaceVector along) {
  double sum = 0;
  for (const gp_Vec& n : face.normals) sum += dot(vector_of(n), along);
  return sum >= 0 ? 1 : -1;
}

struct FaceDraft {
  double side = 1;
  double least = 1;  ///< sine of the least draft; negative where part of the face leans the other way
};

FaceDraft draft_of(const SkinFace& face, SpaceVector along) {
  FaceDraft draft;
  draft.side = side_of(face, along);
  for (const gp_Vec& n : face.normals) {
    draft.least = std::min(draft.least, draft.side * dot(vector_of(n), along));
  }
  return draft;
}

double least_draft(const MouldSkin& skin, SpaceVector along) {
  double least = 1;
  for (const SkinFace& face : skin.faces) {
    if (!face.normals.empty()) least = std::min(least, draft_of(face, along).least);
  }
  return least;
}

/// The direction nearest to all normals turned to the side that they have now: the middle of the smallest cap
/// that holds them. By steps towards the farthest normal, each smaller than the one before.
SpaceVector bettered(const MouldSkin& skin, SpaceVector along) {
  std::vector<SpaceVector> normals;
  for (const SkinFace& face : skin.faces) {
    const double side = side_of(face, along);
    for (const gp_Vec& n : face.normals) normals.push_back(side * vector_of(n));
  }
  SpaceVector middle = along;
  SpaceVector best = along;
  double best_least = least_draft(skin, along);
  for (int i = 1; i <= kBetterings; ++i) {
    const auto farthest = std::min_element(normals.begin(), normals.end(), [&](const auto& m, const auto& n) {
      return dot(m, middle) < dot(n, middle);
    });
    const double least = dot(*farthest, middle);
    if (least > best_least) {
      best_least = least;
      best = middle;
    }
    const SpaceVector next = middle + (1.0 / (i + 1)) * (*farthest - middle);
    if (length(next) < 1e-6) break;
    middle = unit(next);
  }
  return best;
}

/// Gathers what is undercut on one face, of one kind.
class UndercutSum {
 public:
  void add(const gp_Pnt& place, double area_mm2, double draft_deg, double depth_mm) {
    if (sum_.area_mm2 == 0) sum_.draft_deg = draft_deg;
    sum_.area_mm2 += area_mm2;
    sum_.draft_deg = std::min(sum_.draft_deg, draft_deg);
    sum_.depth_mm = std::max(sum_.depth_mm, depth_mm);
    if (sum_.places.size() < kPlacesShown) sum_.places.push_back(place_of(place));
  }
  void take(std::size_t triangle) { triangles_.push_back(triangle); }
  void close(const std::string& face, UndercutKind kind, JudgedDraw& judged) {
    if (sum_.area_mm2 <= 0) return;
    sum_.face = face;
    sum_.kind = kind;
    for (const std::size_t triangle : triangles_)
      judged.pieces.push_back({triangle, judged.facts.undercuts.size()});
    judged.facts.undercuts.push_back(std::move(sum_));
  }

 private:
  Undercut sum_;
  std::vector<std::size_t> triangles_;
};

class Judge {
 public:
  Judge(const MouldSkin& skin, SpaceVector along, double draft_deg)
      : skin_(skin),
        along_(along),
        limit_(std::sin(radians(draft_deg))),
        shadow_(skin, along),
        steep_(skin.faces.size()),
        hidden_(skin.faces.size()) {}

  JudgedDraw judge() {
    for (const SkinFace& face : skin_.faces) sides_.push_back(side_of(face, along_));
    look_at_triangles();
    JudgedDraw judged;
    DrawFacts& facts = judged.facts;
    facts.along = along_;
    facts.height_mm = shadow_.height_mm();
    facts.draft_deg = draft_deg_of(least_draft(skin_, along_));
    for (std::size_t i = 0; i < skin_.faces.size(); ++i) {
      hidden_[i].close(skin_.faces[i].word, UndercutKind::hidden, judged);
      steep_[i].close(skin_.faces[i].word, UndercutKind::steep, judged);
    }
    return judged;
  }

 private:
  void look_at_triangles() {
    std::vector<std::size_t> order(skin_.triangles.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t m, std::size_t n) {
      return skin_.triangles[m].area_mm2 > skin_.triangles[n].area_mm2;
    });
    for (std::size_t i = 0; i < order.size(); ++i) look_at(order[i], i < kPlacesLooked);
  }

  void look_at(std::size_t index, bool for_hiding) {
    const SkinTriangle& t = skin_.triangles[index];
    const auto face = static_cast<std::size_t>(t.face);
    const double sine = dot(vector_of(t.normal), along_);
    const double draft = draft_deg_of(sides_[face] * sine);
    const gp_Pnt place = skin_.middle(t);
    if (for_hiding && shadow_.hides(index)) {
      hidden_[face].add(place, t.area_mm2, draft, shadow_.reach_mm(place));
      hidden_[face].take(index);
    } else if (std::abs(sine) < limit_ || leans_at_a_corner(t, face)) {
      steep_[face].add(place, t.area_mm2, draft, 0);
      steep_[face].take(index);
    }
  }

  /// A small face may be steep only towards its corners: the normals of the whole face tell.
  bool leans_at_a_corner(const SkinTriangle& t, std::size_t face) const {
    if (std::abs(dot(vector_of(t.normal), along_)) > 3 * limit_ + 0.02) return false;
    return draft_of(skin_.faces[face], along_).least < limit_;
  }

  const MouldSkin& skin_;
  SpaceVector along_;
  double limit_;
  MouldShadow shadow_;
  std::vector<double> sides_;
  std::vector<UndercutSum> steep_;
  std::vector<UndercutSum> hidden_;
};

struct Candidate {
  SpaceVector along;
  double least = -1;  ///< sine of the least draft
  double height_mm = 0;
  bool on_axis = false;
};

double height_along(const MouldSkin& skin, SpaceVector along) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const gp_Pnt& p : skin.points) {
    const double at = p.X() * along.x + p.Y() * along.y + p.Z() * along.z;
    low = std::min(low, at);
    high = std::max(high, at);
  }
  return high - low;
}

std::vector<SpaceVector> seeds(const MouldSkin& skin) {
  std::vector<SpaceVector> all = {{1, 0, 0}, {0, 0, 1}, {0, 1, 0}};
  for (const SkinFace& face : skin.faces) {
    SpaceVector sum{0, 0, 0};
    for (const gp_Vec& n : face.normals) sum = sum + vector_of(n);
    if (length(sum) > 1e-3 * static_cast<double>(face.normals.size())) all.push_back(unit(sum));
  }
  const double golden = kPi * (3 - std::sqrt(5.0));
  for (int i = 0; i < kOverHalfSphere; ++i) {
    const double x = (i + 0.5) / kOverHalfSphere;
    const double round = std::sqrt(1 - x * x);
    all.push_back({x, round * std::cos(golden * i), round * std::sin(golden * i)});
  }
  return all;
}

/// The direction without its least parts, where it draws as well.
SpaceVector tidied(const MouldSkin& skin, SpaceVector along) {
  SpaceVector tidy = along;
  for (double* part : {&tidy.x, &tidy.y, &tidy.z}) {
    if (std::abs(*part) < kNought) *part = 0;
  }
  tidy = unit(tidy);
  return least_draft(skin, tidy) > 0.99 * least_draft(skin, along) ? tidy : along;
}

std::vector<bool> sides_of(const MouldSkin& skin, SpaceVector along) {
  std::vector<bool> sides;
  for (const SkinFace& face : skin.faces) sides.push_back(side_of(face, along) > 0);
  if (!sides.empty() && !sides.front()) sides.flip();
  return sides;
}

/// Directions that leave the same faces on the same sides have one best direction between them.
std::vector<Candidate> candidates(const MouldSkin& skin) {
  std::vector<Candidate> all;
  std::set<std::vector<bool>> bettered_before;
  const auto offer = [&](SpaceVector along, bool on_axis) {
    for (const Candidate& known : all) {
      if (std::abs(dot(known.along, along)) > 1 - 1e-8) return;
    }
    all.push_back({along, least_draft(skin, along), height_along(skin, along), on_axis});
  };
  const auto from = seeds(skin);
  for (std::size_t i = 0; i < from.size(); ++i) {
    offer(from[i], i < 3);
    if (bettered_before.insert(sides_of(skin, from[i])).second)
      offer(tidied(skin, bettered(skin, from[i])), false);
  }
  return all;
}

/// Lower is better, before anything is looked for behind something else.
double cost_of(const Candidate& c, double limit) {
  const double height = c.height_mm * (c.on_axis ? 1 - kAxisGift : 1);
  if (c.least >= std::max(limit, std::sin(radians(kAmpleDraft_deg)))) return height;
  if (c.least >= limit) return 1e6 + height;
  return 1e12 - 1e9 * c.least;
}

double area_of(const DrawFacts& facts, UndercutKind kind) {
  double sum = 0;
  for (const Undercut& undercut : facts.undercuts) {
    if (undercut.kind == kind) sum += undercut.area_mm2;
  }
  return sum;
}

bool better(const DrawFacts& one, const DrawFacts& other) {
  const double hidden = area_of(one, UndercutKind::hidden), others = area_of(other, UndercutKind::hidden);
  if (hidden != others) return hidden < others;
  return area_of(one, UndercutKind::steep) < area_of(other, UndercutKind::steep);
}

/// The side of the draw is a matter of taste: seaward or upward is lifted.
SpaceVector upward(SpaceVector along) {
  const double lead = std::abs(along.x) > 0.3 ? along.x : std::abs(along.z) > 0.3 ? along.z : along.y;
  return lead < 0 ? -along : along;
}

}  // namespace

JudgedDraw judged_pieces(const MouldSkin& skin, SpaceVector along, double draft_deg) {
  return Judge(skin, along, draft_deg).judge();
}

DrawFacts judged_draw(const MouldSkin& skin, SpaceVector along, double draft_deg) {
  return judged_pieces(skin, along, draft_deg).facts;
}

ChosenDraw chosen_draw(const MouldSkin& skin, double draft_deg) {
  auto all = candidates(skin);
  const double limit = std::sin(radians(draft_deg));
  std::stable_sort(all.begin(), all.end(), [&](const Candidate& m, const Candidate& n) {
    return cost_of(m, limit) < cost_of(n, limit);
  });
  std::optional<ChosenDraw> best;
  for (std::size_t i = 0; i < std::min(all.size(), kLookedAtClosely); ++i) {
    const ChosenDraw here = {judged_draw(skin, upward(all[i].along), draft_deg), all[i].least > -kUpright};
    const bool fitter = !best || (here.one_sided && !best->one_sided) ||
                        (here.one_sided == best->one_sided && better(here.facts, best->facts));
    if (fitter) best = here;
    if (here.facts.free() && here.one_sided) break;
  }
  return *best;
}

}  // namespace prismwright
