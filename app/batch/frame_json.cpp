#include <algorithm>
#include <cmath>

#include "app/batch/frame_print.h"
#include "core/frame/assembly_order.h"
#include "core/frame/frame_csv.h"

namespace prismwright {

namespace {

Json part_json(const PartsLine& line, const Nest& nest) {
  Json json;
  json["kind"] = name_of(line.kind);
  json["making"] = name_of(line.making);
  json["metal"] = name_of(line.metal);
  json["thickness_mm"] = line.thickness_mm > 0 ? Json(line.thickness_mm) : Json(nullptr);
  json["size"] = line.size;
  json["quantity"] = line.quantity;
  json["mass_each_g"] = line.mass_g ? Json(*line.mass_g) : Json(nullptr);
  json["mass_all_g"] = line.mass_g ? Json(*line.mass_g * line.quantity) : Json(nullptr);
  json["sheets"] = sheets_of(nest, line.marks);
  json["marks"] = line.marks;
  return json;
}

Json sheet_json(const NestSheet& sheet, std::size_t number) {
  Json json;
  json["sheet"] = number;
  json["metal"] = name_of(sheet.metal);
  json["thickness_mm"] = sheet.thickness_mm;
  json["width_mm"] = sheet.width_mm;
  json["height_mm"] = sheet.height_mm;
  json["used_share"] = sheet.used_share;
  json["pieces"] = Json::array();
  for (const NestedPart& part : sheet.parts) {
    Json piece;
    piece["mark"] = part.mark;
    piece["turn_deg"] = part.turn_deg;
    piece["shift_mm"] = {part.shift.u, part.shift.v};
    json["pieces"].push_back(std::move(piece));
  }
  return json;
}

const char* name_of(FrameWarning::Kind kind) {
  switch (kind) {
    case FrameWarning::Kind::thin_brass:
      return "thin_brass";
    case FrameWarning::Kind::small_landing:
      return "small_landing";
    case FrameWarning::Kind::sharp_inside:
      return "sharp_inside";
    case FrameWarning::Kind::no_room:
      return "no_room";
    case FrameWarning::Kind::pocket_cut_short:
      return "pocket_cut_short";
    case FrameWarning::Kind::other:
      break;
  }
  return "other";
}

Json warning_json(const FrameWarning& warning) {
  Json json;
  json["kind"] = name_of(warning.kind);
  json["mark"] = warning.mark;
  json["value_mm"] = warning.value_mm;
  json["limit_mm"] = std::isfinite(warning.limit_mm) ? Json(warning.limit_mm) : Json();  // null: no limit helps
  json["sentence"] = warning.sentence;
  return json;
}

Json setting_json(const SettingCheck& check) {
  Json json;
  json["prism"] = check.mark;
  json["rib"] = check.rib;
  json["end"] = {{"length_mm", check.end.length_mm},     {"drawn_mm", check.end.drawn_mm},
                 {"needed_mm", check.end.needed_mm()},   {"heat_mm", check.end.heat_mm},
                 {"moisture_mm", check.end.moisture_mm}, {"enough", check.end_enough}};
  json["sides"] = {{"extent_mm", check.sides.extent_mm},     {"drawn_mm", check.sides.drawn_mm},
                   {"needed_mm", check.sides.needed_mm()},   {"shim_mm", check.sides.shim_mm},
                   {"glazing_mm", check.sides.glazing_mm},   {"heat_mm", check.sides.heat_mm},
                   {"moisture_mm", check.sides.moisture_mm}, {"enough", check.sides_enough}};
  json["advice"] = advice_on(check);
  return json;
}

Json blocked_json(const FitBlocked& blocked) {
  Json json;
  json["marks"] = blocked.marks;
  json["blocked_by"] = blocked.blocked_by;
  json["where_mm"] = {blocked.where.x, blocked.where.y, blocked.where.z};
  json["way"] = name_of(blocked.way);
  json["comes_out_mm"] = blocked.left_mm;
  json["words"] = blocked.words;
  return json;
}

Json fit_json(const PanelFit& fit) {
  Json json;
  json["panel"] = fit.panel;
  json["first_rib"] = fit.first_rib;
  json["second_rib"] = fit.second_rib;
  json["cannot"] = Json::array();
  for (const FitBlocked& blocked : fit.cannot) json["cannot"].push_back(blocked_json(blocked));
  json["open_seats"] = Json::array();
  for (const OpenSeat& seat : fit.open_seats) {
    json["open_seats"].push_back(
        {{"mark", seat.mark}, {"from_sea", seat.from_sea}, {"from_lamp", seat.from_lamp}});
  }
  return json;
}

Json order_json(const PanelFit& fit) {
  Json steps = Json::array();
  for (const FitStep& step : fit.steps) {
    Json json;
    json["panel"] = fit.panel;
    json["step"] = steps.size() + 1;
    json["marks"] = step.marks;
    json["way"] = name_of(step.way);
    json["into_pocket_mm"] = step.into_pocket_mm;
    json["words"] = step.words;
    steps.push_back(std::move(json));
  }
  return steps;
}

template <class Rows, class Make>
Json list_json(const Rows& rows, const Make& make) {
  Json list = Json::array();
  for (const auto& row : rows) list.push_back(make(row));
  return list;
}

}  // namespace

Json frame_json(const FrameAnswer& answer) {
  const PartsTotals totals = totals_of(answer.parts);
  Json json;
  json["well"] = answer.well();
  json["pieces"] = totals.pieces;
  json["total_mass_g"] = totals.brass_g + totals.steel_g;
  json["brass_g"] = totals.brass_g;
  json["steel_g"] = totals.steel_g;
  json["sheet_use"] = answer.nest.used_share();
  json["parts"] = list_json(answer.parts, [&](const PartsLine& line) { return part_json(line, answer.nest); });
  json["sheets"] = Json::array();
  for (const NestSheet& sheet : answer.nest.sheets)
    json["sheets"].push_back(sheet_json(sheet, json["sheets"].size() + 1));
  json["too_large"] = answer.nest.too_large;
  json["warnings"] = list_json(answer.frame.plan.warnings, warning_json);
  json["notes"] = answer.frame.plan.notes;
  json["settings"] = list_json(answer.settings, setting_json);
  json["fit_up"] = list_json(answer.fit_up, fit_json);
  json["order"] = Json::array();
  for (const PanelFit& fit : answer.fit_up) {
    for (Json& step : order_json(fit)) json["order"].push_back(std::move(step));
  }
  json["assembly"] = order_of_assembly(answer.frame.plan);
  return json;
}

}  // namespace prismwright
