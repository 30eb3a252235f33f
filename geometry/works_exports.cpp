#include "geometry/works_exports.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "core/base/stopped.h"
#include "core/works/master_sheet.h"
#include "core/works/mould_notes.h"
#include "geometry/drawing_pdf.h"
#include "geometry/master.h"
#include "geometry/print_plan.h"
#include "geometry/safe_file.h"
#include "geometry/works_moulds.h"

namespace prismwright {
namespace {

constexpr double kWorkedOutBy = 0.85;  ///< share of the time by which moulds are worked out and only drawn

std::vector<std::string> marks_of(const Master& master) {
  std::vector<std::string> marks;
  for (const MasterUse& use : master.uses) marks.push_back(use.mark);
  return marks;
}

/// Rows of all masters in one table, each with its master before it.
std::string with_master(const std::string& csv, const std::string& name, bool first) {
  std::string out;
  std::size_t from = 0;
  bool head = true;
  while (from < csv.size()) {
    const std::size_t end = std::min(csv.find('\n', from), csv.size() - 1);
    const std::string_view line(csv.data() + from, end - from + 1);
    if (!head || first) out += (head ? "master," : name + ",") + std::string(line);
    head = false;
    from = end + 1;
  }
  return out;
}

/// Makes masters, prints and sheets one by one.
class MastersWork {
 public:
  MastersWork(const LensPlan& plan, const std::string& folder, const MastersExportChoice& choice)
      : plan_(plan), works_(plan.values.works), folder_(folder), choice_(choice) {}

  Done add(const Master& master) {
    const PlannedPrism& prism = plan_.prisms[master.prism];
    const auto body = shop_.make(prism, master.name, works_);
    if (!body) return pass_over(body.problem());
    const auto print = plan_print(**body, works_);
    if (!print) return pass_over(print.problem());
    for (const std::string& note : print->notes) files_.notes.push_back(note);
    const auto paths = export_master(**body, *print, folder_, choice_.files);
    if (!paths) return paths.problem();
    files_.paths.insert(files_.paths.end(), paths->begin(), paths->end());
    if (choice_.sheets) add_sheet(master, **body, *print);
    return {};
  }

  Outcome<WorksFiles> finish() {
    if (choice_.sheets && !drawing_.sheets.empty()) {
      const auto pdf = pdf_bytes(drawing_);
      if (!pdf) return pdf.problem();
      if (const Done done = keep("masters.pdf", *pdf); !done) return done.problem();
      if (const Done done = keep("masters.csv", csv_); !done) return done.problem();
    }
    return std::move(files_);
  }

 private:
  /// What cannot be made is told; the others go on.
  Done pass_over(const Problem& problem) {
    if (problem.trouble == Trouble::file) return problem;
    files_.notes.push_back(problem.text);
    files_.well = false;
    return {};
  }
  void add_sheet(const Master& master, const MasterBody& body, const PrintPlan& print) {
    MasterSheetWords words;
    words.title = plan_.values.brief.title;
    words.name = master.name;
    words.date = choice_.date;
    words.marks = marks_of(master);
    words.notes = print.notes;
    words.paper = choice_.paper;
    words.inches = choice_.inches;
    drawing_.title = plan_.values.brief.title;
    drawing_.date = choice_.date;
    drawing_.sheets.push_back(master_sheet(body.prism, body.stocked, works_, words));
    const std::string rows = master_csv(master_measures(body.prism, body.stocked, works_));
    csv_ += with_master(rows, master.name, csv_.empty());
  }
  Done keep(const char* name, const std::string& bytes) {
    const std::string path = (std::filesystem::path(folder_) / name).string();
    if (const Done written = write_whole(path, bytes); !written) return written;
    files_.paths.push_back(path);
    return {};
  }

