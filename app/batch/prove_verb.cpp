#include <fmt/format.h>

#include <cmath>

#include "app/batch/books.h"
#include "app/batch/proved_section.h"
#include "app/batch/verbs.h"

namespace prismwright {

namespace {

constexpr int kElevations = 20000;
constexpr int kFewestElevations = 100;
constexpr int kMostElevations = 10'000'000;

/// Whether the light of the middles of the panels leaves level and none of it passes between the prisms.
bool is_well(const Proof& proof, const Section& section) {
  return proof.of(Fate::escaped) == 0 && proof.worst_departure_deg <= section.input.settings.level_within_deg;
}

/// The zone whose flat inner face sends light farther from its aim than is allowed.
const FacetDeparture* facet_amiss(const ProvedSection& proved) {
  const FacetDeparture* worst = worst_of(proved.facets);
  const double allowed_deg = proved.plan.section.input.settings.level_within_deg;
  return worst && std::abs(worst->worst.departure_deg) > allowed_deg ? worst : nullptr;
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
    auto plan = plan_lens(book->values());
    if (!plan) return refuse(plan.problem(), voice.err);
    const ProvedSection proved = prove_section(std::move(*plan), elevations_);
    const Section& section = proved.plan.section;
    const bool well = is_well(proved.proof, section);
    const FacetDeparture* facet = facet_amiss(proved);
    const ExitCode code = well && !facet ? ExitCode::done : ExitCode::not_well;
    if (json_) return print_json(proof_json(proved), code, voice.out, voice.err);
    print_proof(proved, voice.out);
    if (!well) voice.err << verdict(proved.proof, section);
    if (facet) voice.err << facet_verdict(*facet, section);
    return code;
  }

 private:
  static std::string verdict(const Proof& proof, const Section& section) {
    if (proof.of(Fate::escaped) > 0) return "Not well: light escapes between the prisms.\n";
    return fmt::format("Not well: {} sends a ray {:.4f} deg from its aim, more than the {} deg allowed.\n",
                       proof.worst_zone, proof.worst_departure_deg,
                       number_text(section.input.settings.level_within_deg));
  }

  static std::string facet_verdict(const FacetDeparture& facet, const Section& section) {
    return fmt::format(
        "Not well: the flat inner face of {} sends a ray {:.4f} deg from its aim at {:.2f} deg from "
        "the panel's axis, more than the {} deg allowed. Make the panels narrower, or choose "
        "section.inner_face hollow.\n",
        facet.zone, std::abs(facet.worst.departure_deg), facet.worst.azimuth_deg,
        number_text(section.input.settings.level_within_deg));
  }

  std::string path_;
  bool json_ = false;
  int elevations_ = kElevations;
};

}  // namespace

std::unique_ptr<Verb> prove_verb() { return std::make_unique<ProveVerb>(); }

}  // namespace prismwright
