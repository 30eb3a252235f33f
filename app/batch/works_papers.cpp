#include "app/batch/works_papers.h"

#include <fmt/format.h>

#include <map>

#include <CLI/Validators.hpp>

#include "app/batch/json_print.h"
#include "app/batch/mark_patterns.h"
#include "geometry/drawing_pdf.h"
#include "geometry/safe_file.h"

namespace prismwright {

void add_paper_options(CLI::App& command, PapersRequest& request, const std::vector<Paper>& papers) {
  command.add_option("MARK...", request.words,
                     "marks, numbers of castings or scanned codes; all prisms of the lens unless said");
  command.add_option("--out", request.out, "the PDF file to write")->required();
  std::map<std::string, Paper> named;
  for (const Paper paper : papers) named[name_of(paper)] = paper;
  command.add_option("--paper", request.paper, "size of the paper")
      ->transform(CLI::CheckedTransformer(named, CLI::ignore_case).description(""))
      ->default_str(name_of(request.paper));
  command.add_flag("--json", request.json, "answer in JSON");
}

Outcome<std::vector<std::string>> papers_marks(const WorksDesk& desk, const PapersRequest& request) {
  if (request.words.empty()) return marks_of(desk.plan);
  return marks_named(desk, request.words);
}

ExitCode write_papers(const Drawing& drawing, const PapersRequest& request, const std::string& what,
                      Voice& voice) {
  const auto bytes = pdf_bytes(drawing);
  if (!bytes) return refuse(bytes.problem(), voice.err);
  if (const Done written = write_whole(request.out, *bytes); !written)
    return refuse(written.problem(), voice.err);
  if (request.json) {
    Json json;
    json["file"] = request.out;
    json["sheets"] = drawing.sheets.size();
    return print_json(json, ExitCode::done, voice.out, voice.err);
  }
  voice.out << fmt::format("{} on {}: {}\n", what, counted(drawing.sheets.size(), "sheet", "sheets"),
                           request.out);
  return ExitCode::done;
}

}  // namespace prismwright