  const LensPlan& plan_;
  const WorksSettings& works_;
  const std::string& folder_;
  const MastersExportChoice& choice_;
  MasterShop shop_;
  WorksFiles files_;
  Drawing drawing_;
  std::string csv_;
};

/// A mould's sentences, each with its master before it; a problem names its master itself.
void tell_of(const WorkedMould& mould, WorksFiles& files) {
  if (mould.answer.problem) {
    files.notes.push_back(mould.answer.problem->text);
    files.well = false;
  }
  if (!mould.answer.draw.drawable()) files.well = false;
  for (const std::string& note : mould.notes()) {
    if (!mould.answer.problem || note != mould.answer.problem->text)
      files.notes.push_back(fmt::format("{}: {}", mould.master, note));
  }
}

Done keep_file(const std::string& folder, const char* name, const std::string& bytes, WorksFiles& files) {
  const std::string path = (std::filesystem::path(folder) / name).string();
  if (const Done written = write_whole(path, bytes); !written) return written;
  files.paths.push_back(path);
  return {};
}

/// moulds.pdf: a sheet for each mould. One that cannot be pictured stands in the notes.
Done keep_sheets(const LensPlan& plan, const std::vector<WorkedMould>& moulds, const std::string& folder,
                 const MouldsExportChoice& choice, WorksFiles& files, const Progress& progress) {
  Drawing drawing;
  drawing.title = plan.values.brief.title;
  drawing.date = choice.date;
  MouldSheetWords words;
  words.title = drawing.title;
  words.date = choice.date;
  words.paper = choice.paper;
  words.inches = choice.inches;
  for (std::size_t i = 0; i < moulds.size(); ++i) {
    if (!goes_on(progress, static_cast<double>(i) / static_cast<double>(moulds.size()), moulds[i].master))
      return stopped_problem();
    if (moulds[i].order.master.IsNull()) continue;
    auto sheet = drawn_mould(moulds[i], words);
    if (sheet)
      drawing.sheets.push_back(std::move(*sheet));
    else if (std::ranges::find(files.notes, sheet.problem().text) == files.notes.end())
      files.notes.push_back(sheet.problem().text);
  }
  if (drawing.sheets.empty()) return {};
  const auto pdf = pdf_bytes(drawing);
  if (!pdf) return pdf.problem();
  return keep_file(folder, "moulds.pdf", *pdf, files);
}

}  // namespace

Outcome<WorksFiles> export_masters(const LensPlan& plan, std::span<const Master> masters,
                                   const std::string& folder, const MastersExportChoice& choice,
                                   const Progress& progress) {
  const auto chosen = masters_named(masters, choice.only);
  if (!chosen) return chosen.problem();
  if (const Done ready = ready_folder(folder); !ready) return ready.problem();
  MastersWork work(plan, folder, choice);
  for (std::size_t i = 0; i < chosen->size(); ++i) {
    const Master& master = *(*chosen)[i];
    if (!goes_on(progress, static_cast<double>(i) / static_cast<double>(chosen->size()), master.name))
      return stopped_problem();
    if (const Done added = work.add(master); !added) return added.problem();
  }
  return work.finish();
}

Outcome<WorksFiles> export_master_moulds(const LensPlan& plan, std::span<const Master> masters,
                                         const std::string& folder, const MouldsExportChoice& choice,
                                         const Progress& progress) {
  if (const auto chosen = masters_named(masters, choice.only); !chosen) return chosen.problem();
  if (const Done ready = ready_folder(folder); !ready) return ready.problem();
  const auto part_of = [&](double from, double to) {
    return Progress([&progress, from, to](double share, std::string_view what) {
      return goes_on(progress, from + (to - from) * share, what);
    });
  };
  MouldDesk desk;
  const auto moulds = desk.work_out(plan, masters, choice.only, part_of(0, kWorkedOutBy));
  if (!moulds) return moulds.problem();
  WorksFiles files;
  std::vector<MouldAnswer> answers;
  for (const WorkedMould& mould : *moulds) {
    tell_of(mould, files);
    answers.push_back(mould.answer);
  }
  const auto paths = export_moulds(answers, folder, choice.files, {});
  if (!paths) return paths.problem();
  files.paths = *paths;
  if (const Done kept = keep_file(folder, "moulds.csv", moulds_csv(*moulds), files); !kept)
    return kept.problem();
  if (choice.sheets) {
    const Done kept = keep_sheets(plan, *moulds, folder, choice, files, part_of(kWorkedOutBy, 1));
    if (!kept) return kept.problem();
  }
  if (files.notes.empty()) return files;
  const std::string told = fmt::format("{}\n", fmt::join(files.notes, "\n"));
  if (const Done kept = keep_file(folder, "moulds.txt", told, files); !kept) return kept.problem();
  return files;
}

}  // namespace prismwright
