#include "core/frame/fit_course.h"

#include <algorithm>
#include <array>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kSameShare = 0.3;  // points nearer than this share of the allowance are one
constexpr double kJogShare = 1;     // of the allowance
constexpr double kJogTurn_rad = radians(8);
constexpr double kSpurTurn_rad = radians(135);
constexpr double kWeakTurn_rad = radians(0.4);
constexpr double kUsedShare = 0.5;  // of the allowance, for rounding off a weak turn
constexpr double kFarLonger =
    2.2;  // an edge that exceeds both of its neighbours by more is no chord of their arc
constexpr int kRoundedSteps = 4;
constexpr double kSpread = 2.5;  // a turn that exceeds its neighbours by more is no chord of an arc

constexpr double kLongest = 8;  // in lengths of a neighbour; longer edges are divided beside it
constexpr std::array<double, 2> kDividedAt{1.5, 4};

// How far chords that turn by `turn` would stand off their arc.
double sagitta(double chord, double turn) { return chord / 2 * std::tan(std::abs(turn) / 4); }

// A union may leave a spur: out and straight back, no longer than the allowance.
PlateOutline without_spurs(PlateOutline outline, double within_mm) {
  for (std::size_t i = 0; outline.size() > 3 && i < outline.size();) {
    const std::size_t count = outline.size();
    const PlateVector there = outline[i] - outline[(i + count - 1) % count];
    const PlateVector back = outline[(i + 1) % count] - outline[i];
    const bool short_one = std::min(length_of(there), length_of(back)) < within_mm;
    if (short_one && std::abs(turn_between(there, back)) > kSpurTurn_rad) {
      outline.erase(outline.begin() + static_cast<std::ptrdiff_t>(i));
      i = i > 1 ? i - 2 : 0;
    } else {
      ++i;
    }
  }
  return outline;
}

}  // namespace

FitCourse::FitCourse(const PlateOutline& outline, const FitRules& rules) {
  join_points(without_spurs(outline, rules.within_mm), rules);
  measure();
  close_jogs(rules.within_mm);
  measure();
  round_weak_turns(rules);
  measure();
  kept_.assign(size(), false);
  for (std::size_t i = 0; rules.keeps_edge && i < size(); ++i) kept_[i] = rules.keeps_edge(at(i), at(i + 1));
  find_corners(rules);
  find_headings(rules.within_mm);
  divide_long_edges();
}

// The ends of kept edges stay; of other points that lie on each other the first does.
void FitCourse::join_points(const PlateOutline& outline, const FitRules& rules) {
  const double same = kSameShare * rules.within_mm;
  const std::size_t count = outline.size();
  std::vector<bool> held(count, false);
  for (std::size_t i = 0; rules.keeps_edge && i < count; ++i) {
    if (rules.keeps_edge(outline[i], outline[(i + 1) % count])) held[i] = held[(i + 1) % count] = true;
  }
  const auto add = [&](std::size_t i) {
    points_.push_back(outline[i]);
    held_.push_back(held[i]);
  };
  for (std::size_t i = 0; i < count; ++i) {
    const bool near = !points_.empty() && distance(points_.back(), outline[i]) <= same;
    if (near && !held[i]) continue;
    if (near && !held_.back()) {
      points_.pop_back();
      held_.pop_back();
    }
    add(i);
  }
  while (points_.size() > 3 && !held_.back() && distance(points_.back(), points_.front()) <= same) {
    points_.pop_back();
    held_.pop_back();
  }
  if (points_.size() >= 3) return;
  points_.clear();
  held_.clear();
  for (std::size_t i = 0; i < count; ++i) add(i);
}

// Where outlines cross that nearly coincide, a union leaves short steps to the side: half way is taken.
void FitCourse::close_jogs(double within_mm) {
  std::vector<PlatePoint> points;
  std::vector<bool> held;
  spent_.clear();
  for (std::size_t i = 0; i < size(); ++i) {
    const std::size_t next = (i + 1) % size();
    const bool jog = i + 1 < size() && !held_[i] && !held_[next] && lengths_[i] < kJogShare * within_mm &&
                     turns_[i] * turns_[next] < 0 && std::abs(turns_[i]) > kJogTurn_rad &&
                     std::abs(turns_[next]) > kJogTurn_rad;
    points.push_back(jog ? at(i) + 0.5 * (at(next) - at(i)) : at(i));
    held.push_back(held_[i]);
    spent_.push_back(jog ? lengths_[i] / 2 * std::min(1.0, std::abs(turns_[i])) : 0);
    if (jog) ++i;
  }
  if (points.size() < 3) {
    spent_.assign(size(), 0);
    return;
  }
  points_ = std::move(points);
  held_ = std::move(held);
}

