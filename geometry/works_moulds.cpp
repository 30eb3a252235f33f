#include "geometry/works_moulds.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/csv_cell.h"
#include "core/base/stopped.h"
#include "core/works/mould_notes.h"
#include "geometry/master.h"
#include "geometry/mould_views.h"

namespace prismwright {

namespace {

constexpr double kMadeBy = 0.4;  ///< share of the time by which the masters of the moulds are made

}  // namespace

struct MouldDesk::Inside {
  MasterShop masters;
  MouldShop moulds;
};

MouldDesk::MouldDesk() : inside_(std::make_unique<Inside>()) {}
MouldDesk::~MouldDesk() = default;

std::vector<std::string> WorkedMould::notes() const {
  if (answer.mould) return mould_notes(answer.mould->facts);
  std::vector<std::string> notes;
  if (answer.problem) notes.push_back(answer.problem->text);
  for (const Undercut& undercut : answer.draw.undercuts) notes.push_back(undercut_note(undercut));
  return notes;
}

Outcome<std::vector<const Master*>> masters_named(std::span<const Master> masters,
                                                  const std::vector<std::string>& names) {
  std::vector<const Master*> chosen;
  for (const std::string& name : names) {
    const Master* master = find_master(masters, name);
    if (master == nullptr)
      return request_problem(
          "unknown_master", name,
          fmt::format("{} is no master of this lens. Take a name from its make list.", name));
    chosen.push_back(master);
  }
  if (names.empty())
    for (const Master& master : masters) chosen.push_back(&master);
  return chosen;
}

Outcome<std::vector<WorkedMould>> MouldDesk::work_out(const LensPlan& plan, std::span<const Master> masters,
                                                      const std::vector<std::string>& only,
                                                      const Progress& progress) {
  const auto chosen = masters_named(masters, only);
  if (!chosen) return chosen.problem();
  std::vector<WorkedMould> worked;
  std::vector<MouldOrder> orders;
  for (const Master* master : *chosen) {
    const double share = kMadeBy * static_cast<double>(worked.size()) / static_cast<double>(chosen->size());
    if (!goes_on(progress, share, master->name)) return stopped_problem();
    WorkedMould& one = worked.emplace_back();
    one.master = master->name;
    one.asked_draft_deg = plan.values.works.mould_draft_deg;
    for (const MasterUse& use : master->uses) one.marks.push_back(use.mark);
    const auto body = inside_->masters.make(plan.prisms[master->prism], master->name, plan.values.works);
    if (!body) {
      one.answer.mark = master->name;
      one.answer.problem = body.problem();
      continue;
    }
    one.order = {(*body)->prism, (*body)->shape};
    one.order.prism.mark = master->name;
    orders.push_back(one.order);
  }
  const Progress rest = [&](double share, std::string_view what) {
    return goes_on(progress, kMadeBy + (1 - kMadeBy) * share, what);
  };
  const auto answers = inside_->moulds.make(orders, plan.values.works, rest);
  if (!answers) return answers.problem();
  std::size_t next = 0;
  for (WorkedMould& one : worked)
    if (!one.order.master.IsNull()) one.answer = (*answers)[next++];
  return worked;
}

std::vector<MouldFacts> facts_of(std::span<const WorkedMould> moulds) {
  std::vector<MouldFacts> facts;
  for (const WorkedMould& mould : moulds)
    if (const MouldFacts* own = mould.facts()) facts.push_back(*own);
  return facts;
}

double undercut_mm2(const DrawFacts& draw, UndercutKind kind) {
  double sum = 0;
  for (const Undercut& undercut : draw.undercuts)
    if (undercut.kind == kind) sum += undercut.area_mm2;
  return sum;
}

double deepest_mm(const DrawFacts& draw) {
  double deepest = 0;
  for (const Undercut& undercut : draw.undercuts) deepest = std::max(deepest, undercut.depth_mm);
  return deepest;
}

std::string moulds_csv(std::span<const WorkedMould> moulds) {
  std::string csv =
      "master,marks,made,draft_deg,undercuts,hidden_mm2,steep_mm2,deepest_mm,standing_mm,foot_long_mm,"
      "foot_short_mm,lower_cm3,upper_cm3,resin_g,problem\n";
  std::string undercuts = "\nmaster,letter,face,kind,area_mm2,depth_mm,draft_deg\n";
  for (const WorkedMould& mould : moulds) {
    const DrawFacts& draw = mould.answer.draw;
    csv += fmt::format("{},{},{:d},{:.3f},{},{:.2f},{:.2f},{:.3f}", csv_cell(mould.master),
                       fmt::join(mould.marks, " "), mould.facts() != nullptr, draw.draft_deg,
                       draw.undercuts.size(), undercut_mm2(draw, UndercutKind::hidden),
                       undercut_mm2(draw, UndercutKind::steep), deepest_mm(draw));
    if (const MouldFacts* facts = mould.facts())
      csv += fmt::format(",{:.2f},{:.2f},{:.2f},{:.2f},{:.2f},{:.1f},\n", facts->standing_mm,
                         facts->footprint_long_mm, facts->footprint_short_mm, facts->lower_mm3 / 1000,
                         facts->upper_mm3 / 1000, facts->resin_g);
    else
      csv += fmt::format(",,,,,,,{}\n", csv_cell(mould.answer.problem ? mould.answer.problem->text : ""));
    for (std::size_t i = 0; i < draw.undercuts.size(); ++i) {
      const Undercut& one = draw.undercuts[i];
      undercuts += fmt::format("{},{},{},{},{:.2f},{:.3f},{:.3f}\n", csv_cell(mould.master), undercut_letter(i),
                               csv_cell(one.face), one.kind == UndercutKind::hidden ? "hidden" : "steep",
                               one.area_mm2, one.depth_mm, one.draft_deg);
    }
  }
  return csv + undercuts;
}

Outcome<MouldPicture> pictured_mould(const WorkedMould& mould) {
  const bool judged = mould.answer.draw.height_mm > 0;  // not where the settings themselves were refused
  if (mould.order.master.IsNull() || !judged)
    return mould.answer.problem.value_or(
        request_problem("mould", mould.master, mould.master + ": there is no master to draw."));
  return mould_picture(mould.order, mould.answer.draw, mould.asked_draft_deg);
}

Sheet mould_sheet_of(const WorkedMould& mould, const MouldPicture& picture, MouldSheetWords words) {
  words.name = mould.master;
  words.marks = mould.marks;
  words.notes = mould.notes();
  for (const Undercut& undercut : mould.answer.draw.undercuts)  // the sheet has a list of its own
    std::erase(words.notes, undercut_note(undercut));
  return mould_sheet(mould.answer.draw, picture, words);
}

Outcome<Sheet> drawn_mould(const WorkedMould& mould, const MouldSheetWords& words) {
  const auto picture = pictured_mould(mould);
  if (!picture) return picture.problem();
  return mould_sheet_of(mould, *picture, words);
}

}  // namespace prismwright
