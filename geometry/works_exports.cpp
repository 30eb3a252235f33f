#include "geometry/works_exports.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "core/works/master_sheet.h"
#include "core/works/mould_notes.h"
#include "geometry/drawing_pdf.h"
#include "geometry/master.h"
#include "geometry/mould.h"
#include "geometry/print_plan.h"
#include "geometry/safe_file.h"

namespace prismwright {
namespace {

constexpr double kMadeBy = 0.4;  ///< share of the time by which the masters of the moulds are made

Outcome<std::vector<const Master*>> chosen_masters(std::span<const Master> masters,
                                                   const std::vector<std::string>& only) {
  std::vector<const Master*> chosen;
  for (const std::string& name : only) {
    const Master* master = find_master(masters, name);
    if (master == nullptr)
      return request_problem(
          "unknown_master", name,
          fmt::format("{} is no master of this lens. Take a name from its make list.", name));
    chosen.push_back(master);
  }
  if (only.empty())
    for (const Master& master : masters) chosen.push_back(&master);
  return chosen;
}

std::vector<std::string> marks_of(const Master& master) {
  std::vector<std::string> marks;
  for (const MasterUse& use : master.uses) marks.push_back(use.mark);
  return marks;
}

Problem stopped_problem() {
  Problem problem = request_problem("stopped", "", "Stopped.");
  problem.trouble = Trouble::stopped;
  return problem;
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

void tell_of(const MouldAnswer& answer, const std::string& name, WorksFiles& files) {
  if (answer.problem) {
    files.notes.push_back(answer.problem->text);
    files.well = false;
  }
  if (!answer.draw.drawable()) files.well = false;
  if (answer.mould) {
    for (const std::string& note : mould_notes(answer.mould->facts))
      files.notes.push_back(fmt::format("{}: {}", name, note));
  } else {
    for (const Undercut& undercut : answer.draw.undercuts)
      files.notes.push_back(fmt::format("{}: {}", name, undercut_note(undercut)));
  }
}

}  // namespace

Outcome<WorksFiles> export_masters(const LensPlan& plan, std::span<const Master> masters,
                                   const std::string& folder, const MastersExportChoice& choice,
                                   const Progress& progress) {
  const auto chosen = chosen_masters(masters, choice.only);
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
  const auto chosen = chosen_masters(masters, choice.only);
  if (!chosen) return chosen.problem();
  if (const Done ready = ready_folder(folder); !ready) return ready.problem();
  WorksFiles files;
  MasterShop shop;
  std::vector<MouldOrder> orders;
  std::vector<std::string> names;
  for (const Master* master : *chosen) {
    const double share = kMadeBy * static_cast<double>(names.size()) / static_cast<double>(chosen->size());
    if (!goes_on(progress, share, master->name)) return stopped_problem();
    const auto body = shop.make(plan.prisms[master->prism], master->name, plan.values.works);
    if (!body) {
      files.notes.push_back(body.problem().text);
      files.well = false;
      continue;
    }
    orders.push_back({(*body)->prism, (*body)->shape});
    orders.back().prism.mark = master->name;
    names.push_back(master->name);
  }
  MouldShop moulds;
  const Progress rest = [&](double share, std::string_view what) {
    return goes_on(progress, kMadeBy + (1 - kMadeBy) * share, what);
  };
  const auto answers = moulds.make(orders, plan.values.works, rest);
  if (!answers) return answers.problem();
  for (std::size_t i = 0; i < answers->size(); ++i) tell_of((*answers)[i], names[i], files);
  const auto paths = export_moulds(*answers, folder, choice.files, {});
  if (!paths) return paths.problem();
  files.paths = *paths;
  if (files.notes.empty()) return files;
  const std::string told = (std::filesystem::path(folder) / "moulds.txt").string();
  if (const Done written = write_whole(told, fmt::format("{}\n", fmt::join(files.notes, "\n"))); !written)
    return written.problem();
  files.paths.push_back(told);
  return files;
}

}  // namespace prismwright
