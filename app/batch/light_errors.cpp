#include "app/batch/light_errors.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/batch/text_table.h"

namespace prismwright {

namespace {

constexpr double kIndexUnit = 0.001;     ///< for which turns by the index are shown
constexpr std::size_t kMostLosses = 12;  ///< shown in the table; JSON holds all

struct MoveKey {
  const char* key;
  double unit;
};
constexpr std::array<MoveKey, kSettingMoves> kMoveKeys{{{"tilt_deg_per_deg", 1},
                                                        {"roll_deg_per_deg", 1},
                                                        {"turn_deg_per_deg", 1},
                                                        {"shift_seaward_deg_per_mm", 1},
                                                        {"shift_sideways_deg_per_mm", 1},
                                                        {"shift_up_deg_per_mm", 1},
                                                        {"first_face_deg_per_deg", 1},
                                                        {"reflecting_face_deg_per_deg", 1},
                                                        {"last_face_deg_per_deg", 1},
                                                        {"index_deg_per_thousandth", kIndexUnit},
                                                        {"lamp_seaward_deg_per_mm", 1},
                                                        {"lamp_sideways_deg_per_mm", 1},
                                                        {"lamp_up_deg_per_mm", 1}}};

std::string key_of(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::tilt:
      return "tilt_deg";
    case ErrorKind::shift:
      return "shift_mm";
    case ErrorKind::face:
      return "face_deg";
    case ErrorKind::index:
      return "index";
    case ErrorKind::lamp:
      break;
  }
  return "lamp_mm";
}

Json spread_json(const TrialSpread& spread) {
  return {{"mean", spread.mean},
          {"standard_deviation", spread.deviation},
          {"p5", spread.p5},
          {"p50", spread.p50},
          {"p95", spread.p95}};
}

Json prism_json(const PrismSensitivity& prism) {
  Json upright;
  Json level;
  Json spread;
  for (std::size_t m = 0; m < kSettingMoves; ++m) {
    const auto& [key, unit] = kMoveKeys[m];
    upright[key] = unit * prism.mean[m].upright_deg;
    level[key] = unit * prism.mean[m].level_deg;
    spread[key] = unit * prism.spread_deg[m];
  }
  return {{"mark", prism.mark}, {"zone", prism.zone}, {"panel", prism.panel}, {"shines", prism.flux_lm > 0},
          {"upright", upright}, {"level", level},     {"rms", spread}};
}

Json tolerance_json(const ToleranceRow& row) {
  Json json;
  json["zone"] = row.zone.empty() ? Json() : Json(row.zone);
  json["share_of_peak"] = row.peak_share;
  for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
    json[key_of(kErrorKinds[k])] = row.deviation[k] ? Json(*row.deviation[k]) : Json();
  return json;
}

void print_trials(const SettingErrors& errors, std::ostream& out) {
  out << fmt::format("Setting errors of panel {}: {} trials, seed {}\n", errors.panel, errors.trials,
                     errors.seed);
  out << "  Standard deviations:";
  for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
    out << fmt::format("{} {} {:g}{}{}", k ? "," : "", name_of(kErrorKinds[k]), errors.deviations[k],
                       unit_of(kErrorKinds[k]).empty() ? "" : " ", unit_of(kErrorKinds[k]));
  out << fmt::format(
      "\n  Without errors: peak {:.0f} cd at elevation {:.3f} deg, {:.3f} deg high at half of it\n",
      errors.planned.cd, errors.planned.elevation_deg, errors.planned.height_deg);
  TextTable table(
      {{"over all trials"}, {"mean", true}, {"st. dev.", true}, {"5 %", true}, {"50 %", true}, {"95 %", true}});
  const auto row = [&](const char* name, const TrialSpread& s, double scale, int digits) {
    const auto figure = [&](double value) { return fmt::format("{:.{}f}", scale * value, digits); };
    table.add({name, figure(s.mean), figure(s.deviation), figure(s.p5), figure(s.p50), figure(s.p95)});
  };
  row("peak, % of that without errors", errors.peak_share, 100, 1);
  row("elevation of the peak, deg", errors.elevation_deg, 1, 3);
  row("height at half peak, deg", errors.height_deg, 1, 3);
  table.print(out);
}

/// Upright turn, or where a ring opens all round the root mean square with its sign.
std::string turn_text(const PrismSensitivity& prism, SettingMove move, bool level) {
  const double unit = kMoveKeys[at_of(move)].unit;
  const BeamTurn& turn = prism.mean[at_of(move)];
  return fmt::format("{:.3f}", unit * (level ? turn.level_deg : turn.upright_deg));
}

std::string rms_text(const PrismSensitivity& prism, SettingMove move) {
  return fmt::format("{:.3f}", kMoveKeys[at_of(move)].unit * prism.spread_deg[at_of(move)]);
}

void print_turns(const SettingErrors& errors, std::ostream& out) {
  using enum SettingMove;
  out << "Turn of a prism's beam, deg (up; level: anticlockwise from above; all round: root mean square)\n";
  TextTable moved({{"prism"},
                   {"tilt up/deg", true},
                   {"roll level/deg", true},
                   {"turn level/deg", true},
                   {"seaward/mm", true},
                   {"sideways level/mm", true},
                   {"up up/mm", true}});
  TextTable made({{"prism"},
                  {"first face/deg", true},
                  {"reflecting/deg", true},
                  {"last face/deg", true},
                  {"index/0.001", true},
                  {"lamp seaward/mm", true},
                  {"lamp up up/mm", true}});
  for (const PrismSensitivity& prism : errors.prisms) {
    if (prism.panel != errors.panel || prism.flux_lm == 0) continue;
    moved.add({prism.mark, turn_text(prism, tilt, false), turn_text(prism, roll, true),
               turn_text(prism, turn, true), rms_text(prism, shift_seaward),
               turn_text(prism, shift_sideways, true), turn_text(prism, shift_up, false)});
    made.add({prism.mark, rms_text(prism, first_face), rms_text(prism, reflecting_face),
              rms_text(prism, last_face), rms_text(prism, index), rms_text(prism, lamp_seaward),
              turn_text(prism, lamp_up, false)});
  }
  moved.print(out);
  out << "Turn all round\n";
  made.print(out);
}

void print_tolerances(const SettingErrors& errors, std::ostream& out) {
  out << fmt::format("Standard deviation of one error alone that leaves {:.0f} % (blank: beyond",
                     100 * kToleratedShare);
  for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
    out << fmt::format("{} {:g}{}{}", k ? "," : "", bound_of(kErrorKinds[k]),
                       unit_of(kErrorKinds[k]).empty() ? "" : " ", unit_of(kErrorKinds[k]));
  out << ")\n";
  TextTable table({{"zone"},
                   {"% of peak", true},
                   {"tilt deg", true},
                   {"shift mm", true},
                   {"face angle deg", true},
                   {"index", true},
                   {"lamp place mm", true}});
  for (const ToleranceRow& row : errors.tolerances) {
    std::vector<std::string> cells{row.zone.empty() ? "panel" : row.zone,
                                   fmt::format("{:.1f}", 100 * row.peak_share)};
    for (std::size_t k = 0; k < kErrorKinds.size(); ++k) {
      const int digits = kErrorKinds[k] == ErrorKind::index ? 5 : 3;
      cells.push_back(row.deviation[k] ? fmt::format("{:.{}f}", *row.deviation[k], digits) : "");
    }
    table.add(std::move(cells));
  }
  table.print(out);
}

void print_losses(const SettingErrors& errors, std::ostream& out) {
  out << "Greatest losses of peak by one error of one zone\n";
  TextTable table({{"zone"}, {"error"}, {"% of peak", true}});
  for (std::size_t i = 0; i < std::min(kMostLosses, errors.losses.size()); ++i) {
    const LossRow& row = errors.losses[i];
    table.add({row.zone, std::string(name_of(row.kind)), fmt::format("{:.2f}", row.loss_percent)});
  }
  table.print(out);
}

}  // namespace

