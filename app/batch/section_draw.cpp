#include "app/batch/section_draw.h"

#include <fmt/format.h>

#include "app/batch/books.h"
#include "core/book/utc_clock.h"
#include "core/lens/orders.h"
#include "core/lens/whole_rings.h"
#include "geometry/section_drawing_files.h"

namespace prismwright {

namespace {

constexpr std::size_t kDateLetters = 10;

std::optional<Paper> paper_of(const std::string& name) {
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
    if (name == name_of(paper)) return paper;
  }
  return std::nullopt;
}

SectionSheetSettings settings_for(const LensValues& values, const SectionDrawRequest& request) {
  SectionSheetSettings settings;
  settings.title = values.brief.title;
  const Order* order = find_order(values.brief.order);
  settings.order = order ? std::string(order->words) : values.brief.order;
  settings.material = values.material.name;
  settings.date = request.date.empty() ? now_utc().substr(0, kDateLetters) : request.date;
  settings.revision = request.revision;
  settings.paper = paper_of(request.paper);
  settings.inches = request.inches;
  settings.tolerance_mm = request.tolerance_mm;
  return settings;
}

}  // namespace

void add_section_draw_options(CLI::App& command, SectionDrawRequest& request) {
  command.add_option("--out", request.out, "file to write; its ending says how: .svg, .pdf or .dxf")
      ->required();
  command
      .add_option("--sheet", request.paper,
                  "paper; without it A4 where the section stands at 1:10 or larger, else A3")
      ->check(CLI::IsMember({name_of(Paper::a4), name_of(Paper::a3), name_of(Paper::letter)}));
  command.add_flag("--inches", request.inches, "lengths on the sheets in inches (DXF stays in mm)");
  command.add_option("--tolerance-mm", request.tolerance_mm, "how near arcs keep to a true curve, mm")
      ->check(CLI::Range(kFinestArcTolerance_mm, kCoarsestArcTolerance_mm))
      ->capture_default_str();
  command.add_option("--revision", request.revision, "for the title block");
  command.add_option("--date", request.date, "for the title block; today without it");
}

ExitCode section_draw(const SectionDrawRequest& request, Voice& voice) {
  if (!request.paper.empty() && !paper_of(request.paper)) {
    return refuse(request_problem("sheet", "--sheet",
                                  fmt::format("\"{}\" is no sheet: choose A4, A3 or Letter.", request.paper)),
                  voice.err);
  }
  const auto book = open_to_read(request.book, voice);
  if (!book) return refuse(book.problem(), voice.err);
  const LensValues values = book->values();
  const auto section = solve_section(values.section_input());
  if (!section) return refuse(section.problem(), voice.err);
  SectionSheetSettings settings = settings_for(values, request);
  settings.whole_rings = whole_rings(plan_lens(values, *section));
  const auto paths = write_section_drawing(*section, settings, request.out);
  if (!paths) return refuse(paths.problem(), voice.err);
  for (const std::string& path : *paths) voice.out << path << '\n';
  return ExitCode::done;
}

}  // namespace prismwright
