#include <fmt/format.h>

#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/works_act.h"
#include "app/batch/works_desk.h"
#include "core/works/make_list.h"

namespace prismwright {

namespace {

Json stages_json(const std::array<int, kStages.size()>& at) {
  Json json = Json::object();
  for (const Stage stage : kStages) json[std::string(name_of(stage))] = at[static_cast<std::size_t>(stage)];
  return json;
}

Json row_json(const MakeRow& row) {
  Json json;
  json["master"] = row.master;
  json["marks"] = row.marks;
  json["mirror_of"] = row.mirror_of;
  json["turned_twin_of"] = row.turned_twin_of;
  json["has_master"] = row.has_master;
  json["has_mould"] = row.has_mould;
  json["moulds_needed"] = row.moulds_needed;
  json["moulds_to_make"] = row.moulds_to_make;
  json["stages"] = stages_json(row.at);
  json["castings_made"] = row.castings_made;
  json["castings_scrapped"] = row.castings_scrapped;
  json["spares_on_shelf"] = row.spares_on_shelf;
  json["sound_wanted"] = row.need.sound;
  json["castings_to_pour"] = row.short_of;
  json["chance"] = row.need.chance;
  json["next"] = row.next;
  json["holds_up_panels"] = row.holds_up;
  json["hours_left_h"] = row.hours_left;
  json["volume_mm3"] = row.volume_mm3;
  json["optical_mm2"] = row.optical_mm2;
  json["thickness_mm"] = row.thickness_mm;
  return json;
}

Json totals_json(const MakeTotals& totals) {
  Json json;
  json["prisms"] = totals.prisms;
  json["masters"] = totals.masters;
  json["masters_to_make"] = totals.masters_to_make;
  json["moulds_needed"] = totals.moulds_needed;
  json["moulds_to_make"] = totals.moulds_to_make;
  json["castings_made"] = totals.castings_made;
  json["castings_scrapped"] = totals.castings_scrapped;
  json["spares_on_shelf"] = totals.spares_on_shelf;
  json["sound_wanted"] = totals.sound_wanted;
  json["castings_to_pour"] = totals.short_of;
  json["chance"] = totals.chance;
  json["half_turn_saves"] = totals.half_turn_saves;
  json["stages"] = stages_json(totals.at);
  return json;
}

Json make_json(const MakeList& list) {
  Json json;
  json["masters"] = Json::array();
  for (const MakeRow& row : list.rows) json["masters"].push_back(row_json(row));
  json["first_to_do"] = Json::array();
  for (const std::size_t row : list.order) json["first_to_do"].push_back(list.rows[row].master);
  json["totals"] = totals_json(list.totals);
  return json;
}

/// Mirror images and twins, which a maker would else cast from the wrong mould.
std::string kin_words(const MakeRow& row) {
  if (!row.mirror_of.empty()) return "mirror of " + row.mirror_of;
  return row.turned_twin_of.empty() ? "" : row.turned_twin_of + " end for end";
}

std::string panels_words(const std::vector<int>& panels) { return fmt::format("{}", fmt::join(panels, " ")); }

/// A chance that is not quite none or all is never rounded to it.
std::string percent_words(double share) {
  const double percent = 100 * share;
  if (percent > 0 && percent < 0.05) return "under 0.1 %";
  if (percent >= 99.95 && percent < 100) return "over 99.9 %";
  return fmt::format("{:.{}f} %", percent, percent == 100 ? 0 : 1);
}

void print_list(const MakeList& list, std::ostream& out) {
  const MakeTotals& all = list.totals;
  out << fmt::format(
      "{} of {}; {} to make; {} to make; {} to pour (enough for every master at once: {} chance)\n",
      counted(static_cast<std::size_t>(all.prisms), "prism", "prisms"),
      counted(static_cast<std::size_t>(all.masters), "master", "masters"),
      counted(static_cast<std::size_t>(all.masters_to_make), "master", "masters"),
      counted(static_cast<std::size_t>(all.moulds_to_make), "mould", "moulds"),
      counted(static_cast<std::size_t>(all.short_of), "casting", "castings"), percent_words(all.chance));
  TextTable table({{"master"},
                   {"prisms", true},
                   {"cast", true},
                   {"scrapped", true},
                   {"spare", true},
                   {"to pour", true},
                   {"moulds", true},
                   {"hours left", true},
                   {"next"},
                   {"holds up panel"},
                   {"kin"}});
  for (const MakeRow& row : list.rows) {
    table.add({row.master, std::to_string(row.marks.size()), std::to_string(row.castings_made),
               std::to_string(row.castings_scrapped), std::to_string(row.spares_on_shelf),
               std::to_string(row.short_of), std::to_string(row.moulds_to_make),
               fmt::format("{:.1f}", row.hours_left), row.next, panels_words(row.holds_up), kin_words(row)});
  }
  table.print(out);
  if (all.half_turn_saves > 0)
    out << fmt::format("works.half_turn=shared would save {}: castings turned end for end.\n",
                       counted(static_cast<std::size_t>(all.half_turn_saves), "master", "masters"));
  if (!list.order.empty()) {
    const MakeRow& first = list.rows[list.order.front()];
    out << fmt::format("First to do: {} of {}.\n", first.next, first.master);
  }
}

class WorksMake : public WorksAct {
 public:
  std::string_view name() const override { return "make"; }
  std::string_view help() const override {
    return "make list: which prisms share a master, what is to be made, what is short, what is next";
  }
  void configure(CLI::App& command) override { add_answer_options(command, form_); }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto desk = works_to_read(path, voice);
    if (!desk) return refuse(desk.problem(), voice.err);
    const MakeList list = make_list(desk->plan, desk->book.ledger());
    if (const Done kept = keep_csv(form_, make_list_csv(list)); !kept) return refuse(kept.problem(), voice.err);
    if (form_.json) return print_json(make_json(list), ExitCode::done, voice.out, voice.err);
    print_list(list, voice.out);
    return ExitCode::done;
  }

 private:
  AnswerForm form_;
};

}  // namespace

std::unique_ptr<WorksAct> works_make() { return std::make_unique<WorksMake>(); }

}  // namespace prismwright
