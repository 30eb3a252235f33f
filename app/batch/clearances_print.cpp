#include "app/batch/clearances_print.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "app/batch/text_table.h"
#include "geometry/clearance_order.h"

namespace prismwright {

namespace {

constexpr std::array kVerdicts = {Verdict::clear, Verdict::tight, Verdict::clash};

Json point_json(const gp_Pnt& p) { return Json::array({p.X(), p.Y(), p.Z()}); }

Json pair_json(const Clearance& pair) {
  Json json;
  json["first"] = pair.first;
  json["second"] = pair.second;
  json["kind"] = name_of(pair.kind);
  json["gap_mm"] = pair.gap_mm;
  json["needed_mm"] = pair.needed_mm;
  json["overlap_mm3"] = pair.overlap_mm3;
  json["verdict"] = name_of(pair.verdict);
  json["first_point_mm"] = point_json(pair.first_point);
  json["second_point_mm"] = point_json(pair.second_point);
  return json;
}

Json step_json(const DoorStep& step) {
  Json json;
  json["angle_deg"] = step.angle_deg;
  json["gap_mm"] = step.gap_mm;
  json["first"] = step.first;
  json["second"] = step.second;
  json["first_point_mm"] = point_json(step.first_point);
  json["second_point_mm"] = point_json(step.second_point);
  return json;
}

Json door_json(const DoorSweep& door) {
  Json json;
  json["free_deg"] = door.free_deg;
  json["least_mm"] = door.least.gap_mm;
  json["least_at_deg"] = door.least.angle_deg;
  json["first"] = door.least.first;
  json["second"] = door.least.second;
  json["opens_enough"] = door.opens_enough;
  json["shut_enough"] = door.shut_enough;
  json["steps"] = Json::array();
  for (const DoorStep& step : door.steps) json["steps"].push_back(step_json(step));
  return json;
}

void print_pairs(const std::vector<Clearance>& pairs, std::size_t most, std::ostream& out) {
  TextTable table({{"first"},
                   {"second"},
                   {"kind"},
                   {"gap mm", true},
                   {"needed mm", true},
                   {"overlap mm3", true},
                   {"verdict"}});
  for (const Clearance& pair : pairs) {
    if (most-- == 0) break;
    table.add({pair.first, pair.second, std::string(name_of(pair.kind)), fmt::format("{:.3f}", pair.gap_mm),
               fmt::format("{:.3f}", pair.needed_mm),
               pair.overlap_mm3 > 0 ? fmt::format("{:.3f}", pair.overlap_mm3) : "",
               std::string(name_of(pair.verdict))});
  }
  if (!table.empty()) table.print(out);
}

void print_door(const DoorSweep& door, double wanted_deg, std::ostream& out) {
  TextTable table({{"door deg", true}, {"gap mm", true}, {"first"}, {"second"}});
  for (const DoorStep& step : door.steps) {
    table.add(
        {fmt::format("{:.1f}", step.angle_deg), fmt::format("{:.3f}", step.gap_mm), step.first, step.second});
  }
  if (!table.empty()) table.print(out);
  out << fmt::format("The door opens freely to {:.1f} deg; {:g} deg are asked for.\n", door.free_deg,
                     wanted_deg);
  if (door.steps.empty()) return;
  out << fmt::format("Least room on its way: {:.3f} mm at {:.1f} deg, {} to {}.\n", door.least.gap_mm,
                     door.least.angle_deg, door.least.first, door.least.second);
  if (!door.shut_enough) {
    out << fmt::format("Shut, it keeps less than {:g} mm. Raise frame.door_gap_mm.\n", kMetalApart_mm);
  }
}

}  // namespace

long count_of(const std::vector<Clearance>& pairs, Verdict verdict) {
  return std::ranges::count(pairs, verdict, &Clearance::verdict);
}

Json clearances_json(const ClearanceAnswer& answer) {
  Json json;
  json["counts"] = Json::object();
  for (const Verdict verdict : kVerdicts)
    json["counts"][std::string(name_of(verdict))] = count_of(answer.pairs, verdict);
  json["pairs"] = Json::array();
  for (const Clearance& pair : answer.pairs) json["pairs"].push_back(pair_json(pair));
  if (answer.door) json["door"] = door_json(*answer.door);
  json["notes"] = answer.notes;
  return json;
}

void print_clearances(ClearanceAnswer answer, std::size_t most, std::ostream& out) {
  out << fmt::format("{} pairs: {} clear, {} tight, {} clash.\n", answer.pairs.size(),
                     count_of(answer.pairs, Verdict::clear), count_of(answer.pairs, Verdict::tight),
                     count_of(answer.pairs, Verdict::clash));
  std::ranges::stable_sort(answer.pairs, is_worse);
  print_pairs(answer.pairs, most, out);
  if (answer.door) print_door(*answer.door, answer.door_wanted_deg, out);
  for (const std::string& note : answer.notes) out << note << '\n';
}

}  // namespace prismwright
