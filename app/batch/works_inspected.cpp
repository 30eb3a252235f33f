#include "app/batch/works_inspected.h"

#include <fmt/format.h>

#include "app/batch/text_table.h"
#include "app/batch/works_json.h"
#include "core/drawing/lengths.h"

namespace prismwright {

namespace {

std::string_view word_of(DecisionKind kind) {
  return kind == DecisionKind::accept ? "accept" : kind == DecisionKind::shim ? "shim" : "scrap";
}

Json feature_json(const CheckedFeature& checked) {
  const Feature& feature = checked.feature;
  Json json;
  json["feature"] = feature.key;
  json["name"] = feature.name;
  json["unit"] = feature.unit;
  json["drawn"] = feature.drawn;
  json["within"] = feature.within;
  json["needed"] = feature.needed;
  json["how"] = feature.how;
  json["sagitta_mm"] = feature.arc ? Json(feature.arc->sagitta_mm) : Json();
  json["departs_mm"] = feature.arc ? Json(feature.arc->departs_mm) : Json();
  json["measured"] = checked.measured ? Json(*checked.measured) : Json();
  json["off"] = checked.measured ? Json(checked.off) : Json();
  json["verdict"] = name_of(checked.verdict);
  json["readings"] = checked.readings;
  json["when_utc"] = checked.when_utc;
  json["by"] = checked.by;
  return json;
}

Json decision_json(const Decision& decision) {
  Json json;
  json["number"] = decision.number;
  json["when_utc"] = decision.when_utc;
  json["decision"] = word_of(decision.kind);
  json["by"] = decision.by;
  json["note"] = decision.note;
  return json;
}

}  // namespace

Outcome<InspectionBook> InspectionBook::of(const WorksDesk& desk) {
  InspectionBook book;
  if (desk.book.readings().empty()) return book;
  auto bench = bench_plan(desk.plan, {});
  if (!bench) return bench.problem();
  book.bench_ = std::move(bench).value();
  return book;
}

InspectionRecord InspectionBook::record(const WorksDesk& desk) const {
  const WorksLog& log = desk.book.works_log();
  return {log.measurements, log.decisions, desk.book.ledger(), desk.book.readings(),
          bench_ ? &*bench_ : nullptr};
}

Outcome<std::vector<InspectedPrism>> inspected(const WorksDesk& desk) {
  const auto book = InspectionBook::of(desk);
  if (!book) return book.problem();
  return inspect(desk.plan, book->record(desk));
}

Outcome<InspectedPrism> inspected(const WorksDesk& desk, const std::string& mark) {
  const auto book = InspectionBook::of(desk);
  if (!book) return book.problem();
  const PlannedPrism* found = prism_of_mark(desk.plan, mark);
  if (!found) {
    return request_problem(
        "unknown_mark", mark,
        fmt::format("{} is no prism of this lens. Take a mark from its list of prisms.", mark));
  }
  PlannedPrism prism = *found;
  prism.mark = mark;  // a spare is inspected by the drawing of its piece
  return inspect(prism, desk.plan.values.works, book->record(desk));
}

Json inspected_json(const InspectedPrism& prism) {
  Json json;
  json["mark"] = prism.mark;
  json["serial"] = number_json(prism.serial);
  json["within"] = prism.within;
  json["out"] = prism.out;
  json["missing"] = prism.missing;
  json["fit"] = prism.fit;
  json["words"] = prism.words;
  json["decision"] = prism.decision ? decision_json(*prism.decision) : Json();
  json["features"] = Json::array();
  for (const CheckedFeature& checked : prism.features) json["features"].push_back(feature_json(checked));
  return json;
}

void print_features(const InspectedPrism& prism, bool how, std::ostream& out) {
  TextTable table({{"feature"},
                   {"drawn", true},
                   {"within", true},
                   {"unit"},
                   {"measured", true},
                   {"off", true},
                   {"verdict"}});
  for (const CheckedFeature& checked : prism.features) {
    const Feature& feature = checked.feature;
    table.add({feature.key, decimals(feature.drawn, 3), shortest(feature.within), feature.unit,
               checked.measured ? shortest(*checked.measured) : "",
               checked.measured ? decimals(checked.off, 3) : "", name_of(checked.verdict)});
  }
  table.print(out);
  if (how) {
    for (const CheckedFeature& checked : prism.features)
      out << checked.feature.key << ": " << checked.feature.name << ". " << checked.feature.how << '\n';
  }
  out << prism.words << '\n';
}

}  // namespace prismwright
