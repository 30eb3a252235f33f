#pragma once

#include <string>
#include <vector>

#include "app/batch/works_desk.h"
#include "core/drawing/drawing.h"

namespace prismwright {

/// What any act that prints papers for prisms is asked for.
struct PapersRequest {
  std::vector<std::string> words;  ///< marks, patterns, numbers; empty: all prisms
  std::string out;
  Paper paper = Paper::a4;
  bool json = false;
};

/// MARK..., --out, --paper (one of `papers`), --json.
void add_paper_options(CLI::App& command, PapersRequest& request, const std::vector<Paper>& papers);
/// The prisms that were named; all of the lens where none was.
Outcome<std::vector<std::string>> papers_marks(const WorksDesk& desk, const PapersRequest& request);
/// Writes the sheets as PDF and says how many: "24 labels on 1 sheet: labels.pdf".
ExitCode write_papers(const Drawing& drawing, const PapersRequest& request, const std::string& what,
                      Voice& voice);

}  // namespace prismwright
