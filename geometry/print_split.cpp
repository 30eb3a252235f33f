#include "geometry/print_split.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Standard_Failure.hxx>
#include <gp_Ax2.hxx>

#include "core/base/angle.h"
#include "core/lens/trimmed_ring.h"
#include "core/works/greatest_circle.h"
#include "geometry/convert.h"
#include "geometry/solid_check.h"

namespace prismwright {

namespace {

constexpr double kBeyond_mm = 13.7;
constexpr double kBeyond = 0.05;   ///< radians past both ends, so that no end lies on a block's side
constexpr double kKeyShare = 0.5;  ///< of the greatest circle inside the section that a key may take
constexpr double kLeastKey_mm = 2;
constexpr double kSmaller = 0.8;
constexpr double kKeyVolume = 1e-3;  ///< share by which a key's or socket's volume may be off

template <class Operation>
TopoDS_Shape done(Operation& operation) {
  if (!operation.IsDone() || operation.HasErrors()) throw Standard_Failure("a part could not be cut");
  return operation.Shape();
}

TopoDS_Shape one_solid(const TopoDS_Shape& shape, const std::string& mark) {
  auto solid = sound_solid(shape, mark);
  if (!solid) throw Standard_Failure("a part of it is not one closed solid");
  return *solid;
}

double volume_of(const TopoDS_Shape& shape) { return measured(shape).volume_mm3; }

}  // namespace

CastingSplitter::CastingSplitter(const MasterBody& master) : master_(master) {
  const TrimmedRing ring(master.stocked);
  const auto kept = ring.kept_anywhere();
  if (!kept) throw Standard_Failure("nothing is left of it");
  const Trim& trim = ring.trim();
  const bool panel = ring.turning() == TurningAxis::panel;
  whole_turn_ = panel && trim.half == Half::whole;
  from_ = whole_turn_ ? kPi / 2 : kept->from;
  to_ = whole_turn_ ? kPi / 2 + 2 * kPi : kept->to;
  if (panel && trim.half == Half::lower) {
    std::swap(from_, to_);
    from_ = -from_;
    to_ = -to_;
  }
  low_mm_ = std::numeric_limits<double>::infinity();
  high_mm_ = -low_mm_;
  for (const SectionPoint p : polygon_of(ring.profile(), 0.05)) {
    reach_mm_ = std::max(reach_mm_, panel ? p.z : p.r);
    low_mm_ = std::min(low_mm_, panel ? p.r : p.z);
    high_mm_ = std::max(high_mm_, panel ? p.r : p.z);
  }
  const InnerCircle circle = greatest_circle(polygon_of(ring.profile(), 0.01), 0.01);
  key_place_ = circle.centre;
  circle_mm_ = circle.diameter_mm;
}

int CastingSplitter::fewest_parts(double most_mm) const {
  const double turn = to_ - from_;
  for (int count = 2; count < 200; ++count) {
    const double half = turn / count / 2;
    const double chord = half >= kPi / 2 ? 2 * reach_mm_ : 2 * reach_mm_ * std::sin(half);
    // Cuts of the trim may make a part shorter than its chord.
    if (0.7 * chord <= most_mm) return count;
  }
  return 200;
}

double CastingSplitter::angle_of_joint(int number, int count) const {
  return from_ + (to_ - from_) * number / count;
}

/// A wedge about the turning line, in the frame in which the casting is made.
TopoDS_Shape CastingSplitter::block(double from, double to) const {
  const bool lens = master_.stocked.turning == TurningAxis::lens;
  const double start = low_mm_ - kBeyond_mm;
  const int steps = std::max(1, static_cast<int>(std::ceil((to - from) / 1.0)));
  const double far = (reach_mm_ + kBeyond_mm) / std::cos((to - from) / steps / 2);
  const auto at = [&](double away, double angle) {
    return lens ? gp_Pnt(away * std::cos(angle), away * std::sin(angle), start)
                : gp_Pnt(start, away * std::cos(angle), away * std::sin(angle));
  };
  BRepBuilderAPI_MakePolygon outline;
  outline.Add(at(0, 0));
  for (int i = 0; i <= steps; ++i) outline.Add(at(far, from + (to - from) * i / steps));
  outline.Close();
  const double long_mm = high_mm_ - low_mm_ + 2 * kBeyond_mm;
  const gp_Vec along = lens ? gp_Vec(0, 0, long_mm) : gp_Vec(long_mm, 0, 0);
  const TopoDS_Face foot = BRepBuilderAPI_MakeFace(outline.Wire(), Standard_True).Face();
  const TopoDS_Shape wedge = BRepPrimAPI_MakePrism(foot, along).Shape();
  return BRepBuilderAPI_Transform(wedge, axis_place(master_.stocked), Standard_True).Shape();
}

/// A square bar through the middle of the section, from and to so far past the joint.
TopoDS_Shape CastingSplitter::box_at(double angle, double half_width, double from, double to) const {
  const ProfilePlane plane(master_.stocked.turning, angle);
  const bool lens = master_.stocked.turning == TurningAxis::lens;
  const gp_Dir out = plane.outward();
  const gp_Dir line = lens ? gp_Dir(0, 0, 1) : gp_Dir(1, 0, 0);
  const gp_Dir onward = line.Crossed(out);  // where the angle grows
  const gp_Vec to_corner = gp_Vec(out) * -half_width + gp_Vec(onward) * from;
  const gp_Dir side = onward.Crossed(out);
  gp_Pnt corner = plane.place(key_place_);
  corner.Translate(to_corner + gp_Vec(side) * -half_width);
  const TopoDS_Shape box =
      BRepPrimAPI_MakeBox(gp_Ax2(corner, onward, out), 2 * half_width, 2 * half_width, to - from).Shape();
  return BRepBuilderAPI_Transform(box, axis_place(master_.stocked), Standard_True).Shape();
}

TopoDS_Shape CastingSplitter::sector(int number, int count) const {
  double from = angle_of_joint(number, count);
  double to = angle_of_joint(number + 1, count);
  if (!whole_turn_) {
    if (number == 0) from -= kBeyond;
    if (number + 1 == count) to += kBeyond;
  }
  BRepAlgoAPI_Common common(master_.casting, block(from, to));
  return one_solid(done(common), master_.name);
}

bool CastingSplitter::put_key(SplitPart& before, SplitPart& after, double angle,
                              const WorksSettings& settings) const {
  const double gap = settings.key_gap_mm;
  for (double key = std::min(settings.key_mm, kKeyShare * circle_mm_); key >= kLeastKey_mm; key *= kSmaller) {
    BRepAlgoAPI_Fuse fuse(before.casting, box_at(angle, key / 2, -key / 2, key));
    BRepAlgoAPI_Cut cut(after.casting, box_at(angle, key / 2 + gap, -key / 2, key + gap));
    if (!fuse.IsDone() || !cut.IsDone()) continue;
    const auto keyed = sound_solid(fuse.Shape(), master_.name);
    const auto hollowed = sound_solid(cut.Shape(), master_.name);
    if (!keyed || !hollowed) continue;
    const double key_mm3 = volume_of(*keyed) - before.volume_mm3;
    const double socket_mm3 = after.volume_mm3 - volume_of(*hollowed);
    const double whole_key = key * key * key;
    const double whole_socket = (key + 2 * gap) * (key + 2 * gap) * (key + gap);
    // A key that breaks through the skin has another volume.
    if (std::abs(key_mm3 / whole_key - 1) > kKeyVolume || std::abs(socket_mm3 / whole_socket - 1) > kKeyVolume)
      continue;
    before.casting = *keyed;
    before.volume_mm3 += key_mm3;
    before.key_mm = key;
    before.key_mm3 = key_mm3;
    after.casting = *hollowed;
    after.volume_mm3 -= socket_mm3;
    after.socket_mm3 = socket_mm3;
    return true;
  }
  return false;
}

std::vector<SplitPart> CastingSplitter::parts(int count, const WorksSettings& settings) const {
  std::vector<SplitPart> parts;
  for (int i = 0; i < count; ++i) {
    SplitPart part;
    part.casting = sector(i, count);
    part.volume_mm3 = volume_of(part.casting);
    parts.push_back(part);
  }
  const int joints = whole_turn_ ? count : count - 1;
  for (int i = 0; i < joints; ++i) {
    put_key(parts[static_cast<std::size_t>(i)], parts[static_cast<std::size_t>((i + 1) % count)],
            angle_of_joint(i + 1, count), settings);
  }
  return parts;
}

}  // namespace prismwright
