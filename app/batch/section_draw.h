#pragma once

#include <optional>
#include <string>

#include "app/batch/verb.h"

namespace prismwright {

/// What `section FILE draw` is asked for.
struct SectionDrawRequest {
  std::string book;
  std::string out;    ///< path ending in .svg, .pdf or .dxf
  std::string paper;  ///< "A4", "A3", "Letter"; empty: as large as the section needs
  bool inches = false;
  double tolerance_mm = 0.002;
  std::string revision;
  std::string date;  ///< empty: today's in UTC
};

/// Puts the drawing's own options (all but the book) on a command.
void add_section_draw_options(CLI::App& command, SectionDrawRequest& request);

/// Writes the section as a drawing and says which files it wrote.
ExitCode section_draw(const SectionDrawRequest& request, Voice& voice);

}  // namespace prismwright
