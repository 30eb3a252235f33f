#pragma once

#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"

namespace prismwright {

/// What a part is made of, for its colour in the file.
enum class PartStuff { glass, metal };

/// A part for a STEP file: its product name and its shape in the lens frame.
struct StepPart {
  std::string name;
  TopoDS_Shape shape;
  PartStuff stuff = PartStuff::glass;
};

/// The text of a STEP file (ISO 10303-21, schema AP214, mm) that holds one part, its product named exactly as
/// the part; glass is green and let through by a half, metal brass.
///
/// The file's time stamp is SOURCE_DATE_EPOCH where that is set, else 1970-01-01: equal parts give equal
/// files. Any thread may call it; one waits for another, for the kernel's writer keeps its settings in common.
Outcome<std::string> step_text(const StepPart& part);

/// The same for an assembly `name` of several parts, each a product of its own name. A glass part's product
/// holds its own solid in place. Metal parts that share one shape (congruent ribs, each with its location)
/// also share one solid in the file: it is a product "plate-1", "plate-2" ... and each part's product holds
/// that plate turned to its place. So a lens of equal panels carries two ribs' faces, not all ribs'.
Outcome<std::string> step_text(const std::string& name, const std::vector<StepPart>& parts);

}  // namespace prismwright
