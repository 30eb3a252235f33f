#include "app/batch/works_loads_print.h"

#include <fmt/format.h>

#include "app/batch/text_table.h"
#include "core/frame/frame_csv.h"
#include "core/works/works_cautions.h"

namespace prismwright {

namespace {

std::string act_word(CureAct act) {
  switch (act) {
    case CureAct::fill:
      return "fill";
    case CureAct::cure:
      return "cure";
    case CureAct::vent:
      return "vent";
    case CureAct::heat:
      return "heat";
    case CureAct::hold:
      return "hold";
    case CureAct::cool:
      return "cool";
    case CureAct::take_out:
      return "take out";
  }
  return "fill";
}

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

Json masses_json(const LoadMasses& masses) {
  Json json;
  json["castings_mm3"] = masses.castings_mm3;
  json["resin_g"] = masses.resin_g;
  json["initiator_g"] = masses.initiator_g;
  json["tint_g"] = masses.tint_g;
  return json;
}

Json step_json(const CureStep& step) {
  Json json;
  json["act"] = act_word(step.act);
  json["what"] = step.what;
  json["from_h"] = step.from_h;
  json["to_h"] = step.to_h;
  json["from_c"] = optional_json(step.from_c);
  json["to_c"] = optional_json(step.to_c);
  json["bar"] = optional_json(step.bar);
  json["source"] = step.source;
  return json;
}

Json cure_json(const CurePlan& cure) {
  Json json;
  json["thickest_mm"] = cure.thickest_mm;
  json["total_h"] = cure.total_h;
  json["vessel_h"] = cure.vessel_h;
  json["steps"] = Json::array();
  for (const CureStep& step : cure.steps) json["steps"].push_back(step_json(step));
  json["notes"] = cure.notes;
  return json;
}

Json place_json(const LoadPlace& place, const LoadPiece& piece) {
  Json json;
  json["master"] = piece.name;
  json["shelf"] = place.shelf + 1;
  json["x_mm"] = place.x_mm;
  json["y_mm"] = place.y_mm;
  json["z_mm"] = place.z_mm;
  json["wide_mm"] = place.wide_mm;
  json["long_mm"] = place.long_mm;
  json["high_mm"] = place.high_mm;
  json["stands"] = name_of(place.upward);
  json["gate_up"] = piece.any_side_up ? Json() : Json(true);
  return json;
}

Json load_json(const LoadsAnswer& answer, std::size_t i) {
  const PlannedLoad& load = answer.plan.loads[i];
  Json json;
  json["load"] = i + 1;
  json["castings"] = load.places.size();
  json["thickest_mm"] = load.thickest_mm;
  json["thinnest_mm"] = load.thinnest_mm;
  json["filled_share"] = load.filled_share;
  json["masses"] = masses_json(load.masses);
  json["places"] = Json::array();
  for (const LoadPlace& place : load.places)
    json["places"].push_back(place_json(place, answer.pieces[place.piece]));
  json["cure"] = cure_json(answer.cures[i]);
  return json;
}

Json unfit_json(const UnfitPiece& unfit, const std::vector<LoadPiece>& pieces) {
  Json json;
  json["master"] = pieces[unfit.piece].name;
  json["needs_diameter_mm"] = unfit.needs_diameter_mm;
  json["needs_height_mm"] = unfit.needs_height_mm;
  json["words"] = unfit.words;
  return json;
}

std::string contents_of(const LoadsAnswer& answer, const PlannedLoad& load) {
  std::string words;
  for (std::size_t piece = 0; piece < answer.pieces.size(); ++piece) {
    if (const int count = load.count_of(piece); count > 0)
      words += fmt::format("{}{} x {}", words.empty() ? "" : ", ", count, answer.pieces[piece].name);
  }
  return words;
}

void print_steps(const LoadsAnswer& answer, std::ostream& out) {
  for (std::size_t i = 0; i < answer.cures.size(); ++i) {
    out << fmt::format("\nLoad {}, thickest section {:.1f} mm\n", i + 1, answer.cures[i].thickest_mm);
    TextTable table({{"from h", true}, {"to h", true}, {"step"}, {"what"}});
    for (const CureStep& step : answer.cures[i].steps)
      table.add({fmt::format("{:.1f}", step.from_h), fmt::format("{:.1f}", step.to_h), act_word(step.act),
                 step.what});
    table.print(out);
    for (const std::string& note : answer.cures[i].notes) out << note << '\n';
  }
}

/// Notes that all loads share are said once.
void print_notes(const LoadsAnswer& answer, std::ostream& out) {
  std::vector<std::string> said;
  for (const CurePlan& cure : answer.cures) {
    for (const std::string& note : cure.notes) {
      if (std::find(said.begin(), said.end(), note) != said.end()) continue;
      said.push_back(note);
      out << note << '\n';
    }
  }
}

}  // namespace

void print_loads(const LoadsAnswer& answer, bool steps, std::ostream& out) {
  const LoadMasses& all = answer.plan.masses;
  out << fmt::format(
      "{} castings in {} loads (no plan can have fewer than {}); resin {:.2f} kg, initiator {:.0f} g, "
      "tint {:.0f} g\n",
      answer.plan.castings, answer.plan.loads.size(), answer.plan.least_loads, all.resin_g / 1000,
      all.initiator_g, all.tint_g);
  TextTable table({{"load", true},
                   {"castings", true},
                   {"thickest mm", true},
                   {"resin g", true},
                   {"initiator g", true},
                   {"tint g", true},
                   {"hours", true},
                   {"masters"}});
  for (std::size_t i = 0; i < answer.plan.loads.size(); ++i) {
    const PlannedLoad& load = answer.plan.loads[i];
    table.add({std::to_string(i + 1), std::to_string(load.places.size()),
               fmt::format("{:.1f}", load.thickest_mm), fmt::format("{:.0f}", load.masses.resin_g),
               fmt::format("{:.1f}", load.masses.initiator_g), fmt::format("{:.1f}", load.masses.tint_g),
               fmt::format("{:.1f}", answer.cures[i].total_h), contents_of(answer, load)});
  }
  if (!table.empty()) table.print(out);
  for (const UnfitPiece& unfit : answer.plan.unfit) out << unfit.words << '\n';
  if (const std::string note = way_up_note(answer.pieces); !note.empty()) out << note << '\n';
  if (steps)
    print_steps(answer, out);
  else
    print_notes(answer, out);
  for (const Caution& caution : casting_cautions()) out << caution.head << ": " << caution.text << '\n';
}

Json loads_json(const LoadsAnswer& answer) {
  Json json;
  json["castings"] = answer.plan.castings;
  json["least_loads"] = answer.plan.least_loads;
  json["masses"] = masses_json(answer.plan.masses);
  json["loads"] = Json::array();
  for (std::size_t i = 0; i < answer.plan.loads.size(); ++i) json["loads"].push_back(load_json(answer, i));
  json["way_up"] = way_up_note(answer.pieces);
  json["unfit"] = Json::array();
  for (const UnfitPiece& unfit : answer.plan.unfit) json["unfit"].push_back(unfit_json(unfit, answer.pieces));
  json["cautions"] = Json::object();
  for (const Caution& caution : casting_cautions()) json["cautions"][std::string(caution.head)] = caution.text;
  return json;
}

std::string loads_csv(const LoadsAnswer& answer) {
  std::string table =
      "load,master,castings,thickest_mm,thinnest_mm,filled_share,resin_g,initiator_g,tint_g,cure_h,vessel_h\n";
  for (std::size_t i = 0; i < answer.plan.loads.size(); ++i) {
    const PlannedLoad& load = answer.plan.loads[i];
    for (std::size_t piece = 0; piece < answer.pieces.size(); ++piece) {
      const int count = load.count_of(piece);
      if (count == 0) continue;
      table += fmt::format("{},{},{},{:.3f},{:.3f},{:.4f},{:.1f},{:.2f},{:.2f},{:.2f},{:.2f}\n", i + 1,
                           csv_cell(answer.pieces[piece].name), count, load.thickest_mm, load.thinnest_mm,
                           load.filled_share, load.masses.resin_g, load.masses.initiator_g, load.masses.tint_g,
                           answer.cures[i].total_h, answer.cures[i].vessel_h);
    }
  }
  return table;
}

}  // namespace prismwright
