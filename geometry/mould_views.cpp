#include "geometry/mould_views.h"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>
#include <Standard_Failure.hxx>

#include "geometry/mould_draw.h"
#include "geometry/mould_shadow.h"
#include "geometry/picture_studio.h"
#include "geometry/pictures/view_plane.h"

namespace prismwright {

namespace {

constexpr double kElevation_deg = 32;
constexpr double kFirstAzimuth_deg = 30;
constexpr double kTurn_deg = 45;
constexpr int kAzimuths = 8;
constexpr double kEdgeOn = 0.05;  ///< cosine under which a face is too narrow to be seen

SpaceVector vector_of(const gp_Vec& v) { return {v.X(), v.Y(), v.Z()}; }

/// What is seen of the undercuts from one side.
struct Look {
  PictureEye eye;
  ViewPlane plane;
  std::vector<std::vector<std::size_t>> seen;  ///< triangles, undercut by undercut
  std::vector<double> area_mm2;                ///< of those, foreshortened
};

Look look_from(const MouldSkin& skin, const JudgedDraw& judged, const PictureEye& eye) {
  Look look{eye, view_plane(eye), {}, {}};
  const std::size_t count = judged.facts.undercuts.size();
  look.seen.resize(count);
  look.area_mm2.resize(count);
  if (count == 0) return look;
  const MouldShadow shadow(skin, look.plane.eye);
  for (const JudgedDraw::Piece& piece : judged.pieces) {
    const SkinTriangle& t = skin.triangles[piece.triangle];
    const double facing = dot(vector_of(t.normal), look.plane.eye);
    if (facing < kEdgeOn || shadow.hides(piece.triangle)) continue;
    look.seen[piece.undercut].push_back(piece.triangle);
    look.area_mm2[piece.undercut] += facing * t.area_mm2;
  }
  return look;
}

/// Share of each undercut that is seen, summed; what `before` shows already counts only where it is exceeded.
double worth(const Look& look, const JudgedDraw& judged, const Look* before) {
  double sum = 0;
  for (std::size_t i = 0; i < look.area_mm2.size(); ++i) {
    const double shown = before ? before->area_mm2[i] : 0;
    sum += std::max(0.0, look.area_mm2[i] - shown) / judged.facts.undercuts[i].area_mm2;
  }
  return sum;
}

/// The two looks that show most; where all are alike, the first is from the sea above and the other from
/// opposite below.
std::array<Look, 2> best_looks(const MouldSkin& skin, const JudgedDraw& judged) {
  std::vector<Look> looks;
  for (const double elevation : {kElevation_deg, -kElevation_deg}) {
    for (int i = 0; i < kAzimuths; ++i)
      looks.push_back(look_from(skin, judged, {kFirstAzimuth_deg + i * kTurn_deg, elevation}));
  }
  const auto best = [&](const Look* before, std::size_t otherwise) {
    std::size_t chosen = otherwise;
    for (std::size_t i = 0; i < looks.size(); ++i) {
      if (worth(looks[i], judged, before) > worth(looks[chosen], judged, before) + 1e-9) chosen = i;
    }
    return chosen;
  };
  const std::size_t first = best(nullptr, 0);
  constexpr std::size_t kRound = kAzimuths;  // looks from above, and then as many from below
  const std::size_t opposite = (first < kRound ? kRound : 0) + (first + kRound / 2) % kRound;
  return {looks[first], looks[best(&looks[first], opposite)]};
}

/// The rim of a set of triangles: sides that only one of them has, chained to loops.
std::vector<std::vector<int>> rim_of(const MouldSkin& skin, const std::vector<std::size_t>& triangles) {
  std::multimap<int, int> next;
  for (const std::size_t i : triangles) {
    const auto& c = skin.triangles[i].corners;
    for (std::size_t k = 0; k < 3; ++k) {
      const int from = c[k];
      const int to = c[(k + 1) % 3];
      const auto [low, high] = next.equal_range(to);
      const auto back = std::find_if(low, high, [&](const auto& side) { return side.second == from; });
      if (back != high)
        next.erase(back);
      else
        next.emplace(from, to);
    }
  }
  std::vector<std::vector<int>> loops;
  while (!next.empty()) {
    std::vector<int> loop = {next.begin()->first};
    for (auto side = next.find(loop.back()); side != next.end(); side = next.find(loop.back())) {
      const int to = side->second;
      next.erase(side);
      if (to == loop.front()) break;
      loop.push_back(to);
    }
    if (loop.size() > 2) loops.push_back(std::move(loop));
  }
  return loops;
}

PaperPoint seen_at(const ViewPlane& plane, const gp_Pnt& p) { return plane.flat(place_of(p)); }

UndercutPatch patch_of(const MouldSkin& skin, const Look& look, std::size_t undercut) {
  UndercutPatch patch;
  patch.undercut = undercut;
  patch.area_mm2 = look.area_mm2[undercut];
  const auto& triangles = look.seen[undercut];
  for (const std::vector<int>& loop : rim_of(skin, triangles)) {
    std::vector<PaperPoint> places;
    for (const int i : loop) places.push_back(seen_at(look.plane, skin.points[std::size_t(i)]));
    patch.loops.push_back(std::move(places));
  }
  const auto largest =
      std::ranges::max_element(triangles, {}, [&](std::size_t i) { return skin.triangles[i].area_mm2; });
  patch.middle = seen_at(look.plane, skin.middle(skin.triangles[*largest]));
  return patch;
}

Outcome<MouldView> view_of(const MouldSkin& skin, const Look& look, const PictureStudio& studio) {
  auto lines = studio.lines(look.eye);
  if (!lines) return lines.problem();
  MouldView view{look.plane.right, look.plane.up, look.plane.eye, std::move(*lines), {}};
  for (std::size_t i = 0; i < look.seen.size(); ++i) {
    if (!look.seen[i].empty()) view.patches.push_back(patch_of(skin, look, i));
  }
  return view;
}

/// Faces and kinds one by one, for the patches take their letters from the places in the list.
bool same_undercuts(const DrawFacts& one, const DrawFacts& other) {
  return std::ranges::equal(one.undercuts, other.undercuts, [](const Undercut& a, const Undercut& b) {
    return a.face == b.face && a.kind == b.kind;
  });
}

Problem other_undercuts(const std::string& mark, const DrawFacts& judged, const DrawFacts& draw) {
  return request_problem(
      "mould", mark,
      fmt::format(
          "{}: the undercut faces found on its master, {}, are not the {} that its mould was judged by; "
          "nothing is drawn. Work out its mould anew.",
          mark, judged.undercuts.size(), draw.undercuts.size()));
}

}  // namespace

Outcome<MouldPicture> mould_picture(const MouldOrder& order, const DrawFacts& draw, double draft_deg) {
  try {
    const double chord_mm = mould_chord_mm(order.prism);
    const MouldSkin skin = mould_skin(order.master, order.prism, chord_mm);
    const JudgedDraw judged = judged_pieces(skin, draw.along, draft_deg);
    if (!same_undercuts(judged.facts, draw)) return other_undercuts(order.prism.mark, judged.facts, draw);
    const auto studio = PictureStudio::of({{order.prism.mark, order.master, PartStuff::glass}}, chord_mm);
    if (!studio) return studio.problem();
    MouldPicture picture;
    for (const Look& look : best_looks(skin, judged)) {
      auto view = view_of(skin, look, *studio);
      if (!view) return view.problem();
      picture.views.push_back(std::move(*view));
    }
    return picture;
  } catch (const Standard_Failure& failure) {
    return request_problem("mould", order.prism.mark,
                           fmt::format("{}: its skin could not be drawn ({}). Make its master anew with other "
                                       "stock.",
                                       order.prism.mark, failure.GetMessageString()));
  }
}

}  // namespace prismwright