void FitCourse::measure() {
  const std::size_t count = size();
  lengths_.assign(count, 0);
  along_.assign(count, {});
  turns_.assign(count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    const PlateVector edge = at(i + 1) - at(i);
    lengths_[i] = length_of(edge);
    along_[i] = unit(edge);
  }
  for (std::size_t i = 0; i < count; ++i) turns_[i] = turn_between(along_[(i + count - 1) % count], along_[i]);
}

// Whether the edges at the point are too long to be chords of one arc within the allowance.
bool FitCourse::too_keen(std::size_t i, double within_mm) const {
  const double shorter = std::min(lengths_[(i + size() - 1) % size()], lengths_[i]);
  return sagitta(shorter, turns_[i]) > within_mm;
}

// A turn of a few degrees between long edges is no corner: an arc takes its place that cuts both edges at the
// length c, so that it leaves the point by c tan(turn / 4).
void FitCourse::round_weak_turns(const FitRules& rules) {
  const double within_mm = rules.within_mm;
  const double left = radians(rules.corner_deg);
  const double right = radians(rules.right_corner_deg.value_or(rules.corner_deg));
  std::vector<PlatePoint> rounded;
  std::vector<double> spent;
  for (std::size_t i = 0; i < size(); ++i) {
    const double turn = turns_[i];
    const std::size_t before = (i + size() - 1) % size();
    const double shorter = std::min(lengths_[before], lengths_[i]);
    const double cut = kUsedShare * within_mm / std::tan(std::abs(turn) / 4);
    const bool weak =
        std::abs(turn) > kWeakTurn_rad && std::abs(turn) <= (turn > 0 ? left : right) && cut < 0.45 * shorter;
    if (!weak || held_[i] || !too_keen(i, within_mm)) {
      rounded.push_back(at(i));
      spent.push_back(spent_[i]);
      continue;
    }
    const PlateStep arc = arc_step(at(i) + -cut * along_[before], at(i) + cut * along_[i], turn);
    for (int k = 0; k <= kRoundedSteps; ++k) {
      rounded.push_back(place_along(arc, static_cast<double>(k) / kRoundedSteps));
      spent.push_back(k == 0 || k == kRoundedSteps ? 0 : kUsedShare * within_mm);
    }
  }
  points_ = std::move(rounded);
  spent_ = std::move(spent);
}

void FitCourse::find_corners(const FitRules& rules) {
  const double left = radians(rules.corner_deg);
  const double right = radians(rules.right_corner_deg.value_or(rules.corner_deg));
  corner_.assign(size(), false);
  for (std::size_t i = 0; i < size(); ++i) {
    const double turn = turns_[i];
    const double hand = turn > 0 ? 1 : -1;
    // Chords of one arc turn to the same hand.
    const double neighbours =
        std::max({0.0, hand * turns_[(i + size() - 1) % size()], hand * turns_[(i + 1) % size()]});
    corner_[i] = std::abs(turn) > (turn > 0 ? left : right) &&
                 (too_keen(i, rules.within_mm) || std::abs(turn) > kSpread * neighbours);
  }
}

// Whether an edge over which an arc would turn so far is a straight line instead.
bool FitCourse::straight(std::size_t i, double arc_turn, double within_mm) const {
  if (kept_[i]) return true;
  const double neighbours = std::max(edge_mm(i + size() - 1), edge_mm(i + 1));
  return sagitta(lengths_[i], arc_turn) > within_mm || lengths_[i] > kFarLonger * neighbours;
}

// Half of what the smooth curve turns over edge i, as the turn at one of its ends has it, where edge k meets
// it: its share by length, or what a far longer, flatter neighbour leaves of the turn.
double FitCourse::half_turn(std::size_t i, std::size_t k, double turn, const std::vector<double>& half) const {
  if (lengths_[k] > kFarLonger * lengths_[i]) return turn - half[k];
  return turn * lengths_[i] / (lengths_[i] + lengths_[k]);
}

// Whether the course turns to the other hand at this point than at its neighbours on both sides, or at all of
// them: a notch, which tells nothing of the curve beside it.
bool FitCourse::stands_out(std::size_t i, std::size_t back, std::size_t on) const {
  const double turn = turns_[i];
  const double before = turns_[(i + back) % size()];
  const double after = turns_[(i + on) % size()];
  const double beyond = turns_[(i + 2 * on) % size()];
  return turn * before < 0 && turn * after < 0 && after * beyond > 0;
}

