#include <fmt/format.h>

#include <algorithm>

#include "app/batch/books.h"
#include "app/batch/section_act.h"
#include "app/batch/section_zones.h"
#include "app/batch/text_table.h"

namespace prismwright {

namespace {

/// Keys that the variant holds otherwise than the section as it stands.
std::vector<std::string> keys_that_differ(const SectionVariant& variant, const LensValues& present) {
  const std::vector<Assignment> now = section_texts(present);
  std::vector<std::string> keys;
  for (const Assignment& kept : variant.texts) {
    if (std::find(now.begin(), now.end(), kept) == now.end()) keys.push_back(kept.first);
  }
  return keys;
}

Json band_json(const LensValues& values, const Section& section, Band band) {
  const auto key = [&](const char* name) { return fmt::format("section.{}_{}", name_of(band), name); };
  Json json;
  json["band"] = name_of(band);
  json["division"] = value_text(values, key("division"));
  json["zones"] = std::count_if(section.zones.begin(), section.zones.end(),
                                [&](const Zone& zone) { return band_of(zone.kind) == band; });
  json["rows"] = value_text(values, key("rows"));
  return json;
}

Json variants_json(const Lensbook& book) {
  Json variants = Json::array();
  for (const SectionVariant& variant : book.variants()) {
    Json json;
    json["name"] = variant.name;
    json["when_utc"] = variant.when_utc;
    json["keys_that_differ"] = keys_that_differ(variant, book.values());
    variants.push_back(std::move(json));
  }
  return variants;
}

Json list_json(const Lensbook& book, const Section& section) {
  Json json;
  json["bands"] = Json::array();
  for (const Band band : {Band::refracting, Band::upper, Band::lower})
    json["bands"].push_back(band_json(book.values(), section, band));
  json["zones"] = zones_json(section);
  json["notes"] = section.notes;
  json["variants"] = variants_json(book);
  return json;
}

void print_variants(const Lensbook& book, std::ostream& out) {
  if (book.variants().empty()) return;
  out << "Variants kept:\n";
  TextTable table({{"name"}, {"kept"}, {"settings that differ", true}});
  for (const SectionVariant& variant : book.variants()) {
    table.add(
        {variant.name, variant.when_utc, std::to_string(keys_that_differ(variant, book.values()).size())});
  }
  table.print(out);
}

class SectionList : public SectionAct {
 public:
  std::string_view name() const override { return "list"; }
  std::string_view help() const override { return "every zone with its limits and size; the variants kept"; }
  void configure(CLI::App& command) override { command.add_flag("--json", json_, "answer in JSON"); }

  ExitCode run(const std::string& path, Voice& voice) override {
    const auto book = open_to_read(path, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto section = solve_section(book->values().section_input());
    if (!section) return refuse(section.problem(), voice.err);
    if (json_) return print_json(list_json(*book, *section), ExitCode::done, voice.out, voice.err);
    print_zones(*section, voice.out);
    for (const std::string& note : section->notes) voice.out << note << '\n';
    print_variants(*book, voice.out);
    return ExitCode::done;
  }

 private:
  bool json_ = false;
};

}  // namespace

std::unique_ptr<SectionAct> section_list() { return std::make_unique<SectionList>(); }

}  // namespace prismwright
