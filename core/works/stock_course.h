#pragma once

#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// A face of a profile moved out of the glass along its normals, with its way on beyond both ends.
class StockCourse {
 public:
  StockCourse(const Face& face, double stock_mm);

  [[nodiscard]] double stock_mm() const { return stock_mm_; }
  /// Between the moved ends, along the face (of true curves within the bend of their pieces), mm.
  [[nodiscard]] double length_mm() const;
  /// Least radius of a hollow place of the face before it is moved, mm; infinite where it has none.
  [[nodiscard]] double hollow_radius_mm() const { return hollow_radius_mm_; }

  enum class End { start, end };
  /// A place so far beyond an end; negative: before it, on the face.
  [[nodiscard]] SectionPoint beyond(End end, double mm) const;
  /// Of the walk, at that end.
  [[nodiscard]] SectionDirection tangent(End end) const;

  /// The moved face made longer at its ends (shorter where negative), to run exactly between two corners that
  /// lie there.
  [[nodiscard]] Face between_corners(double start_mm, SectionPoint from, double end_mm, SectionPoint to) const;

 private:
  struct Walk {
    SectionPoint place;
    SectionDirection tangent;
  };
  void move();
  void measure_curve();
  [[nodiscard]] Walk at(double mm) const;
  [[nodiscard]] Walk on_line(double mm) const;
  [[nodiscard]] Walk on_circle(double mm) const;
  [[nodiscard]] Walk on_curve(double mm) const;

  Face moved_;
  double stock_mm_;
  double hollow_radius_mm_;
  double turn_ = 0;              ///< arc: +1 walked anticlockwise about its centre, -1 clockwise
  std::vector<double> reached_;  ///< true curve: length up to each point
  double start_bend_ = 0;        ///< true curve: curvature at its ends, 1/mm, positive to the left of the walk
  double end_bend_ = 0;
};

}  // namespace prismwright