// Of the two ends of an edge the lesser half turn counts, as a straight line or a flatter curve may begin at
// the other; nothing does where the curve turns to the other hand.
std::vector<double> FitCourse::half_turns(const std::vector<double>& known, double within_mm) const {
  const std::size_t count = size();
  std::vector<double> half(count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t next = (i + 1) % count;
    if (corner(i) && corner(next)) continue;
    double start = half_turn(i, (i + count - 1) % count, turns_[i], known);
    double end = half_turn(i, next, turns_[next], known);
    if (corner(i) || stands_out(i, count - 1, 1)) start = end;
    if (corner(next) || stands_out(next, 1, count - 1)) end = start;
    const double lesser = std::abs(start) < std::abs(end) ? start : end;
    if (start * end > 0 && !straight(i, 2 * lesser, within_mm)) half[i] = lesser;
  }
  return half;
}

void FitCourse::find_headings(double within_mm) {
  const std::size_t count = size();
  const auto half = half_turns(half_turns(std::vector<double>(count, 0), within_mm), within_mm);
  half_ = half;
  over_edge_.resize(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double rise = lengths_[i] / 2 * std::tan(half[i] / 2);
    over_edge_[i] = at(i) + lengths_[i] / 2 * along_[i] + -rise * quarter_turn(along_[i]);
  }
  in_.resize(count);
  out_.resize(count);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t before = (i + count - 1) % count;
    in_[i] = turned(along_[before], half[before]);
    out_[i] = turned(along_[i], -half[i]);
    if (corner(i)) continue;
    // The longer edge knows its direction better.
    const double share = lengths_[i] / (lengths_[before] + lengths_[i]);
    const double turn = turn_between(in_[i], out_[i]);
    in_[i] = turned(in_[i], (kept_[i] ? 1 : kept_[before] ? 0 : share) * turn);
    out_[i] = in_[i];
  }
}

// Beside short edges a long one is given more points, at which a step may end.
void FitCourse::divide_long_edges() {
  FitCourse finer;
  const std::size_t count = size();
  for (std::size_t i = 0; i < count; ++i) {
    const double length = lengths_[i];
    std::vector<double> shares{0};
    const double before = edge_mm(i + count - 1);
    const double after = edge_mm(i + 1);
    const bool divided = !kept_[i] && kLongest * std::min(before, after) < length;
    for (const double times : kDividedAt) {
      if (divided && kLongest * before < length) shares.push_back(times * before / length);
    }
    for (auto times = kDividedAt.rbegin(); divided && times != kDividedAt.rend(); ++times) {
      if (kLongest * after < length) shares.push_back(1 - *times * after / length);
    }
    shares.push_back(1);
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) finer.add_part(*this, i, shares[k], shares[k + 1]);
  }
  *this = std::move(finer);
}

// A part of an edge of another course. Over an edge the smooth curve stands 4 s (1 - s) of its rise, and its
// heading runs evenly from one end to the other.
void FitCourse::add_part(const FitCourse& other, std::size_t i, double from, double to) {
  const PlateVector edge = other.at(i + 1) - other.at(i);
  const PlateVector rise = other.over_edge(i) - (other.at(i) + 0.5 * edge);
  const auto place = [&](double s) { return other.at(i) + s * edge + 4 * s * (1 - s) * rise; };
  const bool whole = from == 0;
  const double half = other.half_[i % other.size()];
  const PlateVector heading = turned(other.along_[i], (2 * from - 1) * half);
  points_.push_back(whole ? other.at(i) : place(from));
  lengths_.push_back((to - from) * other.lengths_[i]);
  over_edge_.push_back(place((from + to) / 2));
  corner_.push_back(whole && other.corner(i));
  kept_.push_back(other.kept_[i]);
  spent_.push_back(whole ? other.spent_mm(i) : 0);
  in_.push_back(whole ? other.in_[i] : heading);
  out_.push_back(whole ? other.out_[i] : heading);
}

std::size_t FitCourse::start() const {
  for (std::size_t i = 0; i < size(); ++i) {
    if (ends_span(i)) return i;
  }
  return static_cast<std::size_t>(std::max_element(lengths_.begin(), lengths_.end()) - lengths_.begin());
}

}  // namespace prismwright
