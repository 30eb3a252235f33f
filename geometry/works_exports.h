#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/drawing/drawing.h"
#include "core/lens/plan.h"
#include "core/works/congruence.h"
#include "geometry/master_exports.h"
#include "geometry/mould_exports.h"

namespace prismwright {

/// What a works export wrote.
struct WorksFiles {
  std::vector<std::string> paths;
  std::vector<std::string> notes;  ///< sentences: what could not be made, what the maker must know
  bool well = true;                ///< everything asked for was made, no mould with an undercut
};

struct MastersExportChoice {
  std::vector<std::string> only = {};  ///< names of masters; empty: all
  MasterExportChoice files = {};
  bool sheets = true;  ///< masters.pdf and masters.csv: what to expect to measure
  Paper paper = Paper::a4;
  bool inches = false;
  std::string date = {};  ///< YYYY-MM-DD, for the sheets
};

/// Writes the files of each master into a folder (see export_master), and the sheets of what to measure before
/// and after finishing. A master that cannot be made stands in the notes and the others are written. Problems:
/// a name that the lens does not have, a folder or file that cannot be written, stopped.
Outcome<WorksFiles> export_masters(const LensPlan& plan, std::span<const Master> masters,
                                   const std::string& folder, const MastersExportChoice& choice,
                                   const Progress& progress = {});

struct MouldsExportChoice {
  std::vector<std::string> only = {};
  MouldExportChoice files = {};
  bool sheets = true;  ///< moulds.pdf: the master of each mould with what is undercut
  Paper paper = Paper::a4;
  bool inches = false;
  std::string date = {};  ///< YYYY-MM-DD, for the sheets
};

/// Writes the halves of each mould into a folder (see export_moulds), their sheets as moulds.pdf, a table as
/// moulds.csv and the notes as moulds.txt; the masters in them carry stock and are stretched for shrinkage.
/// Notes tell of every mould: draw, parting, standing, gate, vents, pins, undercuts.
Outcome<WorksFiles> export_master_moulds(const LensPlan& plan, std::span<const Master> masters,
                                         const std::string& folder, const MouldsExportChoice& choice,
                                         const Progress& progress = {});

}  // namespace prismwright
