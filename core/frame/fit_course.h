#pragma once

#include <vector>

#include "core/frame/fit_rules.h"
#include "core/frame/plate_step.h"

namespace prismwright {

/// A closed polygon made ready to be fitted: points that lie on each other are one, turns too weak for a corner
/// yet too keen for chords of an arc are rounded off within the allowance, corners are known, and every other
/// point has the heading of the smooth curve that the polygon stands for.
class FitCourse {
 public:
  FitCourse(const PlateOutline& outline, const FitRules& rules);

  [[nodiscard]] std::size_t size() const { return points_.size(); }
  /// Any index: the course goes round.
  [[nodiscard]] PlatePoint at(std::size_t i) const { return points_[i % size()]; }
  [[nodiscard]] bool corner(std::size_t i) const { return corner_[i % size()]; }
  /// A corner or an end of an edge that is kept: no step runs past it.
  [[nodiscard]] bool ends_span(std::size_t i) const {
    return corner(i) || kept_[i % size()] || kept_[(i + size() - 1) % size()];
  }
  /// Unit headings on either side of the point: equal unless it is a corner.
  [[nodiscard]] PlateVector heading_in(std::size_t i) const { return in_[i % size()]; }
  [[nodiscard]] PlateVector heading_out(std::size_t i) const { return out_[i % size()]; }
  /// The place of the smooth curve over the middle of the edge from i to i + 1.
  [[nodiscard]] PlatePoint over_edge(std::size_t i) const { return over_edge_[i % size()]; }
  [[nodiscard]] double edge_mm(std::size_t i) const { return lengths_[i % size()]; }
  /// How much of the allowance was spent on rounding off at this point, mm.
  [[nodiscard]] double spent_mm(std::size_t i) const { return spent_[i % size()]; }
  /// Where to begin: where a span ends, else the start of the longest edge.
  [[nodiscard]] std::size_t start() const;

 private:
  FitCourse() = default;
  void join_points(const PlateOutline& outline, const FitRules& rules);
  void close_jogs(double within_mm);
  void round_weak_turns(const FitRules& rules);
  void measure();
  void divide_long_edges();
  void add_part(const FitCourse& other, std::size_t i, double from, double to);
  [[nodiscard]] bool stands_out(std::size_t i, std::size_t back, std::size_t on) const;
  void find_corners(const FitRules& rules);
  void find_headings(double within_mm);
  [[nodiscard]] bool straight(std::size_t i, double arc_turn, double within_mm) const;
  [[nodiscard]] bool too_keen(std::size_t i, double within_mm) const;
  [[nodiscard]] double half_turn(std::size_t i, std::size_t k, double turn,
                                 const std::vector<double>& half) const;
  [[nodiscard]] std::vector<double> half_turns(const std::vector<double>& known, double within_mm) const;

  std::vector<PlatePoint> points_;
  std::vector<bool> held_;  ///< ends of edges that are kept; known until weak turns are rounded off
  std::vector<double> spent_;
  std::vector<double> lengths_;     ///< of the edge from i to i + 1
  std::vector<PlateVector> along_;  ///< unit vectors of the same edges
  std::vector<double> turns_;       ///< at each point, radians
  std::vector<bool> corner_;
  std::vector<bool> kept_;    ///< edges that stay as they are
  std::vector<double> half_;  ///< half of what the smooth curve turns over each edge, radians
  std::vector<PlateVector> in_;
  std::vector<PlateVector> out_;
  std::vector<PlatePoint> over_edge_;
};

}  // namespace prismwright
