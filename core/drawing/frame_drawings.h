#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/house_words.h"
#include "core/frame/frame_plan.h"
#include "core/frame/landings.h"
#include "core/frame/nest.h"
#include "core/frame/parts_list.h"

namespace prismwright {

/// A drawing with the name that its file takes (without ending) and what it is, in words.
struct NamedDrawing {
  std::string name;   ///< "P01-rib-left"
  std::string words;  ///< "side rib, 8 off"
  Drawing drawing;
};

/// A drawing for every shape of part that is made: flat ones (part_sheet), rings, turned bars, round parts that
/// are machined; and one list of what is bought (screws, dowels). `known`: volumes that only solids give;
/// `landings`: how prisms bear in the ribs (core/frame/landings.h); none, for a frame of which that is not
/// known.
std::vector<NamedDrawing> frame_drawings(const FramePlan& frame, const KnownVolumes& known,
                                         const HouseWords& words, const std::vector<Landing>& landings);

/// The drawing of the parts of one line of the parts list, named after its first mark; blank for what is
/// bought.
std::optional<NamedDrawing> drawing_of(const FramePlan& frame, const PartsLine& line, const HouseWords& words,
                                       const std::vector<Landing>& landings);

/// A sheet for every nested sheet, in one drawing.
Drawing nest_drawing(const Nest& nest, const FramePlan& frame, const HouseWords& words);

/// How a panel is put together, in words (geometry/fit_up.h works it out).
struct PanelAssembly {
  std::vector<int> panels;  ///< alike
  std::string first_rib;
  std::string second_rib;
  std::vector<std::string> steps;       ///< first to last, one sentence each
  std::vector<std::string> cannot;      ///< prisms without a way in, one sentence each
  std::vector<std::string> open_seats;  ///< marks that can be changed in the finished lens, with the way
};
/// The order of assembly: the whole frame, then panel by panel, with cautions of lifting and glass.
Drawing assembly_sheets(const FramePlan& frame, const std::vector<PanelAssembly>& panels,
                        const HouseWords& words);

}  // namespace prismwright
