#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/lens_json.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"
#include "core/lens/orders.h"

namespace prismwright {

namespace {

void print_brief(const LensValues& values, std::ostream& out) {
  const Brief& brief = values.brief;
  const auto line = [&](std::string_view what, const std::string& text) {
    if (!text.empty()) out << fmt::format("  {:<14} {}\n", what, text);
  };
  const Order* order = find_order(brief.order);
  out << "Brief\n";
  line("title", brief.title);
  line("client", brief.client);
  line("order", order ? std::string(order->words) : brief.order);
  line("focal distance", number_text(brief.focal_mm) + " mm");
  line("work", brief.work == Work::belt ? "belt" : "bull's-eye");
  line("character", brief.character);
  line("material", fmt::format("{}, index {:.5f}, {} g/cm3", values.material.name,
                               values.material.effective_index(), number_text(values.material.density_g_cm3)));
  line("notes", brief.notes);
}

void print_zones(const Section& section, std::ostream& out) {
  out << fmt::format("Zones, {:.3f} to {:.3f} deg\n", section.lowest_deg, section.highest_deg);
  TextTable table({{"zone"}, {"kind"}, {"from deg", true}, {"to deg", true}, {"thickness mm", true}});
  for (const Zone& zone : section.zones) {
    table.add({zone.mark, std::string(name_of(zone.kind)), fmt::format("{:.3f}", zone.from_deg),
               fmt::format("{:.3f}", zone.to_deg), fmt::format("{:.2f}", zone.thickness_mm)});
  }
  table.print(out);
  for (const std::string& note : section.notes) out << note << '\n';
}

void print_panels(const LensPlan& plan, std::ostream& out) {
  out << "Panels\n";
  TextTable table(
      {{"panel", true}, {"width deg", true}, {"axis deg", true}, {"from deg", true}, {"to deg", true}, {""}});
  for (std::size_t i = 0; i < plan.panels.size(); ++i) {
    const PanelPlace& place = plan.panels[i];
    table.add({std::to_string(place.number), number_text(plan.values.panels[i].width_deg),
               fmt::format("{:.2f}", place.axis_deg), fmt::format("{:.2f}", place.from_deg),
               fmt::format("{:.2f}", place.to_deg), plan.values.panels[i].blind ? "blind" : ""});
  }
  table.print(out);
}

void print_prisms(const MadePrisms& lens, const StageByMark& stages, std::ostream& out) {
  double mass_g = 0;
  TextTable table(
      {{"prism"}, {"kind"}, {"volume cm3", true}, {"mass g", true}, {"length mm", true}, {"stage"}});
  for (std::size_t i = 0; i < lens.plan.prisms.size(); ++i) {
    const PlannedPrism& prism = lens.plan.prisms[i];
    const PrismBody& body = lens.bodies.prisms[i];
    mass_g += body.mass_g;
    table.add({prism.mark, std::string(name_of(prism.kind)), fmt::format("{:.2f}", body.volume_mm3 / 1000),
               fmt::format("{:.1f}", body.mass_g), fmt::format("{:.1f}", body.greatest_length_mm),
               std::string(name_of(stages.stage_of(prism.mark)))});
  }
  out << fmt::format("{} prisms, {:.2f} kg\n", lens.plan.prisms.size(), mass_g / 1000);
  table.print(out);
}

class ShowVerb : public Verb {
 public:
  std::string_view name() const override { return "show"; }
  std::string_view help() const override { return "brief, zones, panels and every prism"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON");
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto lens = make_prisms(*book, voice);
    if (!lens) return refuse(lens.problem(), voice.err);
    if (json_) return print_json(lens_json(*lens), ExitCode::done, voice.out, voice.err);
    print_brief(book->values(), voice.out);
    print_zones(lens->plan.section, voice.out);
    print_panels(lens->plan, voice.out);
    print_prisms(*lens, stages_from(book->ledger()), voice.out);
    return ExitCode::done;
  }

 private:
  std::string path_;
  bool json_ = false;
};

}  // namespace

std::unique_ptr<Verb> show_verb() { return std::make_unique<ShowVerb>(); }

}  // namespace prismwright
