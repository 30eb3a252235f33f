#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/drawing/house_words.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/landings.h"
#include "core/frame/nest.h"
#include "core/frame/parts_list.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

struct FrameExportChoice {
  bool plates = true;  ///< a DXF file for every shape of flat part
  bool nests = true;   ///< a DXF file for every sheet
  bool step = true;    ///< machined parts and the whole frame
  bool list = true;    ///< parts.csv and sheets.csv
  bool drawings =
      false;         ///< drawings.pdf: every shape of part that is made, what is bought, every nested sheet
  HouseWords words;  ///< of the lens, for drawings and notes; lengths on the drawings in mm or inches
  std::vector<Landing> landings = {};  ///< how prisms bear in the ribs, for the drawings
};
/// Everything but the drawings, with words and landings of this lens for them too. `date`: YYYY-MM-DD.
FrameExportChoice frame_export_choice(const LensPlan& lens, const FramePlan& frame, const std::string& date,
                                      bool inches);

/// Writes what a shop needs to make the frame, and answers the paths written:
///   MARK_5mm_x8.dxf         each shape of plate that is cut flat, named after the first of its marks;
///   nest_brass_5mm_1of3.dxf each sheet;
///   MARK_x4.step            each shape that is machined or drilled after the cut, in a frame of its own;
///   frame.step              all metal in the lens frame, product names = marks;
///   parts.csv, sheets.csv   parts with quantity and mass, and what each sheet holds;
///   drawings.pdf.
/// Every file is written beside its place and renamed when whole. Refused: nothing chosen (code "nothing"); a
/// folder that cannot be made or written, or a full disk, is a file Problem, and files of the same names from
/// before stay whole; stopped by `progress` (code "stopped").
///
/// `bodies` are those of the plan, `nest` that of its flats.
Outcome<std::vector<std::string>> export_frame(const FramePlan& plan, const std::vector<FrameBody>& bodies,
                                               const Nest& nest, const std::string& folder,
                                               const FrameExportChoice& choice, const Progress& progress = {});

/// The parts list with the masses of the solids.
std::vector<PartsLine> listed_parts(const FramePlan& plan, const std::vector<FrameBody>& bodies);

/// Marks of plates that are alike.
std::vector<std::string> marks_of(const std::vector<FlatPart>& flats, const AlikePlates& alike);

/// What stands on a nested sheet: "Low Head, sheet 1 of 3".
std::string nest_words(const std::string& title, const Nest& nest, std::size_t sheet);

/// File name of a nested sheet, without its folder: "nest_brass_5mm_1of3.dxf", counted by metal and thickness.
std::string nest_file_name(const Nest& nest, std::size_t sheet);

}  // namespace prismwright