Json errors_json(const SettingErrors& errors) {
  Json json{{"panel", errors.panel}, {"trials", errors.trials}, {"seed", errors.seed}};
  for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
    json["standard_deviations"][key_of(kErrorKinds[k])] = errors.deviations[k];
  json["planned"] = {{"peak_cd", errors.planned.cd},
                     {"peak_elevation_deg", errors.planned.elevation_deg},
                     {"height_at_half_deg", errors.planned.height_deg},
                     {"map_error_of_peak", errors.map_error}};
  json["peak_share"] = spread_json(errors.peak_share);
  json["peak_elevation_deg"] = spread_json(errors.elevation_deg);
  json["height_at_half_deg"] = spread_json(errors.height_deg);
  json["tolerances"] = Json::array();
  for (const ToleranceRow& row : errors.tolerances) json["tolerances"].push_back(tolerance_json(row));
  json["losses"] = Json::array();
  for (const LossRow& row : errors.losses)
    json["losses"].push_back(
        {{"zone", row.zone}, {"error", name_of(row.kind)}, {"loss_percent_of_peak", row.loss_percent}});
  json["prisms"] = Json::array();
  for (const PrismSensitivity& prism : errors.prisms) json["prisms"].push_back(prism_json(prism));
  return json;
}

void print_errors(const SettingErrors& errors, std::ostream& out) {
  print_trials(errors, out);
  print_turns(errors, out);
  print_tolerances(errors, out);
  print_losses(errors, out);
}

}  // namespace prismwright
