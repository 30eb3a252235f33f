#pragma once

#include <IntCurvesFace_ShapeIntersector.hxx>
#include <TopoDS_Shape.hxx>
#include <algorithm>
#include <gp_Dir.hxx>
#include <gp_Lin.hxx>
#include <gp_Pnt.hxx>
#include <vector>

#include "core/works/mould_facts.h"

namespace prismwright {

/// Lines that met the master, and the greatest number of stretches of tooling on one of them.
struct LinesMet {
  int met = 0;
  int most_stretches = 0;
};

inline gp_Pnt point_of(SpacePoint p) { return {p.x, p.y, p.z}; }
inline gp_Dir dir_of(SpaceVector v) { return {v.x, v.y, v.z}; }

/// How often upright lines, drawn through the master's shadow, meet a half within the block: each must enter
/// or leave the half's tooling once only between the cavity and the outside.
inline LinesMet lines_along_draw(const TopoDS_Shape& half, const TopoDS_Shape& master, const MouldFacts& facts,
                                 int across) {
  IntCurvesFace_ShapeIntersector in_half, in_master;
  in_half.Load(half, 1e-7);
  in_master.Load(master, 1e-7);
  LinesMet lines;
  for (int i = 0; i < across; ++i) {
    for (int k = 0; k < across; ++k) {
      const SpacePoint local{facts.block_length_mm * (i + 0.4871) / across,
                             facts.block_width_mm * (k + 0.5313) / across, -10};
      const gp_Lin line(point_of(facts.block.out_of(local)), dir_of(facts.draw.along));
      in_master.Perform(line, 0, 1e4);
      if (in_master.NbPnt() == 0) continue;
      ++lines.met;
      in_half.Perform(line, 0, 1e4);
      in_half.SortResult();
      std::vector<double> at;
      for (int n = 1; n <= in_half.NbPnt(); ++n) {
        if (at.empty() || in_half.WParameter(n) - at.back() > 1e-4) at.push_back(in_half.WParameter(n));
      }
      lines.most_stretches = std::max(lines.most_stretches, static_cast<int>(at.size()) / 2);
    }
  }
  return lines;
}

}  // namespace prismwright
