#include "geometry/section_drawing_files.h"

#include <algorithm>
#include <cctype>
#include <filesystem>

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/drawing/section_images.h"
#include "geometry/drawing_pdf.h"
#include "geometry/drawing_svg.h"
#include "geometry/dxf_writer.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

using Paths = std::vector<std::string>;

constexpr double kTextShare = 0.01;  ///< height of words, of the whole section's height
constexpr double kLeastText_mm = 1.5;
constexpr double kLinesApart = 1.7;

void add_notes(DxfWriter& dxf, const Section& section, const SectionSheetSettings& settings, SectionPoint place,
               double text_mm) {
  const std::string lines[] = {
      settings.title,
      settings.order.empty() ? "" : settings.order + ", section of the lens",
      fmt::format("focal distance {} mm, index {:.5f}", LengthWords{}.plain(section.input.focal_mm),
                  section.input.index),
      "1 unit = 1 mm, drawn 1:1; x from the lens axis, y from the focal plane",
      fmt::format("true curves as arcs within {} mm", shortest(settings.tolerance_mm)),
      settings.date + (settings.revision.empty() ? "" : "  revision " + settings.revision)};
  for (const std::string& line : lines) {
    if (line.find_first_not_of(' ') == std::string::npos) continue;
    dxf.add_text("NOTES", place, text_mm, line);
    place.z -= kLinesApart * text_mm;
  }
}

Outcome<Paths> write_pdf(const Drawing& drawing, const std::string& path) {
  const auto bytes = pdf_bytes(drawing);
  if (!bytes) return bytes.problem();
  if (const Done done = write_whole(path, *bytes); !done) return done.problem();
  return Paths{path};
}

Outcome<Paths> write_svg(const Drawing& drawing, const std::string& path) {
  Paths paths;
  for (std::size_t i = 0; i < drawing.sheets.size(); ++i) {
    std::filesystem::path name(path);
    if (i > 0)
      name.replace_filename(fmt::format("{}-{}{}", name.stem().string(), i + 1, name.extension().string()));
    if (const Done done = write_whole(name.string(), svg_text(drawing.sheets[i], drawing.title)); !done)
      return done.problem();
    paths.push_back(name.string());
  }
  return paths;
}

Outcome<Paths> write_dxf(const Section& section, const SectionSheetSettings& settings,
                         const std::string& path) {
  const auto bytes = section_dxf(section, settings);
  if (!bytes) return bytes.problem();
  if (const Done done = write_whole(path, *bytes); !done) return done.problem();
  return Paths{path};
}

std::string ending_of(const std::string& path) {
  std::string ending = std::filesystem::path(path).extension().string();
  std::ranges::transform(ending, ending.begin(),
                         [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

}  // namespace

Outcome<std::string> section_dxf(const Section& section, const SectionSheetSettings& settings) {
  if (const Done sound = check_arc_tolerance(settings.tolerance_mm); !sound) return sound.problem();
  const auto images = images_of(section, settings.whole_rings);
  const SectionReach reach = reach_of(section, images);
  const double text_mm = std::max(kLeastText_mm, kTextShare * (reach.high_z - reach.low_z));
  DxfWriter dxf;
  dxf.add_layer("GLASS", 5);
  dxf.add_layer("METAL", 30);
  dxf.add_layer("AXES", 1, true);
  dxf.add_layer("FOCUS", 1);
  dxf.add_layer("MARKS", 3);
  dxf.add_layer("NOTES", 7);
  for (const SectionImage& image : images) {
    for (const ChainPiece& piece : arcs_of(image.profile, settings.tolerance_mm)) dxf.add_piece("GLASS", piece);
    const SectionPoint middle = centroid(image.profile);
    dxf.add_text("MARKS", {reach.outer_r + 2 * text_mm, middle.z}, text_mm / 2, image.mark);
  }
  for (const SectionRib& rib : section.ribs) {
    dxf.add_polygon("METAL", {rib.low, {rib.high.r, rib.low.z}, rib.high, {rib.low.r, rib.high.z}});
  }
  dxf.add_line("AXES", {0, reach.low_z - text_mm}, {0, reach.high_z + text_mm});
  dxf.add_line("AXES", {-2 * text_mm, 0}, {reach.outer_r + text_mm, 0});
  dxf.add_circle("FOCUS", {0, 0}, text_mm / 2);
  add_notes(dxf, section, settings, {0, reach.low_z - 4 * text_mm}, text_mm);
  return dxf.bytes();
}

Outcome<Paths> write_section_drawing(const Section& section, const SectionSheetSettings& settings,
                                     const std::string& path) {
  const std::string ending = ending_of(path);
  if (ending == ".dxf") return write_dxf(section, settings, path);
  if (ending != ".pdf" && ending != ".svg") {
    return request_problem("ending", path,
                           fmt::format("{} ends with none of .svg, .pdf and .dxf, so it is not known what to "
                                       "write. Give the file one of these endings.",
                                       path));
  }
  const auto drawing = section_sheet(section, settings);
  if (!drawing) return drawing.problem();
  return ending == ".pdf" ? write_pdf(*drawing, path) : write_svg(*drawing, path);
}

}  // namespace prismwright
