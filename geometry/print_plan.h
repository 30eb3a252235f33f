#pragma once

#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "geometry/master.h"
#include "geometry/print_lay.h"

namespace prismwright {

/// One piece of a master as it is printed.
struct PrintPart {
  std::string name;    ///< the master's, with "-1", "-2" ... where it is printed in several
  TopoDS_Shape shape;  ///< in the master's frame, key and socket made
  PrintLay lay;
  double volume_mm3 = 0;
  double key_mm = 0;      ///< width of the key that stands out of its end towards the next part; 0: none
  double key_mm3 = 0;     ///< volume of that key
  double socket_mm3 = 0;  ///< volume of the socket for the key of the part before
};

/// A master ready to be printed.
struct PrintPlan {
  std::vector<PrintPart> parts;    ///< one, or from the clockwise end on
  std::vector<std::string> notes;  ///< sentences: printed in parts and why, joints too thin for a key
};

/// Lays a master in the printer's room: of all directions that fit, those in which the optical faces stand
/// steepest (their mean step within 2 % of the least), and of these the one that is least high.
///
/// A master that fits in no direction is cut across its length into as few parts as fit, by planes that hold
/// the line it is turned about, at equal angles. Each joint is flat, with a square key in the middle of the
/// section standing out of one part by its own width, and a socket in the next that is wider by
/// works.key_gap_mm all round and at its bottom; key and socket are made before the master is stretched, and
/// stretch with it. A key that is wider than the section takes is made smaller, down to 2 mm; thinner joints
/// get none, with a note. Volumes add up: all parts = master + keys - sockets, within 5e-5 (else code "solid").
/// Refused (code "print.room") when even forty parts do not fit.
Outcome<PrintPlan> plan_print(const MasterBody& master, const WorksSettings& settings);

}  // namespace prismwright
