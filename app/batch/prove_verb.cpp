#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/json_print.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"
#include "core/optics/proof.h"

namespace prismwright {

namespace {

constexpr int kElevations = 20000;
constexpr int kFewestElevations = 100;
constexpr int kMostElevations = 10'000'000;

/// The light of the lamp leaves level and none of it passes between the prisms.
bool is_well(const Proof& proof, const Section& section) {
  return proof.of(Fate::escaped) == 0 && proof.worst_departure_deg <= section.input.settings.level_within_deg;
}

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

Json zone_json(const ZoneProof& zone) {
  Json json;
  json["mark"] = zone.mark;
  json["kind"] = name_of(zone.kind);
  json["from_deg"] = zone.from_deg;
  json["to_deg"] = zone.to_deg;
  json["worst_departure_deg"] = zone.worst_departure_deg;
  json["least_margin_deg"] = optional_json(zone.least_margin_deg);
  json["share"] = zone.share;
  json["share_level"] = zone.share_level;
  json["through"] = zone.through;
  return json;
}

Json proof_json(const Proof& proof, const Section& section) {
  Json json;
  json["worst_departure_deg"] = proof.worst_departure_deg;
  json["worst_zone"] = proof.worst_zone;
  json["level_within_deg"] = section.input.settings.level_within_deg;
  json["share_level"] = proof.of(Fate::level);
  json["share_stray"] = proof.of(Fate::stray);
  json["share_escaped"] = proof.of(Fate::escaped);
  json["share_stopped"] = proof.of(Fate::stopped);
  json["share_lost"] = proof.lost();
  json["share_lost_in_lands"] = proof.of(Fate::lost_land);
  json["share_lost_at_reflection"] = proof.of(Fate::lost_reflecting);
  json["share_of_source"] = proof.share_of_source;
  json["through"] = proof.through;
  json["least_margin_deg"] = optional_json(proof.least_margin_deg);
  json["elevations"] = proof.elevations;
  json["lowest_deg"] = proof.lowest_deg;
  json["highest_deg"] = proof.highest_deg;
  json["dark_strips_mm"] = Json::array();
  for (const BeamStrip& strip : proof.dark_strips) {
    json["dark_strips_mm"].push_back(Json::array({strip.from_mm, strip.to_mm}));
  }
  json["zones"] = Json::array();
  for (const ZoneProof& zone : proof.zones) json["zones"].push_back(zone_json(zone));
  json["notes"] = section.notes;
  return json;
}

void print_shares(const Proof& proof, std::ostream& out) {
  for (int i = 0; i < kFates; ++i) {
    const Fate fate = static_cast<Fate>(i);
    if (fate != Fate::level && fate != Fate::escaped && proof.of(fate) == 0) continue;
    out << fmt::format("  {:>8.3f} %  {}\n", 100 * proof.of(fate), name_of(fate));
  }
}

void print_zones(const Proof& proof, std::ostream& out) {
  TextTable table({{"zone"},
                   {"kind"},
                   {"from deg", true},
                   {"to deg", true},
                   {"worst deg", true},
                   {"margin deg", true},
                   {"through %", true}});
  for (const ZoneProof& zone : proof.zones) {
    table.add({zone.mark, std::string(name_of(zone.kind)), fmt::format("{:.3f}", zone.from_deg),
               fmt::format("{:.3f}", zone.to_deg), fmt::format("{:.4f}", zone.worst_departure_deg),
               zone.least_margin_deg ? fmt::format("{:.2f}", *zone.least_margin_deg) : "",
               fmt::format("{:.1f}", 100 * zone.through)});
  }
  table.print(out);
}

void print_proof(const Proof& proof, const Section& section, std::ostream& out) {
  const double dark = [&] {
    double sum = 0;
    for (const BeamStrip& strip : proof.dark_strips) sum += strip.to_mm - strip.from_mm;
    return sum;
  }();
  out << fmt::format("Level within {:.4f} deg{} ({} allowed).\n", proof.worst_departure_deg,
                     proof.worst_zone.empty() ? "" : ", worst in " + proof.worst_zone,
                     number_text(section.input.settings.level_within_deg));
  out << fmt::format("Of the light between {:.2f} and {:.2f} deg ({:.1f} % of the source), by {} rays:\n",
                     proof.lowest_deg, proof.highest_deg, 100 * proof.share_of_source, proof.elevations);
  print_shares(proof, out);
  out << fmt::format("{:.1f} % of the level light comes through the faces. {} dark strips, {:.2f} mm in all.\n",
                     100 * proof.through, proof.dark_strips.size(), dark);
  print_zones(proof, out);
  for (const std::string& note : section.notes) out << note << '\n';
}

class ProveVerb : public Verb {
 public:
  std::string_view name() const override { return "prove"; }
  std::string_view help() const override { return "follow rays from the focus through the section"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON");
    command.add_option("--elevations", elevations_, "how many rays")
        ->check(CLI::Range(kFewestElevations, kMostElevations))
        ->capture_default_str();
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto section = solve_section(book->values().section_input());
    if (!section) return refuse(section.problem(), voice.err);
    const Proof proof = prove(*section, elevations_);
    const ExitCode code = is_well(proof, *section) ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(proof_json(proof, *section), code, voice.out, voice.err);
    print_proof(proof, *section, voice.out);
    if (code == ExitCode::not_well) voice.err << verdict(proof, *section);
    return code;
  }

 private:
  static std::string verdict(const Proof& proof, const Section& section) {
    if (proof.of(Fate::escaped) > 0) return "Not well: light escapes between the prisms.\n";
    return fmt::format("Not well: {} sends a ray {:.4f} deg from level, more than the {} deg allowed.\n",
                       proof.worst_zone, proof.worst_departure_deg,
                       number_text(section.input.settings.level_within_deg));
  }

  std::string path_;
  bool json_ = false;
  int elevations_ = kElevations;
};

}  // namespace

std::unique_ptr<Verb> prove_verb() { return std::make_unique<ProveVerb>(); }

}  // namespace prismwright
