#include "app/batch/bench_print.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/batch/text_table.h"

namespace prismwright {

namespace {

Json reading_json(const BenchReading& reading) {
  Json json;
  json["number"] = reading.number;
  json["when_utc"] = reading.when_utc;
  json["mark"] = reading.mark;
  json["height_mm"] = reading.height_mm;
  json["aside_mm"] = reading.aside_mm;
  json["board_mm"] = reading.board_mm;
  json["by"] = reading.by;
  json["note"] = reading.note;
  return json;
}

Json prism_json(const BenchedPrism& prism, double board_mm) {
  const BenchAim& aim = *prism.aim;
  Json json;
  json["mark"] = aim.mark;
  json["panel"] = aim.panel;
  json["azimuth_deg"] = aim.azimuth_deg;
  json["elevation_deg"] = aim.elevation_deg;
  json["stands_over_mm"] = aim.stands_over_mm;
  json["meets_mm"] = {aim.meets.x, aim.meets.y, aim.meets.z};
  json["trouble"] = aim.trouble;
  if (!aim.trouble.empty()) return json;
  const BoardPlace spot = aim.spot_at(board_mm);
  json["spot"] = {{"height_mm", spot.height_mm}, {"aside_mm", spot.aside_mm}};
  json["turn_per_tilt"] = aim.turn_per_tilt;
  json["turn_per_mm_deg"] = aim.turn_per_mm;
  json["seat_mm"] = aim.seat_mm;
  json["before"] = prism.before ? mend_json(*prism.before) : Json();
  json["now"] = prism.now ? mend_json(*prism.now) : Json();
  return json;
}

Json summary_json(const BenchSummary& sum) {
  return {{"prisms", sum.prisms},          {"read", sum.read},
          {"within", sum.within},          {"worst", sum.worst},
          {"worst_deg", sum.worst_deg},    {"rms_before_deg", sum.rms_before_deg},
          {"rms_now_deg", sum.rms_now_deg}};
}

void print_plan(const BenchAnswer& answer, std::ostream& out) {
  TextTable table({{"prism"},
                   {"azimuth deg", true},
                   {"elevation deg", true},
                   {"meets x mm", true},
                   {"y mm", true},
                   {"z mm", true},
                   {"spot up mm", true},
                   {"left mm", true},
                   {"deg per deg", true},
                   {"deg per mm up", true},
                   {"seat mm", true}});
  const auto figure = [](double value, int places) { return fmt::format("{:.{}f}", value, places); };
  for (const BenchedPrism& prism : answer.prisms) {
    const BenchAim& aim = *prism.aim;
    std::vector<std::string> row = {aim.mark,
                                    figure(aim.azimuth_deg, 2),
                                    figure(aim.elevation_deg, 2),
                                    figure(aim.meets.x, 1),
                                    figure(aim.meets.y, 1),
                                    figure(aim.meets.z, 1)};
    if (aim.trouble.empty()) {
      const BoardPlace spot = aim.spot_at(answer.plan.board_mm);
      for (const double mm : {spot.height_mm, spot.aside_mm}) row.push_back(figure(mm, 1));
      row.push_back(figure(aim.turn_per_tilt, 3));
      row.push_back(figure(aim.turn_per_mm, 3));
      row.push_back(figure(aim.seat_mm, 1));
    }
    row.resize(11);
    table.add(row);
  }
  table.print(out);
  for (const BenchedPrism& prism : answer.prisms)
    if (!prism.aim->trouble.empty()) out << prism.aim->trouble << '\n';
}

/// Where the laser stands for bands that have a focal point of their own.
void print_stands(const BenchAnswer& answer, std::ostream& out) {
  std::vector<double> said;
  for (const BenchedPrism& prism : answer.prisms) {
    const double over = prism.aim->stands_over_mm;
    if (over == 0 || std::find(said.begin(), said.end(), over) != said.end()) continue;
    said.push_back(over);
    std::string zones;
    for (const BenchedPrism& other : answer.prisms)
      if (other.aim->stands_over_mm == over && other.aim->panel == prism.aim->panel)
        zones += (zones.empty() ? "" : ", ") + other.aim->mark.substr(4);
    out << fmt::format("For {} the laser stands off the principal focus: {:g} mm {} it on the lens axis.\n",
                       zones, std::abs(over), over > 0 ? "above" : "below");
  }
}

void print_readings(const BenchAnswer& answer, std::ostream& out) {
  TextTable table({{"prism"},
                   {"read mm up", true},
                   {"left mm", true},
                   {"off before deg", true},
                   {"off now deg", true},
                   {"what to do"}});
  for (const BenchedPrism& prism : answer.prisms) {
    if (!prism.now) continue;
    table.add({prism.aim->mark, fmt::format("{:.1f}", prism.last->height_mm),
               fmt::format("{:.1f}", prism.last->aside_mm), fmt::format("{:.3f}", prism.before->off_deg()),
               fmt::format("{:.3f}", prism.now->off_deg()), prism.now->words});
  }
  if (!table.empty()) table.print(out);
  const BenchSummary sum = summary_of(answer.prisms);
  out << fmt::format("{} of {} prisms read", sum.read, sum.prisms);
  if (sum.read > 0)
    out << fmt::format(", {} within {:g} deg; worst {} at {:.3f} deg; rms {:.3f} deg before, {:.3f} deg now",
                       sum.within, answer.within_deg, sum.worst, sum.worst_deg, sum.rms_before_deg,
                       sum.rms_now_deg);
  out << ".\n";
}

}  // namespace

void print_bench(const BenchAnswer& answer, std::ostream& out) {
  out << kLaserCaution << '\n';
  out << fmt::format(
      "Laser of {:g} nm in the focus; board {:g} mm from it, square to the panel's axis. Heights over the "
      "level "
      "mark at the focus, left as seen from the focus.\n",
      answer.plan.laser_nm, answer.plan.board_mm);
  print_stands(answer, out);
  print_plan(answer, out);
  print_readings(answer, out);
}

Json mend_json(const BenchMend& mend) {
  return {{"error_deg", mend.error_deg}, {"aside_deg", mend.aside_deg}, {"off_deg", mend.off_deg()},
          {"within", mend.within},       {"tilt_deg", mend.tilt_deg},   {"shim_mm", mend.shim_mm},
          {"edge", mend.edge},           {"move_up_mm", mend.move_mm},  {"words", mend.words}};
}

std::string mend_line(const std::string& mark, const BenchMend& mend) {
  const std::string aside = mend.aside_deg == 0
                                ? ""
                                : fmt::format(", {:.3f} deg to the {}", std::abs(mend.aside_deg),
                                              mend.aside_deg > 0 ? "left" : "right");
  return fmt::format("{}: the beam goes {:.3f} deg too {}{}: {}.", mark, std::abs(mend.error_deg),
                     mend.error_deg >= 0 ? "high" : "low", aside, mend.words);
}

Json bench_json(const BenchAnswer& answer) {
  Json json;
  json["caution"] = kLaserCaution;
  json["board_mm"] = answer.plan.board_mm;
  json["laser_nm"] = answer.plan.laser_nm;
  json["within_deg"] = answer.within_deg;
  json["summary"] = summary_json(summary_of(answer.prisms));
  json["prisms"] = Json::array();
  for (const BenchedPrism& prism : answer.prisms)
    json["prisms"].push_back(prism_json(prism, answer.plan.board_mm));
  json["readings"] = Json::array();
  for (const BenchReading& reading : answer.readings) json["readings"].push_back(reading_json(reading));
  return json;
}

std::string bench_csv(const BenchAnswer& answer) {
  std::string text =
      "mark,azimuth_deg,elevation_deg,laser_over_focus_mm,meets_x_mm,meets_y_mm,meets_z_mm,spot_height_mm,"
      "spot_aside_mm,turn_per_tilt,turn_per_mm_deg,seat_mm,read_height_mm,read_aside_mm,error_deg,shim_mm,"
      "edge\n";
  for (const BenchedPrism& prism : answer.prisms) {
    const BenchAim& aim = *prism.aim;
    text += fmt::format("{},{:.4f},{:.4f},{:g},{:.3f},{:.3f},{:.3f}", aim.mark, aim.azimuth_deg,
                        aim.elevation_deg, aim.stands_over_mm, aim.meets.x, aim.meets.y, aim.meets.z);
    if (aim.trouble.empty()) {
      const BoardPlace spot = aim.spot_at(answer.plan.board_mm);
      text += fmt::format(",{:.3f},{:.3f},{:.5f},{:.5f},{:.3f}", spot.height_mm, spot.aside_mm,
                          aim.turn_per_tilt, aim.turn_per_mm, aim.seat_mm);
    } else {
      text += ",,,,,";
    }
    if (prism.now)
      text += fmt::format(",{},{},{:.4f},{:.3f},{}\n", prism.last->height_mm, prism.last->aside_mm,
                          prism.now->error_deg, prism.now->shim_mm, prism.now->edge);
    else
      text += ",,,,,\n";
  }
  return text;
}

}  // namespace prismwright
