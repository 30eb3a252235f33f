#include "geometry/nearest_place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <queue>
#include <utility>
#include <vector>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRep_Tool.hxx>

namespace prismwright {
namespace {

constexpr int kFirstSteps = 8;
constexpr int kFirstAcross = 4;
constexpr double kSafety = 1.15;       // what third and higher orders may add to the second
constexpr double kLeft = 0.1;          // the same of bends that cancel each other
constexpr double kBigTurn = 1.0 / 24;  // cells that span more of a face's parameter are halved first
constexpr double kSmallest_mm = 2e-5;  // cells so small are as good as their middle
constexpr double kWorthHalving_mm = kSearchWithin_mm / 4;
constexpr double kLastStep_mm = 1e-7;
constexpr int kMostSteps = 60;
constexpr int kMostCells = 400000;
constexpr int kMostCellsOfCut = 3000;  // nearer places that do not count are looked past so long
constexpr std::array<std::pair<int, int>, 8> kWays{
    {{-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {1, 1}, {-1, 1}, {1, -1}}};

// The surface or curve about a place, by powers of its parameters: half widths are folded in.
struct Local {
  gp_Pnt p;
  gp_Vec a;
  gp_Vec b;
  gp_Vec aa;
  gp_Vec ab;
  gp_Vec bb;
};

// A face or an edge to be searched. An edge has no second parameter.
class Patch {
 public:
  Patch(const SolidForm::FaceForm& form, const gp_Trsf& place)
      : form_(&form),
        surface_(form.face, false),
        place_(place),
        low_a_(form.low_a),
        high_a_(form.high_a),
        low_b_(form.low_b),
        high_b_(form.high_b) {}
  Patch(const TopoDS_Edge& edge, const gp_Trsf& place)
      : curve_(edge), place_(place), low_a_(curve_.FirstParameter()), high_a_(curve_.LastParameter()) {}

  [[nodiscard]] bool is_edge() const { return form_ == nullptr; }
  [[nodiscard]] double low_a() const { return low_a_; }
  [[nodiscard]] double high_a() const { return high_a_; }
  [[nodiscard]] double low_b() const { return low_b_; }
  [[nodiscard]] double high_b() const { return high_b_; }

  [[nodiscard]] gp_Pnt value(double a, double b) const {
    return (is_edge() ? curve_.Value(a) : surface_.Value(a, b)).Transformed(place_);
  }
  [[nodiscard]] Local local(double a, double b, double half_a, double half_b) const {
    Local at;
    if (is_edge()) {
      curve_.D2(a, at.p, at.a, at.aa);
    } else {
      surface_.D2(a, b, at.p, at.a, at.b, at.aa, at.bb, at.ab);
    }
    at.p.Transform(place_);
    for (auto& [vector, scale] : {std::pair<gp_Vec*, double>{&at.a, half_a},
                                  {&at.b, half_b},
                                  {&at.aa, half_a * half_a},
                                  {&at.ab, half_a * half_b},
                                  {&at.bb, half_b * half_b}}) {
      vector->Transform(place_);
      *vector *= scale;
    }
    return at;
  }
  [[nodiscard]] bool holds(double a, double b) const { return is_edge() || form_->holds(a, b); }
  // How a rectangle of the parameters lies to the face.
  enum class Lie { on, off, across };
  [[nodiscard]] Lie lie(double a, double b, double half_a, double half_b) const {
    if (is_edge()) return Lie::on;
    const double reach = std::hypot(half_a * form_->mm_per_a, half_b * form_->mm_per_b);
    const PlatePoint p{a * form_->mm_per_a, b * form_->mm_per_b};
    if (form_->bounds.to_boundary(p).distance_mm <= reach) return Lie::across;
    return form_->holds(a, b) ? Lie::on : Lie::off;
  }

 private:
  const SolidForm::FaceForm* form_ = nullptr;
  BRepAdaptor_Surface surface_;
  BRepAdaptor_Curve curve_;
  gp_Trsf place_;
  double low_a_;
  double high_a_;
  double low_b_ = 0;
  double high_b_ = 0;
};

struct Cell {
  int patch = 0;
  double a = 0;
  double b = 0;
  double half_a = 0;
  double half_b = 0;
  bool on_face = false;  // wholly
  bool split_a = true;
  double least_mm = 0;  // no place of the cell is nearer
};
struct Later {
  bool operator()(const Cell& x, const Cell& y) const { return x.least_mm > y.least_mm; }
};

class Search {
 public:
  Search(const RoomField& part, double no_farther_mm) : part_(part), limit_(no_farther_mm) {}

  [[nodiscard]] bool may_hold(const SolidForm::Ball& ball, const gp_Trsf& place) const {
    return part_.at(ball.middle.Transformed(place)).distance_mm - ball.radius_mm < limit_ - kSearchWithin_mm;
  }

  void add(Patch patch) {
    patches_.push_back(std::move(patch));
    const int number = static_cast<int>(patches_.size()) - 1;
    const Patch& added = patches_.back();
    const double half_a = (added.high_a() - added.low_a()) / kFirstSteps / 2;
    const int across = added.is_edge() ? 1 : kFirstAcross;
    const double half_b = (added.high_b() - added.low_b()) / across / 2;
    if (added.is_edge()) {
      take(added.value(added.low_a(), 0), number, added.low_a(), 0);
      take(added.value(added.high_a(), 0), number, added.high_a(), 0);
    }
    for (int i = 0; i < kFirstSteps; ++i) {
      for (int k = 0; k < across; ++k) {
        put({number, added.low_a() + (2 * i + 1) * half_a, added.low_b() + (2 * k + 1) * half_b, half_a, half_b,
             added.is_edge(), true, 0});
      }
    }
  }

  std::optional<NearestPlace> run() {
    int taken = 0;
    while (!waiting_.empty() && limit_ > 0) {
      const Cell cell = waiting_.top();
      if (cell.least_mm >= limit_ - kSearchWithin_mm) break;
      ++taken;
      if (least_cut_mm_ < limit_ && taken > kMostCellsOfCut) return std::nullopt;
      if (taken > kMostCells) break;
      waiting_.pop();
      halve(cell);
    }
    if (best_) polish();
    return best_;
  }

 private:
  double take(const gp_Pnt& p, int patch, double a, double b) {
    const RoomField::Hit hit = part_.at(p);
    if (hit.distance_mm < limit_ && !part_.counts(hit.foot)) {
      least_cut_mm_ = std::min(least_cut_mm_, hit.distance_mm);
    } else if (hit.distance_mm < limit_) {
      limit_ = hit.distance_mm;
      best_ = NearestPlace{hit.distance_mm, p, hit.foot};
      best_cell_ = {patch, a, b, 0, 0, true, true, 0};
    }
    return hit.distance_mm;
  }

  void halve(const Cell& cell) {
    Cell part = cell;
    for (const double side : {-0.5, 0.5}) {
      part = cell;
      if (cell.split_a) {
        part.half_a /= 2;
        part.a += side * cell.half_a;
      } else {
        part.half_b /= 2;
        part.b += side * cell.half_b;
      }
      put(part);
    }
  }

  // Works out what the cell may hold and keeps it when that may be nearer than the best.
  void put(Cell cell) {
    const Patch& patch = patches_[cell.patch];
    const Local at = patch.local(cell.a, cell.b, cell.half_a, cell.half_b);
    const double along_a = at.a.Magnitude() + kSafety * (at.aa.Magnitude() / 2 + at.ab.Magnitude());
    const double along_b = at.b.Magnitude() + kSafety * at.bb.Magnitude() / 2;
    const double reach = along_a + along_b;
    const double here = part_.at(at.p).distance_mm;
    if (here - reach >= limit_ - kSearchWithin_mm) return;
    if (!cell.on_face) {
      const Patch::Lie lie = patch.lie(cell.a, cell.b, cell.half_a, cell.half_b);
      if (lie == Patch::Lie::off) return;
      cell.on_face = lie == Patch::Lie::on;
    }
    if (cell.on_face || patch.holds(cell.a, cell.b)) take(at.p, cell.patch, cell.a, cell.b);
    if (reach < kSmallest_mm) return;
    cell.least_mm = std::max(0.0, here - reach);
    const bool big_a = 2 * cell.half_a > kBigTurn * (patch.high_a() - patch.low_a());
    const bool big_b = 2 * cell.half_b > 2 * kBigTurn * (patch.high_b() - patch.low_b());
    // A long narrow face is not cut to squares because it is too wide yet.
    cell.split_a = big_a != big_b ? big_a : along_a >= along_b;
    if (!big_a && !big_b && here > 0 && !narrowed(at, reach, cell)) return;
    if (cell.least_mm < limit_ - kSearchWithin_mm) waiting_.push(cell);
  }

  // What each near piece of the part leaves of the cell; false when none leaves anything.
  bool narrowed(const Local& at, double reach, Cell& cell) {
    const Patch& patch = patches_[cell.patch];
    double least = std::numeric_limits<double>::max();
    double spend_a = 0;
    double spend_b = 0;
    double blur = 0;
    bool any = false;
    part_.each_near(at.p, limit_ + reach, reach, [&](const RoomPiece& piece) {
      const Bound bound = bound_of(at, reach, piece);
      if (bound.least >= limit_ - kSearchWithin_mm) return;
      if (bound.slopes) return;
      any = true;
      if (bound.least < least) {
        least = bound.least;
        spend_a = bound.spend_a;
        spend_b = bound.spend_b;
        blur = bound.blur;
        step_a_ = bound.down_a;
        step_b_ = bound.down_b;
      }
    });
    if (!any) return false;
    cell.least_mm = std::max(cell.least_mm, least);
    // Where hardly anything is spent, a cell is kept as it reaches past the face's rim: its longer side tells.
    if (spend_a + spend_b > std::max(blur, kWorthHalving_mm)) cell.split_a = spend_a >= spend_b;
    try_step(cell, patch);
    return true;
  }

  struct Bound {
    double least;
    bool slopes;  // throughout the cell: no least place within
    double spend_a;
    double spend_b;
    double blur;    // what the size of the cell costs, whichever way it is halved
    double down_a;  // where in the cell the piece is nearest, -1 to 1
    double down_b;
  };

  static double nearest_at(double slope, double bend) {
    if (bend > std::abs(slope)) return -slope / bend;
    return slope > 0 ? -1 : 1;
  }

  static Bound bound_of(const Local& at, double reach, const RoomPiece& piece) {
    const gp_Vec& n = piece.away;
    const double ga = n.Dot(at.a);
    const double gb = n.Dot(at.b);
    double h_aa = n.Dot(at.aa);
    double h_ab = n.Dot(at.ab);
    double h_bb = n.Dot(at.bb);
    double of_aa = at.aa.Magnitude();
    double of_ab = at.ab.Magnitude();
    double of_bb = at.bb.Magnitude();
    for (const RoomPiece::Turn& turn : piece.turns) {
      const double ta = turn.along.Dot(at.a);
      const double tb = turn.along.Dot(at.b);
      h_aa += turn.per_mm * ta * ta;
      h_ab += turn.per_mm * ta * tb;
      h_bb += turn.per_mm * tb * tb;
      of_aa += std::abs(turn.per_mm) * ta * ta;
      of_ab += std::abs(turn.per_mm * ta * tb);
      of_bb += std::abs(turn.per_mm) * tb * tb;
    }
    // Where bends cancel each other, what is left out is a share of the bends themselves.
    const double loose_a = kLeft * of_aa / 2;
    const double loose_b = kLeft * of_bb / 2;
    const double loose_ab = kLeft * of_ab;
    const double sag = piece.sag_per_mm * reach * reach / 2;
    const double spend_a = std::abs(ga) + std::max(0.0, -h_aa) / 2 + loose_a;
    const double spend_b = std::abs(gb) + std::max(0.0, -h_bb) / 2 + loose_b;
    const double blur = sag + std::abs(h_ab) + loose_ab;
    Bound bound{piece.distance_mm - spend_a - spend_b - blur,
                false,
                spend_a,
                spend_b,
                blur,
                nearest_at(ga, h_aa),
                nearest_at(gb, h_bb)};
    const double swing = piece.swing_per_mm * reach;
    const double varies_a = std::abs(h_aa) + std::abs(h_ab) + 2 * loose_a + loose_ab + swing * at.a.Magnitude();
    const double varies_b = std::abs(h_bb) + std::abs(h_ab) + 2 * loose_b + loose_ab + swing * at.b.Magnitude();
    bound.slopes = std::abs(ga) > kSafety * varies_a || std::abs(gb) > kSafety * varies_b;
    return bound;
  }

  // The place that the nearest piece promises most of.
  void try_step(const Cell& cell, const Patch& patch) {
    const double a = cell.a + step_a_ * cell.half_a;
    const double b = cell.b + step_b_ * cell.half_b;
    if (cell.on_face || patch.holds(a, b)) take(patch.value(a, b), cell.patch, a, b);
  }

  // Follows the best place down on its own face or edge.
  void polish() {
    const Patch& patch = patches_[best_cell_.patch];
    const Local at = patch.local(best_cell_.a, best_cell_.b, 1, 1);
    const double speed_a = std::max(at.a.Magnitude(), 1e-9);
    const double speed_b = std::max(at.b.Magnitude(), 1e-9);
    double step_mm = 1e-3;
    for (int tries = 0; step_mm > kLastStep_mm && tries < kMostSteps; ++tries) {
      const double before = limit_;
      const Cell from = best_cell_;
      for (const auto& [way_a, way_b] : kWays) {
        const double a = std::clamp(from.a + way_a * step_mm / speed_a, patch.low_a(), patch.high_a());
        const double b = std::clamp(from.b + way_b * step_mm / speed_b, patch.low_b(), patch.high_b());
        if (patch.holds(a, b)) take(patch.value(a, b), from.patch, a, b);
        if (limit_ < before - kLastStep_mm * 1e-3) break;
      }
      if (!(limit_ < before - kLastStep_mm * 1e-3)) step_mm /= 4;
    }
  }

  const RoomField& part_;
  double limit_;
  double least_cut_mm_ = std::numeric_limits<double>::max();
  std::vector<Patch> patches_;
  std::priority_queue<Cell, std::vector<Cell>, Later> waiting_;
  std::optional<NearestPlace> best_;
  Cell best_cell_;
  double step_a_ = 0;
  double step_b_ = 0;
};

// So that the first ones leave little to look for in the others.
std::vector<int> nearest_first(const std::vector<SolidForm::EdgeForm>& edges, const gp_Trsf& place,
                               const RoomField& part) {
  std::vector<std::pair<double, int>> order;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    order.emplace_back(part.at(edges[i].ball.middle.Transformed(place)).distance_mm, static_cast<int>(i));
  }
  std::sort(order.begin(), order.end());
  std::vector<int> numbers;
  for (const auto& [distance, number] : order) numbers.push_back(number);
  return numbers;
}

}  // namespace

std::optional<NearestPlace> nearest_place(const SolidForm& solid, const gp_Trsf& place, const RoomField& part,
                                          double no_farther_mm) {
  Search search(part, no_farther_mm);
  // The edges give a close limit at small cost; faces are halved against it.
  for (const int i : nearest_first(solid.edges(), place, part)) {
    const SolidForm::EdgeForm& edge = solid.edges()[static_cast<std::size_t>(i)];
    if (search.may_hold(edge.ball, place)) search.add(Patch(edge.edge, place));
  }
  for (const SolidForm::FaceForm& face : solid.faces()) {
    if (search.may_hold(face.ball, place)) search.add(Patch(face, place));
  }
  return search.run();
}

}  // namespace prismwright
