#include "app/batch/works_json.h"

#include "app/batch/mark_patterns.h"

namespace prismwright {

namespace {

Json counts_json(const StageTally& counts) {
  Json json = Json::object();
  for (const Stage stage : kStages) json[std::string(name_of(stage))] = counts[static_cast<std::size_t>(stage)];
  return json;
}

Json prism_json(const std::string& mark, const StageByMark& now) {
  Json json;
  json["mark"] = mark;
  json["stage"] = name_of(now.stage_of(mark));
  const auto serial = now.serial.find(mark);
  json["serial"] = serial == now.serial.end() ? Json() : Json(serial->second);
  return json;
}

}  // namespace

Json number_json(long long number) { return number == 0 ? Json() : Json(number); }

Json entry_json(const LedgerEntry& entry) {
  Json json;
  json["number"] = entry.number;
  json["when_utc"] = entry.when_utc;
  json["mark"] = entry.mark;
  json["from"] = name_of(entry.from);
  json["to"] = name_of(entry.to);
  json["by"] = entry.by;
  json["note"] = entry.note;
  json["back_to"] = entry.back_to ? Json(name_of(*entry.back_to)) : Json();
  json["serial"] = number_json(entry.serial);
  json["load"] = number_json(entry.load);
  return json;
}

std::vector<std::pair<std::string, StageTally>> zones_in_order(const StageCounts& counts,
                                                               const Section& section) {
  std::vector<std::pair<std::string, StageTally>> zones;
  for (const Zone& zone : section.zones) {
    const auto found = counts.by_zone.find(zone.mark);
    if (found != counts.by_zone.end()) zones.emplace_back(*found);
  }
  return zones;
}

Json works_json(std::span<const LedgerEntry> ledger, const LensPlan& plan,
                const std::vector<std::string>& marks) {
  const StageByMark now = stages_from(ledger);
  const StageCounts counts = count_stages(now, marks_of(plan));
  Json json;
  json["total"] = counts.total;
  json["counts"] = counts_json(counts.all);
  json["zones"] = Json::array();
  for (const auto& [zone, by_stage] : zones_in_order(counts, plan.section)) {
    Json row;
    row["zone"] = zone;
    row["counts"] = counts_json(by_stage);
    json["zones"].push_back(row);
  }
  json["prisms"] = Json::array();
  for (const std::string& mark : marks) json["prisms"].push_back(prism_json(mark, now));
  json["ledger"] = Json::array();
  for (const LedgerEntry& entry : ledger) json["ledger"].push_back(entry_json(entry));
  return json;
}

}  // namespace prismwright
