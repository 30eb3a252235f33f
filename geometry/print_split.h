#pragma once

#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/works/works_settings.h"
#include "geometry/master.h"

namespace prismwright {

/// One piece of a casting that is cut across its length, before it is stretched.
struct SplitPart {
  TopoDS_Shape casting;
  double volume_mm3 = 0;
  double key_mm = 0;  ///< width of the key towards the next part; 0: none
  double key_mm3 = 0;
  double socket_mm3 = 0;
};

/// Cuts a casting by half planes through the line that it is turned about, at equal angles.
class CastingSplitter {
 public:
  explicit CastingSplitter(const MasterBody& master);

  /// Fewest parts that could be no longer than `most_mm`: by the chord that a part spans at its outermost
  /// place.
  [[nodiscard]] int fewest_parts(double most_mm) const;
  /// One of `count` parts, without keys. Throws Standard_Failure.
  [[nodiscard]] TopoDS_Shape sector(int number, int count) const;
  /// All parts with their keys (print_plan.h). Throws Standard_Failure.
  [[nodiscard]] std::vector<SplitPart> parts(int count, const WorksSettings& settings) const;
  /// A whole turn: its last part meets its first.
  [[nodiscard]] bool is_whole_turn() const { return whole_turn_; }

 private:
  [[nodiscard]] double angle_of_joint(int number, int count) const;
  [[nodiscard]] TopoDS_Shape block(double from, double to) const;
  [[nodiscard]] TopoDS_Shape box_at(double angle, double half_width, double from, double to) const;
  bool put_key(SplitPart& before, SplitPart& after, double angle, const WorksSettings& settings) const;

  const MasterBody& master_;
  double from_ = 0;  ///< angles about the turning line that hold the casting
  double to_ = 0;
  bool whole_turn_ = false;
  double reach_mm_ = 0;  ///< farthest from the turning line
  double low_mm_ = 0;    ///< along it
  double high_mm_ = 0;
  SectionPoint key_place_;  ///< middle of the greatest circle inside the section
  double circle_mm_ = 0;
};

}  // namespace prismwright
